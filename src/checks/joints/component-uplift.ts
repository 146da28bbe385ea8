/** Uplift of rafter and truss ties under component wind, beside what the main system asks of the same ties. */
import { isOutOfScope, type OutOfScope } from '../../loads/codes/asce7/index.js';
import type { Joint } from '../../structure/model.js';
import { componentCombinations } from '../cladding/combinations.js';
import { componentTies, type LiftPart, tieLift } from '../cladding/framing-wind.js';
import { rakeLift } from '../cladding/rake-wind.js';
import { pairLift } from '../cladding/tied-wind.js';
import type { CheckContext } from '../contract.js';

export type UpliftSource = Pick<CheckContext, 'project' | 'structure' | 'loads' | 'effects'>;

export interface ComponentUplift {
  readonly joint: Joint;
  /** Net pull up on the tie, lb; 0 when the dead load holds it down. */
  readonly up: number;
  /** Its two parts before the sum, lb: wind alone up, and dead alone down, unfactored. */
  readonly wind: number;
  readonly dead: number;
  readonly combination: string;
  readonly label: string;
  /** Effective wind area, in², and net pressure, psf (lifting, negative). */
  readonly area: number;
  readonly pressure: number;
  /** What the wind's lift is made of, for printing. */
  parts(): readonly LiftPart[];
}

export interface ComponentUplifts {
  readonly byJoint: ReadonlyMap<string, ComponentUplift>;
  /** Ties whose lift could not be worked out, by joint id; the reason where the standard's limits are the reason. */
  readonly missing: ReadonlyMap<string, OutOfScope | undefined>;
}

const made = new WeakMap<CheckContext['effects'], ComponentUplifts>();

/** Every tie of a single framing member. Worked out once for the same effects. */
export function componentUplifts(ctx: UpliftSource): ComponentUplifts {
  const known = made.get(ctx.effects);
  if (known) return known;
  const uplifts = workOut(ctx);
  made.set(ctx.effects, uplifts);
  return uplifts;
}

function workOut(ctx: UpliftSource): ComponentUplifts {
  const byJoint = new Map<string, ComponentUplift>();
  const missing = new Map<string, OutOfScope | undefined>();
  const surfaces = new Map(ctx.structure.surfaces.map((s) => [s.id, s]));
  const members = new Map(ctx.structure.members.map((m) => [m.id, m]));
  const combinations = componentCombinations(ctx.loads);
  for (const [id, ties] of componentTies(ctx.structure.joints)) {
    const member = members.get(id);
    const lift =
      member &&
      (member.rake
        ? rakeLift(ctx, member, member.rake, ties)
        : ties.length === 1
          ? pairLift(ctx, member, ties[0]!, surfaces)
          : tieLift(ctx, member, ties, surfaces));
    if (lift === undefined || isOutOfScope(lift)) {
      for (const j of ties) missing.set(j.id, lift);
      continue;
    }
    ties.forEach((joint, i) => {
      const forces = ctx.effects.joints.get(joint.id)?.force;
      if (!forces) {
        missing.set(joint.id, undefined);
        return;
      }
      const wind = lift.up[i]!;
      let best: { readonly up: number; readonly id: string; readonly label: string } | undefined;
      for (const c of combinations) {
        let up = c.wind * wind;
        for (const t of c.terms) up += t.factor * (forces[t.case]?.z ?? 0);
        if (!best || up > best.up) best = { up, id: c.id, label: c.label };
      }
      if (!best) return;
      const dead = ctx.loads.cases.findIndex((c) => c.kind === 'D');
      byJoint.set(joint.id, {
        joint,
        up: Math.max(best.up, 0),
        wind,
        dead: -(forces[dead]?.z ?? 0),
        combination: best.id,
        label: best.label,
        area: lift.area,
        pressure: lift.pressure,
        parts: () => lift.parts(i),
      });
    });
  }
  return { byJoint, missing };
}
