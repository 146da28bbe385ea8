/** Random frames with loads: one way of drawing them for every test of the solver. */
import fc from 'fast-check';
import { v3 } from '../../base/vec.js';
import type { DistributedLoad, FrameCase, FrameElement, FrameModel, MemberPointLoad, Support } from './index.js';

export const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const force = fc.record({ x: real(-500, 500), y: real(-500, 500), z: real(-500, 500) });
const flag = fc.boolean();

const element = (start: number, end: number): fc.Arbitrary<FrameElement> =>
  fc.record(
    {
      start: fc.constant(start),
      end: fc.constant(end),
      up: fc.constantFrom(v3(0, 0, 1), v3(0.31, 0.87, -0.2), v3(-0.7, 0.1, 0.4)),
      E: real(8e5, 2e6),
      G: real(5e4, 2e5),
      A: real(5, 60),
      Iy: real(5, 300),
      Iz: real(5, 900),
      J: real(5, 300),
      Ay: real(4, 40),
      Az: real(4, 40),
    },
    { requiredKeys: ['start', 'end', 'up', 'E', 'G', 'A', 'Iy', 'Iz', 'J'] },
  );
const releases = fc.record({
  start: fc.record({ axial: flag, torsion: flag, my: flag, mz: flag }),
  end: fc.record({ my: flag, mz: flag }),
});

/** A chain of nodes off a grid point each, stiffly joined in a row, and bars with releases between others. */
const frames = (isotropic: boolean): fc.Arbitrary<FrameModel> =>
  fc.integer({ min: 2, max: 6 }).chain((count) => {
    const shift = fc.record({ x: real(-20, 20), y: real(-20, 20), z: real(-20, 20) });
    const nodes = fc
      .array(shift, { minLength: count, maxLength: count })
      .map((s) => s.map((d, i) => v3(100 * (i % 3) + d.x, 90 * (i % 2) + d.y, 80 * Math.floor(i / 2) + d.z)));
    const chain = fc.tuple(...Array.from({ length: count - 1 }, (_, i) => element(i, i + 1)));
    const bars = fc.array(
      fc
        .uniqueArray(fc.integer({ min: 0, max: count - 1 }), { minLength: 2, maxLength: 2 })
        .chain(([a, b]) => fc.tuple(element(a!, b!), releases).map(([e, r]) => ({ ...e, releases: r }))),
      { maxLength: 4 },
    );
    const foot: Support = { node: 0, dx: 'fixed', dy: 'fixed', dz: 'fixed', rx: 'fixed', ry: 'fixed', rz: 'fixed' };
    const last = count - 1;
    const other: fc.Arbitrary<Support> = isotropic
      ? real(100, 1e5).map((k) => ({ node: last, dx: k, dy: k, dz: k }))
      : fc.record({
          node: fc.constant(last),
          dx: fc.constant('fixed' as const),
          dz: real(100, 1e5),
          ry: real(1e4, 1e7),
        });
    return fc.record({ nodes, chain, bars, other }).map((r) => ({
      nodes: r.nodes,
      elements: [...r.chain, ...r.bars],
      supports: [foot, r.other],
    }));
  });

const loadsOn = (m: FrameModel): fc.Arbitrary<FrameCase> => {
  const e = fc.integer({ min: 0, max: m.elements.length - 1 });
  const n = fc.integer({ min: 0, max: m.nodes.length - 1 });
  const axes = fc.constantFrom('global' as const, 'local' as const);
  const distributed: fc.Arbitrary<DistributedLoad> = fc
    .tuple(e, axes, real(0, 1), real(0, 1), force, force, flag)
    .filter(([, , a, b]) => Math.abs(a - b) > 1e-3)
    .map(([el, ax, a, b, p, q, part]) => ({
      element: el,
      axes: ax,
      measure: 'fraction' as const,
      ...(part && { from: Math.min(a, b), to: Math.max(a, b) }),
      startForce: p,
      endForce: q,
    }));
  const points: fc.Arbitrary<MemberPointLoad> = fc.record({
    element: e,
    axes,
    measure: fc.constant('fraction' as const),
    at: real(0.01, 0.99),
    force,
    moment: force,
  });
  return fc.record({
    nodal: fc.array(fc.record({ node: n, force, moment: force }), { maxLength: 3 }),
    distributed: fc.array(distributed, { maxLength: 4 }),
    points: fc.array(points, { maxLength: 3 }),
  });
};
/** One load is always there, so that results are compared against their own size and not against round-off. */
export const problem = (isotropic: boolean) =>
  frames(isotropic).chain((model) => {
    const base = { node: model.nodes.length - 1, force: v3(200, -300, -400), moment: v3(3000, 5000, -4000) };
    return loadsOn(model).map((c) => ({ model, c: { ...c, nodal: [...(c.nodal ?? []), base] } }));
  });
