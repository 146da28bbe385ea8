/**
 * Eaves near a lot line (IRC Table R302.1): none nearer than 2 ft; from 2 ft to 5 ft the underside needs a one-hour
 * rating; from 5 ft on there is no limit. Read as quoted by a county handout. The lot line stands in for the street's
 * centre line, which is never nearer.
 */
import type { Check } from '../contract.js';
import { measured, notEvaluated, outsideScope } from '../finding.js';
import { feet, lineSubjects } from './zoning.js';

const CLAUSE = 'IRC 2018 Table R302.1';
export const FREE = 60;
export const NONE_WITHIN = 24;

export const fireSeparation: Check = {
  id: 'fire-separation',
  title: 'Fire separation at the lot lines',
  subjects: lineSubjects,
  run(subject, { lot }, rec) {
    const d = lot.distances.find((q) => q.line === subject.id);
    if (!d) return notEvaluated(CLAUSE, 'no distance to this line was measured');
    if (d.toEave >= NONE_WITHIN && d.toEave < FREE) {
      return outsideScope(
        CLAUSE,
        `The eave is ${feet(d.toEave)} from the ${d.line}: under 5 ft its underside needs a one-hour rating detailed by a licensed professional, or move it out to 5 ft.`,
      );
    }
    rec?.step({
      symbol: 's',
      meaning: `least distance from the ${d.line} to eave or rake`,
      formula: 'measured on the placed structure',
      substituted: feet(d.toEave),
      value: d.toEave,
      unit: 'in',
      clause: CLAUSE,
    });
    return measured(
      {
        demand: FREE,
        capacity: d.toEave,
        unit: 'in',
        clause: CLAUSE,
        formula: '5 ft / distance',
        remedy: `The eave is ${feet(d.toEave)} from the ${d.line}; no projection is allowed within 2 ft of it: shorten or move the roof.`,
      },
      rec,
    );
  },
};
