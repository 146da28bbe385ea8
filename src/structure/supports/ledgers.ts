import { atLedger, type LedgerPlan } from '../kit.js';
import type { Member } from '../model.js';

/** A ledger flat against the wall's sheathing plane (cladding removed there), its top edge at `top`. */
export function placeLedger(plan: LedgerPlan, top: number, spacing: number): Member {
  const { spec, section, wall } = plan;
  const d = plan.line + section.width / 2;
  const z = top - section.depth / 2;
  return {
    id: spec.mark,
    mark: spec.mark,
    role: 'ledger',
    section,
    start: { ...atLedger(plan, spec.from, d), z },
    end: { ...atLedger(plan, spec.to, d), z },
    up: { x: 0, y: 0, z: 1 },
    length: spec.to - spec.from,
    state: 'new',
    strips: [],
    notch: 0,
    cuts: ['square both ends'],
    unbraced: { top: Math.min(spacing, wall.build.studSpacing), bottom: wall.build.studSpacing },
    path: spec.path,
  };
}

/**
 * Places of the ledger's fastener groups along it: one for each whole spacing of its length (of the fasteners when they
 * are given, else of the studs), centred, so that each stands for about one spacing of wall; or, where the distance of the
 * first from the end is given, as many as keep the spacing between there and the same distance from the other end. Where
 * the studs really are is found on site.
 */
export function fastenerGroups(plan: LedgerPlan): number[] {
  const length = plan.spec.to - plan.spec.from;
  const { spacing, end } = plan.spec.fastening ?? { spacing: plan.wall.build.studSpacing };
  if (end !== undefined) {
    const bays = Math.max(1, Math.ceil((length - 2 * end) / spacing - 1e-9));
    return Array.from({ length: bays + 1 }, (_, i) => end + (i * (length - 2 * end)) / bays);
  }
  const count = Math.max(2, Math.floor(length / spacing + 1e-9));
  const pitch = Math.min(spacing, length / count);
  const first = (length - (count - 1) * pitch) / 2;
  return Array.from({ length: count }, (_, i) => first + i * pitch);
}
