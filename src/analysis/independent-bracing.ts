/** The second road to the weight of braces and struts: from the lengths the project file gives, not from placed members. */
import type { KneeSpec, Project } from '../project/model.js';
import type { Section } from '../structure/model.js';

type Facts = ReadonlyMap<string, Pick<Section, 'width' | 'depth' | 'weight'>>;

/** Own weight in lb of what is braced on beams named in `built`: centre lines from the post's face to the underside. */
export function bracingWeight(project: Project, facts: Facts, built: ReadonlySet<string>): number {
  const knee = (k: KneeSpec, half: number): number =>
    (facts.get(k.section)?.weight ?? 0) * Math.hypot(k.run, k.rise) * (1 - half / k.run);
  let sum = 0;
  const posts = new Map<
    string,
    { x: number; y: number; along: number; across: number; dir: { x: number; y: number } }
  >();
  for (const beam of project.cover.beams) {
    if (!built.has(beam.mark)) continue;
    const length = Math.hypot(beam.to.x - beam.from.x, beam.to.y - beam.from.y);
    const dir = { x: (beam.to.x - beam.from.x) / length, y: (beam.to.y - beam.from.y) / length };
    for (const p of beam.posts) {
      const size = facts.get(p.section);
      const along = (size?.width ?? 0) / 2;
      posts.set(p.mark, {
        x: beam.from.x + dir.x * p.at,
        y: beam.from.y + dir.y * p.at,
        along,
        across: (size?.depth ?? 0) / 2,
        dir,
      });
      for (const k of p.braces ?? []) sum += knee(k, along);
    }
  }
  for (const s of project.cover.struts ?? []) {
    const [a, b] = [posts.get(s.from), posts.get(s.to)];
    if (!a || !b) continue;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const half = (p: typeof a): number =>
      Math.abs(((b.x - a.x) * p.dir.x + (b.y - a.y) * p.dir.y) / long) < Math.SQRT1_2 ? p.across : p.along;
    sum += (facts.get(s.section)?.weight ?? 0) * (long - half(a) - half(b));
    if (s.braces) sum += knee(s.braces, half(a)) + knee(s.braces, half(b));
  }
  return sum;
}
