/** Solids of an overlay: every member with the cuts it is listed with, and the new roof cut by the valleys. */
import { barBetween, cutByPlane, planeThrough, prism } from '../../base/geometry/index.js';
import { scale, type Vec3 } from '../../base/vec.js';
import type { MaterialClass, Member, OverlayFrame, OverlayPlaced, Piece, Solid } from '../model.js';
import { oldAt, overlayPoint } from './frame.js';

type Shaper = (o: OverlayPlaced, m: Member) => Solid | undefined;

/** A direction said in the overlay's frame. */
const turned = (f: OverlayFrame, v: Vec3): Vec3 => ({
  x: f.into.x * v.x + f.side.x * v.y,
  y: f.into.y * v.x + f.side.y * v.y,
  z: v.z,
});

const upOld = (o: OverlayPlaced): Vec3 => turned(o.frame, { x: -o.shape.old, y: 0, z: 1 });

/** The old slope, raised square to itself. */
function oldPlane(o: OverlayPlaced, by: number, keep: 'over' | 'under') {
  const n = upOld(o);
  const lift = by * Math.hypot(1, o.shape.old);
  const at = overlayPoint(o.frame, 0, 0, oldAt(o, 0) + lift);
  return planeThrough(at, keep === 'under' ? n : scale(n, -1));
}

/** Side of the ridge a member lies on. */
const sideOf = (o: OverlayPlaced, m: Member): 1 | -1 => {
  const dx = m.start.x - o.frame.origin.x;
  const dy = m.start.y - o.frame.origin.y;
  return dx * o.frame.side.x + dy * o.frame.side.y >= 0 ? 1 : -1;
};

/** Plumb at the ridge, seated on the plate: the seat and its tilt are one cut by the plate's upper side. */
const fill: Shaper = (o, m) => {
  const { depth, width } = m.section;
  const bar = barBetween(m.start, m.end, m.up, width, depth, { extendStart: 4 * depth, extendEnd: depth });
  const sign = sideOf(o, m);
  const plumb = planeThrough(m.end, turned(o.frame, { x: 0, y: -sign, z: 0 }));
  const cut = cutByPlane(bar, plumb);
  return cut && cutByPlane(cut, oldPlane(o, o.plates.thick, 'over'));
};

/** Bevelled along the valley, cut at the ridge and in line with the tails. */
const plate: Shaper = (o, m) => {
  const { b, d } = m.section;
  const bar = barBetween(m.start, m.end, m.up, d, b, { extendStart: 2 * d, extendEnd: 2 * d });
  const sign = sideOf(o, m);
  const face = o.faces.find((f) => f.sign === sign)!;
  const p = face.outline[0]!;
  const under = planeThrough({ x: p.x, y: p.y, z: p.z - o.sheathing * Math.hypot(1, o.shape.slope) }, face.normal);
  const inner = planeThrough(o.frame.origin, turned(o.frame, { x: 0, y: -sign, z: 0 }));
  const tails = planeThrough(overlayPoint(o.frame, 0, sign * o.half, 0), turned(o.frame, { x: 0, y: sign, z: 0 }));
  let s: Solid | undefined = bar;
  for (const plane of [under, inner, tails]) s = s && cutByPlane(s, plane);
  return s;
};

const board: Shaper = (o, m) => {
  const bar = barBetween(m.start, m.end, m.up, m.section.width, m.section.depth);
  return cutByPlane(bar, oldPlane(o, o.plates.thick, 'over'));
};

const fascia: Shaper = (o, m) =>
  cutByPlane(barBetween(m.start, m.end, m.up, m.section.b, m.section.d), oldPlane(o, 0, 'over'));

const SHAPERS: Readonly<Partial<Record<Member['role'], Shaper>>> = {
  'fill-rafter': fill,
  'valley-plate': plate,
  ridge: board,
  fascia,
};

/** Solid of one member of an overlay, as cut; undefined when nothing is left of it. */
export const overlaySolid: Shaper = (o, m) => SHAPERS[m.role]?.(o, m);

function slab(outline: readonly Vec3[], low: number, high: number, cos: number): Solid {
  const o = outline[0]!;
  // Corners in their own plane: two directions of it, plumb thickness.
  const u = { x: outline[1]!.x - o.x, y: outline[1]!.y - o.y, z: outline[1]!.z - o.z };
  const v = { x: outline[3]!.x - o.x, y: outline[3]!.y - o.y, z: outline[3]!.z - o.z };
  const det = u.x * v.y - u.y * v.x;
  const profile = outline.map((p) => ({
    x: ((p.x - o.x) * v.y - (p.y - o.y) * v.x) / det,
    y: (u.x * (p.y - o.y) - u.y * (p.x - o.x)) / det,
  }));
  return prism(profile, { ...o, z: o.z + low / cos }, u, v, { x: 0, y: 0, z: (high - low) / cos });
}

export function overlayPieces(o: OverlayPlaced): Piece[] {
  const wood: MaterialClass = 'wood';
  const members = o.members.flatMap((m): Piece[] => {
    const solid = overlaySolid(o, m);
    return solid ? [{ part: m.id, mark: m.mark, role: m.role, state: 'new', material: wood, solid }] : [];
  });
  const surfaces = o.faces.flatMap((f): Piece[] => {
    // One part with the cover's own surface: no seam is seen where it goes on.
    const base = { part: f.mark, mark: f.mark, role: 'roof-surface', state: 'new' } as const;
    const cos = Math.cos(f.slope);
    return [
      ...(o.sheathing > 0
        ? [{ ...base, material: 'sheathing' as const, solid: slab(f.outline, -o.sheathing, 0, cos) }]
        : []),
      { ...base, material: 'covering' as const, solid: slab(f.outline, 0, o.thickness - o.sheathing, cos) },
    ];
  });
  return [...members, ...surfaces];
}
