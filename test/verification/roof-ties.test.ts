/** Tension of rafter ties against a worked example, at the plates and raised; nails of their heel joint. */
import { expect, it } from 'vitest';
import { makeBar } from '../../src/analysis/rafter.js';
import { frameOf, type Half, solveFrame } from '../../src/analysis/tied-frame.js';
import { makeStations } from '../../src/analysis/two-bearings.js';
import { dowelBearing, lateralValue } from '../../src/checks/codes/nds-2018/index.js';
import type { Member } from '../../src/structure/model.js';
import { place } from '../../src/structure/place.js';
import { tiedProject } from '../../src/structure/testing-ridge.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('roof-ties');
const RUN = 144;
const RISE = 48;
const SLOPE = Math.hypot(RUN, RISE);

const any = place(tiedProject).value!.members.find((m) => m.role === 'rafter')!;

/** A rafter from the plate (side −1 left, 1 right) to the ridge, tied `height` above the plates. */
function half(side: -1 | 1, height: number): Half {
  const member: Member = {
    ...any,
    start: { x: side * RUN, y: 0, z: 0 },
    end: { x: 0, y: 0, z: RISE },
    up: { x: (side * RISE) / SLOPE, y: 0, z: RUN / SLOPE },
  };
  const beam = { length: SLOPE, first: 0, second: SLOPE, EI: 1 };
  const bar = makeBar(member, beam, makeStations(SLOPE, [0, SLOPE]), [1, 0]);
  const atTie = (height / RISE) * SLOPE;
  return { member, bar, foot: undefined as never, atFoot: 0, atTie, atHinge: SLOPE, tieJoint: '', ridgeJoint: '' };
}

const tension = (height: number, load: number): number => {
  const q = load / SLOPE;
  const even = { direction: { x: 0, y: 0, z: -1 }, lines: [{ a: 0, b: SLOPE, qa: q, qb: q }], points: [] };
  return solveFrame(frameOf(half(-1, height), half(1, height)), [even, even], 0).T;
};

const EXAMPLE = {
  clause: 'statics: tied rafters',
  source: 'builders’ trade journal, an engineer’s answer on rafter ties under shallow roofs: T = W/2 · H/h · run/rise',
  where: 'the journal’s page, answer to a reader’s question; 24 ft building, 4/12, 960 lb on a rafter',
  provenance: 'read',
  unit: 'lb',
} as const;

it('ties at the plates and raised by a third of the ridge height', () => {
  const tolerance = { abs: 0.5, reason: 'printed to whole pounds' };
  suite.compare({
    ...EXAMPLE,
    id: 'tie-tension',
    quantity: 'at the plates',
    published: 1440,
    ours: tension(0, 960),
    tolerance,
  });
  suite.compare({
    ...EXAMPLE,
    id: 'tie-tension',
    quantity: '16 in up',
    published: 2160,
    ours: tension(16, 960),
    tolerance,
  });
});

it('more nails for raised ties: the factors of the heel joint table', () => {
  for (const [share, published] of [
    [1 / 3, 1.5],
    [1 / 4, 1.33],
    [1 / 5, 1.25],
    [1 / 6, 1.2],
    [1 / 10, 1.11],
  ] as const)
    suite.compare({
      id: 'tie-raised',
      quantity: `HC/HR 1/${Math.round(1 / share)}`,
      clause: 'statics: tied rafters',
      source: 'IRC 2018 Table R802.5.2, heel joint adjustment for raised ties',
      where: 'recalled',
      provenance: 'memory',
      published,
      ours: tension(RISE * share, 1000) / tension(0, 1000),
      tolerance: { abs: 0.006, reason: 'printed to 0.01' },
      unit: '',
    });
});

it('a 16d common nail through a 2-by tie', () => {
  const Fe = dowelBearing(0.5, 0.162, 0, true);
  const { Z } = lateralValue({ D: 0.162, lm: 1.5, ls: 1.5, Fem: Fe, Fes: Fe, Fyb: 90000, thetaMax: 0 }, 'single');
  suite.compare({
    id: 'tie-heel-nail',
    clause: 'NDS 2018 12.3.1',
    source: 'NDS 2018 Table 12N, 16d common, 1-1/2 in side member, Douglas Fir-Larch',
    where: 'recalled',
    provenance: 'memory',
    published: 141,
    ours: Z,
    tolerance: { abs: 0.5, reason: 'table printed to whole pounds' },
    unit: 'lb',
  });
  expect(Z).toBeGreaterThan(0);
});
