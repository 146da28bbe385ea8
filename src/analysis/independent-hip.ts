/** The second road's own count of a hip roof's framing: lengths from the plan, the pitch and the spacing alone. */
import type { HipRoof } from '../project/model.js';

/** Weights per inch of common rafters and hips; thickness of the hips and width of the beams. */
export interface HipFacts {
  readonly common: number;
  readonly hip: number;
  readonly hipWidth: number;
  readonly beam: number;
}

/** Total weight of commons, kings, jacks and hips, lb; `across` and `along` from eave to eave. */
export function hipFramingWeight(roof: HipRoof, across: number, along: number, facts: HipFacts): number {
  const half = across / 2;
  const { spacing } = roof.framing;
  const cos = Math.cos(roof.pitch);
  // One row on each side from peak to peak, and the two kings.
  const commons = 2 * (Math.ceil((along - across) / spacing - 1e-9) + 1) + 2;
  let jacks = 0;
  for (let t = half - spacing; t >= roof.eave + facts.beam + 6 + facts.hipWidth / Math.SQRT2; t -= spacing)
    jacks += 8 * (t - facts.hipWidth / Math.SQRT2);
  const hips = 4 * Math.hypot(half, half, half * Math.tan(roof.pitch));
  return (facts.common * (commons * half + jacks)) / cos + facts.hip * hips;
}
