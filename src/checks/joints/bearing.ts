/**
 * Bearing perpendicular to grain where wood lies on wood or on a post: each member whose grain runs across the load.
 * Plywood strips of either part count for nothing. A sloped rafter is taken square to its grain, which is the weaker way.
 * NDS 2018 3.10.2.
 */

import { jointEnvelope } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import { distance } from '../../base/vec.js';
import { jointsAt, jointsOf, memberOf } from '../../structure/lookup.js';
import type { Joint, Member, MemberRole, Structure } from '../../structure/model.js';
import { Cb, fcPerp } from '../codes/nds-2018/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { raised, raiseToStatics } from '../hand.js';
import { designValue, WET_REFUSED } from '../members/design.js';
import { forceParts } from './force-parts.js';
import { JOINT_TRAITS } from './kinds.js';

const CLAUSE = 'NDS 2018 3.10.2';

/** Parts that bear side on. A post bears on its end; a truss's own bearing is on its sealed sheet. */
const SIDE_ON: Readonly<Partial<Record<MemberRole, true>>> = { beam: true, rafter: true, ledger: true, blocking: true };

interface Contact {
  readonly member: Member;
  /** Along the member's grain, and the area of wood on wood, inches. */
  readonly lb: number;
  readonly area: number;
  /** The area in figures: `5.5·1.5·4.5/5.5`. */
  readonly figures: string;
  readonly toEnd: number;
}

const short = (v: number): string => String(Number(v.toFixed(3)));

function contacts(structure: Structure, joint: Joint): readonly Contact[] {
  const { length } = joint.contact;
  const above = memberOf(structure, joint.ties[0]?.part ?? '');
  const width = Math.min(joint.contact.width, above?.section.b ?? Number.POSITIVE_INFINITY);
  if (!JOINT_TRAITS[joint.kind].carries || length <= 0 || width <= 0) return [];
  const parts = joint.ties.map((t) => ({ tie: t, member: memberOf(structure, t.part) }));
  // Across the part above the contact is its wood alone; across the part below it is the whole width, strips too.
  const below = parts.at(-1)?.member?.section;
  const solid = below ? below.b / below.width : 1;
  const figures = `${short(length)}·${short(width)}${below && solid < 1 ? `·${short(below.b)}/${short(below.width)}` : ''}`;
  return parts.flatMap(({ tie, member }, i) => {
    if (!member || !SIDE_ON[member.role]) return [];
    const lb = i === 0 ? length : width;
    const whole = distance(member.start, member.end);
    // A splice is an end of the timber on both its sides.
    const ends = [0, whole, ...splices(structure, member.id)];
    const toEnd =
      ends.reduce((least, e) => Math.min(least, Math.abs(tie.along - e)), Number.POSITIVE_INFINITY) - lb / 2;
    return [{ member, lb, area: length * width * solid, figures, toEnd: Math.max(toEnd, 0) }];
  });
}

/** Places along a member where it is spliced. */
const splices = (structure: Structure, member: string): readonly number[] =>
  jointsAt(structure, member).flatMap((j) =>
    j.kind === 'beam-splice' ? j.ties.filter((t) => t.part === member).map((t) => t.along) : [],
  );

/** Whether the joint presses wood on wood, which `joint-bearing` checks. A post on its base does not. */
export const bearsOnWood = (structure: Structure, joint: Joint): boolean => contacts(structure, joint).length > 0;

interface Worst {
  readonly contact: Contact;
  readonly joint: Joint;
  readonly R: number;
  readonly combination: string;
  readonly ratio: number;
}

function strength(c: Contact, rec?: Recorder): number | undefined {
  return designValue('FcPerp', c.member.section, { Cb: Cb(c.lb, c.toEnd, rec) }, rec);
}

export const jointBearing: Check = {
  id: 'joint-bearing',
  title: 'Bearing across the grain',
  subjects(ctx: CheckContext) {
    const seen = new Map<string, string>();
    for (const j of ctx.structure.joints) {
      if (!seen.has(j.mark) && contacts(ctx.structure, j).length > 0) seen.set(j.mark, j.path);
    }
    return [...seen].map(([id, path]) => ({ id, path }));
  },
  run(subject, ctx, rec) {
    let worst: Worst | undefined;
    for (const joint of jointsOf(ctx.structure, subject.id)) {
      const e = jointEnvelope(ctx.effects, joint.id, ctx.loads.combinations);
      if (!e) return notEvaluated(CLAUSE, 'no forces were worked out for this joint, see the frame check');
      for (const contact of contacts(ctx.structure, joint)) {
        const F = strength(contact);
        if (F === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
        const ratio = e.down.value / contact.area / F;
        if (worst && ratio <= worst.ratio) continue;
        const combination = ctx.loads.combinations[e.down.combination]?.id ?? '';
        worst = { contact, joint, R: e.down.value, combination, ratio };
      }
    }
    if (!worst || worst.R <= 0) return notApplicable(CLAUSE, 'no combination presses on this joint');
    const { contact, joint, combination } = worst;
    const { member } = contact;
    rec?.heading(`${joint.id} on ${member.id}: ${member.section.label}, ${combination}`);
    rec?.step({
      symbol: 'R',
      meaning: `force pressing on joint ${joint.id}, from the frame`,
      formula: `largest of the combinations, ${combination}`,
      substituted: forceParts(ctx, joint.id, combination, worst.R, (f) => f.z),
      value: worst.R,
      unit: 'lb',
      clause: 'ASCE 7-16 2.4',
      from: [joint.path],
    });
    const pair = joint.ties.map((t) => t.part);
    const raise = raiseToStatics(ctx, (about) => about === `${pair[0]} on ${pair.at(-1)}`);
    const R = raised(worst.R, 'R', 'lb', raise, rec);
    rec?.step({
      symbol: 'A',
      meaning: 'wood on wood, plywood strips left out',
      formula: 'contact along · wood across (· wood/width of the part below)',
      substituted: contact.figures,
      value: contact.area,
      unit: 'in²',
      clause: CLAUSE,
      from: [joint.path],
    });
    rec?.step({
      symbol: 'b',
      meaning: `wood across the grain of ${member.id}`,
      formula: 'A / lb',
      substituted: `${short(contact.area)}/${short(contact.lb)}`,
      value: contact.area / contact.lb,
      unit: 'in',
      clause: CLAUSE,
      from: [joint.path],
    });
    const stress = fcPerp(R, contact.area / contact.lb, contact.lb, rec);
    return measured(
      {
        demand: stress,
        capacity: strength(contact, rec)!,
        unit: 'psi',
        combination,
        clause: CLAUSE,
        formula: "fc⊥ / Fc⊥'",
        remedy: `${member.id} is crushed at joint ${joint.id}: give it a longer bearing, a wider section or a harder species.`,
      },
      rec,
    );
  },
};
