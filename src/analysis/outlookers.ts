/**
 * Outlookers: levers over the end frame. What they bring to the frames comes to those by the shares of their strips; here each
 * one's own two joints are worked out, from the roof it carries, its own weight and its barge board. Load between the two
 * frames is left out: the sheathing hands it to both, and it would only hold the inner end down.
 */
import { area, clipConvex } from '../base/plane.js';
import type { Vec2, Vec3 } from '../base/vec.js';
import type { Member, RakePatch, Surface } from '../structure/model.js';
import type { StructureIndex } from './index-structure.js';
import { addTo, type Rows, rowsOf } from './rows.js';
import type { Term, Terms } from './terms.js';

/** Area (in²) or width (in) of a term on the patch and the distance of its centre past the end frame. */
function caught(
  term: Term,
  surface: Surface,
  p: RakePatch,
): { readonly amount: number; readonly at: number } | undefined {
  if (term.surface !== p.surface) return undefined;
  const [u0, u1] = [Math.min(p.edge, p.frame), Math.max(p.edge, p.frame)];
  if (term.kind === 'edge')
    return term.v >= p.v0 - 1e-6 && term.v < p.v1 - 1e-6 ? { amount: u1 - u0, at: (u1 - u0) / 2 } : undefined;
  const patch: Vec2[] = [
    { x: u0, y: p.v0 },
    { x: u1, y: p.v0 },
    { x: u1, y: p.v1 },
    { x: u0, y: p.v1 },
  ];
  const cut = clipConvex(surface.outline, patch);
  const met = term.region ? clipConvex(cut, term.region) : cut;
  if (met.length < 3) return undefined;
  const amount = area(met);
  if (amount < 1e-9) return undefined;
  // The frames take their shares as of load even across the overhang; so does the joint.
  return { amount, at: (u1 - u0) / 2 };
}

function add(rows: readonly [Rows, Rows], c: number, f: Vec3, lever: number, factor: number): void {
  addTo(rows[0], c, f.x, f.y, f.z, factor * (1 + lever));
  addTo(rows[1], c, f.x, f.y, f.z, -factor * lever);
}

/** Forces of every outlooker on the end frame and on the next one, per case, by joint. */
export function outlookerJoints(index: StructureIndex, terms: Terms): ReadonlyMap<string, Rows> {
  const out = new Map<string, Rows>();
  const members = index.structure.members.filter((m): m is Member & { rake: RakePatch } => m.rake !== undefined);
  if (members.length === 0) return out;
  const jointsOf = new Map<string, string[]>();
  for (const j of index.structure.joints) {
    if (j.kind !== 'outlooker-to-frame') continue;
    const upper = j.ties[0]!;
    // The inner end lies at the outlooker's start.
    const list = jointsOf.get(upper.part) ?? [];
    if (upper.along < 1e-6) list[1] = j.id;
    else list[0] = j.id;
    jointsOf.set(upper.part, list);
  }
  const cases = terms.cases.length;
  for (const m of members) {
    const [end, next] = jointsOf.get(m.id) ?? [];
    if (end === undefined || next === undefined) continue;
    const p = m.rake;
    const surface = index.surfaces.get(p.surface)!;
    const rows = [rowsOf(out, end, cases), rowsOf(out, next, cases)] as const;
    const units = terms.terms.map((t) => caught(t, surface, p));
    const long = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y);
    const down = (w: number): Vec3 => ({ x: 0, y: 0, z: -w });
    terms.cases.forEach((c, i) => {
      if (c.self !== 0) {
        add(rows, i, down(m.section.weight * long), (long / 2 - p.back) / p.back, c.self);
        add(rows, i, down(p.barge.weight), p.barge.at / p.back, c.self);
      }
      for (let k = 0; k < c.term.length; k++) {
        const unit = units[c.term[k]!];
        if (!unit) continue;
        const n = terms.terms[c.term[k]!]!.kind === 'normal' ? surface.n : { x: 0, y: 0, z: 1 };
        add(
          rows,
          i,
          { x: -n.x * unit.amount, y: -n.y * unit.amount, z: -n.z * unit.amount },
          unit.at / p.back,
          c.factor[k]!,
        );
      }
    });
  }
  return out;
}
