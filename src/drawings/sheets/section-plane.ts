/** Where the sections cut, and their traces over a plan. */
import type { Vec2 } from '../../base/vec.js';
import type { RoofPlaced, Structure } from '../../structure/model.js';

/** `across` is the axis along which the picture runs: across the ridge of a gable, along the fall of a shed. */
export interface SectionPlane {
  readonly across: 'x' | 'y';
  readonly at: number;
  /** The roof it is made for. */
  readonly roof: RoofPlaced;
}

export interface SectionTrace {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly look: 1 | -1;
}

/** Traces of the sections over a plan whose annotated extent is given, in the order of their numbers. */
export const sectionLines = (structure: Structure, x0: number, y0: number, x1: number, y1: number): SectionTrace[] =>
  sectionPlanes(structure).map((cut) =>
    cut.across === 'x'
      ? { a: { x: x0, y: cut.at }, b: { x: x1, y: cut.at }, look: -1 }
      : { a: { x: cut.at, y: y0 }, b: { x: cut.at, y: y1 }, look: 1 },
  );

/** Slack past a roof's edge within which its posts stand, inches. */
const NEAR = 12;

function planeOf(structure: Structure, r: RoofPlaced, own: boolean): SectionPlane {
  const across = r.ridgeAxis === 'y' ? 'x' : 'y';
  const key = across === 'x' ? 'y' : 'x';
  const posts = structure.members
    .filter((m) => m.role === 'post')
    .filter(
      (m) =>
        !own ||
        (m.start.x > r.min.x - NEAR &&
          m.start.x < r.max.x + NEAR &&
          m.start.y > r.min.y - NEAR &&
          m.start.y < r.max.y + NEAR),
    )
    .map((m) => m.start[key]);
  const middle = (r.min[key] + r.max[key]) / 2;
  if (posts.length === 0) return { across, at: middle, roof: r };
  if (across === 'x') return { across, at: Math.max(...posts), roof: r };
  const at = posts.reduce((best, x) => (Math.abs(x - middle) < Math.abs(best - middle) - 1e-6 ? x : best));
  return { across, at, roof: r };
}

/** Ids of the beams, posts and footings that carry a roof; posts inside the house wall are left out, no section shows them. */
export function carriersOf(structure: Structure, roof: RoofPlaced): ReadonlySet<string> {
  const ids = new Set(structure.members.filter((m) => m.roof === roof.mark).map((m) => m.id));
  const carriers = new Set<string>();
  // Three steps down: framing to beam, beam to post, post to footing.
  for (const kinds of [/-to-beam$/, /^beam-to-post$/, /^post-to-footing$/]) {
    for (const j of structure.joints) {
      const lower = j.ties.at(-1)?.part;
      if (lower !== undefined && kinds.test(j.kind) && ids.has(j.ties[0]?.part ?? '')) carriers.add(lower);
    }
    for (const id of carriers) ids.add(id);
  }
  return carriers;
}

/**
 * One section through each roof that no section before it cuts the right way: through post centers, so that the whole load
 * path from roof to soil lies in the cut.
 */
export function sectionPlanes(structure: Structure): readonly [SectionPlane, ...SectionPlane[]] {
  const several = structure.roofs.length > 1;
  const [first, ...rest] = structure.roofs;
  const planes: [SectionPlane, ...SectionPlane[]] = [planeOf(structure, first!, several)];
  for (const r of rest) {
    const mine = planeOf(structure, r, true);
    const key = mine.across === 'x' ? 'y' : 'x';
    const cut = planes.some((p) => p.across === mine.across && p.at > r.min[key] + 1 && p.at < r.max[key] - 1);
    if (!cut) planes.push(mine);
  }
  return planes;
}
