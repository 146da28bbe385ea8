/** A post base with a published moment against the moment the frame asks of it. Embedded posts are held by the ground. */
import { combineComponent } from '../../analysis/index.js';
import type { Combination } from '../../loads/model.js';
import type { Joint, Member } from '../../structure/model.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, notEvaluated } from '../finding.js';
import { durationPart } from '../joints/rating.js';
import { productFor } from '../joints/serving.js';

const CLAUSE = 'published moment of the post base';

const footJoint = (ctx: CheckContext, post: Member): Joint | undefined =>
  ctx.structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[0]!.part === post.id);

export const baseMoment: Check = {
  id: 'base-moment',
  title: 'Moment at a fixed post base',
  subjects: (ctx) =>
    ctx.structure.members.filter((m) => m.foot?.kind === 'fixed').map((m) => ({ id: m.mark, path: m.path })),
  run(subject, ctx, rec) {
    const post = ctx.structure.members.find((m) => m.mark === subject.id && m.foot?.kind === 'fixed');
    const joint = post && footJoint(ctx, post);
    if (!post || !joint) return notApplicable(CLAUSE, 'no such post');
    const moment = ctx.effects.joints.get(joint.id)?.moment;
    if (!moment) return notEvaluated(CLAUSE, 'no forces were worked out for this foot, see the frame check');
    const product = productFor(ctx.project.choices, joint.mark, joint.kind);
    if (product?.moment === undefined)
      return notEvaluated(
        CLAUSE,
        `${post.id} counts as fixed at its base, and no base with a published moment serves ${joint.mark}. Needed: its allowable moment, under "moment"; an ordinary standoff base has none.`,
      );
    let worst: { combination: Combination; M: number; part: number } | undefined;
    for (const combination of ctx.loads.combinations) {
      const M = Math.hypot(combineComponent(moment, combination, 'x'), combineComponent(moment, combination, 'y'));
      const part = durationPart(combination.CD, product.duration);
      if (!worst || M / part > worst.M / worst.part) worst = { combination, M, part };
    }
    if (!worst) return notApplicable(CLAUSE, 'no combination bends this foot');
    const { combination, M, part } = worst;
    rec?.heading(`${joint.id} under ${post.id}, ${combination.id}: ${product.product}`);
    rec?.step({
      symbol: 'M',
      meaning: 'moment at the foot, both directions together',
      formula: '√(Mx² + My²)',
      substituted: `√(${combineComponent(moment, combination, 'x').toFixed(0)}² + ${combineComponent(moment, combination, 'y').toFixed(0)}²)`,
      value: M,
      unit: 'lb·in',
      clause: combination.clause,
      from: [post.path],
    });
    rec?.step({
      symbol: 'Mallow',
      meaning: 'published moment of one base at this load duration',
      formula: 'published · min(1, CD / CD published)',
      substituted: `${product.moment.toFixed(0)} · min(1, ${combination.CD} / ${product.duration})`,
      value: product.moment * part,
      unit: 'lb·in',
      clause: product.source,
      from: [`${product.path}/moment`],
    });
    return measured(
      {
        demand: M,
        capacity: product.moment * part,
        unit: 'lb·in',
        combination: combination.id,
        clause: CLAUSE,
        formula: 'M / Mallow',
        remedy: `The base of ${post.id} is asked for ${Math.ceil(M / 12)} lb·ft: use a base with a larger published moment, knee braces, or embedded posts.`,
      },
      rec,
    );
  },
};
