/** Loads beyond the provisions this program holds: never guessed. */
import type { Check } from '../contract.js';
import { measured, outsideScope } from '../finding.js';

const CLAUSE = 'ASCE 7-16';

export const loadRange: Check = {
  id: 'load-range',
  title: 'Loads within the program’s range',
  subjects: ({ loads }) =>
    loads.outside.length === 0
      ? [{ id: 'loads', path: '/basis' }]
      : [...new Set(loads.outside.map((o) => o.about))].map((id) => ({ id, path: '/basis' })),
  run(subject, { loads }, rec) {
    const met = loads.outside.filter((o) => o.about === subject.id);
    if (met.length > 0)
      return outsideScope(CLAUSE, `${met.map((o) => o.why).join('; ')}: needs a licensed professional.`);
    return measured(
      { demand: 0, capacity: 1, unit: 'questions', clause: CLAUSE, formula: 'loads out of range ≤ 0', remedy: '' },
      rec,
    );
  },
};
