import { describe, expect, it } from 'vitest';
import { v3 } from '../../base/vec.js';
import {
  type EndRelease,
  type FrameElement,
  type FrameModel,
  factorFrame,
  type Mechanism,
  type Support,
} from './index.js';

const section = { E: 1.6e6, G: 1e5, A: 30, Iy: 60, Iz: 80, J: 100 };
const post = (start: number, end: number, releases?: FrameElement['releases']): FrameElement => ({
  start,
  end,
  up: v3(1, 0, 0),
  ...section,
  ...(releases && { releases }),
});
const beam = (start: number, end: number, r?: EndRelease): FrameElement => ({
  start,
  end,
  up: v3(0, 0, 1),
  ...section,
  ...(r && { releases: { start: r, end: r } }),
});
const pin = (node: number): Support => ({ node, dx: 'fixed', dy: 'fixed', dz: 'fixed' });
const clamp = (node: number): Support => ({ ...pin(node), rx: 'fixed', ry: 'fixed', rz: 'fixed' });

function mechanismOf(model: FrameModel): Mechanism {
  const r = factorFrame(model);
  if (r.ok) throw new Error('the frame stands');
  return r.mechanism;
}

describe('mechanisms', () => {
  const nodes = [v3(0, 0, 0), v3(0, 0, 96), v3(144, 0, 96), v3(144, 0, 0)];
  const hinge = { mz: true, my: true };

  it('a frame of hinges sways along the beam', () => {
    const elements = [post(0, 1), beam(1, 2, hinge), post(3, 2)];
    const across: Support[] = [1, 2].map((node) => ({ node, dy: 'fixed', rx: 'fixed', rz: 'fixed' }));
    const m = mechanismOf({ nodes, elements, supports: [pin(0), pin(3), ...across] });
    expect(m).toMatchObject({ node: 1, freedom: 'dx' });
    // Both heads go along; the feet turn by 1/h.
    expect(m.motion[6 * 2]).toBeCloseTo(1, 6);
    expect(m.motion[4]).toBeCloseTo(1 / 96, 8);
    expect(m.element).toBeUndefined();
  });

  it('without side support it falls over sideways', () => {
    const elements = [post(0, 1), beam(1, 2), post(3, 2)];
    const foot = (node: number): Support => ({ ...pin(node), rz: 'fixed' });
    expect(mechanismOf({ nodes, elements, supports: [foot(0), foot(3)] })).toMatchObject({ freedom: 'dy' });
  });

  it('a post on a pin, torsion let go at its head, spins', () => {
    const elements = [post(0, 1, { end: { torsion: true } }), beam(1, 2), post(3, 2)];
    expect(mechanismOf({ nodes, elements, supports: [pin(0), clamp(3)] })).toMatchObject({ node: 0, freedom: 'rz' });
  });

  it('a beam between rollers turns about its line', () => {
    const model = { nodes: [v3(0, 0, 0), v3(99, 0, 0)], elements: [beam(0, 1)], supports: [pin(0), pin(1)] };
    expect(mechanismOf(model)).toMatchObject({ node: 0, freedom: 'rx' });
  });

  it('the same in a skew direction', () => {
    const model = { nodes: [v3(0, 0, 0), v3(70, 50, 30)], elements: [beam(0, 1)], supports: [pin(0), pin(1)] };
    expect(mechanismOf(model).freedom).toBe('rx');
  });

  it('an element let go both ways is named itself', () => {
    const model = {
      nodes: [v3(0, 0, 0), v3(99, 0, 0)],
      elements: [beam(0, 1, { torsion: true })],
      supports: [clamp(0), clamp(1)],
    };
    expect(mechanismOf(model)).toMatchObject({ element: 0, node: 1, freedom: 'rx' });
    const slide = { ...model, elements: [beam(0, 1, { axial: true })] };
    expect(mechanismOf(slide)).toMatchObject({ element: 0, freedom: 'dx' });
  });

  it('a loose node, and nothing held at all', () => {
    expect(mechanismOf({ nodes: [v3(0, 0, 0)], elements: [], supports: [] })).toMatchObject({ node: 0 });
    expect(mechanismOf({ nodes, elements: [post(0, 1), beam(1, 2), post(3, 2)], supports: [] }).motion).toHaveLength(
      24,
    );
  });

  it('a node where all is released, until its rotation is held', () => {
    const line = {
      nodes: [v3(0, 0, 0), v3(99, 0, 0), v3(198, 0, 0)],
      elements: [beam(0, 1, hinge), beam(1, 2, hinge)],
    };
    const loose = mechanismOf({ ...line, supports: [clamp(0), pin(1), clamp(2)] });
    expect(loose.node).toBe(1);
    expect(['ry', 'rz']).toContain(loose.freedom);
    expect(factorFrame({ ...line, supports: [clamp(0), { ...pin(1), ry: 'fixed', rz: 'fixed' }, clamp(2)] }).ok).toBe(
      true,
    );
  });

  it('a slender but standing frame is not taken for one', () => {
    const count = 60;
    const model: FrameModel = {
      nodes: Array.from({ length: count + 1 }, (_, i) => v3(0, 0, 12 * i)),
      elements: Array.from({ length: count }, (_, i) => post(i, i + 1)),
      supports: [clamp(0)],
    };
    expect(factorFrame(model).ok).toBe(true);
    const soft = { ...model, supports: [{ node: 0, dx: 1, dy: 1, dz: 1, rx: 100, ry: 100, rz: 100 }] };
    expect(factorFrame(soft).ok).toBe(true);
  });

  it.each([
    ['a missing node', { elements: [beam(0, 9)] }],
    ['an element on one node', { elements: [beam(1, 1)] }],
    ['an up along the element', { elements: [{ ...beam(0, 1), up: v3(0, 0, 2) }] }],
    ['no stiffness', { elements: [{ ...post(0, 1), Iy: 0 }] }],
    ['a support nowhere', { supports: [pin(12)] }],
    ['a spring that pushes', { supports: [{ node: 0, dx: -1 }] }],
  ])('throws on %s: a fault of the caller', (_, wrong) => {
    expect(() => factorFrame({ nodes, elements: [post(0, 1)], supports: [clamp(0)], ...wrong })).toThrow(RangeError);
  });
});
