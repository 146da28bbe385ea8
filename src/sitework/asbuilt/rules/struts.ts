import type { FitFinding } from '../model.js';
import type { FitRule } from './contract.js';

const SOURCE = 'geometry of the measured places';

/** Cross members are cut to what stands between their posts. */
export const struts: FitRule = {
  id: 'cross-member-length',
  title: 'Cross members between posts',
  run: ({ project, structure, posts, len }) =>
    (project.cover.struts ?? []).flatMap((s): Omit<FitFinding, 'rule'>[] => {
      const member = structure.members.find((m) => m.mark === s.mark);
      const [a, b] = [s.from, s.to].map((mark) => posts.find((p) => p.post.mark === mark));
      if (!member || !a?.off || !b?.off) return [];
      const run = { x: b.post.start.x - a.post.start.x, y: b.post.start.y - a.post.start.y };
      const now = Math.hypot(run.x + b.off.x - a.off.x, run.y + b.off.y - a.off.y) - Math.hypot(run.x, run.y);
      const found = `Its posts stand ${len(Math.abs(now))} ${now < 0 ? 'nearer together' : 'farther apart'} than drawn.`;
      return Math.abs(now) <= 1 / 16
        ? [{ part: s.mark, state: 'fits', found, remedy: '', source: SOURCE }]
        : [
            {
              part: s.mark,
              state: 'adjust',
              found,
              remedy: `Cut it ${len(member.length + now)} long, not ${len(member.length)}.`,
              source: SOURCE,
            },
          ];
    }),
};
