/**
 * Earthquake: exempt, carried as cases, or not covered. What resists the force is the sway and joint checks' own question;
 * there is no capacity to compare with here.
 */
import { seismicForce } from '../../loads/index.js';
import type { Check } from '../contract.js';
import { notApplicable, notEvaluated, outsideScope } from '../finding.js';

export const seismic: Check = {
  id: 'seismic',
  title: 'Earthquake',
  subjects: () => [{ id: 'cover', path: '/cover' }],
  run(_subject, ctx, rec) {
    const clause = `ASCE ${ctx.project.basis.codes.loads} 11.1.2`;
    const found = ctx.loads.seismic;
    if (!found) return notEvaluated(clause, 'The earthquake load was not worked out. Needed: its cases.');
    if (found.outcome === 'exempt') return notApplicable(found.clause, found.note);
    if (found.outcome === 'unknown') return notEvaluated(found.clause, found.note);
    if (found.outcome === 'outside') return outsideScope(found.clause, found.note);
    const missing = found.cases.filter((c) => !ctx.loads.cases.some((x) => x.id === c));
    if (found.cases.length === 0 || missing.length > 0)
      return notEvaluated(clause, `The load case ${missing.join(', ')} is not among the cases. Needed: that case.`);
    const pf = ctx.loads.basis.rows.find((r) => r.symbol === 'pf')?.value ?? 0;
    if (rec)
      for (const roof of ctx.structure.roofs)
        for (const axis of ['x', 'y'] as const) {
          rec.heading(`${roof.mark}, along ${axis}`);
          seismicForce(ctx.project, ctx.structure, roof, axis, pf, rec);
        }
    return {
      status: 'pass',
      demand: found.force,
      capacity: 0,
      ratio: 0,
      unit: 'lb',
      combination: '',
      clause: found.clause,
      note: `${found.note} A load, not a resistance: what carries it is checked with it.`,
    };
  },
};
