/**
 * Components and cladding: free roofs (ASCE 7-16 30.7, 7-22 30.5) and attached canopies (7-16 30.11, 7-22 30.9). Fasteners,
 * covering, sheathing, purlins and single rafters take these larger local pressures.
 */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord, Scoped } from '../support.js';
import { asce, num, outOfScope, tableDegrees } from '../support.js';
import { pressureKd } from './ch26-wind.js';
import type { FlowCondition, FreeRoofShape } from './ch27-cn-data.js';
import { CC_CN, CC_THETA } from './ch30-cn-data.js';

/** Zone 3 is the corner, 2 the edge, 1 the field. Where the zone is in doubt, 3 envelopes 2 and 2 envelopes 1. */
export type CcZone = 1 | 2 | 3;
export type CcSign = 'plus' | 'minus';

/** Least net component pressure either way, psf (30.2.2). */
export const CC_MIN = 16;

const FREE_ROOF_FIGURE: Readonly<Record<FreeRoofShape, 1 | 2 | 3>> = { monoslope: 1, pitched: 2, troughed: 3 };
const freeRoofClause = (shape: FreeRoofShape, edition: Asce7Edition): string =>
  asce(edition, `Fig. ${edition === '7-16' ? '30.7' : '30.5'}-${FREE_ROOF_FIGURE[shape]}`);

/**
 * Net component coefficient of a free roof, linear between printed slopes. `area` is the effective wind area and `a` the
 * edge dimension (`edgeZoneWidth`), in² and in. `hL` is h/L. The plan layout of the zones is not part of this function:
 * a caller that does not place zones uses zone 3 throughout, which is never less.
 * ASCE 7-16 Fig. 30.7-1 to 30.7-3, 7-22 Fig. 30.5-1 to 30.5-3.
 */
export function freeRoofComponentCN(
  shape: FreeRoofShape,
  theta: number,
  hL: number,
  zone: CcZone,
  sign: CcSign,
  area: number,
  a: number,
  flow: FlowCondition,
  edition: Asce7Edition,
  rec?: Recorder,
): Scoped<number> {
  const deg = tableDegrees(theta);
  const clause = freeRoofClause(shape, edition);
  if (deg > 45) return outOfScope(clause, `roof slope ${num(deg)}° is over 45°`);
  if (hL < 0.25 || hL > 1) return outOfScope(clause, `h/L = ${num(hL)} is outside 0.25 to 1.0`);
  const row = area <= a * a ? 0 : area <= 4 * a * a ? 1 : 2;
  const column = (3 - zone) * 2 + (sign === 'plus' ? 0 : 1);
  const blocks = CC_CN[shape][flow];
  let i = 1;
  while (i < CC_THETA.length - 1 && CC_THETA[i]! < deg) i += 1;
  const t0 = CC_THETA[i - 1]!;
  const c0 = blocks[i - 1]![row]![column]!;
  const c1 = blocks[i]![row]![column]!;
  const CN = c0 + ((c1 - c0) * (deg - t0)) / (CC_THETA[i]! - t0);
  rec?.step({
    symbol: 'CN',
    meaning: `net component coefficient, ${shape}, ${flow} flow, zone ${zone}, ${sign}: A = ${num(area / 144)} ft² is in the row ${['up to a²', 'a² to 4a²', 'over 4a²'][row]}, a = ${num(a / 12)} ft; θ = ${num(deg)}° lies between the figure’s ${t0}° and ${CC_THETA[i]}°`,
    formula: 'C0 + (C1 − C0) · (θ − θ0) / (θ1 − θ0)',
    substituted: `${num(c0)} + (${num(c1)} − (${num(c0)})) · (${num(deg)} − ${t0}) / (${CC_THETA[i]} − ${t0})`,
    value: CN,
    unit: '',
    clause,
  });
  return CN;
}

/**
 * Net component pressure psf with the sign of `CN`, its size at least 16 psf.
 * ASCE 7-16 Eq. 30.7-1, 7-22 Eq. 30.5-1, 30.2.2.
 */
export function freeRoofComponentPressure(
  qh: number,
  G: number,
  CN: number,
  Kd: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const raw = qh * pressureKd(Kd, edition) * G * CN;
  const p = atLeast16(raw);
  rec?.step({
    symbol: 'p',
    meaning: 'net component wind pressure, plus is down',
    formula: `${edition === '7-22' ? 'qh · Kd · G · CN' : 'qh · G · CN'}, not less than 16 psf either way`,
    substituted: `${num(qh)}${edition === '7-22' ? ` · ${num(Kd)}` : ''} · ${num(G)} · ${num(CN)}`,
    value: p,
    unit: 'psf',
    clause: asce(edition, edition === '7-16' ? 'Eq. 30.7-1, 30.2.2' : 'Eq. 30.5-1, 30.2.2'),
  });
  return p;
}

const atLeast16 = (p: number): number => (p < 0 ? Math.min(p, -CC_MIN) : Math.max(p, CC_MIN));

/** Value at 10 ft² and at 100 ft² of effective area; linear in ln A between, constant outside. */
type LogLine = readonly [at10: number, at100: number];

const onLogLine = ([at10, at100]: LogLine, ft2: number): number => {
  const t = Math.min(Math.max(Math.log(ft2 / 10) / Math.LN10, 0), 1);
  return at10 + (at100 - at10) * t;
};

/** Net coefficients on both surfaces together (7-16 Fig. 30.11-1B, 7-22 Fig. 30.9-1B), by canopy height over eave height. */
const CANOPY_NET = {
  nearEave: [-1.4, -1.1],
  middle: [-0.9, -0.65],
  low: [-0.6, -0.5],
  plus: [0.9, 0.65],
} as const satisfies Record<string, LogLine>;

/** Coefficients on each surface alone (7-16 Fig. 30.11-1A, 7-22 Fig. 30.9-1A). */
const CANOPY_SURFACES = {
  upperMinus: [-1.15, -0.75],
  lowerMinus: [-0.8, -0.65],
  plus: [0.8, 0.6],
} as const satisfies Record<string, LogLine>;

const canopySection = (edition: Asce7Edition): string => (edition === '7-16' ? '30.11' : '30.9');

/** Steepest cover the canopy section knows: 2 percent. A quarter inch in 12 is 2.08 percent and already outside. */
export const CANOPY_MAX_SLOPE = 0.02;

export interface AttachedCanopy {
  /** Rise over run of the cover. */
  readonly slope: number;
  /** Mean canopy height and mean eave height of the building it hangs on, inches. */
  readonly hc: number;
  readonly he: number;
  /** Mean roof height of the building, inches; the section ends at 60 ft. */
  readonly h: number;
}

/** Row of the net figure by canopy height over eave height. */
const netMinusRow = (ratio: number): LogLine =>
  ratio >= 0.9 ? CANOPY_NET.nearEave : ratio > 0.5 ? CANOPY_NET.middle : CANOPY_NET.low;

/**
 * Net GCp of the canopy figure read by height ratio alone (1 at most) and effective area in in², without the section's
 * limits on slope and place: for an envelope that states it goes beyond them. Inside them use `attachedCanopyGCp`.
 */
export function canopyNetGCp(
  hcOverHe: number,
  sign: CcSign,
  area: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const ratio = Math.min(hcOverHe, 1);
  const line = sign === 'plus' ? CANOPY_NET.plus : netMinusRow(ratio);
  const GCp = onLogLine(line, area / 144);
  rec?.step({
    symbol: 'GCp',
    meaning: `net coefficient of the attached-canopy figure, ${sign}`,
    formula: 'figure, linear in ln A from 10 to 100 ft²',
    substituted: `${sign === 'plus' ? 'one row for every hc/he' : `hc/he = ${num(ratio)}`}, ${num(line[0])} at 10 ft², ${num(line[1])} at 100 ft², A = ${num(area / 144)} ft²`,
    value: GCp,
    unit: '',
    clause: asce(edition, `Fig. ${canopySection(edition)}-1B`),
  });
  return GCp;
}

function canopyLimits(x: AttachedCanopy, edition: Asce7Edition) {
  const clause = asce(edition, canopySection(edition));
  if (x.slope > CANOPY_MAX_SLOPE) return outOfScope(clause, `canopy slope ${num(x.slope * 100)} % is over 2 %`);
  if (x.h > 60 * 12) return outOfScope(clause, `building height ${num(x.h / 12)} ft is over 60 ft`);
  if (x.hc > x.he) return outOfScope(clause, 'the canopy is above the eave');
  return undefined;
}

/** Net GCp of an attached canopy, both surfaces together, effective wind area `area` in². ASCE 7-16 30.11, 7-22 30.9. */
export function attachedCanopyGCp(
  x: AttachedCanopy,
  sign: CcSign,
  area: number,
  edition: Asce7Edition,
  rec?: Recorder,
): Scoped<number> {
  const limit = canopyLimits(x, edition);
  if (limit) return limit;
  return canopyNetGCp(x.hc / x.he, sign, area, edition, rec);
}

/** GCp on one surface of an attached canopy, effective wind area `area` in². ASCE 7-16 30.11, 7-22 30.9. */
export function attachedCanopySurfaceGCp(
  x: AttachedCanopy,
  surface: keyof typeof CANOPY_SURFACES,
  area: number,
  edition: Asce7Edition,
): Scoped<number> {
  return canopyLimits(x, edition) ?? onLogLine(CANOPY_SURFACES[surface], area / 144);
}

/**
 * Pressure on an attached canopy, psf, `qh` at the building's mean roof height; at least 16 psf either way.
 * ASCE 7-16 30.11, 7-22 30.9.
 */
export function attachedCanopyPressure(
  qh: number,
  GCp: number,
  Kd: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const p = atLeast16(qh * pressureKd(Kd, edition) * GCp);
  rec?.step({
    symbol: 'p',
    meaning: 'net wind pressure on the attached canopy, plus is down',
    formula: `${edition === '7-22' ? 'qh · Kd · (GCp)' : 'qh · (GCp)'}, not less than 16 psf either way`,
    substituted: `${num(qh)}${edition === '7-22' ? ` · ${num(Kd)}` : ''} · ${num(GCp)}`,
    value: p,
    unit: 'psf',
    clause: asce(edition, `${canopySection(edition)}, 30.2.2`),
  });
  return p;
}

export const WIND_30_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'wind.cc.open',
    clause: 'ASCE 7-22 Figs. 30.5-1 to 30.5-3 (7-16 Figs. 30.7-1 to 30.7-3)',
    title: 'Component CN, free roofs',
    provenance: 'mixed',
    note: '7-22 numbers read; that 7-16 prints the same is from memory; the zone plan was not seen: zone 3 throughout is safe',
  },
  {
    id: 'wind.min.cc',
    clause: 'ASCE 7-16 and 7-22 30.2.2',
    title: 'Minimum component pressure 16 psf',
    provenance: 'memory',
  },
  {
    id: 'wind.canopy',
    clause: 'ASCE 7-16 30.11, 7-22 30.9',
    title: 'Attached canopies',
    provenance: 'mixed',
    note: '7-22 equation, slope limit and coefficients read; definition wording and 7-16 identity from memory',
  },
];
