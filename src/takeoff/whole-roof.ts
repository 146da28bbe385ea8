/** The placed structure as it is bought: a roof that runs on over the house is one roof with its part on the old slope. */
import { FillRule, unionD } from 'clipper2-ts';
import { signedArea } from '../base/plane.js';
import type { Vec2, Vec3 } from '../base/vec.js';
import type { Member, OverlayFace, OverlayPlaced, Structure, Surface } from '../structure/model.js';

/** Digits kept of an inch where outlines are joined: far below a saw's kerf, far above rounding. */
const DIGITS = 6;
/** Faces of one plane have the same normal, but for rounding. */
const SAME_PLANE = 1 - 1e-9;

const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** A point's place on a surface; the height over it drops out, for outlines on the old roof lie at the top of the sheathing. */
const placeOn = (s: Surface, p: Vec3): Vec2 => {
  const d = { x: p.x - s.origin.x, y: p.y - s.origin.y, z: p.z - s.origin.z };
  return { x: dot(d, s.u), y: dot(d, s.v) };
};

/** Counter-clockwise: outlines of opposite sense would cancel where they touch. */
const turned = (p: readonly Vec2[]): Vec2[] => {
  const copy = p.map(({ x, y }) => ({ x, y }));
  return signedArea(copy) < 0 ? copy.reverse() : copy;
};

function joined(s: Surface, faces: readonly OverlayFace[]): Surface {
  if (faces.length === 0) return s;
  const outlines = [s.outline, ...faces.map((f) => f.outline.map((p) => placeOn(s, p)))];
  const rings = unionD(outlines.map(turned), [], FillRule.NonZero, DIGITS);
  const [outline] = rings;
  // Parts that touch leave one outline; whatever else came would be no roof, and the cover's own is kept.
  return outline && rings.length === 1 ? { ...s, outline: outline.map(({ x, y }) => ({ x, y })) } : s;
}

/** Members of the part on the old roof; fill rafters carry their strip of the sheathing, half way to the next on either side. */
function membersOver(o: OverlayPlaced, surfaces: readonly Surface[]): Member[] {
  return o.members.map((m) => {
    if (m.role !== 'fill-rafter') return m;
    const s = surfaces.find((x) => x.roof === o.roof && dot(x.u, unitAcross(m)) < 1e-6 && leansWith(x, m));
    if (!s) return m;
    const { x: u } = placeOn(s, m.start);
    return { ...m, strips: [{ surface: s.id, u0: u - m.section.width / 2, u1: u + m.section.width / 2 }] };
  });
}

/** Level direction of a member's run. */
function unitAcross(m: Member): Vec3 {
  const d = { x: m.end.x - m.start.x, y: m.end.y - m.start.y };
  const l = Math.hypot(d.x, d.y) || 1;
  return { x: d.x / l, y: d.y / l, z: 0 };
}

/** The member falls as the surface falls. */
function leansWith(s: Surface, m: Member): boolean {
  const down = m.end.z < m.start.z ? unitAcross(m) : scaled(unitAcross(m), -1);
  return down.x * s.downhill.x + down.y * s.downhill.y > 0.5;
}

const scaled = (v: Vec3, k: number): Vec3 => ({ x: v.x * k, y: v.y * k, z: v.z * k });

/** Same structure when nothing lies on an old roof. */
export function wholeRoof(structure: Structure): Structure {
  const overlays = structure.overlays ?? [];
  if (overlays.length === 0) return structure;
  const faces = overlays.flatMap((o) => o.faces.map((face) => ({ roof: o.roof, face })));
  const surfaces = structure.surfaces.map((s) =>
    joined(
      s,
      faces.filter((f) => f.roof === s.roof && dot(f.face.normal, s.n) > SAME_PLANE).map((f) => f.face),
    ),
  );
  return {
    ...structure,
    surfaces,
    members: [...structure.members, ...overlays.flatMap((o) => membersOver(o, structure.surfaces))],
  };
}
