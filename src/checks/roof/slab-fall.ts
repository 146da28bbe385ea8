/** A patio slab sheds water away from the house. IRC 2018 R401.3. */
import { GRADE_DISTANCE, GRADE_FALL, IMPERVIOUS_SLOPE } from '../codes/irc-2018/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';

const CLAUSE = 'IRC 2018 R401.3';

/** What the ground round the house must fall, and over what distance, inches: printed on sheets. */
export const GROUND = { fall: GRADE_FALL, over: GRADE_DISTANCE } as const;

export const slabFall: Check = {
  id: 'slab-fall',
  title: 'Slab falls away from the house',
  subjects: ({ project }) => {
    const kept = project.patio.slabs.filter((s) => s.state !== 'removed');
    return kept.length === 0 ? [{ id: 'patio', path: '/patio' }] : kept.map((s) => ({ id: s.mark, path: s.path }));
  },
  run(subject, { project }, rec) {
    if (subject.id === 'patio') return notApplicable(CLAUSE, 'there is no slab under this roof');
    const slab = project.patio.slabs.find((s) => s.mark === subject.id);
    if (!slab) return notEvaluated(CLAUSE, 'no such slab');
    rec?.step({
      symbol: 'fall',
      meaning: 'fall of the slab away from the house',
      formula: 'given',
      substituted: `${(12 * slab.fall).toFixed(3)} in per foot`,
      value: 100 * slab.fall,
      unit: '%',
      clause: CLAUSE,
      from: [`${slab.path}/fall`],
    });
    return measured(
      {
        demand: 100 * IMPERVIOUS_SLOPE,
        capacity: 100 * slab.fall,
        unit: '%',
        clause: CLAUSE,
        formula: '2 % / fall',
        prescriptive: true,
        remedy: `Slab ${slab.mark} falls ${(100 * slab.fall).toFixed(1)} % away from the house where 2 % (1/4 in per foot) is needed: ${slab.state === 'existing' ? 'overlay or drain it' : 'cast it steeper'}.`,
      },
      rec,
    );
  },
};
