/** Where a beam line is held: by its posts, and by the house at its ends. */
import type { BeamEnd } from '../../project/model.js';
import { type BeamPlan, type Kit, standsAt } from '../kit.js';

/** Ends the file gives, each with the beam's own end. */
export const endsOf = (plan: BeamPlan): readonly (readonly [BeamEnd, 0 | 1])[] => {
  const { start, end } = plan.line.ends ?? {};
  return [...(start ? [[start, 0] as const] : []), ...(end ? [[end, 1] as const] : [])];
};

/** Places along a beam line where a post or the house holds it. */
export function holdsOf(plan: BeamPlan, kit: Kit): number[] {
  const own = endsOf(plan).map(([e, at]) => alongOfEnd(plan, e, at, kit));
  return [...standsAt(plan.line), ...own].sort((a, b) => a - b);
}

/** A post takes the last of the beam's length on its whole width. */
export function alongOfEnd(plan: BeamPlan, e: BeamEnd, at: 0 | 1, kit: Kit): number {
  const width = e.kind === 'post-in-wall' ? (kit.section(e.section, `${e.path}/section`)?.width ?? 0) : 0;
  return at === 0 ? width / 2 : plan.length - width / 2;
}
