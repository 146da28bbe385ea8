import { describe, expect, it } from 'vitest';
import { box } from '../../base/geometry/index.js';
import type { Piece } from '../../structure/model.js';
import { ahead, type Eye, inPerspective } from './perspective.js';
import { seamsOf } from './seams.js';
import { shaded } from './shaded.js';

/** In the yard, ten feet out, looking at the house. */
const eye: Eye = { at: { x: 0, y: 120, z: 60 }, target: { x: 0, y: 0, z: 0 } };
const point = (x: number, y: number, z: number) =>
  inPerspective({ vertices: [{ x, y, z }], faces: [] }, eye).vertices[0]!;
const piece = (part: string, min: [number, number, number], max: [number, number, number]): Piece => ({
  part,
  mark: part,
  role: 'wall',
  state: 'new',
  material: 'house-wall',
  solid: box({ x: min[0], y: min[1], z: min[2] }, { x: max[0], y: max[1], z: max[2] }),
});

describe('perspective', () => {
  it('is not mirrored: from the yard x runs from right to left, as in the rear elevation', () => {
    expect(point(10, 0, 60).x).toBeCloseTo(-10);
    expect(point(10, 0, 70).y).toBeCloseTo(10);
  });

  it('halves what is twice as far, and puts what is nearer nearer', () => {
    expect(point(10, -120, 60).x).toBeCloseTo(-5);
    expect(point(0, 60, 60).z).toBeGreaterThan(point(0, 0, 60).z);
    expect(point(0, -1e7, 66).y).toBeCloseTo(0, 3);
  });

  it('keeps straight edges straight and faces plane', () => {
    const ps = [0, 1, 2].map((k) => point(10 + 30 * k, 40 - 50 * k, 12 * k));
    const [a, b, c] = ps as [(typeof ps)[0], (typeof ps)[0], (typeof ps)[0]];
    const area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    const side = (b.x - a.x) * (c.z - a.z) - (b.z - a.z) * (c.x - a.x);
    for (const v of [area, side]) expect(v).toBeCloseTo(0, 6);
  });

  it('leaves out what is beside or behind the eye', () => {
    expect(ahead([piece('A', [-5, 130, 0], [5, 140, 9])], eye)).toEqual([]);
    const cut = ahead([piece('A', [-5, 0, 0], [5, 140, 9])], eye)[0]!;
    expect(Math.max(...cut.solid.vertices.map((v) => v.y))).toBeCloseTo(108);
  });
});

describe('seams', () => {
  it('are where two pieces of one part run on in one plane, and nowhere else', () => {
    const [a, b] = [piece('W', [0, 0, 0], [10, 4, 10]), piece('W', [10, 0, 0], [20, 4, 6])];
    const seams = seamsOf([a, b]);
    // Along the three common faces: front, back and bottom.
    expect(seams).toHaveLength(3);
    for (const [p, q] of seams) expect([p.x, q.x]).toEqual([10, 10]);
    expect(seamsOf([a, { ...b, part: 'V' }])).toEqual([]);
    expect(seamsOf([a, piece('W', [11, 0, 0], [20, 4, 6])])).toEqual([]);
  });

  it('are not drawn', () => {
    const layers = { fresh: 'A-ELEV', existing: 'A-ELEV-EXST', shade: 'A-ELEV-PATT' } as const;
    const lines = (pieces: readonly Piece[]) =>
      shaded(pieces, eye, layers).items.filter((i) => i.kind === 'line').length;
    const whole = lines([piece('W', [-20, 0, 0], [20, 8, 96])]);
    const parts = lines([piece('W', [-20, 0, 0], [3, 8, 96]), piece('W', [3, 0, 0], [20, 8, 96])]);
    const apart = lines([piece('W', [-20, 0, 0], [3, 8, 96]), piece('V', [3, 0, 0], [20, 8, 96])]);
    // Edges along the joint line are in two pieces each.
    expect(apart).toBeGreaterThan(parts);
    expect(parts).toBeGreaterThanOrEqual(whole);
  });
});
