/**
 * Main wind force resisting system of open buildings with free roofs (ASCE 7 27.3.2). p = qh · G · CN, and times Kd in
 * 7-22. h is the mean roof height, also at low slopes; L is the roof's dimension along the wind. Plus presses down.
 */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord, OutOfScope } from '../support.js';
import { asce, interpolate, num, outOfScope, tableDegrees } from '../support.js';
import { pressureKd } from './ch26-wind.js';
import type { CnTable, FlowCondition, FreeRoofShape, LoadCaseAB } from './ch27-cn-data.js';
import {
  ALONG_RIDGE,
  MONOSLOPE_GAMMA_0,
  MONOSLOPE_GAMMA_180,
  MONOSLOPE_THETA,
  PITCHED,
  PITCHED_THETA,
  TROUGHED,
} from './ch27-cn-data.js';

/** Slopes under this use the first monoslope column, whatever the shape, degrees. */
const LOW_SLOPE_DEG = 7.5;
const FIGURE: Readonly<Record<FreeRoofShape, string>> = {
  monoslope: 'Fig. 27.3-4',
  pitched: 'Fig. 27.3-5',
  troughed: 'Fig. 27.3-6',
};

/**
 * Whether the figures cover this roof with wind across the ridge: slope to 45 degrees, h/L from 0.25 to 1.0. A nearly
 * flat monoslope (under 5 degrees) with h/L from 0.05 to 0.25 takes the along-ridge coefficients instead. `theta` in
 * radians, `h` and `L` in the same length unit.
 */
export function freeRoofFigure(
  shape: FreeRoofShape,
  theta: number,
  h: number,
  L: number,
  edition: Asce7Edition,
): 'across-ridge' | 'along-ridge-values' | OutOfScope {
  const clause = asce(edition, FIGURE[shape]);
  const deg = tableDegrees(theta);
  const hL = h / L;
  if (deg > 45) return outOfScope(clause, `roof slope ${num(deg)}° is over 45°`);
  if (hL > 1) return outOfScope(clause, `h/L = ${num(hL)} is over 1.0`);
  if (hL >= 0.25) return 'across-ridge';
  if (shape === 'monoslope' && deg < 5 && hL >= 0.05) return 'along-ridge-values';
  return outOfScope(clause, `h/L = ${num(hL)} is under 0.25`);
}

/**
 * Whether Fig. 27.3-7 covers wind along the ridge. The 7-16 title limits h/L to 0.25..1.0, with L the ridge length, and
 * its Note 5 opens 0.05..0.25 to monoslopes under 5 degrees; the 7-22 title has no limit on h/L.
 */
export function alongRidgeFigure(
  shape: FreeRoofShape,
  theta: number,
  h: number,
  L: number,
  edition: Asce7Edition,
): OutOfScope | undefined {
  const clause = asce(edition, 'Fig. 27.3-7');
  const deg = tableDegrees(theta);
  if (deg > 45) return outOfScope(clause, `roof slope ${num(deg)}° is over 45°`);
  if (edition === '7-22') return undefined;
  const hL = h / L;
  const least = shape === 'monoslope' && deg < 5 ? 0.05 : 0.25;
  if (hL < least || hL > 1) return outOfScope(clause, `h/L = ${num(hL)} is outside ${least} to 1.0`);
  return undefined;
}

/** Net coefficients on the windward and leeward half. */
export interface CnPair {
  readonly CNW: number;
  readonly CNL: number;
}

/**
 * CN for wind across the ridge, linear between the printed slopes. `gamma` matters for the monoslope: 0 is wind meeting
 * the high edge (mostly uplift), 180 wind meeting the low edge (mostly down); the caller checks both. Under 7.5 degrees
 * every shape takes the first monoslope column, which steps at 7.5 as the figures do. Check `freeRoofFigure` first.
 */
export function freeRoofCN(
  shape: FreeRoofShape,
  theta: number,
  gamma: 0 | 180,
  loadCase: LoadCaseAB,
  flow: FlowCondition,
  edition: Asce7Edition,
  rec?: Recorder,
): CnPair {
  const deg = tableDegrees(theta);
  const low = deg < LOW_SLOPE_DEG;
  const asMonoslope = low || shape === 'monoslope';
  const table: CnTable = asMonoslope
    ? gamma === 0
      ? MONOSLOPE_GAMMA_0
      : MONOSLOPE_GAMMA_180
    : shape === 'pitched'
      ? PITCHED
      : TROUGHED[edition];
  const thetas = asMonoslope ? MONOSLOPE_THETA : PITCHED_THETA;
  const row = table[loadCase][flow];
  const CNW = low ? row.CNW[0]! : interpolate(thetas, row.CNW, deg);
  const CNL = low ? row.CNL[0]! : interpolate(thetas, row.CNL, deg);
  if (rec) {
    const where = `${shape}, ${flow} flow, case ${loadCase}, γ = ${gamma}°`;
    const step = {
      substituted: `θ = ${num(deg)}°`,
      unit: '',
      clause: asce(edition, FIGURE[asMonoslope ? 'monoslope' : shape]),
    };
    const formula = low ? 'figure, first column (θ < 7.5°)' : 'figure, linear in θ';
    rec.step({
      ...step,
      symbol: 'CNW',
      meaning: `net pressure coefficient, windward half: ${where}`,
      formula,
      value: CNW,
    });
    rec.step({
      ...step,
      symbol: 'CNL',
      meaning: `net pressure coefficient, leeward half: ${where}`,
      formula,
      value: CNL,
    });
  }
  return { CNW, CNL };
}

/** One strip of roof with wind along the ridge: from and to, inches from the windward edge. */
export interface AlongRidgeZone {
  readonly from: number;
  readonly to: number;
  readonly CN: number;
}

/** CN of Fig. 27.3-7 at `distance` from the windward edge; a strip includes its own far edge. Same length unit for both. */
export function alongRidgeCN(distance: number, h: number, loadCase: LoadCaseAB, flow: FlowCondition): number {
  return ALONG_RIDGE[loadCase][flow][distance <= h ? 0 : distance <= 2 * h ? 1 : 2];
}

/**
 * The strips of a roof `length` inches long, mean roof height `h` inches. Strips beyond the roof's end are left out.
 * ASCE 7 Fig. 27.3-7.
 */
export function alongRidgeZones(
  length: number,
  h: number,
  loadCase: LoadCaseAB,
  flow: FlowCondition,
  edition: Asce7Edition,
  rec?: Recorder,
): readonly AlongRidgeZone[] {
  const values = ALONG_RIDGE[loadCase][flow];
  const edges = [0, h, 2 * h, length];
  const zones: AlongRidgeZone[] = [];
  values.forEach((CN, i) => {
    const from = edges[i]!;
    const to = i === 2 ? length : Math.min(edges[i + 1]!, length);
    if (to <= from) return;
    zones.push({ from, to, CN });
    rec?.step({
      symbol: 'CN',
      meaning: `net pressure coefficient, wind along the ridge, case ${loadCase}, ${flow} flow`,
      formula: 'figure, by distance from the windward edge',
      substituted: `${num(from / 12)} ft to ${num(to / 12)} ft, h = ${num(h / 12)} ft`,
      value: CN,
      unit: '',
      clause: asce(edition, 'Fig. 27.3-7'),
    });
  });
  return zones;
}

/**
 * Net design pressure normal to the roof, psf. `qh` as its edition defines it; `Kd` enters here in 7-22 only.
 * ASCE 7 Eq. 27.3-2.
 */
export function freeRoofPressure(
  qh: number,
  G: number,
  CN: number,
  Kd: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const kd = pressureKd(Kd, edition);
  const p = qh * kd * G * CN;
  rec?.step({
    symbol: 'p',
    meaning: 'net wind pressure normal to the roof, plus is down',
    formula: edition === '7-22' ? 'qh · Kd · G · CN' : 'qh · G · CN',
    substituted: `${num(qh)}${edition === '7-22' ? ` · ${num(kd)}` : ''} · ${num(G)} · ${num(CN)}`,
    value: p,
    unit: 'psf',
    clause: asce(edition, 'Eq. 27.3-2'),
  });
  return p;
}

/** Minimum pressure on the area normal to the wind of an open building (27.1.5), psf. */
export const MIN_OPEN_BUILDING = 16;

/**
 * Minimum horizontal force in pounds on `Af` (in²), the area of the open building projected on a plane normal to the wind.
 * ASCE 7 27.1.5.
 */
export function minimumOpenBuildingForce(Af: number, edition: Asce7Edition, rec?: Recorder): number {
  const F = (MIN_OPEN_BUILDING * Af) / 144;
  rec?.step({
    symbol: 'Fmin',
    meaning: 'minimum wind force on an open building',
    formula: '16 psf · Af',
    substituted: `16 · ${num(Af / 144)}`,
    value: F,
    unit: 'lb',
    clause: asce(edition, '27.1.5'),
  });
  return F;
}

/** Combined net coefficient of a fascia panel on a free roof of at most 5 degrees, as an inverted parapet (27.3.4). */
export const FASCIA_GCPN = { windward: 1.5, leeward: -1.0 } as const;

/**
 * Horizontal pressure on a fascia panel, psf, with qp taken as qh; `undefined` where the rule does not ask for it (slope
 * over 5 degrees). `theta` in radians.
 * ASCE 7 27.3.2, 27.3.4.
 */
export function fasciaPressure(
  qh: number,
  theta: number,
  face: keyof typeof FASCIA_GCPN,
  Kd: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number | undefined {
  if (tableDegrees(theta) > 5) return undefined;
  const p = qh * pressureKd(Kd, edition) * FASCIA_GCPN[face];
  rec?.step({
    symbol: 'pp',
    meaning: `wind pressure on the ${face} fascia`,
    formula: edition === '7-22' ? 'qp · Kd · GCpn' : 'qp · GCpn',
    substituted: `${num(qh)}${edition === '7-22' ? ` · ${num(Kd)}` : ''} · ${FASCIA_GCPN[face]}`,
    value: p,
    unit: 'psf',
    clause: asce(edition, '27.3.2, 27.3.4'),
    ...(edition === '7-22' ? { note: 'carried over from the 7-16 text; confirm in 7-22' } : {}),
  });
  return p;
}

export const WIND_27_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'wind.cn.monoslope',
    clause: 'ASCE 7-16 and 7-22 Fig. 27.3-4',
    title: 'CN, monoslope free roof',
    provenance: 'read',
    note: 'three transcriptions agree but for two misprints in one; the sense of gamma is by sign logic: check both',
  },
  {
    id: 'wind.cn.pitched',
    clause: 'ASCE 7-16 and 7-22 Fig. 27.3-5',
    title: 'CN, pitched free roof',
    provenance: 'read',
  },
  {
    id: 'wind.cn.troughed',
    clause: 'ASCE 7-16 and 7-22 Fig. 27.3-6',
    title: 'CN, troughed free roof',
    provenance: 'read',
    note: 'one transcription has A obstructed CNL at 30° as −0.2; two have −0.4 (used)',
  },
  {
    id: 'wind.cn.alongridge',
    clause: 'ASCE 7-16 and 7-22 Fig. 27.3-7',
    title: 'CN, wind along the ridge',
    provenance: 'read',
  },
  { id: 'wind.min.mwfrs', clause: 'ASCE 7-16 and 7-22 27.1.5', title: 'Minimum wind load', provenance: 'read' },
  {
    id: 'wind.fascia',
    clause: 'ASCE 7-16 27.3.2, 27.3.4',
    title: 'Fascia on low free roofs',
    provenance: 'mixed',
    note: 'read for 7-16; its use in 7-22 (times Kd) from memory',
  },
];
