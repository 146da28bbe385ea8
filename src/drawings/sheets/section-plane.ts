/** Where the main section cuts, and its trace over a plan. */
import type { Vec2 } from '../../base/vec.js';
import type { Structure } from '../../structure/model.js';

/** Trace of the main section over a plan whose annotated extent is given. */
export function sectionLine(
  structure: Structure,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): { a: Vec2; b: Vec2; look: 1 | -1 } {
  const cut = sectionPlane(structure);
  return cut.across === 'x'
    ? { a: { x: x0, y: cut.at }, b: { x: x1, y: cut.at }, look: -1 }
    : { a: { x: cut.at, y: y0 }, b: { x: cut.at, y: y1 }, look: 1 };
}

/**
 * Where the main section cuts: through post centers, so that the whole load path from roof to soil lies in the cut. `across`
 * is the axis along which the picture runs: across the ridge of a gable, along the fall of a shed.
 */
export function sectionPlane(structure: Structure): { readonly across: 'x' | 'y'; readonly at: number } {
  const r = structure.roofs[0]!;
  const across = r.ridgeAxis === 'y' ? 'x' : 'y';
  const posts = structure.members.filter((m) => m.role === 'post').map((m) => (across === 'x' ? m.start.y : m.start.x));
  if (posts.length === 0) return { across, at: across === 'x' ? (r.min.y + r.max.y) / 2 : (r.min.x + r.max.x) / 2 };
  if (across === 'x') return { across, at: Math.max(...posts) };
  const middle = (r.min.x + r.max.x) / 2;
  return { across, at: posts.reduce((best, x) => (Math.abs(x - middle) < Math.abs(best - middle) - 1e-6 ? x : best)) };
}
