/** Fasteners of a ledger against the standard's own tables: the gap equations with the gap closed. */
import { expect, it } from 'vitest';
import { LAG_SCREWS } from '../../src/catalog/fasteners.js';
import { dowelBearing, lateralValueGap, W } from '../../src/checks/codes/nds-2018/index.js';
import { type Published, topic } from './helpers/wood-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('house-ledger');
const RIGHT = Math.PI / 2;
const TEN = { abs: 5.01, reason: 'table rounds to 10 lb' };

interface Sizes {
  readonly D: number;
  readonly Dr: number;
  readonly lm: number;
  readonly ls: number;
  readonly G: number;
  readonly Fyb: number;
}

/** Ledger and band both loaded across the grain: what a ledger's fasteners meet. */
const acrossBoth = (s: Sizes): number =>
  lateralValueGap(
    {
      D: s.Dr,
      nominalD: s.D,
      lm: s.lm,
      ls: s.ls,
      Fem: dowelBearing(s.G, s.D, RIGHT, true),
      Fes: dowelBearing(s.G, s.D, RIGHT, true),
      Fyb: s.Fyb,
      thetaMax: RIGHT,
    },
    0,
  ).Z;

function compare(p: Published, id: string, clause: string, ours: number): void {
  suite.compare({
    id,
    clause,
    source: p.source,
    where: p.where,
    provenance: p.provenance,
    published: p.expected.Z_perp_lb,
    ours,
    tolerance: TEN,
    unit: 'lb',
    note: 'general dowel equations with no gap',
  });
}

it.each(topic('bolt, wood to wood single shear'))('$id', (p) => {
  const { D_in, tm_in, ts_in, G, Fyb_psi } = p.inputs;
  if (typeof p.expected.Z_perp_lb !== 'number') return;
  const ours = acrossBoth({ D: D_in, Dr: D_in, lm: tm_in, ls: ts_in, G, Fyb: Fyb_psi });
  compare(p, `gap0-${p.id}`, 'AWC TR12, general dowel equations; NDS 2018 Table 12A', ours);
});

it.each(topic('lag screw, wood side member'))('$id', (p) => {
  const { D_in, ts_in, G } = p.inputs;
  if (typeof p.expected.Z_perp_lb !== 'number') return;
  const f = LAG_SCREWS.find((x) => x.D === D_in)!;
  const ours = acrossBoth({ D: f.D, Dr: f.Dr!, lm: 8 * f.D, ls: ts_in, G, Fyb: f.Fyb });
  compare(p, `gap0-${p.id}`, 'AWC TR12, general dowel equations; NDS 2018 Table 12J', ours);
});

it('compares something', () => expect(suite.ids().size).toBeGreaterThan(5));

it('holds a lag of 1/2 in. by 378 lb an inch in Douglas Fir-Larch', () => {
  suite.compare({
    id: 'ledger-lag-withdrawal',
    clause: 'NDS 2018 12.2.1',
    source: 'NDS 2015/2018 Table 12.2A p.77',
    where: 'https://lfportal.everettwa.gov/WebLink/0/doc/1831805/Page33.aspx (scan of the NDS page in a permit file)',
    provenance: 'read',
    published: 378,
    ours: W('lag', 0.5, 0.5),
    tolerance: { abs: 0.51, reason: 'table rounds to 1 lb' },
    unit: 'lb/in',
  });
});
