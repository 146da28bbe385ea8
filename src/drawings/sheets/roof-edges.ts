/** What each edge of the new roofs is, and where the leaders of their gutters stand. */

import { clipConvex, signedArea } from '../../base/plane.js';
import { flat, type Vec2, type Vec3 } from '../../base/vec.js';
import { gutterOf } from '../../checks/roof/gutter.js';
import { planeAt } from '../../structure/house/profile.js';
import type { Structure, Surface } from '../../structure/model.js';
import { onSurface } from '../../structure/surfaces.js';
import { slopeOf } from '../../structure/tie-in/old-slope.js';
import type { DrawingInput } from './contract.js';

export type EdgeKind = 'eave' | 'rake' | 'ridge' | 'high edge' | 'hip' | 'valley' | 'joint';

export interface RoofEdge {
  readonly kind: EdgeKind;
  readonly roof: string;
  readonly a: Vec2;
  readonly b: Vec2;
  readonly mark?: string;
}

/** Edges this near to each other on plan are one, inches. */
const SAME = 1;
/** Eaves that face each other at most this far apart make a valley between two roofs, inches: their gutters touch. */
const MEET = 12;

const near = (p: Vec2, q: Vec2, by: number): boolean => Math.hypot(p.x - q.x, p.y - q.y) <= by;

const matches = (a: readonly [Vec2, Vec2], b: readonly [Vec2, Vec2], by: number): boolean =>
  (near(a[0], b[0], by) && near(a[1], b[1], by)) || (near(a[0], b[1], by) && near(a[1], b[0], by));

/** Edges of a surface on plan with what they are to the surface itself: low, high, side or slanting. */
function ownEdges(
  s: Surface,
): { ends: readonly [Vec2, Vec2]; where: 'low' | 'high' | 'side' | 'slant'; goesOn: boolean }[] {
  const top = Math.max(...s.outline.map((p) => p.y));
  return s.outline.map((p, i) => {
    const q = s.outline[(i + 1) % s.outline.length]!;
    const level = Math.abs(p.y - q.y) < 1e-6;
    const where = level ? (Math.abs(p.y - top) < 1e-6 ? 'high' : 'low') : Math.abs(p.x - q.x) < 1e-6 ? 'side' : 'slant';
    const goesOn = s.onto !== undefined && [p, q].every((o) => Math.abs(o.x - s.onto!) < 1e-6);
    return { ends: [flat(onSurface(s, p.x, p.y)), flat(onSurface(s, q.x, q.y))] as const, where, goesOn };
  });
}

function kindOf(
  s: Surface,
  e: ReturnType<typeof ownEdges>[number],
  others: readonly { s: Surface; edges: ReturnType<typeof ownEdges> }[],
): EdgeKind {
  if (e.goesOn) return 'joint';
  const beside = others.filter((o) => o.s.id !== s.id);
  const shared = beside.some((o) => o.edges.some((f) => f.where !== 'low' && matches(e.ends, f.ends, SAME)));
  if (e.where === 'high') return shared ? 'ridge' : 'high edge';
  if (e.where === 'slant') return shared ? 'hip' : 'rake';
  if (e.where === 'side') return 'rake';
  const faces = (o: Surface): boolean => s.downhill.x * o.downhill.x + s.downhill.y * o.downhill.y < -0.999;
  const valley = beside.some(
    (o) => faces(o.s) && o.edges.some((f) => f.where === 'low' && matches(e.ends, f.ends, MEET)),
  );
  return valley ? 'valley' : 'eave';
}

export function edgesOf(structure: Structure): RoofEdge[] {
  const all = structure.surfaces.map((s) => ({ s, edges: ownEdges(s) }));
  const out: RoofEdge[] = all.flatMap(({ s, edges }) =>
    edges.map((e) => ({ kind: kindOf(s, e, all), roof: s.roof, a: e.ends[0], b: e.ends[1] })),
  );
  for (const o of structure.overlays ?? []) {
    o.faces.forEach((f, i) => {
      const [a, b, c, d] = f.outline.map(flat) as [Vec2, Vec2, Vec2, Vec2];
      out.push(
        { kind: 'joint', roof: o.roof, a, b },
        { kind: 'eave', roof: o.roof, a: b, b: c },
        { kind: 'valley', roof: o.roof, a: c, b: d, mark: o.valleys[i]!.mark },
        { kind: 'ridge', roof: o.roof, a: d, b: a },
      );
    });
  }
  return out;
}

export interface LeaderPlace {
  readonly mark: string;
  readonly roof: string;
  readonly surface: string;
  readonly at: Vec2;
  /** Level unit vectors from the eave outward, and along it toward its middle. */
  readonly out: Vec2;
  readonly along: Vec2;
}

const toward = (s: Surface, u: number, middle: number): Vec2 => {
  const k = u < middle ? 1 : -1;
  return { x: s.u.x * k, y: s.u.y * k };
};

/** From the end of a gutter to its leader, inches. Common practice, no source. */
const FROM_END = 6;

/** One leader: at the end of the eave farther from the house; more: from end to end. Common practice, no source. */
export function leaderPlaces(input: DrawingInput): LeaderPlace[] {
  const { structure } = input;
  const toHouse = (p: Vec2): number =>
    Math.min(
      ...structure.walls.map((w) => Math.hypot((w.start.x + w.end.x) / 2 - p.x, (w.start.y + w.end.y) / 2 - p.y)),
    );
  let n = 0;
  return structure.surfaces.flatMap((s): LeaderPlace[] => {
    const choice = gutterOf(input, s.roof);
    const us = s.outline.filter((p) => Math.abs(p.y) < 1e-6).map((p) => p.x);
    if (!choice || us.length < 2) return [];
    const [u0, u1] = [Math.min(...us), Math.max(...us)];
    const at = (u: number): Vec2 => flat(onSurface(s, u, 0));
    const far = toHouse(at(u0)) >= toHouse(at(u1)) ? u0 : u1;
    const step = far === u0 ? 1 : -1;
    const length = u1 - u0 - 2 * FROM_END;
    const places =
      choice.count === 1
        ? [far + step * FROM_END]
        : Array.from({ length: choice.count }, (_, i) => far + step * (FROM_END + (length * i) / (choice.count - 1)));
    return places.map((u) => ({
      mark: `DS${++n}`,
      roof: s.roof,
      surface: s.id,
      at: at(u),
      out: s.downhill,
      along: toward(s, u, (u0 + u1) / 2),
    }));
  });
}

/** Eaves and ridges of the house with what is printed along them. */
export function houseEdges({ structure, project }: DrawingInput): {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly text: string;
  readonly out?: Vec2;
}[] {
  const shared = (own: string, e: { readonly a: Vec2; readonly b: Vec2 }): boolean =>
    structure.housePlanes.some(
      (o) =>
        o.id !== own &&
        o.outline.some((q, i) => matches([e.a, e.b], [flat(q), flat(o.outline[(i + 1) % o.outline.length]!)], SAME)),
    );
  return structure.housePlanes.flatMap((p) => {
    const roof = project.house.roofs[Number(/^HR(\d+)-/.exec(p.id)?.[1] ?? 1) - 1];
    const zs = p.outline.map((q) => q.z);
    const [low, high] = [Math.min(...zs), Math.max(...zs)];
    const s = slopeOf(p.outline);
    return p.outline.flatMap((q, i) => {
      const next = p.outline[(i + 1) % p.outline.length]!;
      const level = (z: number): boolean => Math.abs(q.z - z) < 1e-6 && Math.abs(next.z - z) < 1e-6;
      const ends = { a: flat(q), b: flat(next) };
      if (!s || low === high) return [];
      // Inside of the slope: outside stand the dimensions.
      const gutter = roof?.gutter === true ? ', gutter' : roof?.gutter === false ? ', no gutter' : '';
      if (level(low)) return [{ ...ends, text: `existing eave${gutter}`, out: { x: -s.into.x, y: -s.into.y } }];
      return level(high) && shared(p.id, ends) ? [{ ...ends, text: 'existing ridge' }] : [];
    });
  });
}

/** Lines on plan in which slopes of two roofs of the house run into each other. */
export function houseValleys(structure: Structure): { readonly a: Vec2; readonly b: Vec2 }[] {
  const roofOf = (id: string): string => id.slice(0, id.indexOf('-'));
  const out: { a: Vec2; b: Vec2 }[] = [];
  structure.housePlanes.forEach((p, i) => {
    for (const q of structure.housePlanes.slice(i + 1)) {
      if (roofOf(p.id) === roofOf(q.id)) continue;
      const line = crossing(p.outline, q.outline);
      if (line) out.push(line);
    }
  });
  return out;
}

/** Where two planes meet within both outlines, on plan: the common outline cut along the line of equal height. */
function crossing(p: readonly Vec3[], q: readonly Vec3[]): { a: Vec2; b: Vec2 } | undefined {
  const ring = (o: readonly Vec3[]): Vec2[] => {
    const r = o.map(flat);
    return signedArea(r) < 0 ? r.reverse() : r;
  };
  const common = clipConvex(ring(p), ring(q));
  const over = (o: Vec2): number => planeAt(p, o) - planeAt(q, o);
  const ends: Vec2[] = [];
  common.forEach((a, i) => {
    const b = common[(i + 1) % common.length]!;
    const [ha, hb] = [over(a), over(b)];
    if (ha * hb > 0 || Math.abs(ha - hb) < 1e-9) return;
    const t = ha / (ha - hb);
    ends.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
  });
  const a = ends[0];
  const b = ends.find((e) => a && !near(e, a, SAME));
  return a && b ? { a, b } : undefined;
}
