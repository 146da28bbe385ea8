import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  FROST_EXEMPT_AREA_LIGHT_FRAME,
  FROST_EXEMPT_EAVE,
  IRC_MIN_FOOTING_PROJECTION,
  IRC_MIN_FOOTING_WIDTH,
  ircFootingDepth,
  ircFootingThickness,
  PATIO_MAX_HEIGHT,
  PATIO_MAX_SLAB_COLUMN_LOAD,
  PATIO_MIN_SLAB,
  PATIO_OPEN_BELOW,
  PATIO_OPEN_FRACTION,
  PATIO_PLASTIC_THICKNESS,
} from '../../src/checks/codes/irc-2018/index.js';
import { gutterCapacity, gutterFor, LEADERS, leaderCapacity } from '../../src/checks/codes/roof-drainage/index.js';
import { patioCoverVerticalLoad } from '../../src/loads/codes/irc-2018/index.js';
import { against, EXACT, PUBLISHED_IDS, within } from './loads-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('loads-prescriptive');
const asked = (clause: string, unit: string, tolerance = EXACT, note?: string) => ({
  clause,
  tolerance,
  unit,
  ...(note ? { note } : {}),
});

describe('footings and patio covers', () => {
  it('F12 residential footing minimums', () => {
    const note = 'read in the 2024 text';
    const c = (section: string, unit: string) => asked(`IRC 2018 ${section}`, unit, EXACT, note);
    against(suite, 'F12', 'minDepth_in', ircFootingDepth(0, false), c('R403.1.4', 'in'));
    against(suite, 'F12', 'minWidth_in', IRC_MIN_FOOTING_WIDTH, c('R403.1.1', 'in'));
    against(suite, 'F12', 'minThickness_in', ircFootingThickness(2), c('R403.1.1', 'in'));
    against(suite, 'F12', 'minProjection_in', IRC_MIN_FOOTING_PROJECTION, c('R403.1.1', 'in'));
    against(
      suite,
      'F12',
      'frostExemptFreeStanding_ft2_lightFrame',
      FROST_EXEMPT_AREA_LIGHT_FRAME / 144,
      c('R403.1.4.1', 'ft²'),
    );
    against(suite, 'F12', 'frostExemptEave_ft', FROST_EXEMPT_EAVE / 12, c('R403.1.4.1', 'ft'));
  });

  it('P01 definition, P02 posts on a slab', () => {
    const c = (unit: string) =>
      asked('IRC 2018 Appendix H', unit, EXACT, 'read in a state code that reprints the 2006 text');
    against(suite, 'P01', 'maxHeight_ft', PATIO_MAX_HEIGHT / 12, c('ft'));
    against(suite, 'P01', 'minLive_psf', patioCoverVerticalLoad(0), c('psf'));
    against(suite, 'P01', 'openAreaPct', PATIO_OPEN_FRACTION * 100, c('%'));
    against(suite, 'P01', 'openBelow_in', PATIO_OPEN_BELOW, c('in'));
    against(suite, 'P01', 'maxPlasticThickness_in', PATIO_PLASTIC_THICKNESS, c('in'));
    against(suite, 'P02', 'minSlab_in', PATIO_MIN_SLAB, c('in'));
    against(suite, 'P02', 'maxColumnLoad_lb', PATIO_MAX_SLAB_COLUMN_LOAD, c('lb'));
  });
});

describe('drainage', () => {
  it('G01, G02 leaders at several rainfalls', () => {
    for (const [id, diameter, rains] of [
      ['G01', 3, [1, 2, 4, 6]],
      ['G02', 4, [1, 5, 10]],
    ] as const) {
      const leader = LEADERS.find((l) => l.diameter === diameter)!;
      against(suite, id, 'gpm', leader.gpm, asked('NSPC 2006 Table 13.6.1', 'gpm'));
      rains.forEach((rain, i) => {
        against(
          suite,
          id,
          `area_ft2.${i}`,
          leaderCapacity(leader, rain) / 144,
          asked('NSPC 2006 Table 13.6.1', 'ft²', within(1, 'printed to 1 ft²')),
        );
      });
    }
  });

  it('G03 gutter chosen for 45 m² at 100 mm/h', () => {
    const M2 = 1 / 0.0254 ** 2;
    const MM_PER_IN = 25.4;
    // The page calls 1/8 in per foot 1 percent, and 4 in/h 100 mm/h.
    const gutter = gutterFor(45 * M2, 1 / 8, 4)!;
    const note = 'the page rounds inches to whole tens of millimetres';
    const c = asked('engineering handbook gutter table', 'mm', within(2, note));
    against(suite, 'G03', 'gutter_mm', gutter.diameter * MM_PER_IN, c);
    against(suite, 'G03', 'downspout_mm', gutter.leader! * MM_PER_IN, c);
    against(
      suite,
      'G03',
      'capacity_m2_at_100mm',
      gutterCapacity(gutter, 1 / 8, 4) / M2,
      asked('engineering handbook gutter table', 'm²', within(0.5, 'printed to 1 m²')),
    );
  });
});

it('accounts for every published check: compared somewhere, or left out with a reason', () => {
  const tests = readdirSync(import.meta.dirname).filter((f) => /^loads-.*\.test\.ts$/.test(f));
  const text = tests.map((f) => readFileSync(join(import.meta.dirname, f), 'utf8')).join('\n');
  expect(PUBLISHED_IDS.length).toBe(53);
  expect(PUBLISHED_IDS.filter((id) => !new RegExp(`'${id}'`).test(text))).toEqual([]);
});
