/**
 * Wind on a roof that touches the house. The strength of what carries it is the members' and footings' own check; this says
 * that the load was worked out and carried, with the numbers, or that it is not covered. There is no capacity to compare with.
 */
import { attachedPressure } from '../../loads/index.js';
import type { Check } from '../contract.js';
import { notApplicable, notEvaluated, outsideScope } from '../finding.js';

const BASIS =
  'No section of the standard is written for a sloping cover that leans on a wall: the open-building pressures with clear and obstructed flow, the attached-canopy pressures and, near the eave, the overhang rule are all carried and the worst governs.';

export const windAttached: Check = {
  id: 'wind-attached',
  title: 'Wind on a cover that touches the house',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path })),
  run(subject, ctx, rec) {
    const edition = ctx.project.basis.codes.loads;
    const clause = `ASCE ${edition} 27.3.2, ${edition === '7-16' ? '30.11' : '30.9'}`;
    const roof = ctx.structure.roofs.find((r) => r.mark === subject.id);
    if (!roof) return notEvaluated(clause, 'This roof was not placed. Needed: its structure.');
    if (ctx.project.cover.attachment === 'free-standing' || !roof.attached)
      return notApplicable(clause, 'this roof stands free of the house');
    const found = ctx.loads.attachedWind?.find((a) => a.roof === subject.id);
    if (!found || found.outcome === 'unknown')
      return notEvaluated(
        clause,
        found?.note ?? 'The wind beside the house could not be worked out. Needed: its cases.',
      );
    if (found.outcome === 'outside') return outsideScope(found.clause, found.note);
    const missing = found.cases.filter((c) => !ctx.loads.cases.some((x) => x.id === c));
    if (found.cases.length === 0 || missing.length > 0)
      return notEvaluated(clause, `The load case ${missing.join(', ')} is not among the cases. Needed: that case.`);
    for (const flow of ['clear', 'obstructed'] as const)
      if (!ctx.loads.cases.some((c) => c.kind === 'W' && c.id.includes(`·${flow}`)))
        return notEvaluated(
          clause,
          `No free-roof case with ${flow} flow was carried. Needed: both flows beside a wall.`,
        );
    if (rec) {
      for (const sign of ['minus', 'plus'] as const) {
        rec.heading(sign === 'minus' ? `${subject.id}: lifting` : `${subject.id}: pressing`);
        attachedPressure(ctx.project, ctx.structure, roof, sign, found.area, rec);
      }
    }
    return {
      status: 'pass',
      demand: Math.max(-found.up, found.down),
      capacity: 0,
      ratio: 0,
      unit: 'psf',
      combination: '',
      clause: found.clause,
      note: `${found.note} ${BASIS} A load, not a resistance: what carries it is checked with it.`,
    };
  },
};
