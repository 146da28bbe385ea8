/** One question of the whole cover: does every pound have a closed way from the roof to the soil or the house? */
import type { Check } from '../contract.js';
import { failed, measured } from '../finding.js';
import { pathBreaks } from './breaks.js';
import { loadPath } from './graph.js';

const CLAUSE = 'ASCE 7-16 1.4.1';

export const loadPathClosed: Check = {
  id: 'load-path',
  title: 'Load path closed from roof to soil',
  subjects: () => [{ id: 'cover', path: '/cover' }],
  run(_, { project, structure }, rec) {
    const path = loadPath(structure);
    const breaks = pathBreaks(project, structure, path);
    if (breaks.length > 0) {
      const said = breaks.slice(0, 3).map((b) => b.why);
      const more = breaks.length > 3 ? `; and ${breaks.length - 3} more` : '';
      return failed(CLAUSE, `${said.join('; ')}${more}. Tie them, or take the part out.`);
    }
    return measured(
      {
        demand: 0,
        capacity: path.links.length,
        unit: 'links',
        clause: CLAUSE,
        formula: 'broken links / links',
        remedy: '',
        note: `${path.links.length} links from ${structure.surfaces.length} roof surfaces to the soil and the house, none broken.`,
      },
      rec,
    );
  },
};
