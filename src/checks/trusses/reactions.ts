/**
 * One reaction after another, the plant's sealed sheet beside our own analysis: each bearing of a truss mark, down, up and
 * outward. The check of the papers, and the sheet that prints both side by side, read the same rows.
 */
import { thrustSet } from '../../analysis/index.js';
import type { TrussPaper } from '../../project/model.js';
import type { Joint } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

/** Reactions that differ by more than this share of ours are worth a word. Common practice, no source. */
export const REACTION_TOLERANCE = 0.1;
/** Reactions nearer than this are alike whatever their share, lb. */
export const REACTION_TRACE = 25;
/** Sheets print whole pounds: only by this much may a sealed reaction stay under ours, lb. */
const ROUNDING = 0.5;

export type Way = 'down' | 'up' | 'outward';

/** `absent`: not on the sheet. `larger`: worth a word, the larger one is used below. `short`: the seal does not cover ours. */
export type Agreement = 'agrees' | 'larger' | 'short' | 'absent';

export interface ReactionPair {
  readonly bearing: 'left' | 'right';
  readonly way: Way;
  /** Greatest of our own combinations, lb, never negative. */
  readonly ours: number;
  /** Greatest row of the sheet, lb; undefined where it has none. */
  readonly sealed: number | undefined;
  readonly agreement: Agreement;
}

/** Greatest sum of one row per load case over our own combinations, never negative. */
function most({ loads }: CheckContext, of: (loadCase: number) => number): number {
  let best = 0;
  for (const { terms } of loads.combinations) {
    if (terms.some((t) => loads.cases[t.case]?.papers !== undefined)) continue;
    best = Math.max(
      best,
      terms.reduce((n, t) => n + t.factor * of(t.case), 0),
    );
  }
  return best;
}

/** Joints of the trusses of one mark, at their first and at their second bearing. */
function bearingsOf(ctx: CheckContext, mark: string): Readonly<Record<'left' | 'right', readonly Joint[]>> {
  const left: Joint[] = [];
  const right: Joint[] = [];
  for (const m of ctx.structure.members) {
    if (m.mark !== mark) continue;
    const own = ctx.structure.joints
      .filter((j) => j.kind === 'truss-to-beam' && j.ties[0]?.part === m.id)
      .sort((a, b) => a.ties[0]!.along - b.ties[0]!.along);
    if (own[0]) left.push(own[0]);
    if (own[1]) right.push(own[1]);
  }
  return { left, right };
}

/** Greatest outward push of one truss of the mark with both bearings fastened, lb; 0 where none pushes or one slides. */
function pushOf(ctx: CheckContext, mark: string): number {
  const push = thrustSet(ctx)?.push;
  let best = 0;
  for (const m of push ? ctx.structure.members : []) {
    const rows = m.mark === mark && m.truss?.slides === undefined ? push?.get(m.id) : undefined;
    if (rows)
      best = Math.max(
        best,
        most(ctx, (c) => rows[c]!),
      );
  }
  return best;
}

function judge(ours: number, sealed: number | undefined): Agreement {
  if (sealed === undefined) return 'absent';
  // A truss sealed for less than what stands on it here is the wrong truss: no share of ours is forgiven.
  if (sealed < ours - ROUNDING) return 'short';
  return sealed - ours > Math.max(REACTION_TRACE, REACTION_TOLERANCE * ours) ? 'larger' : 'agrees';
}

/**
 * Every reaction of a mark, sealed beside ours; six rows. Directions in which neither side has anything are kept, with zero,
 * so that nothing is left out unseen.
 */
export function reactionPairs(ctx: CheckContext, mark: string, paper: TrussPaper): readonly ReactionPair[] {
  const at = bearingsOf(ctx, mark);
  const push = pushOf(ctx, mark);
  return (['left', 'right'] as const).flatMap((bearing) => {
    const forces = at[bearing].map((j) => ctx.effects.joints.get(j.id)?.force);
    const vertical = (sign: 1 | -1): number =>
      Math.max(0, ...forces.map((force) => (force ? most(ctx, (c) => sign * force[c]!.z) : 0)));
    const rows = paper.reactions.filter((r) => r.bearing === bearing);
    const largest = (of: readonly number[]): number | undefined => (of.length > 0 ? Math.max(...of) : undefined);
    const amounts = (kind: 'gravity' | 'uplift') => largest(rows.filter((r) => r.kind === kind).map((r) => r.amount));
    // Zero is how a row without a level reaction reads.
    const side = largest(rows.map((r) => r.side).filter((s) => s > 0));
    const pair = (way: Way, ours: number, sealed: number | undefined): ReactionPair => ({
      bearing,
      way,
      ours,
      sealed,
      agreement: judge(ours, sealed),
    });
    return [
      pair('down', vertical(-1), amounts('gravity')),
      pair('up', vertical(1), amounts('uplift')),
      pair('outward', push, side),
    ];
  });
}
