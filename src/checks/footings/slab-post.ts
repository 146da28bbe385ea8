/** Posts on a slab without footings: only as the patio-cover appendix lets them. IRC 2018 AH105.2. */
import { PATIO_MAX_SLAB_COLUMN_LOAD, PATIO_MIN_SLAB, patioCoverFaults } from '../codes/irc-2018/index.js';
import type { Check, CheckContext } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, NO_FORCE, NO_MOMENT, recordActions } from './actions.js';
import { footingSubjects, type LoadedFooting, loadedFootings } from './footing.js';

const CLAUSE = 'IRC 2018 AH105.2';
const CURE = 'give the post a footing of its own.';

/** Why the cover is none of the appendix's, in words; empty when it is one. */
function strange(ctx: CheckContext): string {
  const { structure, project } = ctx;
  const height = Math.max(0, ...structure.roofs.map((r) => r.highestPoint)) - structure.grade.z0;
  const faults = patioCoverFaults({
    height,
    stories: 1,
    use: project.cover.use === 'recreation' ? 'outdoor-living' : 'carport',
    walls: [],
  });
  return faults.length > 0 ? `the appendix covers no such structure (${faults.join(', ')})` : '';
}

export const slabPost: Check = {
  id: 'slab-post',
  title: 'Post on the slab without footing',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const on = loaded.filter(({ footing }) => footing.onSlab);
    if (on.length === 0) return notApplicable(CLAUSE, 'the post has a footing');
    const { roofLive, frost } = ctx.project.basis;
    const { patioAppendix } = roofLive;
    if (patioAppendix.state === 'unknown' || frost.state === 'unknown')
      return notEvaluated(
        CLAUSE,
        'The office has not said whether the patio-cover appendix is adopted, or the frost depth.',
      );
    if (!patioAppendix.value)
      return failed(
        CLAUSE,
        `The patio-cover appendix is not adopted here, and without it no post may stand on a slab: ${CURE}`,
      );
    const no = strange(ctx);
    if (no !== '') return failed('IRC 2018 AH101.2, AH103.1', `${no}: ${CURE}`);
    if (frost.value > 0)
      return failed(CLAUSE, `Frost reaches ${frost.value} in here; the appendix asks for none: ${CURE}`);
    let worst: { on: LoadedFooting; a: Actions } | undefined;
    for (const one of on) {
      if (one.footing.onSlab!.thickness < PATIO_MIN_SLAB)
        return failed(CLAUSE, `Slab ${one.footing.onSlab!.slab} is thinner than ${PATIO_MIN_SLAB} in: ${CURE}`);
      for (const a of actionsUnder(ctx, one, ctx.loads.combinations)) {
        if (a.V >= NO_FORCE || Math.hypot(a.Mx, a.My) >= NO_MOMENT)
          return failed(CLAUSE, `${one.footing.id} takes side force or moment, which a slab by rule does not: ${CURE}`);
        // Live (or snow) and dead load on the column, whatever wind adds or takes.
        if (!a.wind && a.P > (worst?.a.P ?? 0)) worst = { on: one, a };
      }
    }
    if (!worst) return notApplicable(CLAUSE, 'no live or dead load comes down here');
    rec?.heading(
      `${worst.on.footing.id}: slab ${worst.on.footing.onSlab!.thickness} in thick, ${worst.a.combination.id}`,
    );
    recordActions(ctx, worst.on, worst.a, rec);
    rec?.step({
      symbol: 'Pmax',
      meaning: `most live and dead load on a column without footing; slab ${PATIO_MIN_SLAB} in or more, no frost`,
      formula: 'rule',
      substituted: `appendix adopted: ${patioAppendix.from}`,
      value: PATIO_MAX_SLAB_COLUMN_LOAD,
      unit: 'lb',
      clause: CLAUSE,
      from: [patioAppendix.path, frost.path],
    });
    return measured(
      {
        demand: worst.a.P,
        capacity: PATIO_MAX_SLAB_COLUMN_LOAD,
        unit: 'lb',
        combination: worst.a.combination.id,
        clause: CLAUSE,
        formula: 'P / Pmax',
        remedy: `${worst.on.footing.id} carries more than ${PATIO_MAX_SLAB_COLUMN_LOAD} lb: ${CURE}`,
      },
      rec,
    );
  },
};
