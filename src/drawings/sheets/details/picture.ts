/** Pictures of the few pieces near a place, through a camera that looks along any level direction. */
import { clipHalfPlane } from '../../../base/plane.js';
import { cross, type Vec2, type Vec3 } from '../../../base/vec.js';
import type { Member, Piece } from '../../../structure/model.js';
import { breakLine } from '../../annotate/index.js';
import type { LayerName, PatternName, PenName, Primitive, Rect } from '../../ir/index.js';
import { type Camera, see } from '../../views/camera.js';
import { picture } from '../../views/picture.js';
import type { SheetContext } from '../contract.js';
import { soil } from '../section-picture.js';

/** Level camera whose picture runs to the right along a plan direction. */
export function facing(right: Vec2): Camera {
  const size = Math.hypot(right.x, right.y);
  const r: Vec3 = { x: right.x / size, y: right.y / size, z: 0 };
  const up: Vec3 = { x: 0, y: 0, z: 1 };
  return { right: r, up, toward: cross(r, up) };
}

/** Level unit direction of a member in plan. */
export function planDirection(m: Member): Vec2 {
  const dx = m.end.x - m.start.x;
  const dy = m.end.y - m.start.y;
  const size = Math.hypot(dx, dy);
  return size > 1e-9 ? { x: dx / size, y: dy / size } : { x: 1, y: 0 };
}

/** The level direction to the right of another one, seen from above. */
export const squareTo = (d: Vec2): Vec2 => ({ x: d.y, y: -d.x });

export const spot = (camera: Camera, p: Vec3): Vec2 => {
  const s = see(camera, p);
  return { x: s.a, y: s.b };
};

export interface Near {
  readonly camera: Camera;
  /** Picture coordinates shown. */
  readonly frame: Rect;
  /** Depths shown, from the farthest to the nearest. */
  readonly depth: readonly [number, number];
  /** Plane of the cut; absent: an elevation. */
  readonly cutAt?: number;
  readonly keep: (p: Piece) => boolean;
  /** Architectural layers instead of structural ones. */
  readonly finish?: boolean;
}

/** The pieces that reach into the frame and the depths, drawn with hidden lines removed. */
export function nearPicture(ctx: SheetContext, o: Near): readonly Primitive[] {
  const { frame, camera } = o;
  const near = ctx.pieces.filter((p) => {
    if (!o.keep(p)) return false;
    let [a0, a1, b0, b1, d0, d1] = [Infinity, -Infinity, Infinity, -Infinity, Infinity, -Infinity];
    for (const v of p.solid.vertices) {
      const s = see(camera, v);
      a0 = Math.min(a0, s.a);
      a1 = Math.max(a1, s.a);
      b0 = Math.min(b0, s.b);
      b1 = Math.max(b1, s.b);
      d0 = Math.min(d0, s.depth);
      d1 = Math.max(d1, s.depth);
    }
    return (
      a1 > frame.x &&
      a0 < frame.x + frame.w &&
      b1 > frame.y &&
      b0 < frame.y + frame.h &&
      d1 > o.depth[0] &&
      d0 < o.depth[1]
    );
  });
  const [detail, cut, pattern]: readonly LayerName[] = o.finish
    ? ['A-DETL', 'A-DETL-MCUT', 'A-DETL-PATT']
    : ['S-DETL', 'S-DETL-MCUT', 'S-DETL-PATT'];
  return picture(near, camera, {
    layers: { fresh: detail!, existing: detail!, cut: cut!, pattern: pattern! },
    ...(o.cutAt !== undefined && { cutAt: o.cutAt }),
  }).items;
}

export const rect = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

/** A closed outline with an optional pattern, on the layers of details. */
export function part(
  points: readonly Vec2[],
  pen: PenName,
  o: {
    readonly mark?: string | undefined;
    readonly pattern?: PatternName;
    readonly fill?: boolean;
    readonly finish?: boolean;
  } = {},
): Primitive[] {
  const d = o.finish ? 'A' : 'S';
  return [
    ...(o.fill
      ? [{ kind: 'polyline' as const, layer: `${d}-DETL` as const, points, closed: true, fill: 'paper' as const }]
      : []),
    ...(o.pattern
      ? [{ kind: 'hatch' as const, layer: `${d}-DETL-PATT` as const, pattern: o.pattern, loops: [points] }]
      : []),
    {
      kind: 'polyline',
      layer: pen === 'cut' || pen === 'existing-cut' ? (`${d}-DETL-MCUT` as const) : (`${d}-DETL` as const),
      pen,
      closed: true,
      points,
      ...(o.mark !== undefined && { mark: o.mark }),
    },
  ];
}

export const stroke = (points: readonly Vec2[], pen: PenName, role: string, finish = false): Primitive => ({
  kind: 'polyline',
  layer: finish ? 'A-DETL' : 'S-DETL',
  pen,
  points,
  role,
});

export const dot = (center: Vec2, radius: number, role: string): Primitive => ({
  kind: 'circle',
  layer: 'S-JNTS',
  center,
  radius,
  pen: 'new',
  fill: 'paper',
  role,
});

/** Break line across a part that runs on past the frame. */
export const broken = (ctx: SheetContext, a: Vec2, b: Vec2): readonly Primitive[] =>
  breakLine({ a, b, layer: 'S-ANNO-SYMB', style: ctx.style });

/** Soil line and earth of a section, cut off at a frame. */
export function soilIn(ctx: SheetContext, cutAt: number, frame: Rect): Primitive[] {
  const inside = (p: readonly Vec2[]): Vec2[] =>
    [
      (q: Vec2) => q.x - frame.x,
      (q: Vec2) => frame.x + frame.w - q.x,
      (q: Vec2) => q.y - frame.y,
      (q: Vec2) => frame.y + frame.h - q.y,
    ].reduce<Vec2[]>((ring, side) => clipHalfPlane(ring, side), [...p]);
  return soil(ctx, { name: 'right', cutAt }, frame).flatMap((p): Primitive[] => {
    if (p.kind !== 'hatch') return [p];
    const loops = p.loops.map(inside).filter((ring) => ring.length > 2);
    return loops.length > 0 ? [{ ...p, loops }] : [];
  });
}
