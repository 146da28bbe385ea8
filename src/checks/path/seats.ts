/** Beams and cross members at a post with nothing to tie them: a brace or a second beam there does not stand in for it. */
import { jointsAt } from '../../structure/lookup.js';
import type { Member, Structure } from '../../structure/model.js';

/** Post heads and beam undersides are placed to meet; what is further apart is not a seat, inches. */
const NEAR = 1;

/** Whether the beam's underside rests on the head of the post. */
function rests(beam: Member, post: Member): boolean {
  const d = { x: beam.end.x - beam.start.x, y: beam.end.y - beam.start.y };
  const long = Math.hypot(d.x, d.y);
  if (long < NEAR) return false;
  const r = { x: post.end.x - beam.start.x, y: post.end.y - beam.start.y };
  const along = (r.x * d.x + r.y * d.y) / long;
  const aside = Math.abs(r.x * d.y - r.y * d.x) / long;
  const axis = beam.start.z + ((beam.end.z - beam.start.z) * along) / long;
  const underside = axis - beam.section.depth / 2;
  return along > -NEAR && along < long + NEAR && aside < NEAR && Math.abs(underside - post.end.z) < NEAR;
}

/** Whether an end of the cross member is at the post, within the post's own width. */
function meets(strut: Member, post: Member): boolean {
  const reach = Math.hypot(post.section.width, post.section.depth) / 2 + NEAR;
  return [strut.start, strut.end].some(
    (p) => Math.hypot(p.x - post.start.x, p.y - post.start.y) < reach && p.z > post.start.z && p.z < post.end.z + reach,
  );
}

export interface Unseated {
  /** Beam or cross member left without its joint. */
  readonly part: string;
  readonly why: string;
}

/** Every beam that rests on a post, and every cross member that ends at one, without a joint between the two. */
export function unseated(structure: Structure): readonly Unseated[] {
  const tied = (a: string, b: string): boolean => jointsAt(structure, a).some((j) => j.ties.some((t) => t.part === b));
  const out: Unseated[] = [];
  for (const post of structure.members) {
    if (post.role !== 'post') continue;
    for (const m of structure.members) {
      const here = m.role === 'beam' ? rests(m, post) : m.role === 'strut' && meets(m, post);
      if (!here || tied(m.id, post.id)) continue;
      const how = m.role === 'beam' ? 'rests on' : 'ends at';
      out.push({ part: m.id, why: `${m.id} ${how} ${post.id} and nothing ties them` });
    }
  }
  return out;
}
