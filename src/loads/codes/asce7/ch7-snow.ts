/**
 * Snow chapter 7: factors, flat and sloped roof load, minimum, unbalanced gable load, rain-on-snow. Drifts and sliding
 * snow are in `ch7-drift.ts`. The 7-22 ground snow load is at strength level and knows no importance factor.
 */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, Scoped } from '../support.js';
import { asce, interpolate, num, outOfScope, tableDegrees } from '../support.js';

export type RiskCategory = 'I' | 'II' | 'III' | 'IV';
export type RoofExposure = 'fully-exposed' | 'partially-exposed' | 'sheltered';
/** Terrain of Table 7.3-1. */
export type SnowTerrain = 'B' | 'C' | 'D' | 'above-treeline' | 'alaska-no-trees';

/** Importance factor for snow (Table 1.5-2); used by 7-16 only. */
export const SNOW_IMPORTANCE: Readonly<Record<RiskCategory, number>> = { I: 0.8, II: 1.0, III: 1.1, IV: 1.2 };

const CE: Readonly<Record<SnowTerrain, readonly [number, number, number | undefined]>> = {
  B: [0.9, 1.0, 1.2],
  C: [0.9, 1.0, 1.1],
  D: [0.8, 0.9, 1.0],
  'above-treeline': [0.7, 0.8, undefined],
  'alaska-no-trees': [0.7, 0.8, undefined],
};
const CE_COLUMN: Readonly<Record<RoofExposure, 0 | 1 | 2>> = {
  'fully-exposed': 0,
  'partially-exposed': 1,
  sheltered: 2,
};

/** Exposure factor Ce (Table 7.3-1, same in both editions). Two terrains have no sheltered value. */
export function exposureCe(
  terrain: SnowTerrain,
  exposure: RoofExposure,
  edition: Asce7Edition,
  rec?: Recorder,
): Scoped<number> {
  const clause = asce(edition, 'Table 7.3-1');
  const Ce = CE[terrain][CE_COLUMN[exposure]];
  if (Ce === undefined) return outOfScope(clause, `no sheltered roof exists in terrain ${terrain}`);
  rec?.step({
    symbol: 'Ce',
    meaning: 'snow exposure factor',
    formula: 'table by terrain and roof exposure',
    substituted: `${terrain}, ${exposure}`,
    value: Ce,
    unit: '',
    clause,
  });
  return Ce;
}

export type ThermalCondition =
  /** Open below, or kept unheated: every patio cover. */
  | 'unheated-or-open'
  /** Heated space below a cold, ventilated roof of R-25 or more, or kept just above freezing. */
  | 'cold-ventilated'
  /** Any other heated building. */
  | 'heated'
  | 'freezer'
  | 'greenhouse';

const CT_R = [20, 30, 40, 50];
const CT_PG = [10, 20, 30, 40, 50, 60, 70];
/** 7-22 Table 7.3-3, heated buildings with unventilated roofs: rows by roof R-value, columns by ground snow load. */
const CT_HEATED_7_22: readonly (readonly number[])[] = [
  [1.2, 1.11, 1.05, 1.01, 1, 1, 1],
  [1.2, 1.17, 1.14, 1.13, 1.12, 1.11, 1.1],
  [1.2, 1.19, 1.17, 1.16, 1.16, 1.15, 1.15],
  [1.2, 1.2, 1.19, 1.19, 1.19, 1.18, 1.18],
];

/**
 * Thermal factor Ct. 7-16 needs the condition only; 7-22 reads heated, unventilated roofs from a table by R-value (h·ft²·°F/Btu) and
 * ground snow load `pg` (psf), linear in both; R under 20 takes the row of 20 and pg beyond the table its end column,
 * both of which are on the heavy side.
 */
export function thermalCt(
  condition: ThermalCondition,
  edition: Asce7Edition,
  heated: { readonly R: number; readonly pg: number } | undefined,
  rec?: Recorder,
): Scoped<number> {
  const clause = asce(edition, edition === '7-22' && condition === 'heated' ? 'Table 7.3-3' : 'Table 7.3-2');
  let Ct: number;
  if (condition === 'freezer') Ct = 1.3;
  else if (condition === 'greenhouse') Ct = 0.85;
  else if (condition === 'unheated-or-open') Ct = 1.2;
  else if (condition === 'cold-ventilated') Ct = edition === '7-16' ? 1.1 : 1.2;
  else if (edition === '7-16') Ct = 1.0;
  else if (heated === undefined) return outOfScope(clause, 'the roof R-value is needed');
  else if (heated.R > 50) Ct = 1.2;
  else
    Ct = interpolate(
      CT_R,
      CT_HEATED_7_22.map((row) => interpolate(CT_PG, row, heated.pg)),
      heated.R,
    );
  rec?.step({
    symbol: 'Ct',
    meaning: 'thermal factor',
    formula: 'table by thermal condition',
    substituted: heated && clause.endsWith('7.3-3') ? `R = ${num(heated.R)}, pg = ${num(heated.pg)} psf` : condition,
    value: Ct,
    unit: '',
    clause,
  });
  return Ct;
}

/**
 * Flat roof snow load pf in psf. `Is` is ignored in 7-22, whose `pg` already carries the risk category.
 * ASCE 7 Eq. 7.3-1.
 */
export function flatRoofSnow(
  pg: number,
  Ce: number,
  Ct: number,
  Is: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const is16 = edition === '7-16';
  const pf = 0.7 * Ce * Ct * (is16 ? Is : 1) * pg;
  rec?.step({
    symbol: 'pf',
    meaning: 'flat roof snow load',
    formula: is16 ? '0.7 · Ce · Ct · Is · pg' : '0.7 · Ce · Ct · pg',
    substituted: `0.7 · ${num(Ce)} · ${num(Ct)}${is16 ? ` · ${num(Is)}` : ''} · ${num(pg)}`,
    value: pf,
    unit: 'psf',
    clause: asce(edition, 'Eq. 7.3-1'),
  });
  return pf;
}

/** 7-22 exception of 7.2: snow need not be considered where both load and fetch `lu` (in) are small. Always false in 7-16. */
export function snowExempt(pg: number, lu: number, edition: Asce7Edition): boolean {
  const feet = lu / 12;
  return edition === '7-22' && ((pg <= 10 && feet <= 100) || (pg <= 5 && feet <= 300));
}

/** Largest minimum roof snow load of 7-22 (Table 7.3-4), psf. */
export const PM_MAX_7_22: Readonly<Record<RiskCategory, number>> = { I: 25, II: 30, III: 35, IV: 40 };

/**
 * Minimum snow load pm for low slopes, psf; 0 where it does not apply (slope of 15 degrees or more). A uniform case of
 * its own, never combined with drift, sliding, unbalanced or partial loading.
 * ASCE 7-16 7.3.4, 7-22 7.3.3.
 */
export function minimumRoofSnow(
  pg: number,
  category: RiskCategory,
  theta: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  if (tableDegrees(theta) >= 15) return 0;
  const Is = SNOW_IMPORTANCE[category];
  const pm = edition === '7-16' ? Is * Math.min(pg, 20) : Math.min(pg, PM_MAX_7_22[category]);
  rec?.step({
    symbol: 'pm',
    meaning: 'minimum snow load of a low-slope roof',
    formula: edition === '7-16' ? 'Is · min(pg, 20)' : 'min(pg, pm,max)',
    substituted: edition === '7-16' ? `${num(Is)} · min(${num(pg)}, 20)` : `min(${num(pg)}, ${PM_MAX_7_22[category]})`,
    value: pm,
    unit: 'psf',
    clause: asce(edition, edition === '7-16' ? '7.3.4' : '7.3.3'),
  });
  return pm;
}

/** Slope in degrees up to which Cs stays 1 (Fig. 7.4-1). `slipperyAllowed` stands for the R-value gate of 7-16 warm roofs. */
function slopeKnee(Ct: number, slippery: boolean, slipperyAllowed: boolean, edition: Asce7Edition): number {
  if (Ct >= 1.2) return slippery ? 15 : 45;
  if (edition === '7-16') {
    // The figure gives panels at 1.0 and 1.1; a factor between takes the warmer panel only from 1.0 down.
    if (Ct > 1.0) return slippery ? 10 : 37.5;
    return slippery && slipperyAllowed ? 5 : 30;
  }
  if (Ct > 1.1) return slippery ? 10 : 37.5;
  return 30;
}

/**
 * Roof slope factor Cs for slope `theta` (radians): 1 to the knee, then linear to 0 at 70 degrees. `slippery` needs an
 * unobstructed slippery surface with room for the snow to slide off. `warmRoofSlides` (7-16, Ct of 1.0 or less): R of at
 * least 30 unventilated or 20 ventilated; without it a warm slippery roof takes the curve of other surfaces.
 */
export function slopeCs(
  theta: number,
  Ct: number,
  slippery: boolean,
  warmRoofSlides: boolean,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const deg = tableDegrees(theta);
  const knee = slopeKnee(Ct, slippery, warmRoofSlides, edition);
  const Cs = deg <= knee ? 1 : deg >= 70 ? 0 : (70 - deg) / (70 - knee);
  rec?.step({
    symbol: 'Cs',
    meaning: `roof slope factor, ${slippery ? 'slippery' : 'other'} surface`,
    formula: `1 to ${knee}°, then (70° − θ)/(70° − ${knee}°)`,
    substituted: `θ = ${num(deg)}°`,
    value: Cs,
    unit: '',
    clause: asce(edition, 'Fig. 7.4-1'),
  });
  return Cs;
}

/** Balanced sloped roof snow load ps in psf of horizontal projection. ASCE 7 Eq. 7.4-1. */
export function slopedRoofSnow(pf: number, Cs: number, edition: Asce7Edition, rec?: Recorder): number {
  const ps = Cs * pf;
  rec?.step({
    symbol: 'ps',
    meaning: 'balanced snow load on the horizontal projection',
    formula: 'Cs · pf',
    substituted: `${num(Cs)} · ${num(pf)}`,
    value: ps,
    unit: 'psf',
    clause: asce(edition, 'Eq. 7.4-1'),
  });
  return ps;
}

/** Snow density in pcf. ASCE 7 Eq. 7.7-1. */
export function snowDensity(pg: number, edition: Asce7Edition, rec?: Recorder): number {
  const gamma = Math.min(0.13 * pg + 14, 30);
  rec?.step({
    symbol: 'γ',
    meaning: 'snow density',
    formula: 'min(0.13 · pg + 14, 30)',
    substituted: `0.13 · ${num(pg)} + 14`,
    value: gamma,
    unit: 'pcf',
    clause: asce(edition, 'Eq. 7.7-1'),
  });
  return gamma;
}

/**
 * Rain-on-snow surcharge in psf, added to the balanced case only; 0 where it does not apply. `W` is the horizontal
 * distance from eave to ridge, inches; the roof must be flatter than W/50 degrees (W in feet).
 * ASCE 7 7.10.
 */
export function rainOnSnow(
  pg: number,
  category: RiskCategory,
  theta: number,
  W: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const limit = edition === '7-16' ? 20 : PM_MAX_7_22[category];
  const applies = pg > 0 && pg <= limit && tableDegrees(theta) < W / 12 / 50;
  const value = applies ? (edition === '7-16' ? 5 : 8) : 0;
  rec?.step({
    symbol: 'pros',
    meaning: 'rain-on-snow surcharge',
    formula: `${edition === '7-16' ? 5 : 8} psf where 0 < pg ≤ ${limit} psf and θ < W/50`,
    substituted: `pg = ${num(pg)} psf, θ = ${num(tableDegrees(theta))}°, W/50 = ${num(W / 600)}`,
    value,
    unit: 'psf',
    clause: asce(edition, '7.10'),
  });
  return value;
}

/**
 * Snow patterns of a continuous member (7.5.1) as factors on the balanced load, span by span, cantilevers counting as
 * spans: full on one end span and half elsewhere; half on one end span and full elsewhere; full on two neighbours and
 * half elsewhere. Repeats are left out. One simple span has no pattern.
 */
export function partialSnowPatterns(spans: number): readonly (readonly number[])[] {
  if (spans < 2) return [];
  const patterns = new Map<string, readonly number[]>();
  const add = (isFull: (i: number) => boolean): void => {
    const p = Array.from({ length: spans }, (_, i) => (isFull(i) ? 1 : 0.5));
    if (p.includes(0.5)) patterns.set(p.join(), p);
  };
  for (const end of [0, spans - 1]) {
    add((i) => i === end);
    add((i) => i !== end);
  }
  for (let k = 0; k + 1 < spans; k += 1) add((i) => i === k || i === k + 1);
  return [...patterns.values()];
}
