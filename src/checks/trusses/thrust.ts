/**
 * Second set of forces under scissor trusses: both bearings held. Each truss then pushes its beams apart; the beams bend
 * sideways between their posts on top of what they carry anyway (NDS 2018 3.9.2), and joints and post tops take the push.
 */
import { type ForceEnvelope, jointEnvelope, type TrussEffects, thrustSet, trussEffects } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Subject } from '../contract.js';
import { notApplicable, notEvaluated } from '../finding.js';
import { combinedFinding } from '../members/combined.js';
import { sumText } from '../members/scan.js';
import { noForces } from '../members/subjects.js';
import { isScissor } from './subjects.js';

const CLAUSE = 'NDS 2018 3.9.2';

type Source = Pick<CheckContext, 'structure' | 'loads' | 'effects'>;

/** Greatest forces through a joint with both bearings held; undefined where no truss pushes outward. */
export function thrustEnvelope(ctx: Source, joint: string): ForceEnvelope | undefined {
  const set = thrustSet(ctx);
  return set && jointEnvelope(set.effects, joint, ctx.loads.combinations);
}

/** Beams under scissor trusses. */
function pushedBeams(ctx: CheckContext): readonly Subject[] {
  const trusses = new Set(
    trussEffects(ctx)
      .filter(isScissor)
      .flatMap((t) => t.members),
  );
  if (trusses.size === 0) return [];
  const under = new Set(
    ctx.structure.joints.filter((j) => trusses.has(j.ties[0]?.part ?? '')).map((j) => j.ties.at(-1)!.part),
  );
  return ctx.structure.members
    .filter((m) => m.role === 'beam' && under.has(m.id))
    .map((m) => ({ id: m.id, path: m.path }));
}

/** Ids of the parts that stand on a beam. */
const trussesOn = (ctx: CheckContext, beam: string): ReadonlySet<string> =>
  new Set(ctx.structure.joints.filter((j) => j.ties.at(-1)?.part === beam).map((j) => j.ties[0]!.part));

interface Most {
  readonly value: number;
  readonly combination: Combination | undefined;
}

/** Greatest size of a sum over the combinations. */
function most(ctx: CheckContext, of: (loadCase: number) => number): Most {
  let best: Most = { value: 0, combination: undefined };
  for (const combination of ctx.loads.combinations) {
    let sum = 0;
    for (const t of combination.terms) sum += t.factor * of(t.case);
    if (Math.abs(sum) > Math.abs(best.value)) best = { value: sum, combination };
  }
  return best;
}

/** Opening with a bearing free, what the beams give, and the push that closes the difference. */
function recordPush(
  ctx: CheckContext,
  id: string,
  truss: TrussEffects,
  H: number,
  combination: Combination,
  rec: Recorder,
): void {
  const f = truss.model.push.spread;
  let free = 0;
  for (const t of combination.terms) free += t.factor * truss.spread[t.case]!;
  rec.heading(`${id}: both bearings fastened to beams held at their post tops, ${combination.id}`);
  rec.step({
    symbol: 'Δ',
    meaning: 'opening between the bearings if one were free to slide (preliminary layout, assumed lumber)',
    formula: combination.label,
    substituted: sumText(ctx, combination, (c) => truss.spread[c]!),
    value: free,
    unit: 'in',
    clause: 'statics',
    from: [truss.member.path],
  });
  rec.step({
    symbol: 'δ',
    meaning: 'what the two beams give sideways here under the pushes of all trusses',
    formula: 'beams bending sideways between post tops that do not give',
    substituted: 'from the beams’ frame, (f + C)·H = Δ for all trusses together',
    value: free - f * H,
    unit: 'in',
    clause: 'statics',
  });
  rec.step({
    symbol: 'H',
    meaning: 'outward push of one truss on each beam',
    formula: '(Δ − δ) / f, f = opening per pound of push',
    substituted: `(${say(free)} − ${say(free - f * H)}) / ${say(f)}`,
    value: H,
    unit: 'lb',
    clause: 'statics',
    note: 'the truss plant’s engineer decides the truss',
  });
}

/** Systems that hold a post's top: the push must then be theirs as well. */
const HOLDS_TOPS: ReadonlySet<string> = new Set(['knee-braces', 'fixed-posts']);

export const scissorThrust: Check = {
  id: 'scissor-thrust',
  title: 'Scissor truss: outward push on the beam',
  subjects: pushedBeams,
  run(subject, ctx, rec) {
    const on = trussesOn(ctx, subject.id);
    const pushing = trussEffects(ctx).filter(
      (t) => isScissor(t) && t.member.truss?.slides === undefined && t.members.some((id) => on.has(id)),
    );
    if (pushing.length === 0) {
      return notApplicable(
        CLAUSE,
        'one bearing of every scissor truss on this beam slides, so none pushes it; the truss papers and the connector must allow the movement that scissor-spread gives',
      );
    }
    const set = thrustSet(ctx);
    const effects = set?.effects.members.get(subject.id);
    const member = ctx.structure.members.find((m) => m.id === subject.id);
    if (!set || !effects || !member) return noForces(CLAUSE);

    let push: Most & { readonly id: string } = { value: 0, combination: undefined, id: '' };
    for (const [id, rows] of set.push) {
      if (!on.has(id)) continue;
      const one = most(ctx, (c) => rows[c]!);
      if (Math.abs(one.value) > Math.abs(push.value)) push = { ...one, id };
    }
    const truss = trussEffects(ctx).find((t) => t.members.includes(push.id));
    if (rec && truss && push.combination) recordPush(ctx, push.id, truss, push.value, push.combination, rec);
    let top: Most & { readonly post: string } = { value: 0, combination: undefined, post: '' };
    for (const r of set.restraints) {
      if (r.beam !== subject.id) continue;
      const axis = Math.abs(member.end.x - member.start.x) < Math.abs(member.end.y - member.start.y) ? 'x' : 'y';
      const one = most(ctx, (c) => r.force[c]![axis]);
      if (Math.abs(one.value) <= Math.abs(top.value)) continue;
      const joint = ctx.structure.joints.find(
        (j) => j.kind === 'beam-to-post' && Math.hypot(j.at.x - r.at.x, j.at.y - r.at.y) < 1,
      );
      top = { ...one, post: joint?.ties.at(-1)?.part ?? '' };
    }
    rec?.step({
      symbol: 'Ht',
      meaning: `push that arrives at the top of ${top.post || 'the post'}`,
      formula: 'beam on its posts, sideways',
      substituted: `${Math.abs(top.value).toFixed(0)} (${top.combination?.id ?? 'none'})`,
      value: Math.abs(top.value),
      unit: 'lb',
      clause: 'statics',
    });
    const found = combinedFinding(ctx, [{ member, effects }], rec);
    if (found.status === 'not-applicable') {
      return notApplicable(CLAUSE, 'the trusses push this beam by nothing worth counting');
    }
    const said = `Both bearings held: each truss pushes up to ${Math.abs(push.value).toFixed(0)} lb outward, and ${Math.abs(top.value).toFixed(0)} lb arrives at ${top.post}.`;
    if (found.status !== 'pass') return { ...found, note: `${said} ${found.note}` };
    const across = Math.abs(member.end.x - member.start.x) < Math.abs(member.end.y - member.start.y) ? 'x' : 'y';
    const system = ctx.project.cover.lateral[across];
    if (HOLDS_TOPS.has(system)) {
      return notEvaluated(
        CLAUSE,
        `${said} What holds the post tops against side load (${system}) would take this push as well, and that is not worked out. Needed: a bearing detail that lets one side slide, shown by the truss papers, or a licensed professional.`,
      );
    }
    return {
      ...found,
      clause: CLAUSE,
      note: `${said} Posts hinged at both ends do not hold it; the trusses then open as the other set says. Both sets govern.`,
    };
  },
};
