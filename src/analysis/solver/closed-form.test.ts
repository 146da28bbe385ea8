/**
 * Against closed-form solutions of beam theory. The formulas are the ones every table of beam diagrams prints (here from
 * memory); each can be derived in a few lines, and the ones with shear add the flexibility of GAs.
 */
import { describe, expect, it } from 'vitest';
import { type Vec3, v3 } from '../../base/vec.js';
import {
  appliedResultant,
  breakpoints,
  type CaseResult,
  type FactoredFrame,
  type FrameCase,
  type FrameElement,
  type FrameModel,
  factorFrame,
  reactionResultant,
  type Support,
  sampleElement,
  solveCase,
} from './index.js';

const E = 1.6e6;
const G = 1e5;
const I = 178;
const section = { E, G, A: 16.9, Iy: 12, Iz: I, J: 30 };
const up = v3(0, 0, 1);
const down = (w: number): Vec3 => v3(0, 0, -w);

const bar = (start: number, end: number, more: Partial<FrameElement> = {}): FrameElement => ({
  start,
  end,
  up,
  ...section,
  ...more,
});
const fixed = (node: number): Support => ({
  node,
  dx: 'fixed',
  dy: 'fixed',
  dz: 'fixed',
  rx: 'fixed',
  ry: 'fixed',
  rz: 'fixed',
});
const pin = (node: number): Support => ({ node, dx: 'fixed', dy: 'fixed', dz: 'fixed', rx: 'fixed' });
const roller = (node: number): Support => ({ node, dy: 'fixed', dz: 'fixed' });

/** Beam along x through the given places. */
const beam = (
  places: readonly number[],
  supports: readonly Support[],
  more: Partial<FrameElement> = {},
): FrameModel => ({
  nodes: places.map((x) => v3(x, 0, 0)),
  elements: places.slice(1).map((_, i) => bar(i, i + 1, more)),
  supports,
});

function factored(model: FrameModel): FactoredFrame {
  const r = factorFrame(model);
  if (!r.ok) throw new Error(`mechanism at node ${r.mechanism.node} ${r.mechanism.freedom}`);
  return r.frame;
}

/** Solves, and holds the case to its equilibrium. */
function solved(
  model: FrameModel,
  c: FrameCase,
): { frame: FactoredFrame; result: CaseResult; at: (e: number, x: number) => Record<string, number> } {
  const frame = factored(model);
  const result = solveCase(frame, c);
  const applied = appliedResultant(frame, c);
  const back = reactionResultant(frame, result);
  const size =
    applied.reduce((n, v) => n + Math.abs(v), 0) + result.reactions.reduce((n, v) => n + Math.abs(v), 0) + 1e-30;
  applied.forEach((v, i) => {
    expect(Math.abs(v + back[i]!) / size).toBeLessThan(1e-9);
  });
  const at = (e: number, x: number) => {
    const s = sampleElement(frame, c, result, e, [x]);
    return Object.fromEntries(Object.entries(s).map(([k, v]) => [k, v[0]]));
  };
  return { frame, result, at };
}

const near = (got: number | undefined, want: number, tolerance = 1e-9): void =>
  expect(Math.abs(got! - want)).toBeLessThanOrEqual(tolerance * Math.max(Math.abs(want), 1e-12));
const rz = (r: CaseResult, node: number): number => r.reactions[6 * node + 2]!;

const L = 144;
const w = 20;
const P = 1500;

describe('simple beam', () => {
  const model = beam([0, L], [pin(0), roller(1)]);
  it('uniform load', () => {
    const { result, at } = solved(model, { distributed: [{ element: 0, startForce: down(w) }] });
    near(rz(result, 0), (w * L) / 2);
    near(at(0, L / 2).mz, (w * L * L) / 8);
    near(at(0, 0).vy, (-w * L) / 2);
    near(at(0, L).vy, (w * L) / 2);
    near(at(0, L / 2).dy, (-5 * w * L ** 4) / (384 * E * I));
    const x = L / 5;
    near(at(0, x).dy, (-w * x * (L ** 3 - 2 * L * x * x + x ** 3)) / (24 * E * I));
    near(result.displacements[4], (w * L ** 3) / (24 * E * I));
  });

  it('point load, and its two sides', () => {
    const a = 50;
    const b = L - a;
    const c: FrameCase = { points: [{ element: 0, at: a, force: down(P) }] };
    const { frame, result, at } = solved(model, c);
    near(rz(result, 0), (P * b) / L);
    near(at(0, a).mz, (P * a * b) / L);
    near(at(0, a).dy, (-P * a * a * b * b) / (3 * E * I * L));
    const places = breakpoints(frame, [c], 0);
    expect(places).toHaveLength(4);
    near(at(0, places[1]!).vy, (-P * b) / L);
    near(at(0, places[2]!).vy, (P * a) / L);
  });

  it('couple at mid-span', () => {
    const M = 9000;
    const c: FrameCase = { points: [{ element: 0, measure: 'fraction', at: 0.5, moment: v3(0, M, 0) }] };
    const { at, frame } = solved(model, c);
    // Local z is -y here, so the couple is -M about it.
    const [, before, after] = breakpoints(frame, [c], 0);
    near(at(0, before!).mz, -M / 2);
    near(at(0, after!).mz, M / 2, 1e-8);
    expect(Math.abs(at(0, L / 2).dy!)).toBeLessThan(1e-12);
    near(at(0, L / 4).dy, (M * (L / 4) * ((L / 2) ** 2 - (L / 4) ** 2)) / (6 * E * I * L), 1e-9);
  });

  it('triangular load', () => {
    const { result, at } = solved(model, { distributed: [{ element: 0, startForce: down(0), endForce: down(w) }] });
    near(rz(result, 0), (w * L) / 6);
    near(at(0, L / Math.sqrt(3)).mz, (w * L * L) / (9 * Math.sqrt(3)));
    const x = L / 3;
    near(at(0, x).dy, (-w * x * (7 * L ** 4 - 10 * L * L * x * x + 3 * x ** 4)) / (360 * E * I * L));
  });

  it('uniform load on a part', () => {
    const [a, b] = [30, 60];
    const c = L - a - b;
    const { result, at } = solved(model, { distributed: [{ element: 0, from: a, to: a + b, startForce: down(w) }] });
    const r1 = ((w * b) / (2 * L)) * (2 * c + b);
    near(rz(result, 0), r1);
    near(at(0, a + r1 / w).mz, r1 * (a + r1 / (2 * w)));
  });

  it('measures by fraction as by distance, in local axes as in global', () => {
    const one = solved(model, {
      distributed: [{ element: 0, from: 36, to: 72, startForce: down(w), endForce: down(3 * w) }],
    });
    const two = solved(model, {
      distributed: [
        {
          element: 0,
          measure: 'fraction',
          from: 0.25,
          to: 0.5,
          axes: 'local',
          startForce: v3(0, -w, 0),
          endForce: v3(0, -3 * w, 0),
        },
      ],
    });
    one.result.displacements.forEach((v, i) => {
      expect(two.result.displacements[i]).toBeCloseTo(v, 12);
    });
  });
});

describe('beams of several spans', () => {
  it('overhang', () => {
    const a = 40;
    const { result, at } = solved(beam([0, L, L + a], [pin(0), roller(1)]), {
      distributed: [{ element: 1, startForce: down(w) }],
    });
    near(rz(result, 0), (-w * a * a) / (2 * L));
    near(rz(result, 1), w * a + (w * a * a) / (2 * L));
    near(at(0, L).mz, (-w * a * a) / 2);
    near(at(1, a).dy, (-w * a ** 3 * (4 * L + 3 * a)) / (24 * E * I));
    // Uplift of the back span, greatest at L/√3.
    near(at(0, L / Math.sqrt(3)).dy, (w * a * a * L * L) / (18 * Math.sqrt(3) * E * I));
  });

  it('two spans: 3/8, 10/8, 3/8', () => {
    const loads = [0, 1].map((element) => ({ element, startForce: down(w) }));
    const { result, at } = solved(beam([0, L, 2 * L], [pin(0), roller(1), roller(2)]), { distributed: loads });
    near(rz(result, 0), (3 / 8) * w * L);
    near(rz(result, 1), (10 / 8) * w * L);
    near(at(0, L).mz, (-w * L * L) / 8);
    near(at(0, (3 / 8) * L).mz, (9 / 128) * w * L * L);
  });

  it('three spans: 0.4, 1.1', () => {
    const loads = [0, 1, 2].map((element) => ({ element, startForce: down(w) }));
    const model = beam([0, L, 2 * L, 3 * L], [pin(0), roller(1), roller(2), roller(3)]);
    const { result, at } = solved(model, { distributed: loads });
    near(rz(result, 0), 0.4 * w * L);
    near(rz(result, 1), 1.1 * w * L);
    near(at(1, 0).mz, -0.1 * w * L * L);
    near(at(1, L / 2).mz, 0.025 * w * L * L);
  });

  it('settlement of a middle support, fixed or on a spring', () => {
    const d = 0.25;
    const fall: FrameCase = { settlements: [{ node: 1, freedom: 'dz', value: -d }] };
    const { result } = solved(beam([0, L, 2 * L], [pin(0), roller(1), roller(2)]), fall);
    const stiff = (48 * E * I) / (2 * L) ** 3;
    near(rz(result, 1), -stiff * d);
    near(result.displacements[8], -d);
    const k = 5000;
    const sprung = beam([0, L, 2 * L], [pin(0), { node: 1, dy: 'fixed', dz: k }, roller(2)]);
    near(rz(solved(sprung, fall).result, 1), -d / (1 / stiff + 1 / k));
    const both = solved(sprung, { nodal: [{ node: 1, force: down(P) }] }).result;
    near(rz(both, 1), (P * k) / (k + stiff));
  });
});

describe('held ends', () => {
  const model = beam([0, L], [fixed(0), fixed(1)]);
  it('uniform and triangular', () => {
    const u = solved(model, { distributed: [{ element: 0, startForce: down(w) }] });
    near(u.at(0, 0).mz, (-w * L * L) / 12);
    near(u.at(0, L / 2).mz, (w * L * L) / 24);
    near(u.at(0, L / 2).dy, (-w * L ** 4) / (384 * E * I));
    const t = solved(model, { distributed: [{ element: 0, startForce: down(0), endForce: down(w) }] });
    near(t.at(0, 0).mz, (-w * L * L) / 30);
    near(t.at(0, L).mz, (-w * L * L) / 20);
    near(rz(t.result, 0), (3 / 20) * w * L);
  });

  it('point load', () => {
    const a = 100;
    const b = L - a;
    const { at, result } = solved(model, { points: [{ element: 0, at: a, force: down(P) }] });
    near(at(0, 0).mz, (-P * a * b * b) / L ** 2);
    near(at(0, L).mz, (-P * a * a * b) / L ** 2);
    near(at(0, a).dy, (-P * a ** 3 * b ** 3) / (3 * E * I * L ** 3));
    near(rz(result, 0), (P * b * b * (3 * a + b)) / L ** 3);
  });

  it('couple', () => {
    const a = 100;
    const b = L - a;
    const M = 5000;
    // Held ends answer a couple with -M·N'(a), N being Hermite's cubics: N1' = -6ab/L³, N2' = b(b - 2a)/L².
    const { result } = solved(model, { points: [{ element: 0, axes: 'local', at: a, moment: v3(0, 0, M) }] });
    near(result.endForces[1], (6 * M * a * b) / L ** 3);
    near(result.endForces[5], (M * b * (2 * a - b)) / L ** 2);
  });

  it('propped, by a roller and by a release', () => {
    const load: FrameCase = { distributed: [{ element: 0, startForce: down(w) }] };
    const x = (L * (15 - Math.sqrt(33))) / 16;
    for (const m of [
      beam([0, L], [fixed(0), roller(1)]),
      beam([0, L], [fixed(0), fixed(1)], { releases: { end: { mz: true } } }),
    ]) {
      const { result, at } = solved(m, load);
      near(rz(result, 0), (5 / 8) * w * L);
      near(rz(result, 1), (3 / 8) * w * L);
      near(at(0, 0).mz, (-w * L * L) / 8);
      expect(Math.abs(at(0, L).mz!)).toBeLessThan(1e-6);
      near(at(0, x).dy, (-w * x * x * (3 * L * L - 5 * L * x + 2 * x * x)) / (48 * E * I));
    }
  });

  it('released at both ends is a simple beam', () => {
    const releases = { start: { mz: true, my: true }, end: { mz: true, my: true } };
    const { at } = solved(beam([0, L], [fixed(0), fixed(1)], { releases }), {
      distributed: [{ element: 0, startForce: v3(0, w / 2, -w) }],
    });
    near(at(0, L / 2).mz, (w * L * L) / 8);
    near(at(0, L / 2).dy, (-5 * w * L ** 4) / (384 * E * I));
    // Local z is -y: the sideways half load goes to -z.
    near(at(0, L / 2).dz, (-5 * (w / 2) * L ** 4) / (384 * E * section.Iy));
    near(at(0, L / 2).my, -((w / 2) * L * L) / 8);
  });

  it('axially released lets go along its line', () => {
    const m = beam([0, L], [fixed(0), fixed(1)], { releases: { start: { axial: true } } });
    const { at, result } = solved(m, { distributed: [{ element: 0, startForce: v3(10, 0, 0) }] });
    near(result.reactions[6], -10 * L);
    expect(Math.abs(at(0, 0).n!)).toBeLessThan(1e-9);
    near(at(0, 0).dx, (10 * L * L) / (2 * E * section.A));
    near(at(0, L).n, -10 * L);
  });
});

describe('cantilever', () => {
  const As = (5 / 6) * section.A;
  const model = beam([0, L], [fixed(0)], { Ay: As, Az: As });
  it('with shear flexibility', () => {
    const tip = solved(model, { nodal: [{ node: 1, force: down(P) }] });
    near(tip.result.displacements[8], -(P * L ** 3) / (3 * E * I) - (P * L) / (G * As));
    const along = solved(model, { distributed: [{ element: 0, startForce: down(w) }] });
    near(along.result.displacements[8], -(w * L ** 4) / (8 * E * I) - (w * L * L) / (2 * G * As));
    near(along.at(0, L / 2).dy, -(w * L ** 4 * 17) / (384 * E * I) - (w * L * L * 3) / (8 * G * As));
    const side = solved(model, { distributed: [{ element: 0, startForce: v3(0, w, 0) }] });
    near(side.result.displacements[7], (w * L ** 4) / (8 * E * section.Iy) + (w * L * L) / (2 * G * As));
  });

  it('both ends held, with shear flexibility', () => {
    const held = beam([0, L], [fixed(0), fixed(1)], { Ay: As });
    const { at } = solved(held, { distributed: [{ element: 0, startForce: down(w) }] });
    near(at(0, L / 2).dy, -(w * L ** 4) / (384 * E * I) - (w * L * L) / (8 * G * As));
    near(at(0, 0).mz, -(w * L * L) / 12);
  });

  it('torsion and axial', () => {
    const { result, at } = solved(model, {
      nodal: [{ node: 1, moment: v3(700, 0, 0) }],
      distributed: [{ element: 0, startForce: v3(3, 0, 0) }],
    });
    near(result.displacements[9], (700 * L) / (G * section.J));
    near(at(0, L / 3).t, 700);
    near(result.displacements[6], (3 * L * L) / (2 * E * section.A));
    near(at(0, L / 3).n, 3 * L * (2 / 3));
    near(at(0, L / 2).dx, ((3 * L * L) / (E * section.A)) * (3 / 8));
    const mid = solved(model, { points: [{ element: 0, measure: 'fraction', at: 0.25, moment: v3(700, 0, 0) }] });
    near(mid.result.displacements[9], (700 * L) / 4 / (G * section.J));
  });
});

describe('portal', () => {
  const h = 108;
  const span = 160;
  const H = 900;
  const stiffLine = { A: 1e7 };
  const portal = (beamMore: Partial<FrameElement>): FrameModel => ({
    nodes: [v3(0, 0, 0), v3(0, 0, h), v3(span, 0, h), v3(span, 0, 0)],
    elements: [
      // The depth of a post is set across the frame's plane: x.
      bar(0, 1, { up: v3(1, 0, 0), ...stiffLine }),
      bar(1, 2, { ...stiffLine, ...beamMore }),
      bar(3, 2, { up: v3(1, 0, 0), ...stiffLine }),
    ],
    supports: [fixed(0), fixed(3)],
  });
  const push: FrameCase = { nodal: [{ node: 1, force: v3(H, 0, 0) }] };

  it('beam pinned at both ends: two cantilevers', () => {
    const { result } = solved(portal({ releases: { start: { mz: true }, end: { mz: true } } }), push);
    near(result.displacements[6], ((H / 2) * h ** 3) / (3 * E * I), 2e-5);
    near(result.reactions[0], -H / 2, 2e-5);
    near(result.reactions[4], -(H / 2) * h, 2e-5);
  });

  it('rigid corners', () => {
    const k = h / span;
    const { result, at } = solved(portal({}), push);
    // Base moment Hh/2·(3k+1)/(6k+1), corner moment Hh/2·3k/(6k+1), k = (Ib/Ic)(h/L).
    near(result.reactions[4], -((H * h) / 2) * ((3 * k + 1) / (6 * k + 1)), 2e-4);
    near(Math.abs(at(1, 0).mz!), ((H * h) / 2) * ((3 * k) / (6 * k + 1)), 2e-4);
  });
});
