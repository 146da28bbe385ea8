import { describe, expect, it } from 'vitest';
import type { Solid } from '../../structure/model.js';
import { CAMERAS } from './camera.js';
import { cutPiece } from './cut.js';
import { removeHidden, subtract, type VisibleEdge } from './hidden.js';

const box = (x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): Solid => ({
  vertices: [
    { x: x0, y: y0, z: z0 },
    { x: x1, y: y0, z: z0 },
    { x: x1, y: y1, z: z0 },
    { x: x0, y: y1, z: z0 },
    { x: x0, y: y0, z: z1 },
    { x: x1, y: y0, z: z1 },
    { x: x1, y: y1, z: z1 },
    { x: x0, y: y1, z: z1 },
  ],
  faces: [
    [0, 3, 2, 1],
    [4, 5, 6, 7],
    [0, 1, 5, 4],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 0, 4, 7],
  ],
});
const total = (edges: readonly VisibleEdge[], piece: number, hidden = false) =>
  edges
    .filter((e) => e.piece === piece && e.hidden === hidden)
    .reduce((s, e) => s + Math.hypot(e.a.x - e.b.x, e.a.y - e.b.y), 0);

describe('removeHidden', () => {
  it('draws a lone box as its front face only', () => {
    const edges = removeHidden([{ solid: box(0, 0, 0, 10, 4, 6), part: 'a' }], CAMERAS.rear);
    expect(edges).toHaveLength(4);
    expect(total(edges, 0)).toBeCloseTo(32, 9);
  });

  it('hides what a nearer box covers and keeps the rest to the inch', () => {
    // From the yard (+y): the far box spans x 0..10, z 0..6; the near one covers x 2..4 over the full height and more.
    const far = { solid: box(0, 0, 0, 10, 1, 6), part: 'far' };
    const near = { solid: box(2, 5, -1, 4, 6, 7), part: 'near' };
    const edges = removeHidden([far, near], CAMERAS.rear, { hidden: () => true });
    expect(total(edges, 0)).toBeCloseTo(32 - 4, 2);
    expect(total(edges, 0, true)).toBeGreaterThanOrEqual(4 - 1e-2);
    expect(total(edges, 1)).toBeCloseTo(20, 3);
  });

  it('is symmetric: seen from the other side the near box is hidden instead', () => {
    const a = { solid: box(0, 0, 0, 10, 1, 6), part: 'a' };
    const b = { solid: box(2, 5, 1, 4, 6, 5), part: 'b' };
    expect(total(removeHidden([a, b], CAMERAS.front), 1)).toBe(0);
  });

  it('drops the seam between flush boxes of one part but not between parts', () => {
    const left = box(0, 0, 0, 5, 1, 6);
    const right = box(5, 0, 0, 9, 1, 6);
    const one = removeHidden(
      [
        { solid: left, part: 'w' },
        { solid: right, part: 'w' },
      ],
      CAMERAS.rear,
    );
    expect(one.every((e) => !(Math.abs(e.a.x + 5) < 1e-6 && Math.abs(e.b.x + 5) < 1e-6))).toBe(true);
    const two = removeHidden(
      [
        { solid: left, part: 'w' },
        { solid: right, part: 'v' },
      ],
      CAMERAS.rear,
    );
    expect(two.some((e) => Math.abs(e.a.x + 5) < 1e-6 && Math.abs(e.b.x + 5) < 1e-6)).toBe(true);
  });

  it('finds crossing depths: a sloping slab passing through a wall plane hides only beyond the crossing', () => {
    const slope: Solid = {
      vertices: [
        { x: 0, y: -10, z: 0 },
        { x: 10, y: -10, z: 0 },
        { x: 10, y: 10, z: 10 },
        { x: 0, y: 10, z: 10 },
        { x: 0, y: -10, z: 1 },
        { x: 10, y: -10, z: 1 },
        { x: 10, y: 10, z: 11 },
        { x: 0, y: 10, z: 11 },
      ],
      faces: [
        [0, 3, 2, 1],
        [4, 5, 6, 7],
        [0, 1, 5, 4],
        [1, 2, 6, 5],
        [2, 3, 7, 6],
        [3, 0, 4, 7],
      ],
    };
    const post = box(4, -0.5, -5, 6, 0.5, 20);
    const edges = removeHidden(
      [
        { solid: slope, part: 's' },
        { solid: post, part: 'p' },
      ],
      CAMERAS.rear,
    );
    // Seen from the yard the slab shows its underside, z = (y + 10) / 2. The post's yard face stands at y = 0.5: the slab is
    // before it from z = 5.25 up to the slab's near end, z = 10 to 11. Of the post's 25 inches 25 − 5.75 = 19.25 are seen.
    const at5 = edges.filter((e) => e.piece === 1 && Math.abs(e.a.x + 4) < 1e-6 && Math.abs(e.b.x + 4) < 1e-6);
    expect(at5.reduce((s, e) => s + Math.abs(e.a.y - e.b.y), 0)).toBeCloseTo(19.25, 2);
  });
});

describe('cutPiece', () => {
  it('gives the cut face and keeps what is behind', () => {
    const { behind, face } = cutPiece(box(0, 0, 0, 10, 4, 6), CAMERAS.right, 3);
    expect(face).toHaveLength(4);
    const xs = behind!.vertices.map((p) => p.x);
    expect(Math.max(...xs)).toBeCloseTo(3, 9);
    expect(cutPiece(box(5, 0, 0, 10, 4, 6), CAMERAS.right, 3).behind).toBeUndefined();
    expect(cutPiece(box(0, 0, 0, 2, 4, 6), CAMERAS.right, 3).face).toBeUndefined();
  });
});

describe('subtract', () => {
  it('takes overlapping intervals out of one', () => {
    expect(
      subtract(
        [[0, 1]],
        [
          [0.2, 0.4],
          [0.3, 0.5],
          [0.9, 2],
        ],
      ),
    ).toEqual([
      [0, 0.2],
      [0.5, 0.9],
    ]);
  });
});
