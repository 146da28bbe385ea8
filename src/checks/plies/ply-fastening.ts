/**
 * Plies of a built-up beam or post act together only as far as they are fastened. A beam: load that enters one face
 * (a hanger) or leaves through some of the plies must pass from ply to ply. A post: the rules of NDS 2018 15.3.
 */

import { combineComponent } from '../../analysis/index.js';
import { formatLength } from '../../base/quantity/index.js';
import type { Recorder } from '../../base/trace.js';
import { distance } from '../../base/vec.js';
import { jointsAt, membersOf } from '../../structure/lookup.js';
import type { Joint, Member } from '../../structure/model.js';
import { builtUpNailing } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { TRACE } from '../joints/demands.js';
import { forceParts } from '../joints/force-parts.js';
import { productFor } from '../joints/serving.js';
import { type Plies, pliesOf, plyZ, tooShort } from './fastening.js';

const CLAUSE = 'NDS 2018 12.3, 15.3';
const NONE = [{ id: 'cover', path: '/cover' }];

/** Greatest spacing of the rows in a built-up beam, in, and a row at each edge. IRC 2018 Table R602.3(1) (recalled). */
const MOST_SPACING = 32;

/** Share of a joint's load that must pass through the face next to the ply it enters, for load down and for uplift. */
interface Passing {
  readonly down: number;
  readonly up: number;
}

function passing(ctx: CheckContext, joint: Joint, m: Member): Passing {
  const { plies } = m.section;
  if (joint.contact.length <= 0 || joint.contact.width <= 0) {
    const seated = joint.ties[0]?.part === m.id && productFor(ctx.project.choices, joint.mark, joint.kind)?.seat;
    // Uplift enters both outer plies alike; half of what the others take crosses each outermost face.
    if (seated) return { down: 0, up: (plies - 2) / (2 * plies) };
    const all = (plies - 1) / plies;
    return { down: all, up: all };
  }
  const share = uncovered(joint, m);
  return { down: share, up: share };
}

function uncovered(joint: Joint, m: Member): number {
  const { b } = m.section;
  // The wood it rests on or that rests on it covers this much of the plies.
  const carried = joint.ties[0]?.part === m.id;
  const covered = Math.min(1, (carried ? joint.contact.width : joint.contact.length) / b);
  return 1 - covered;
}

interface Worst {
  readonly joint: Joint;
  readonly member: Member;
  readonly share: number;
  readonly P: number;
  /** Passed load over CD: what ranks joints and combinations. */
  readonly need: number;
  readonly reach: number;
  readonly combination: { readonly id: string; readonly CD: number; readonly clause: string };
}

/** Length of member whose fasteners one joint may use: its own depth each way, and no more than half way to the next. */
function reachOf(ctx: CheckContext, joints: readonly Joint[], joint: Joint, m: Member): number {
  const at = joint.ties.find((t) => t.part === m.id)!.along;
  let before = Math.min(m.section.d, at);
  let after = Math.min(m.section.d, distance(m.start, m.end) - at);
  for (const other of joints) {
    if (other === joint) continue;
    const asked = passing(ctx, other, m);
    if (asked.down <= 0 && asked.up <= 0) continue;
    const d = other.ties.find((t) => t.part === m.id)!.along - at;
    if (d > 1e-6) after = Math.min(after, d / 2);
    else if (d < -1e-6) before = Math.min(before, -d / 2);
  }
  return before + after;
}

function worstOf(ctx: CheckContext, mark: string): Worst | 'unknown' | undefined {
  let worst: Worst | undefined;
  for (const member of membersOf(ctx.structure, mark)) {
    const joints = jointsAt(ctx.structure, member.id).filter((j) => j.kind !== 'beam-splice');
    for (const joint of joints) {
      const { down, up } = passing(ctx, joint, member);
      if (down <= 0 && up <= 0) continue;
      const force = ctx.effects.joints.get(joint.id)?.force;
      if (!force) return 'unknown';
      const reach = reachOf(ctx, joints, joint, member);
      for (const combination of ctx.loads.combinations) {
        const z = combineComponent(force, combination, 'z');
        const P = Math.abs(z);
        const share = z > 0 ? up : down;
        if (share <= 0) continue;
        const need = (P * share) / combination.CD / Math.max(reach, 1e-6);
        if (P >= TRACE && (!worst || need > worst.need)) worst = { joint, member, share, P, need, reach, combination };
      }
    }
  }
  return worst;
}

function beam(ctx: CheckContext, mark: string, p: Plies, rec?: Recorder): Finding {
  const f = p.fastener!;
  const { rows, spacing } = p.fastening!;
  const worst = worstOf(ctx, mark);
  if (worst === 'unknown') return notEvaluated(CLAUSE, 'forces of its joints are not all known, see the frame check');
  if (spacing > MOST_SPACING + 1e-9 || rows < 2) {
    return failed(
      'IRC 2018 Table R602.3(1)',
      `The plies of ${mark} need two rows or more, at ${MOST_SPACING} in or less: here ${rows} at ${formatLength(spacing)}.`,
    );
  }
  if (!worst) {
    return measured(
      {
        demand: spacing,
        capacity: MOST_SPACING,
        unit: 'in',
        clause: 'IRC 2018 Table R602.3(1)',
        formula: 'spacing / greatest spacing',
        note: 'all load enters and leaves through every ply; the rows keep them together (spacing recalled: confirm)',
        remedy: '',
      },
      rec,
    );
  }
  const { joint, P, share, reach, combination } = worst;
  rec?.heading(`${joint.id} on ${worst.member.id}, ${combination.id}`);
  rec?.step({
    symbol: 'R',
    meaning: `load at ${joint.id}, from the frame`,
    formula: 'sum of factored cases',
    substituted: forceParts(ctx, joint.id, combination.id, P, (f) => f.z) || combination.id,
    value: P,
    unit: 'lb',
    clause: combination.clause,
    from: [joint.path],
  });
  const passed = P * share;
  rec?.step({
    symbol: 'Rp',
    meaning: 'part of it that must pass to the other plies',
    formula: 'R · share',
    substituted: `${say(P)} · ${say(share)}`,
    value: passed,
    unit: 'lb',
    clause: 'statics',
  });
  const n = (rows * reach) / spacing;
  rec?.step({
    symbol: 'n',
    meaning: 'fasteners it may use: a beam depth each way, half way to the next such load',
    formula: 'rows · length / spacing',
    substituted: `${rows} · ${say(reach)} / ${say(spacing)}`,
    value: n,
    unit: '',
    clause: 'common practice, no source',
  });
  const Z = plyZ(p, f, combination.CD, rec);
  return measured(
    {
      demand: passed,
      capacity: n * Z,
      unit: 'lb',
      combination: combination.id,
      clause: CLAUSE,
      formula: "Rp / (n·Z')",
      remedy: `The plies of ${mark} cannot pass ${Math.ceil(passed)} lb at ${joint.id} to each other: more rows, closer spacing or through bolts.`,
    },
    rec,
  );
}

function post(p: Plies, m: Member, rec?: Recorder): Finding {
  const { section } = p;
  const f = p.fastener!;
  const { rows, spacing, edge, end } = p.fastening!;
  const clause = 'NDS 2018 15.3.3';
  if (p.gap > 0 || section.plies > 5 || section.plyWidth < 1.5 || !section.family.startsWith('sawn'))
    return outsideScope(
      'NDS 2018 15.3.1',
      'A built-up post has two to five sawn plies, 1-1/2 in thick or more, face to face: use such a one or a solid post.',
    );
  if (f.length === undefined)
    return outsideScope(
      'NDS 2018 15.3.4',
      'Bolted built-up posts are outside the program’s range: nail them or use a solid one.',
    );
  const through = section.plyWidth * (section.plies - 1) + 0.75 * section.plyWidth;
  if (f.length < through - 1e-9)
    return failed(
      clause,
      `Nails of ${m.id} must go through all plies and 3/4 of the last: ${formatLength(through)} or longer.`,
    );
  const rule = builtUpNailing(section.plyWidth, section.d, f.D);
  const wrong = (
    [
      ['end distance', end, rule.endDistance],
      ['spacing', spacing, rule.spacing],
      ['edge distance', edge, rule.edgeDistance],
    ] as const
  ).find(([, x, [min, max]]) => x < min - 1e-9 || x > max + 1e-9);
  if (wrong)
    return failed(
      clause,
      `${wrong[0]} ${formatLength(wrong[1])} of the plies of ${m.id}: from ${formatLength(wrong[2][0])} to ${formatLength(wrong[2][1])}.`,
    );
  return measured(
    {
      demand: rule.rows,
      capacity: rows,
      unit: 'rows',
      clause,
      formula: 'rows needed / rows',
      note: 'nailing rule recalled from memory: confirm',
      remedy: `The plies of ${m.id} are deeper than three times their thickness: two rows of nails.`,
    },
    rec,
  );
}

const builtUp = (ctx: CheckContext): readonly Member[] => {
  const seen = new Map<string, Member>();
  for (const m of ctx.structure.members)
    if (m.state === 'new' && (m.role === 'beam' || m.role === 'post') && m.section.plies > 1 && !seen.has(m.mark))
      seen.set(m.mark, m);
  return [...seen.values()];
};

export const plyFastening: Check = {
  id: 'ply-fastening',
  title: 'Fastening of plies',
  subjects(ctx) {
    const found = builtUp(ctx).map((m) => ({ id: m.mark, path: m.section.path }));
    return found.length > 0 ? found : NONE;
  },
  run(subject, ctx, rec) {
    const m = builtUp(ctx).find((q) => q.mark === subject.id);
    if (!m) return notApplicable(CLAUSE, 'no beam or post is built up of plies');
    const p = pliesOf(ctx, m.section)!;
    if (!p.fastening || !p.fastener)
      return notEvaluated(
        CLAUSE,
        `How the plies of ${m.mark} are fastened is not in the file: give "plyFastening" to its section.`,
      );
    const short = tooShort(p, p.fastener);
    if (short) return failed('NDS 2018 12.1.6', `Plies of ${m.mark}: ${short}.`);
    return m.role === 'post' ? post(p, m, rec) : beam(ctx, m.mark, p, rec);
  },
};
