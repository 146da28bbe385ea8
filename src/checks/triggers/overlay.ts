/** What of a roof over the old roof is outside this program's range. */
import { oldRoofOf } from '../tie-in/overlay-loads.js';
import type { Trigger } from './contract.js';

/** Under this slope rafters that meet at a ridge need a beam under it. */
const NEEDS_RIDGE_BEAM = 3 / 12;

export const OVERLAY_TRIGGERS: readonly Trigger[] = [
  {
    id: 'overlay-snow',
    level: 'needs',
    source:
      'ASCE 7-16 7.7, 7.9: drift and sliding snow; none of them is written for a valley between an old and a new roof',
    found: (c) =>
      (c.structure.overlays?.length ?? 0) > 0 && c.project.basis.snow.ground.value > 0
        ? 'Snow gathers in the valleys between the new roof and the old one: what the old rafters take there is for a licensed professional.'
        : undefined,
  },
  {
    id: 'overlay-low-slope',
    level: 'needs',
    source: 'IRC 2018 R802.3 (quoted in trade papers): a ridge beam under 3 in 12',
    found: (c) =>
      c.structure.overlays?.some((o) => o.shape.slope < NEEDS_RIDGE_BEAM - 1e-9)
        ? 'The fill over the old roof is flatter than 3 in 12: its ridge would have to be a beam.'
        : undefined,
  },
  {
    id: 'overlay-on-trusses',
    level: 'needs',
    source: 'IRC 2018 R802.10.4 (recalled): no load is added to trusses without verification',
    found: (c) =>
      c.structure.overlays?.some((o) => oldRoofOf(c, o)?.framing?.kind === 'trusses' && statementMissing(c, o.roof))
        ? 'The old roof stands on trusses: nothing may be framed on them before their designer has agreed in writing.'
        : undefined,
  },
];

function statementMissing(c: Parameters<Trigger['found']>[0], roof: string): boolean {
  const r = c.project.cover.roofs.find((x) => x.mark === roof);
  return r !== undefined && 'meetsHouse' in r && r.meetsHouse?.statement === undefined;
}
