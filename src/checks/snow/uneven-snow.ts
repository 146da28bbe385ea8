/**
 * Snow that does not lie evenly (ASCE 7 7.5, 7.6.1, 7.7, 7.9). The strength of what carries it is the members' and footings'
 * own check; these say that the load was worked out and carried as a case, why it does not arise, or that it is not covered.
 * There is no capacity to compare with, so the ratio is zero.
 */
import type { SnowQuestion } from '../../loads/model.js';
import type { Check, CheckContext, Subject } from '../contract.js';
import { notApplicable, notEvaluated, outsideScope } from '../finding.js';

const roofSubjects = (ctx: CheckContext): readonly Subject[] =>
  ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path }));

const snowCheck = (id: string, title: string, question: SnowQuestion, section: string): Check => ({
  id,
  title,
  subjects: roofSubjects,
  run(subject, ctx, rec) {
    const clause = `ASCE ${ctx.project.basis.codes.loads} ${section}`;
    if (!(ctx.project.basis.snow.ground.value > 0)) return notApplicable(clause, 'the ground snow load here is zero');
    const found = ctx.loads.snow?.find((a) => a.roof === subject.id && a.question === question);
    if (!found)
      return notEvaluated(clause, 'The snow on this roof could not be worked out. Needed: its balanced load.');
    if (found.outcome === 'none') return notApplicable(found.clause, found.note);
    if (found.outcome === 'outside')
      return outsideScope(found.clause, `${found.note} A licensed professional has to state this load.`);
    // A case said to be carried must be there, or nothing was.
    const missing = found.cases.filter((c) => !ctx.loads.cases.some((x) => x.id === c));
    if (found.cases.length === 0 || missing.length > 0)
      return notEvaluated(
        found.clause,
        `The load case ${missing.join(', ')} is not among the cases. Needed: that case.`,
      );
    rec?.step({
      symbol: 'p',
      meaning: 'greatest snow load above the even snow beside it, included in the load cases',
      formula: 'see the load basis',
      substituted: found.note,
      value: found.peak,
      unit: 'psf',
      clause: found.clause,
      from: [subject.path],
    });
    return {
      status: 'pass',
      demand: found.peak,
      capacity: 0,
      ratio: 0,
      unit: 'psf',
      combination: '',
      clause: found.clause,
      note: `${found.note} A load, not a resistance: what carries it is checked with it.`,
    };
  },
});

export const snowDrift = snowCheck('snow-drift', 'Snow drift against the house', 'drift', '7.7');
export const snowSliding = snowCheck('snow-sliding', 'Snow sliding from a higher roof', 'sliding', '7.9');
export const snowUnbalanced = snowCheck('snow-unbalanced', 'Unbalanced snow across the ridge', 'unbalanced', '7.6.1');
export const snowPartial = snowCheck('snow-partial', 'Snow on some spans only', 'partial', '7.5');
