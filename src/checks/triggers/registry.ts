/**
 * Conditions that tell early that a licensed professional is needed, or that some offices ask for one. `needs` blocks the
 * set; `some-offices` is printed so that the owner asks before paying for drawings.
 */
import type { Trigger } from './contract.js';
import { OVERLAY_TRIGGERS } from './overlay.js';

const feet = (inches: number): string => `${(inches / 12).toFixed(1)} ft`;
const when = (yes: boolean, text: string): string | undefined => (yes ? text : undefined);

/** Height over the adjacent grade above which a permit handout asks for an engineer, and the code appendix ends: 12 ft. */
const TALL = 144;
/** IRC 2018 R301.2.3 (recalled): beyond this ground snow the residential tables end. */
const SNOW_LIMIT = 70;
/** IRC 2018 R301.2.1.1 (recalled): at this wind speed the residential tables end outside hurricane regions. */
const WIND_LIMIT = 140;
/** Clear height of a post beyond which a handbook column without a side-sway study is no longer usual. */
const LONG_POST = 192;
/** Overhang of a beam past its last post as a share of the span behind it. */
const LONG_OVERHANG = 1 / 3;

export const TRIGGERS: readonly Trigger[] = [
  {
    id: 'not-a-shed',
    level: 'some-offices',
    source: 'a town’s patio-cover handout',
    found: (c) =>
      when(
        c.structure.roofs.some((r) => r.surfaces.length > 1),
        'The roof is no plain shed: some offices ask for an engineer’s seal for a gable or hip.',
      ),
  },
  {
    id: 'over-12-ft',
    level: 'some-offices',
    source: 'a town’s patio-cover handout; the patio-cover appendix of the residential code',
    found(c) {
      const most = Math.max(...c.structure.roofs.map((r) => r.highestPoint - c.structure.grade.z0));
      return when(most > TALL, `The roof stands ${feet(most)} above grade, over 12 ft.`);
    },
  },
  {
    id: 'trusses',
    level: 'some-offices',
    source: 'county patio-cover handout; IRC 2018 R802.10.1 (recalled)',
    found: (c) =>
      when(
        c.structure.members.some((m) => m.truss !== undefined),
        'Every truss is designed and sealed by the truss plant’s engineer.',
      ),
  },
  {
    id: 'snow-over-70',
    level: 'some-offices',
    source: 'IRC 2018 R301.2.3 (recalled)',
    found(c) {
      const pg = c.project.basis.snow.ground.value;
      return when(
        pg > SNOW_LIMIT,
        `Ground snow ${pg.toFixed(0)} psf is over ${SNOW_LIMIT} psf: the prescriptive path ends.`,
      );
    },
  },
  {
    id: 'wind-over-140',
    level: 'some-offices',
    source: 'IRC 2018 R301.2.1.1 (recalled)',
    found(c) {
      const V = c.project.basis.wind.speed.value;
      return when(
        V >= WIND_LIMIT,
        `Wind ${V.toFixed(0)} mph is ${WIND_LIMIT} mph or more: the prescriptive path ends.`,
      );
    },
  },
  {
    id: 'hill',
    level: 'some-offices',
    source: 'ASCE 7-16 26.8',
    found: (c) =>
      when(
        c.project.basis.wind.topographic.value > 1,
        'The site is on or near a hill: the factor Kzt needs a survey of it.',
      ),
  },
  {
    id: 'soft-soil',
    level: 'needs',
    source: 'IRC 2018 R401.4 (recalled): soil under 1,500 psf wants a soils report',
    found(c) {
      const { value, from } = c.project.basis.soil.bearing;
      return when(
        value < 1500,
        `Soil bearing ${value.toFixed(0)} psf is under 1,500 psf (${from || 'no source'}): a soils report decides.`,
      );
    },
  },
  {
    id: 'steep-ground',
    level: 'needs',
    source: 'IRC 2018 R403.1.7 (recalled): footings by slopes steeper than 1 in 3',
    found(c) {
      const slope = Math.hypot(c.structure.grade.gx, c.structure.grade.gy);
      return when(slope > 1 / 3, 'The ground is steeper than 1 in 3: footings on it need a professional.');
    },
  },
  {
    id: 'risk-category',
    level: 'needs',
    source: 'IBC 2018 Table 1604.5',
    found: (c) =>
      when(
        c.project.basis.riskCategory === 'III' || c.project.basis.riskCategory === 'IV',
        `Risk category ${c.project.basis.riskCategory}: a licensed professional must design it.`,
      ),
  },
  {
    id: 'other-use',
    level: 'needs',
    source: 'patio-cover appendix of the residential code; common practice',
    found: (c) =>
      when(
        c.project.cover.use === 'storage' || c.project.cover.use === 'other',
        'It is not for recreation or parking: another occupancy may apply.',
      ),
  },
  {
    id: 'tall-posts',
    level: 'needs',
    source: 'common practice, no source',
    found(c) {
      const most = Math.max(0, ...c.structure.members.filter((m) => m.role === 'post').map((m) => m.length));
      return when(most > LONG_POST, `A post is ${feet(most)} long, over ${feet(LONG_POST)}.`);
    },
  },
  {
    id: 'long-overhang',
    level: 'some-offices',
    source: 'a town’s patio-cover handout: load path through a cantilever',
    found(c) {
      for (const m of c.structure.members) {
        if (m.role !== 'beam') continue;
        const spans = c.effects.members.get(m.id)?.spans ?? [];
        const back = Math.max(0, ...spans.filter((s) => s.kind === 'span').map((s) => s.length));
        const over = Math.max(0, ...spans.filter((s) => s.kind === 'overhang').map((s) => s.length));
        if (back > 0 && over > LONG_OVERHANG * back)
          return `${m.id} runs ${feet(over)} past its last post, over a third of the span behind it.`;
      }
      return undefined;
    },
  },
  ...OVERLAY_TRIGGERS,
];
