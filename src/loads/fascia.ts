/**
 * Horizontal wind on the fascia of a nearly flat free roof (ASCE 7 27.3.2): up to 5 degrees of slope the edge is taken
 * as an inverted parapet, pushed on its windward face and drawn on its leeward face, both along the wind.
 */
import type { RoofPlaced, Structure } from '../structure/model.js';
import type { Asce7Edition } from './codes/asce7/index.js';
import { fasciaPressure, KD_BUILDINGS } from './codes/asce7/index.js';
import type { LoadCase, WindDirection } from './model.js';
import { heading } from './wind-plan.js';

/** Depth of the roof's edge, inches: its fascia, or its framing where no fascia is placed. */
function edgeDepth(structure: Structure, roof: RoofPlaced): number {
  let fascia = 0;
  let framing = 0;
  for (const m of structure.members) {
    if (m.roof !== roof.mark) continue;
    if (m.role === 'fascia') fascia = Math.max(fascia, m.section.depth);
    else if (m.strips.length > 0) framing = Math.max(framing, m.truss ? m.truss.heel : m.section.depth);
  }
  return fascia > 0 ? fascia : framing;
}

/** The force on one roof's edges, or nothing where the rule does not ask for it. */
export function fasciaForce(
  structure: Structure,
  roof: RoofPlaced,
  qh: number,
  d: WindDirection,
  edition: Asce7Edition,
): LoadCase['side'] {
  const push = fasciaPressure(qh, roof.slope, 'windward', KD_BUILDINGS, edition);
  const draw = fasciaPressure(qh, roof.slope, 'leeward', KD_BUILDINGS, edition);
  if (push === undefined || draw === undefined) return [];
  const edge = d.endsWith('x') ? roof.max.y - roof.min.y : roof.max.x - roof.min.x;
  const F = ((push - draw) * edgeDepth(structure, roof) * edge) / 144;
  const h = heading(d);
  return [
    {
      roof: roof.mark,
      at: {
        x: (roof.min.x + roof.max.x) / 2,
        y: (roof.min.y + roof.max.y) / 2,
        z: (roof.lowestEave + roof.highestPoint) / 2,
      },
      force: { x: F * h.x, y: F * h.y, z: 0 },
      why: 'wind on the fascia of a nearly flat roof (ASCE 7 27.3.2)',
    },
  ];
}
