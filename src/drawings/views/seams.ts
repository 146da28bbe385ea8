/**
 * Seams of a part that is built of several convex pieces: where two pieces have faces in one plane that meet along an edge, the
 * part itself has no edge there, however one looks at it.
 */
import { faceNormal } from '../../base/geometry/index.js';
import { dot, sub, type Vec3 } from '../../base/vec.js';
import type { Solid } from '../../structure/model.js';

interface Side {
  readonly piece: number;
  readonly a: Vec3;
  readonly b: Vec3;
}

/** Inches within which faces share a plane and edges a line. */
const NEAR = 0.02;

const key = (v: number, step: number): number => Math.round(v / step);

/** Segments in house axes along which pieces of one part run on into each other. */
export function seamsOf(
  pieces: readonly { readonly solid: Solid; readonly part: string }[],
): (readonly [Vec3, Vec3])[] {
  const planes = new Map<string, Side[]>();
  const count = new Map<string, number>();
  for (const p of pieces) count.set(p.part, (count.get(p.part) ?? 0) + 1);
  pieces.forEach((p, piece) => {
    if (count.get(p.part) === 1) return;
    for (const face of p.solid.faces) {
      const n = faceNormal(p.solid, face);
      const v = p.solid.vertices;
      const name = `${p.part}|${key(n.x, 1e-3)}|${key(n.y, 1e-3)}|${key(n.z, 1e-3)}|${key(dot(n, v[face[0]!]!), 0.05)}`;
      const list = planes.get(name) ?? [];
      face.forEach((k, i) => {
        list.push({ piece, a: v[k]!, b: v[face[(i + 1) % face.length]!]! });
      });
      planes.set(name, list);
    }
  });
  const out: (readonly [Vec3, Vec3])[] = [];
  for (const sides of planes.values())
    for (let i = 0; i < sides.length; i++)
      for (let j = i + 1; j < sides.length; j++) {
        const shared = sides[i]!.piece === sides[j]!.piece ? undefined : overlap(sides[i]!, sides[j]!);
        if (shared) out.push(shared);
      }
  return out;
}

/** What two sides that run against each other along one line have in common. */
function overlap(s: Side, t: Side): readonly [Vec3, Vec3] | undefined {
  const d = sub(s.b, s.a);
  const size = Math.sqrt(dot(d, d));
  if (size < NEAR) return undefined;
  const u = { x: d.x / size, y: d.y / size, z: d.z / size };
  const along = (p: Vec3): number | undefined => {
    const q = sub(p, s.a);
    const k = dot(q, u);
    return dot(q, q) - k * k < NEAR * NEAR ? k : undefined;
  };
  const [from, to] = [along(t.b), along(t.a)];
  if (from === undefined || to === undefined || to <= from) return undefined;
  const [k0, k1] = [Math.max(0, from), Math.min(size, to)];
  if (k1 - k0 < NEAR) return undefined;
  const at = (k: number): Vec3 => ({ x: s.a.x + k * u.x, y: s.a.y + k * u.y, z: s.a.z + k * u.z });
  return [at(k0), at(k1)];
}
