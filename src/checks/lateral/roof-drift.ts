/** How far the roof moves sideways under the allowable-stress combinations with wind. */
import type { Drift } from '../../analysis/model.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { CheckContext } from '../contract.js';
import { designValue } from '../members/design.js';
import { sumText } from '../members/scan.js';
import type { Axis } from './system.js';

/** Divisor of the post's height where the file names none. Common practice, no source: an open cover has no finish to crack. */
export const DRIFT_DIVISOR = 60;

export interface Moved {
  readonly post: string;
  readonly path: string;
  readonly combination: Combination;
  readonly drift: Drift;
  readonly axis: Axis;
  /** Tabulated over adjusted modulus of the softest part of the frame. */
  readonly soft: number;
  readonly divisor: number;
  readonly move: number;
  readonly limit: number;
  readonly ratio: number;
}

const made = new WeakMap<CheckContext, number>();

/** The frame is solved with tabulated E; it moves more by E/E' of its softest part (wet, incised: NDS 2018 Table 4.3.1). */
export function softest(ctx: CheckContext): number {
  let soft = made.get(ctx);
  if (soft !== undefined) return soft;
  soft = 1;
  for (const { role, section } of ctx.structure.members) {
    if (role !== 'post' && role !== 'brace' && role !== 'strut' && role !== 'beam') continue;
    soft = Math.max(soft, section.values.E / (designValue('E', section, {}) ?? section.values.E));
  }
  made.set(ctx, soft);
  return soft;
}

/** Greatest movement over its limit; undefined when nothing moves the roof this way. */
export function movedMost(ctx: CheckContext, axis: Axis): Moved | undefined {
  const divisor = ctx.project.choices.deflection.drift ?? DRIFT_DIVISOR;
  const soft = softest(ctx);
  const winds = new Set(ctx.loads.cases.flatMap((c, i) => (c.kind === 'W' ? [i] : [])));
  let worst: Moved | undefined;
  for (const drift of ctx.effects.drift ?? []) {
    const limit = drift.height / divisor;
    for (const combination of ctx.loads.combinations) {
      if (!combination.terms.some((t) => winds.has(t.case))) continue;
      let sum = 0;
      for (const t of combination.terms) sum += t.factor * drift.move[t.case]![axis];
      const move = soft * Math.abs(sum);
      const ratio = move / limit;
      if (worst && ratio <= worst.ratio) continue;
      const path = ctx.structure.members.find((m) => m.id === drift.post)?.path ?? '/cover';
      worst = { post: drift.post, path, combination, drift, axis, soft, divisor, move, limit, ratio };
    }
  }
  return worst && worst.move > 0 ? worst : undefined;
}

export function recordMoved(ctx: CheckContext, w: Moved, rec?: Recorder): void {
  if (!rec) return;
  rec.heading(`Top of ${w.post}, ${w.combination.id}`);
  rec.step({
    symbol: 'Δ',
    meaning: 'sideways movement of the roof, frame analysis',
    formula: w.soft === 1 ? w.combination.label : `(${w.combination.label}) · E/E'`,
    substituted: `${w.soft === 1 ? '' : `${w.soft.toFixed(3)} · (`}${sumText(ctx, w.combination, (c) => w.drift.move[c]![w.axis])}${w.soft === 1 ? '' : ')'}`,
    value: w.move,
    unit: 'in',
    clause: w.combination.clause,
    from: [w.path],
    note: 'joints taken without slip, feet without yielding of the soil',
  });
  rec.step({
    symbol: 'limit',
    meaning: 'height over divisor',
    formula: 'h / divisor',
    substituted: `${w.drift.height.toFixed(1)} / ${w.divisor}`,
    value: w.limit,
    unit: 'in',
    clause: 'common practice, no source',
    from: ['/choices/deflection/drift'],
  });
}
