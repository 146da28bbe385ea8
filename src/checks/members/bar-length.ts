/**
 * Buckling length of knee braces and cross members. They are pinned at the working points where the frame joins them, past
 * the cut ends (on the axis of the post, and of the cross member that a brace holds), so le is the length between those in
 * both planes: Ke = 1 (NDS 2018 3.7.1.2, Appendix G). Equal pieces share a mark and its longest length.
 */
import type { Recorder } from '../../base/trace.js';
import type { Member } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

export interface BarLength {
  /** Member of the mark with that length. */
  readonly id: string;
  /** Inches. */
  readonly l: number;
}

const made = new WeakMap<CheckContext, Map<string, BarLength>>();

/** Undefined for members that are held along their length: everything but braces and struts. */
export function barLength(ctx: CheckContext, of: Member): BarLength | undefined {
  if (of.role !== 'brace' && of.role !== 'strut') return undefined;
  let known = made.get(ctx);
  if (!known) {
    known = new Map();
    made.set(ctx, known);
  }
  let longest = known.get(of.mark);
  if (!longest) {
    longest = { id: of.id, l: 0 };
    for (const m of ctx.structure.members) {
      if (m.mark !== of.mark || m.role !== of.role) continue;
      const spans = ctx.effects.members.get(m.id)?.spans ?? [];
      const l = spans.reduce((most, s) => Math.max(most, s.length), Math.max(m.unbraced.top, m.unbraced.bottom));
      if (l > longest.l) longest = { id: m.id, l };
    }
    known.set(of.mark, longest);
  }
  return longest;
}

export function recordBarLength({ id, l }: BarLength, rec?: Recorder): void {
  rec?.step({
    symbol: 'l',
    meaning: `length of ${id}, the longest of its mark, between the points where the frame joins it; both planes, Ke = 1`,
    formula: 'from axis to axis of what it joins, past its cut ends',
    substituted: `${l.toFixed(2)} in`,
    value: l,
    unit: 'in',
    clause: 'NDS 2018 3.7.1.2',
  });
}
