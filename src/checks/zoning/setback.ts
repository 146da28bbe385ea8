/** Least distance from each lot line, measured from the edge the office named: the posts or the eaves. */
import type { Check } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';
import { feet, lineSubjects, ZONING } from './zoning.js';

export const setback: Check = {
  id: 'setback',
  title: 'Setback',
  subjects: lineSubjects,
  run(subject, { lot, project }, rec) {
    const d = lot.distances.find((q) => q.line === subject.id);
    if (!d) return notEvaluated(ZONING, 'no distance to this line was measured');
    const { zoning } = project.basis;
    const edge = zoning.referenceEdge.value;
    rec?.step({
      symbol: 's',
      meaning: `least distance from the ${d.line} to the ${edge}s of the new work`,
      formula: 'measured on the placed structure',
      substituted: `${edge} ${feet(d.governing)}`,
      value: d.governing,
      unit: 'in',
      clause: ZONING,
      from: [zoning.referenceEdge.path],
    });
    rec?.step({
      symbol: 'required',
      meaning: `required ${d.yard} yard`,
      formula: 'given',
      substituted: feet(d.required),
      value: d.required,
      unit: 'in',
      clause: ZONING,
      from: [zoning.setbacks[d.yard].path],
    });
    return measured(
      {
        demand: d.required,
        capacity: d.governing,
        unit: 'in',
        clause: ZONING,
        formula: 'required / distance',
        remedy: `The ${edge} is ${feet(d.governing)} from the ${d.line} where ${feet(d.required)} is required: move or shorten the cover by ${feet(Math.ceil(d.required - d.governing))}.`,
      },
      rec,
    );
  },
};
