/** Depth, size and material limits of footings that need no load. IRC 2018 R403, IBC 2018 1809, ACI 318-14 chapter 14. */

import { contains } from '../../base/plane.js';
import { footingsOf, standsOn } from '../../structure/lookup.js';
import type { Footing, Member } from '../../structure/model.js';
import { MIN_FC, MIN_PLAIN_THICKNESS } from '../codes/aci-318-14/index.js';
import { IRC_MIN_FOOTING_WIDTH, ircFootingDepth, ircFootingThickness } from '../codes/irc-2018/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, ratioOf } from '../finding.js';
import { groundBeside } from './actions.js';
import { footingSubjects } from './footing.js';

const ofMark = (ctx: CheckContext, mark: string): readonly Footing[] => footingsOf(ctx.structure, mark);

const ON_SLAB = 'no footing: the slab carries the post by rule, see the slab check';

export const frostDepth: Check = {
  id: 'frost-depth',
  title: 'Footing depth and frost',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const clause = 'IRC 2018 R403.1.4';
    const [first, ...rest] = ofMark(ctx, subject.id);
    if (!first) return notEvaluated(clause, 'no such footing');
    if (first.onSlab) return notApplicable(clause, ON_SLAB);
    const depth = (q: Footing): number => groundBeside(ctx, q) - q.bottom;
    const f = rest.reduce((least, q) => (depth(q) < depth(least) ? q : least), first);
    const { frost } = ctx.project.basis;
    // The exemption of small free-standing structures is the office's to grant; it is never taken here.
    const required = ircFootingDepth(frost.value, false, rec);
    rec?.step({
      symbol: 'd',
      meaning: 'underside of the footing below the finished grade beside it',
      formula: 'z(grade) − z(bottom)',
      substituted: `${groundBeside(ctx, f).toFixed(1)} − ${f.bottom.toFixed(1)}`,
      value: depth(f),
      unit: 'in',
      clause,
      from: [f.path, frost.path],
    });
    return measured(
      {
        demand: required,
        capacity: depth(f),
        unit: 'in',
        clause,
        formula: 'required / depth',
        prescriptive: true,
        remedy: `${f.id} is ${depth(f).toFixed(1)} in deep where ${required.toFixed(0)} in is needed: dig deeper.`,
      },
      rec,
    );
  },
};

interface Limit {
  readonly what: string;
  readonly need: number;
  readonly have: number;
  readonly unit: string;
  readonly clause: string;
}

function limits(f: Footing): readonly Limit[] {
  const list: Limit[] = [
    { what: 'width', need: IRC_MIN_FOOTING_WIDTH, have: f.size, unit: 'in', clause: 'IRC 2018 R403.1.1' },
    { what: 'concrete strength', need: MIN_FC, have: f.fc, unit: 'psi', clause: 'ACI 318-14 19.2.1.1' },
  ];
  // A post set in the ground with no more than concrete under its foot has a plain footing there.
  const plug = f.embedded && !f.embedded.cast ? f.embedded.foot - f.bottom : 0;
  if (plug > 0)
    list.push({
      what: 'concrete under the post',
      need: MIN_PLAIN_THICKNESS,
      have: plug,
      unit: 'in',
      clause: 'ACI 318-14 14.3.2.1',
    });
  if (f.padThickness > 0) {
    const projection = Math.max((f.size - f.pierDiameter) / 2, 0);
    // Where no pier stands on the pad the post does, and the projection is known to flexure and shear only.
    const least = f.pierDiameter > 0 ? ircFootingThickness(projection) : 0;
    list.push({
      what: 'pad thickness',
      need: Math.max(MIN_PLAIN_THICKNESS, least),
      have: f.padThickness,
      unit: 'in',
      clause: 'IRC 2018 R403.1.1, ACI 318-14 14.3.2.1',
    });
  }
  return list;
}

export const footingSize: Check = {
  id: 'footing-size',
  title: 'Footing size and concrete',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    let worst: { f: Footing; limit: Limit } | undefined;
    if (ofMark(ctx, subject.id).some((f) => f.onSlab)) return notApplicable('IRC 2018 R403.1.1', ON_SLAB);
    for (const f of ofMark(ctx, subject.id)) {
      for (const limit of limits(f)) {
        if (!worst || ratioOf(limit.need, limit.have) > ratioOf(worst.limit.need, worst.limit.have))
          worst = { f, limit };
      }
    }
    if (!worst) return notEvaluated('IRC 2018 R403.1.1', 'no such footing');
    const { f, limit } = worst;
    for (const l of rec ? limits(f) : []) {
      rec?.step({
        symbol: 'least',
        meaning: `least ${l.what} (this footing: ${l.have} ${l.unit})`,
        formula: 'prescriptive minimum',
        substituted: `${l.need} ${l.unit}`,
        value: l.need,
        unit: l.unit,
        clause: l.clause,
        from: [f.path],
      });
    }
    return measured(
      {
        demand: limit.need,
        capacity: limit.have,
        unit: limit.unit,
        clause: limit.clause,
        formula: `least ${limit.what} / ${limit.what}`,
        prescriptive: true,
        remedy: `The ${limit.what} of ${f.id} is ${limit.have} ${limit.unit} where ${limit.need} ${limit.unit} is the least: enlarge it.`,
      },
      rec,
    );
  },
};

/** Height of a post's foot above a slab, and above bare earth, that keeps untreated wood dry, inches. */
export const DRY_OVER_SLAB = 1;
export const DRY_OVER_EARTH = 6;

/** Wood in the ground lasts only when treated for it. */
function inGround(f: Footing, post: Member): Finding {
  const clause = 'IRC 2018 R317.1.2 (recalled)';
  if (post.section.treatment === 'ground-contact')
    return notApplicable(
      clause,
      'set in the ground, treated for ground contact: mark UC4B or better for structural posts (recalled)',
    );
  return failed(clause, `${post.id} runs into the ground at ${f.id}: use wood treated for ground contact.`);
}

export const postFoot: Check = {
  id: 'post-foot',
  title: 'Post foot kept dry',
  subjects: footingSubjects,
  run(subject, ctx, rec): Finding {
    const clause = 'IRC 2018 R317.1.4 (recalled)';
    const [f] = ofMark(ctx, subject.id);
    const post = f && standsOn(ctx.structure, f.id);
    if (!f || post?.role !== 'post') return notEvaluated(clause, 'no post stands on this footing');
    if (f.embedded) return inGround(f, post);
    const onSlab = ctx.structure.slabs.some((s) => s.state !== 'removed' && contains(s.outline, f.at));
    const clear = post.start.z - f.surface;
    const treated = post.section.treatment !== 'none';
    const need = treated ? 0 : onSlab ? DRY_OVER_SLAB : DRY_OVER_EARTH;
    rec?.step({
      symbol: 'c',
      meaning: `foot of ${post.id} above the ${onSlab ? 'slab' : 'earth'}${treated ? ', treated wood' : ''}`,
      formula: 'z(post foot) − z(surface)',
      substituted: `${post.start.z.toFixed(2)} − ${f.surface.toFixed(2)}`,
      value: clear,
      unit: 'in',
      clause,
      from: [post.path, '/choices/standoff'],
    });
    return measured(
      {
        demand: need,
        capacity: clear,
        unit: 'in',
        clause,
        formula: 'least height / height',
        prescriptive: true,
        mustFail: clear < 0,
        remedy: `The foot of ${post.id} is ${clear.toFixed(1)} in above the ${onSlab ? 'slab' : 'earth'} where untreated wood needs ${need} in: raise the pier or use treated wood.`,
      },
      rec,
    );
  },
};
