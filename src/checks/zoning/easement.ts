/** New work, footings and eaves included, stays out of every easement. */
import type { Check } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';
import { feet } from './zoning.js';

const CLAUSE = 'recorded easement as entered';

export const easement: Check = {
  id: 'easement',
  title: 'Easements kept clear',
  subjects: ({ project }) =>
    project.lot.easements.length === 0
      ? [{ id: 'lot', path: '/lot' }]
      : project.lot.easements.map((e, i) => ({ id: e.name, path: `/lot/easements/${i}` })),
  run(subject, { lot, project, structure }, rec) {
    if (project.lot.easements.length === 0) return notApplicable(CLAUSE, 'no easement is entered for this lot');
    const e = project.lot.easements[Number(subject.path.split('/').at(-1))];
    const line = e && lot.lines[e.course];
    const d = line && lot.distances.find((q) => q.line === line.name);
    if (!e || !d) return notEvaluated(CLAUSE, 'the line this easement runs along was not measured');
    // A footing reaches half its width past the post it carries.
    const footing = structure.footings.reduce((most, f) => Math.max(most, f.size / 2), 0);
    const clear = Math.min(d.toEave, d.toPost - footing);
    rec?.step({
      symbol: 's',
      meaning: `least distance from the ${d.line} to eave or footing edge`,
      formula: 'min(eave, post − half footing)',
      substituted: `min(${d.toEave.toFixed(1)}, ${d.toPost.toFixed(1)} − ${footing.toFixed(1)})`,
      value: clear,
      unit: 'in',
      clause: CLAUSE,
      from: [subject.path],
    });
    return measured(
      {
        demand: e.width,
        capacity: clear,
        unit: 'in',
        clause: CLAUSE,
        formula: 'easement width / distance',
        remedy: `New work reaches ${feet(Math.ceil(e.width - clear))} into the ${e.name}: nothing may stand there without the holder’s written consent.`,
      },
      rec,
    );
  },
};
