import { findFastener } from '../../catalog/index.js';
import { isCut } from '../cuts/members.js';
import type { Counted, FastenerSource } from './model.js';
import { named } from './names.js';

/** Nails or bolts that join plies: in each row at the spacing, nails at every face where two plies meet, bolts through all. */
export const plies: FastenerSource = {
  count: ({ project, structure }) =>
    structure.members.filter(isCut).flatMap((m): Counted[] => {
      const c = project.choices.sections[m.section.choice];
      if (!c || !('plyFastening' in c) || c.plyFastening === undefined || m.section.plies < 2) return [];
      const f = c.plyFastening;
      const places = Math.ceil(Math.max(0, m.length - 2 * f.end) / f.spacing - 1e-6) + 1;
      // What has a length of its own is driven from one ply into the next; a bolt passes through all of them.
      const through = findFastener(f.fastener)?.length === undefined;
      const count = f.rows * places * (through ? 1 : m.section.plies - 1);
      return [
        {
          ...named(f.fastener, through ? Math.ceil(m.section.width + 1) : undefined),
          count,
          phase: 'posts-and-beams',
          serves: [m.mark],
        },
      ];
    }),
};
