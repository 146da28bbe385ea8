/** The foot of a post on the concrete under it. ACI 318-14 14.5.6. */
import { standsOn } from '../../structure/lookup.js';
import { plainBearing } from '../codes/aci-318-14/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable, ratioOf } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, recordActions } from './actions.js';
import { footingSubjects, type LoadedFooting, loadedFootings } from './footing.js';

export const baseBearing: Check = {
  id: 'base-bearing',
  title: 'Post base on concrete',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const clause = 'ACI 318-14 14.5.6.1';
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(clause);
    let worst: { on: LoadedFooting; a: Actions; A1: number; A2: number; ratio: number } | undefined;
    for (const on of loaded) {
      const { footing } = on;
      // A post that stands on bare soil in its hole bears on no concrete.
      if (footing.embedded && footing.embedded.foot <= footing.bottom) continue;
      const post = standsOn(ctx.structure, footing.id);
      if (!post) continue;
      const A1 = post.section.b * post.section.d;
      // The same shape, larger, that still fits on top: in a circle by its diagonal, in a square by its longer side.
      const scale =
        footing.pierDiameter > 0
          ? footing.pierDiameter / Math.hypot(post.section.b, post.section.d)
          : footing.size / Math.max(post.section.b, post.section.d);
      const A2 = A1 * Math.max(1, scale) ** 2;
      for (const a of actionsUnder(ctx, on, ctx.loads.strength)) {
        const ratio = ratioOf(a.P, plainBearing(footing.fc, A1, A2));
        if (!worst || ratio > worst.ratio) worst = { on, a, A1, A2, ratio };
      }
    }
    if (!worst) return notApplicable(clause, 'no post stands on concrete here');
    const { on, a, A1, A2 } = worst;
    rec?.heading(`${on.footing.id}: foot of the post on the concrete, ${a.combination.id}`);
    recordActions(ctx, on, a, rec);
    rec?.step({
      symbol: 'A1',
      meaning: `section of the post; A2 = ${A2.toFixed(1)} in² is the same shape as large as fits on the concrete`,
      formula: 'b·d',
      substituted: A1.toFixed(2),
      value: A1,
      unit: 'in²',
      clause: 'ACI 318-14 14.5.6.1',
    });
    return measured(
      {
        demand: Math.max(0, a.P),
        capacity: plainBearing(on.footing.fc, A1, A2, rec),
        unit: 'lb',
        combination: a.combination.id,
        clause,
        formula: 'Pu / φBn',
        remedy: `The post crushes the concrete of ${on.footing.id}: use stronger concrete or a larger post.`,
      },
      rec,
    );
  },
};
