/** Clause functions move the way mechanics says, all else held: a bigger section is never worse, a longer column never better. */
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { codes } from '../../src/index.js';
import { SEED } from './covers.js';

const { nds2018: nds, ibc2018: ibc, aci318_14: aci, sdpws2015: sdpws, statics, asce7 } = codes;
const HAIR = 1e-9;

/** A named range of a number, and the function of all of them. */
type Ranges = Readonly<Record<string, readonly [min: number, max: number]>>;
type Values<R extends Ranges> = Readonly<Record<keyof R, number>>;

/** `f` never falls (`up`) or never rises (`down`) as the one value grows by up to half, the others held. */
function moves<R extends Ranges>(
  what: string,
  way: 'up' | 'down',
  grows: keyof R,
  ranges: R,
  f: (v: Values<R>) => number,
): void {
  it(`${what}: ${way} with ${String(grows)}`, () => {
    const one = ([min, max]: readonly [number, number]) => fc.double({ min, max, noNaN: true });
    const record = fc.record(Object.fromEntries(Object.entries(ranges).map(([k, r]) => [k, one(r)])));
    let changed = false;
    fc.assert(
      fc.property(record as unknown as fc.Arbitrary<Values<R>>, one([1.001, 1.5]), (v, more) => {
        const [a, b] = [f(v), f({ ...v, [grows]: v[grows] * more })];
        if (a !== b) changed = true;
        const slack = HAIR * Math.max(Math.abs(a), Math.abs(b));
        return way === 'up' ? b >= a - slack : b <= a + slack;
      }),
      { seed: SEED },
    );
    if (!changed) throw new Error(`${what} does not depend on ${String(grows)} at all`);
  });
}

const SECTION = { M: [1e3, 1e6], b: [1.5, 12], d: [3.5, 20] } as const;

describe('members', () => {
  moves('bending stress', 'down', 'd', SECTION, (v) => nds.fb(v.M, v.b, v.d));
  moves('bending stress', 'down', 'b', SECTION, (v) => nds.fb(v.M, v.b, v.d));
  moves('bending stress', 'up', 'M', SECTION, (v) => nds.fb(v.M, v.b, v.d));
  moves('shear stress', 'down', 'd', { V: [10, 1e4], b: [1.5, 12], d: [3, 20] }, (v) => nds.fv(v.V, v.b, v.d));
  const COLUMN = { E: [4e5, 9e5], l: [40, 200], d: [3.5, 8], F: [500, 2000] } as const;
  const cp = (v: Values<typeof COLUMN>): number =>
    nds.CP(nds.FcE(v.E, nds.columnSlenderness(1, v.l, v.d)), v.F, nds.C_SAWN);
  moves('column factor CP', 'down', 'l', COLUMN, cp);
  moves('column factor CP', 'up', 'd', COLUMN, cp);
  moves('column factor CP', 'up', 'E', COLUMN, cp);
  moves('column factor CP', 'down', 'F', COLUMN, cp);
  moves('column strength F·CP', 'up', 'F', COLUMN, (v) => v.F * cp(v));
  const BEAM = { E: [4e5, 9e5], le: [20, 200], b: [1.5, 6], d: [5.5, 12], F: [600, 2400] } as const;
  const cl = (v: Values<typeof BEAM>): number => nds.CL(nds.FbE(v.E, nds.RB(v.le, v.b, v.d)), v.F);
  moves('beam stability CL', 'down', 'le', BEAM, cl);
  moves('beam stability CL', 'up', 'b', BEAM, cl);
  moves('beam stability CL', 'down', 'd', BEAM, cl);
  moves('stress at an angle to the grain', 'down', 'theta', { F: [1000, 2000], P: [300, 800], theta: [0.05, 1] }, (v) =>
    nds.hankinson(v.F, v.P, v.theta),
  );
  moves('bearing factor Cb', 'down', 'lb', { lb: [0.5, 5.9], end: [3.1, 20] }, (v) => nds.Cb(v.lb, v.end));
  const BOTH = { fc: [10, 300], fb1: [0, 800], fb2: [0, 400], FcE: [800, 5000] } as const;
  const together = (v: Values<typeof BOTH>): number =>
    nds.bendingCompression({
      ...v,
      FcAdj: 900,
      Fb1Adj: 1200,
      Fb2Adj: 1100,
      FcE1: v.FcE,
      FcE2: v.FcE,
      FbE: 5000,
    }).ratio;
  for (const k of ['fc', 'fb1', 'fb2'] as const) moves('bending with compression', 'up', k, BOTH, together);
  moves('bending with compression', 'down', 'FcE', BOTH, together);
});

describe('connections', () => {
  const DOWEL = {
    D: [0.26, 1],
    lm: [1.5, 6],
    ls: [1.5, 4],
    Fem: [2000, 6000],
    Fes: [2000, 6000],
    g: [0.1, 1],
  } as const;
  const dowel = (v: Values<typeof DOWEL>) => ({ ...v, Fyb: 45_000, thetaMax: 0 });
  for (const k of ['D', 'lm', 'ls', 'Fem', 'Fes'] as const) {
    moves('dowel Z', 'up', k, DOWEL, (v) => nds.lateralValue(dowel(v), 'single').Z);
    moves('dowel Z across a gap', 'up', k, DOWEL, (v) => nds.lateralValueGap(dowel(v), v.g).Z);
  }
  moves('dowel Z across a gap', 'down', 'g', DOWEL, (v) => nds.lateralValueGap(dowel(v), v.g).Z);
  moves('withdrawal', 'up', 'G', { G: [0.35, 0.6], D: [0.25, 0.75] }, (v) => nds.W('lag', v.G, v.D));
  moves('withdrawal', 'up', 'D', { G: [0.35, 0.6], D: [0.25, 0.75] }, (v) => nds.W('lag', v.G, v.D));
  const ROW = { n: [2, 12], s: [1.5, 16], D: [0.25, 1] } as const;
  const group = (v: Values<typeof ROW>): number =>
    nds.Cg(Math.ceil(v.n), v.s, v.D, 1.6e6 * 10, 1.6e6 * 10, nds.slipModulus(v.D, false));
  moves('group action', 'down', 'n', ROW, group);
  moves('group action', 'down', 's', ROW, group);
  // Columns closer than 4 in. need wider framing, so spacing runs from there.
  const NAIL = { boundary: [4, 6], G: [0.36, 0.6], thickness: [0.3125, 0.72] } as const;
  const shear = (v: Values<typeof NAIL>): number => {
    const nail = { D: 0.131, length: 2.5, framing: 1.5, blocked: true, boundary: v.boundary, edge: v.boundary };
    const cell = sdpws.findCell({ grade: 'sheathing', thickness: v.thickness, ...nail });
    return cell ? sdpws.allowableUnitShear(cell, 'wind', 1.6, v.G, '2015') : 0;
  };
  moves('diaphragm shear', 'up', 'G', NAIL, shear);
  moves('diaphragm shear', 'up', 'thickness', NAIL, shear);
  moves('diaphragm shear', 'down', 'boundary', NAIL, shear);
});

describe('ground and concrete', () => {
  const POST = { P: [100, 3000], Mg: [1e4, 2e5], b: [6, 36], lateral: [100, 400] } as const;
  const depth = (v: Values<typeof POST>): number => ibc.freePostDepth(v, 48);
  moves('embedment', 'up', 'Mg', POST, depth);
  moves('embedment', 'up', 'P', POST, depth);
  moves('embedment', 'down', 'b', POST, depth);
  moves('embedment', 'down', 'lateral', POST, depth);
  moves('lateral bearing', 'up', 'depth', { perFoot: [100, 400], depth: [12, 96] }, (v) =>
    ibc.lateralBearing(v.perFoot, v.depth),
  );
  const ANCHOR = { fc: [2500, 4000], hef: [4, 11], c: [4, 20] } as const;
  for (const k of ['fc', 'hef', 'c'] as const)
    moves('anchor breakout', 'up', k, ANCHOR, (v) => aci.breakoutTension(v.fc, v.hef, v.c));
  const PAD = { B: [12, 48], P: [500, 8000], ex: [0, 5] } as const;
  const press = (v: Values<typeof PAD>): number =>
    statics.rectangularFootingPressure(v.B, v.B, v.P, v.ex, 0)?.qMax ?? Number.MAX_VALUE;
  moves('soil pressure', 'down', 'B', PAD, press);
  moves('soil pressure', 'up', 'P', PAD, press);
  moves('soil pressure', 'up', 'ex', PAD, press);
});

describe('loads', () => {
  const DRIFT = { pg: [10, 60], lu: [300, 1200], gamma: [15, 30] } as const;
  for (const edition of ['7-16', '7-22'] as const)
    for (const k of ['pg', 'lu'] as const)
      moves(`drift height ${edition}`, 'up', k, DRIFT, (v) => asce7.driftHeight({ ...v, Is: 1, W2: 0.45 }, edition));
  moves('velocity pressure', 'up', 'V', { V: [90, 180] }, (v) =>
    asce7.velocityPressure({ Kz: 0.85, Kzt: 1, Kd: 0.85, Ke: 1, V: v.V }, '7-16'),
  );
});
