/** Trusses as subjects, in the order they were placed: equal ones share a mark, and the worst of a mark speaks for it. */
import { type TrussEffects, trussEffects } from '../../analysis/index.js';
import type { CheckContext, Subject } from '../contract.js';

export const isScissor = (t: TrussEffects): boolean => (t.member.truss?.bottomPitch ?? 0) > 0;

export function trussMarks(ctx: CheckContext, wanted: (t: TrussEffects) => boolean = () => true): readonly Subject[] {
  const seen = new Map<string, Subject>();
  for (const t of trussEffects(ctx)) if (wanted(t)) seen.set(t.mark, { id: t.mark, path: t.member.path });
  return [...seen.values()];
}

export const ofMark = (ctx: CheckContext, mark: string): readonly TrussEffects[] =>
  trussEffects(ctx).filter((t) => t.mark === mark);
