/** The place and combination that ask most of a ledger's fasteners. */
import { beamShares } from '../../analysis/ledger.js';
import type { Joint } from '../../structure/model.js';
import { combinedLateralWithdrawal } from '../codes/nds-2018/index.js';
import type { CheckContext } from '../contract.js';
import { RATIO_CAP } from '../finding.js';
import { componentUplifts } from '../joints/component-uplift.js';
import { type Factors, factorsOf, lateralOf, pullOf, reference, type Shank } from './fastener.js';
import { type FlatForces, flatForces, type HousePlace } from './places.js';

/** Forces under this are rounding, lb. */
const TRACE = 0.5;

/** Forces at one place: sideways along the wall, down (positive) or up, and out from the wall, lb. */
export interface Force {
  readonly joint: Joint;
  readonly combination: string;
  readonly CD: number;
  readonly along: number;
  readonly down: number;
  readonly out: number;
}

/**
 * The larger component wind under each rafter, brought to the places as its reaction is (ASCE 7-16 30.7). It does not
 * come to all rafters at once: shares that would press a place on the wall relieve nothing.
 */
function componentForces(ctx: CheckContext, place: HousePlace): Force[] {
  const { byJoint } = componentUplifts(ctx);
  const joints = [...place.joints].sort((p, q) => p.ties[0]!.along - q.ties[0]!.along);
  const at = joints.map((j) => j.ties[0]!.along);
  const up = joints.map(() => 0);
  let combination = '';
  for (const u of byJoint.values()) {
    if (u.joint.ties.at(-1)?.part !== place.member.id) continue;
    combination = u.combination;
    beamShares(at, u.joint.ties.at(-1)!.along).forEach((share, i) => {
      up[i] = up[i]! + Math.max(0, share) * u.up;
    });
  }
  return joints.flatMap((joint, i) =>
    up[i]! > TRACE
      ? [{ joint, combination: `${combination}, component wind`, CD: 1.6, along: 0, down: -up[i]!, out: 0 }]
      : [],
  );
}

/** Arm of the couple that turns the ledger: hanger on its outer face, framing behind it. */
export function armOf(s: Shank, down: boolean): number {
  const { rows } = s.f;
  const depth = s.ledger.section.depth;
  const [high, low] = [rows[0]!, rows[rows.length - 1]!];
  // With spacers nothing bears behind the ledger: the rows must make the couple between them.
  if (s.f.standoff > 0) return low - high;
  return down ? depth - high : low;
}

export interface Case {
  readonly lateral: number;
  readonly pull: number;
  readonly ratio: number;
}

/** Pull of the fastener farthest from the edge the ledger turns about, lb; infinite when nothing makes the couple. */
function pullAt(s: Shank, down: number, out: number): number {
  const arm = armOf(s, down > 0);
  if (down === 0) return Math.max(0, out) / s.f.rows.length;
  return arm > 0
    ? Math.max(0, out) / s.f.rows.length + (Math.abs(down) * (s.ledger.section.width + s.gap)) / arm
    : Number.POSITIVE_INFINITY;
}

const caseOf = (s: Shank, F: Force, ratio: number): Case => ({
  lateral: Math.hypot(F.along, F.down) / s.f.rows.length,
  pull: pullAt(s, F.down, F.out),
  ratio,
});

function ratioAt(s: Shank, along: number, down: number, out: number, Z: number, P: number): number {
  const lateral = Math.sqrt(along * along + down * down) / s.f.rows.length;
  const pull = pullAt(s, down, out);
  if (!Number.isFinite(pull) || (pull > TRACE && P <= 0) || Z <= 0) return RATIO_CAP;
  const R = Math.sqrt(lateral * lateral + pull * pull);
  if (R <= 0) return 0;
  const ratio =
    s.f.kind === 'bolt'
      ? lateral / Z + pull / P
      : R /
        combinedLateralWithdrawal(
          s.f.kind === 'lag' ? 'lag' : 'wood-screw',
          Math.max(P, 1e-9),
          Z,
          Math.atan2(pull, lateral),
        );
  return Math.min(ratio, RATIO_CAP);
}

export interface Worst {
  readonly F: Force;
  readonly at: Case;
}

/** What all combinations ask: whether anything lifts or pushes along the ledger, and the worst place of them all. */
export interface Search {
  readonly lifts: boolean;
  readonly along: boolean;
  readonly worst: Worst | undefined;
}

function search(
  ctx: CheckContext,
  place: HousePlace,
  s: Shank,
  all: readonly FlatForces[],
  Z: number,
  k: Factors,
): Search {
  const known = new Map<number, readonly [number, number]>();
  const strength = (CD: number): readonly [number, number] => {
    let c = known.get(CD);
    if (!c) {
      c = [lateralOf(Z, k, CD), pullOf(s, k, CD)];
      known.set(CD, c);
    }
    return c;
  };
  let lifts = false;
  let sideways = false;
  let most = -1;
  let worst: Force | undefined;
  for (const combination of ctx.loads.combinations) {
    const [Zp, Pp] = strength(combination.CD);
    for (const { joint, rows } of all) {
      let along = 0;
      let down = 0;
      let out = 0;
      for (const t of combination.terms) {
        along += t.factor * rows[3 * t.case]!;
        down += t.factor * rows[3 * t.case + 1]!;
        out += t.factor * rows[3 * t.case + 2]!;
      }
      if (down < -TRACE) lifts = true;
      if (Math.abs(along) > TRACE) sideways = true;
      const ratio = ratioAt(s, along, down, out, Zp, Pp);
      if (ratio <= most) continue;
      most = ratio;
      worst = { joint, combination: combination.id, CD: combination.CD, along, down, out };
    }
  }
  for (const F of componentForces(ctx, place)) {
    lifts = true;
    const [Zp, Pp] = strength(F.CD);
    const ratio = ratioAt(s, F.along, F.down, F.out, Zp, Pp);
    if (ratio <= most) continue;
    most = ratio;
    worst = F;
  }
  return { lifts, along: sideways, worst: worst && { F: worst, at: caseOf(s, worst, most) } };
}

export interface Found extends Search {
  readonly first: number;
  readonly Z: number;
  readonly k: Factors;
}

const made = new WeakMap<CheckContext['effects'], Map<string, Found | undefined>>();

/** The search is asked for by this check and by the joint's: once for the same effects. */
export function searched(ctx: CheckContext, place: HousePlace, s: Shank): Found | undefined {
  let known = made.get(ctx.effects);
  if (!known) {
    known = new Map();
    made.set(ctx.effects, known);
  }
  if (!known.has(place.id)) {
    const all = flatForces(ctx, place.joints, place.wall);
    const first = Math.min(...place.joints.map((j) => j.ties[0]!.along));
    const Z = reference(s).Z;
    const k = factorsOf(s, first);
    known.set(place.id, all && { ...search(ctx, place, s, all, Z, k), first, Z, k });
  }
  return known.get(place.id);
}
