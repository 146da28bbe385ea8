/**
 * Buckling length of posts that sway, by engineering mechanics from the stiffness of the frame (NDS 2018 3.7.1.2; one method
 * of it is Appendix G). A frame that moves Δ under a side load H, its posts leaning over a height L, buckles sideways under
 * S = (π²/12)·L·H/Δ in all: exact for cantilevers (H/Δ = 3EI/h³ gives π²EI/4h²), on the safe side where the posts turn below
 * a knee brace (sway-length.test.ts). The posts that hold share S by their stiffness, and what leans on them adds its load.
 * The result is raised as Appendix G raises theory: by 1.05 for a held foot (2.1 for 2.0), by 1.2 for a pinned one under a
 * brace (2.4 for 2.0).
 */
import { combineComponent } from '../../analysis/index.js';
import type { Member } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { designValue } from '../members/design.js';
import { leanOf } from './holding.js';
import { flexibilityOf } from './p-delta.js';
import { softest } from './roof-drift.js';
import type { Axis } from './system.js';

export const RAISE = { held: 1.05, braced: 1.2 } as const;

export interface SwayLength {
  readonly Ke: number;
  /** Movement per pound of side load with adjusted E, in/lb. */
  readonly flexibility: number;
  /** Sum of E'·I of the posts that hold, lb·in². */
  readonly EI: number;
  /** Load on all posts over load on those that hold. */
  readonly leaning: number;
  readonly raise: number;
  readonly height: number;
  /** Height over which the posts lean. */
  readonly lean: number;
}

/** E'·I of a post for bending in the vertical plane along an axis. */
function stiffness(m: Member, axis: Axis): number {
  const { b, d, values } = m.section;
  const strong = Math.abs(m.up[axis]) > Math.SQRT1_2;
  return ((designValue('E', m.section, {}) ?? values.E) * (strong ? b * d ** 3 : d * b ** 3)) / 12;
}

const made = new WeakMap<CheckContext, Map<string, SwayLength | undefined>>();

/** Load on all posts over load on the holding ones, where the total is greatest. */
function leaningShare(ctx: CheckContext, holding: ReadonlySet<string>): number {
  const onFooting = new Map<string, string>();
  for (const j of ctx.structure.joints)
    if (j.kind === 'post-to-footing') onFooting.set(j.ties.at(-1)!.part, j.ties[0]!.part);
  let most = 0;
  let share = 1;
  for (const c of ctx.loads.combinations) {
    let all = 0;
    let held = 0;
    for (const [id, f] of ctx.effects.footings) {
      const P = Math.max(0, combineComponent(f.force, c, 'z'));
      all += P;
      if (holding.has(onFooting.get(id) ?? '')) held += P;
    }
    if (all <= most || held <= 0) continue;
    most = all;
    share = all / held;
  }
  return share;
}

/** Ke over the height of a post that holds in this direction; undefined when the frame tells no stiffness. */
export function swayLength(
  ctx: CheckContext,
  axis: Axis,
  holding: ReadonlySet<string>,
  how: keyof typeof RAISE,
  height: number,
): SwayLength | undefined {
  const key = `${axis} ${how} ${height} ${[...holding].join(' ')}`;
  let known = made.get(ctx);
  if (!known) {
    known = new Map();
    made.set(ctx, known);
  }
  if (known.has(key)) return known.get(key);
  const value = workOut(ctx, axis, holding, how, height);
  known.set(key, value);
  return value;
}

function workOut(
  ctx: CheckContext,
  axis: Axis,
  holding: ReadonlySet<string>,
  how: keyof typeof RAISE,
  height: number,
): SwayLength | undefined {
  const flexibility = softest(ctx) * flexibilityOf(ctx, axis).value;
  if (!(flexibility > 0)) return undefined;
  let EI = 0;
  for (const m of ctx.structure.members) if (holding.has(m.id)) EI += stiffness(m, axis);
  const leaning = leaningShare(ctx, holding);
  const raise = RAISE[how];
  // π²·EI/(Ke·l)² summed over the holding posts is S over the leaning share.
  const lean = leanOf(ctx, axis);
  const Ke = raise * keOf({ EI, flexibility, lean, height, leaning });
  return { Ke, flexibility, EI, leaning, raise, height, lean };
}

/** Ke by theory over `height` (inches) of posts with `EI` in all (lb·in²) in a frame of this flexibility (in/lb). */
export const keOf = (f: Pick<SwayLength, 'EI' | 'flexibility' | 'lean' | 'height' | 'leaning'>): number =>
  Math.sqrt((12 * f.EI * f.flexibility * f.leaning) / (f.lean * f.height ** 2));
