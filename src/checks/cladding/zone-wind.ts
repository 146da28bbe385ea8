/**
 * Net wind pressure on components of an open roof (ASCE 7-16 30.7): zone 3 over the whole roof. The zone plan of the
 * figure was not seen; zone 3 is never less than zones 1 and 2, so it is safe everywhere and heavy in the field.
 */
import type { Recorder } from '../../base/trace.js';
import {
  type CcSign,
  edgeZoneWidth,
  elevationKe,
  exposureKz,
  type FlowCondition,
  freeRoofComponentCN,
  freeRoofComponentPressure,
  G_RIGID,
  isOutOfScope,
  KD_BUILDINGS,
  type OutOfScope,
  outOfScope,
  velocityPressure,
} from '../../loads/codes/asce7/index.js';
import { attachedPressure, flowsUnder } from '../../loads/index.js';
import type { CheckContext } from '../contract.js';

export const COMPONENT_CLAUSE = 'ASCE 7-16 30.7';

/** What the pressure is worked out from. */
export type WindSource = Pick<CheckContext, 'project' | 'structure'>;

/** Name of a combination whose wind is the component pressure. */
export const componentId = (label: string): string => `${label.replaceAll(' ', '')} (C&C zone 3)`;

export const ZONE_NOTE =
  'zone 3 taken over the whole roof: the plan of the zones was not seen, and zone 3 is never less than zones 1 and 2';

/**
 * Net component pressure of one sign in psf, plus pushing onto the top face, minus lifting; the worse of the flows that can
 * occur. `area` is the effective wind area, in². Undefined when the roof was not placed. ASCE 7-16 30.7.
 */
export function componentPressure(
  ctx: WindSource,
  roofMark: string,
  sign: CcSign,
  area: number,
  rec?: Recorder,
): number | OutOfScope | undefined {
  const roof = ctx.structure.roofs.find((r) => r.mark === roofMark);
  const shape = ctx.structure.surfaces.find((s) => s.roof === roofMark)?.shape;
  if (!roof || !shape) return undefined;
  const { wind, codes } = ctx.project.basis;
  const edition = codes.loads;
  if (shape === 'hipped')
    return outOfScope(
      `ASCE ${edition} 30.7`,
      'the figures of open buildings are of one and of two slopes, none of a hip',
    );
  const Kz = exposureKz(roof.meanHeight, wind.exposure.value, edition, rec);
  if (isOutOfScope(Kz)) return Kz;
  const Ke = elevationKe(wind.elevation, edition, rec);
  const qh = velocityPressure(
    { Kz, Kzt: wind.topographic.value, Kd: KD_BUILDINGS, Ke, V: wind.speed.value },
    edition,
    rec,
  );
  const sides = [roof.max.x - roof.min.x, roof.max.y - roof.min.y] as const;
  const a = edgeZoneWidth(Math.min(...sides), roof.meanHeight);
  rec?.step({
    symbol: 'a',
    meaning: 'edge dimension, from the least plan side and the mean roof height',
    formula: 'min(0.1·least side, 0.4·h) ≥ max(0.04·least side, 3 ft)',
    substituted: `least side ${(Math.min(...sides) / 12).toFixed(2)} ft, h = ${(roof.meanHeight / 12).toFixed(2)} ft`,
    value: a,
    unit: 'in',
    clause: `ASCE ${edition} 30.7 figures, a`,
    from: [roof.path],
    note: ZONE_NOTE,
  });
  // L of h/L lies across the ridge, as for the main system.
  const hL = roof.meanHeight / (roof.ridgeAxis === 'y' ? sides[0] : sides[1]);
  const flows = flowsUnder(ctx.project, ctx.structure);
  const side = sign === 'plus' ? 1 : -1;
  let worst: { readonly CN: number; readonly flow: FlowCondition } | undefined;
  for (const flow of flows) {
    const CN = freeRoofComponentCN(shape, roof.slope, hL, 3, sign, area, a, flow, edition);
    if (isOutOfScope(CN)) return CN;
    if (!worst || side * CN > side * worst.CN) worst = { CN, flow };
  }
  const { CN, flow } = worst!;
  if (rec) freeRoofComponentCN(shape, roof.slope, hL, 3, sign, area, a, flow, edition, rec);
  const free = freeRoofComponentPressure(qh, G_RIGID, CN, KD_BUILDINGS, edition, rec);
  // Beside a house the canopy coefficients are the other bound; they are printed only where they govern.
  const beside = attachedPressure(ctx.project, ctx.structure, roof, sign, area);
  if (beside === undefined || isOutOfScope(beside) || side * beside <= side * free) return free;
  attachedPressure(ctx.project, ctx.structure, roof, sign, area, rec);
  return beside;
}

/** Why a roof has no component pressure, for a finding's note. */
export const beyond = (o: OutOfScope): string => `${o.reason} (${o.clause}): needs a licensed professional`;
