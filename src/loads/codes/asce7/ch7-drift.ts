/** Snow chapter 7: unbalanced gable load, drift at a step, sliding snow. A cover below a house roof takes all three. */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord } from '../support.js';
import { asce, MEMORY_NOTE, num } from '../support.js';

export interface DriftInput {
  readonly pg: number;
  /** Importance factor, 7-16 only. */
  readonly Is: number;
  /** Winter wind parameter (7-22 only), fraction of the winter with wind above 10 mph: 0.25 to 0.65 on the map. */
  readonly W2: number;
  /** Upwind fetch, inches. */
  readonly lu: number;
  /** Snow density, pcf. */
  readonly gamma: number;
}

/**
 * Drift height hd in inches (7-16 Fig. 7.6-1, 7-22 Eq. 7.6-1). In 7-16 the fetch is at least 20 ft. `shortFetch` adds the
 * limit of 7-16 for roof steps with a real fetch under 20 ft: hd ≤ √(Is·pg·lu/4γ).
 */
export function driftHeight(x: DriftInput, edition: Asce7Edition, shortFetch = false, rec?: Recorder): number {
  const lu = x.lu / 12;
  let feet: number;
  if (edition === '7-16') {
    const fetch = Math.max(lu, 20);
    feet = Math.sqrt(x.Is) * (0.43 * fetch ** (1 / 3) * (x.pg + 10) ** 0.25 - 1.5);
    if (shortFetch && lu < 20) feet = Math.min(feet, Math.sqrt((x.Is * x.pg * lu) / (4 * x.gamma)));
    feet = Math.max(feet, 0);
  } else {
    feet = 1.5 * Math.sqrt((x.pg ** 0.74 * lu ** 0.7 * x.W2 ** 1.7) / x.gamma);
  }
  rec?.step({
    symbol: 'hd',
    meaning: 'drift height',
    formula:
      edition === '7-16'
        ? '√Is · (0.43 · ∛lu · ⁴√(pg + 10) − 1.5), lu ≥ 20 ft'
        : '1.5 · √(pg^0.74 · lu^0.70 · W2^1.7 / γ)',
    substituted:
      edition === '7-16'
        ? `√${num(x.Is)} · (0.43 · ∛${num(Math.max(lu, 20))} · ⁴√(${num(x.pg)} + 10) − 1.5)`
        : `1.5 · √(${num(x.pg)}^0.74 · ${num(lu)}^0.70 · ${num(x.W2)}^1.7 / ${num(x.gamma)})`,
    value: feet,
    unit: 'ft',
    clause: asce(edition, edition === '7-16' ? 'Fig. 7.6-1' : 'Eq. 7.6-1'),
  });
  return feet * 12;
}

/** Unbalanced load of a hip or gable roof, psf of horizontal projection; the drift strip begins at the ridge. */
export interface UnbalancedSnow {
  readonly windward: number;
  readonly leeward: number;
  /** Added to `leeward` over `extent` from the ridge. Zero for narrow roofs. */
  readonly surcharge: number;
  /** Inches, horizontally. Cut at the eave by the caller. */
  readonly extent: number;
}

/**
 * Slopes with an unbalanced case: 1/2 in 12 (2.38 degrees) to 7 in 12 (30.2 degrees), both included. Compared as slopes so
 * that a roof drawn at exactly 7 in 12 is in.
 */
export function unbalancedApplies(theta: number): boolean {
  const slope = Math.tan(theta);
  return slope >= 0.5 / 12 - 1e-9 && slope <= 7 / 12 + 1e-9;
}

/** Narrow roof: W at most 20 ft with simply supported prismatic members from ridge to eave (7.6.1). */
export const NARROW_ROOF_W = 20 * 12;

/**
 * Unbalanced snow of a gable (7.6.1); `undefined` where the slope asks for none. `W` eave to ridge (in), `ps` balanced
 * load, `theta` radians, `simpleMembers` per the narrow-roof rule. A monoslope has no unbalanced case.
 */
export function unbalancedGableSnow(
  x: Omit<DriftInput, 'lu'> & {
    readonly W: number;
    readonly ps: number;
    readonly theta: number;
    readonly simpleMembers: boolean;
  },
  edition: Asce7Edition,
  rec?: Recorder,
): UnbalancedSnow | undefined {
  if (!unbalancedApplies(x.theta)) return undefined;
  const clause = asce(edition, '7.6.1');
  if (x.W <= NARROW_ROOF_W && x.simpleMembers) {
    const leeward = edition === '7-16' ? x.Is * x.pg : x.pg;
    rec?.step({
      symbol: 'pu',
      meaning: 'unbalanced snow on the leeward slope of a narrow roof, none on the windward',
      formula: edition === '7-16' ? 'Is · pg' : 'pg',
      substituted: edition === '7-16' ? `${num(x.Is)} · ${num(x.pg)}` : num(x.pg),
      value: leeward,
      unit: 'psf',
      clause,
    });
    return { windward: 0, leeward, surcharge: 0, extent: 0 };
  }
  const hd = driftHeight({ pg: x.pg, Is: x.Is, W2: x.W2, lu: x.W, gamma: x.gamma }, edition, false, rec);
  const rootS = Math.sqrt(1 / Math.tan(x.theta));
  const surcharge = ((hd / 12) * x.gamma) / rootS;
  const extent = (8 / 3) * hd * rootS;
  rec?.step({
    symbol: 'hd·γ/√S',
    meaning: 'surcharge on the leeward slope beside the ridge, on top of ps; the windward slope carries 0.3·ps',
    formula: 'hd · γ / √S',
    substituted: `${num(hd / 12)} · ${num(x.gamma)} / ${num(rootS)}`,
    value: surcharge,
    unit: 'psf',
    clause,
  });
  rec?.step({
    symbol: 'extent',
    meaning: 'width of the surcharge from the ridge',
    formula: '(8/3) · hd · √S',
    substituted: `(8/3) · ${num(hd / 12)} · ${num(rootS)}`,
    value: extent / 12,
    unit: 'ft',
    clause,
  });
  return { windward: 0.3 * x.ps, leeward: x.ps, surcharge, extent };
}

/** Triangular drift on a lower roof, greatest at the wall. */
export interface StepDrift {
  /** False where hc/hb is under 0.2: no drift is required. */
  readonly required: boolean;
  /** Balanced snow depth and clear height above it, inches. */
  readonly hb: number;
  readonly hc: number;
  /** Height of the drift at the wall, inches, and its surcharge there, psf. */
  readonly height: number;
  readonly pd: number;
  /** Inches from the wall to where the drift ends. */
  readonly width: number;
}

/**
 * Drift at a roof step (7.7.1). `drift.lu` is the upper roof's length for `leeward`, the lower roof's for `windward`; `step` the
 * height from lower roof to upper roof (in), `ps` the balanced load on the lower roof (psf). 7-16 takes the larger of the
 * two kinds, 7-22 both as separate cases.
 */
export function stepDrift(
  kind: 'leeward' | 'windward',
  drift: DriftInput,
  step: number,
  ps: number,
  edition: Asce7Edition,
  rec?: Recorder,
): StepDrift {
  const hb = (ps / drift.gamma) * 12;
  const hc = Math.max(step - hb, 0);
  if (hc < 0.2 * hb || hc === 0) return { required: false, hb, hc, height: 0, pd: 0, width: 0 };
  const full = driftHeight(drift, edition, true, rec);
  const free = kind === 'leeward' ? full : 0.75 * full;
  const height = Math.min(free, hc);
  const pd = (height / 12) * drift.gamma;
  // 7-22 draws the windward drift flatter: eight times its height instead of four.
  const width =
    kind === 'windward' && edition === '7-22'
      ? 8 * free
      : free <= hc
        ? 4 * free
        : Math.min((4 * free * free) / hc, 8 * hc);
  if (rec) {
    const clause = asce(edition, '7.7.1');
    rec.step({
      symbol: 'hc',
      meaning: 'clear height above the balanced snow',
      formula: 'step − ps/γ',
      substituted: `${num(step / 12)} − ${num(ps)}/${num(drift.gamma)}`,
      value: hc / 12,
      unit: 'ft',
      clause,
    });
    rec.step({
      symbol: 'pd',
      meaning: `${kind} drift surcharge at the wall`,
      formula: kind === 'leeward' ? 'min(hd, hc) · γ' : 'min(0.75·hd, hc) · γ',
      substituted: `min(${num(free / 12)}, ${num(hc / 12)}) · ${num(drift.gamma)}`,
      value: pd,
      unit: 'psf',
      clause,
    });
    rec.step({
      symbol: 'w',
      meaning: 'width of the drift from the wall',
      formula: kind === 'windward' && edition === '7-22' ? '8 · 0.75·hd' : '4·h, or 4·h²/hc ≤ 8·hc where h > hc',
      substituted: `h = ${num(free / 12)} ft, hc = ${num(hc / 12)} ft`,
      value: width / 12,
      unit: 'ft',
      clause,
    });
  }
  return { required: true, hb, hc, height, pd, width };
}

/**
 * Leeward drift from a higher structure across a horizontal gap `s` (7.7.2); zero where the gap is 20 ft or six times the
 * height difference `h`. Height and extent in inches.
 */
export function adjacentLeewardDrift(
  hd: number,
  h: number,
  s: number,
): { readonly height: number; readonly extent: number } {
  if (s >= 240 || s >= 6 * h) return { height: 0, extent: 0 };
  return { height: Math.min(hd, (6 * h - s) / 6), extent: Math.min(6 * hd, 6 * h - s) };
}

export interface SlidingSnow {
  /** Added to the balanced load over `width` from the upper eave, psf of horizontal projection. */
  readonly intensity: number;
  /** Inches. */
  readonly width: number;
  /** Pounds per inch of eave. */
  readonly total: number;
}

/** Whether an upper roof sheds: slippery and steeper than 1/4 in 12, or any surface steeper than 2 in 12 (7.9). */
export function slidingApplies(theta: number, slippery: boolean): boolean {
  return Math.tan(theta) > (slippery ? 0.25 : 2) / 12 + 1e-9;
}

/**
 * Sliding snow from an upper roof (7.9): 0.4·pf·W per foot of eave spread over 15 ft, `W` eave to ridge of the upper roof
 * and `pf` its flat roof load. A narrower lower roof keeps the intensity and takes its share of the total. `gap` (in) is
 * a horizontal distance between the roofs. The drop `h` must exceed the gap for snow to reach. Separate from drift, unbalanced and rain-on-snow.
 */
export function slidingSnow(
  pfUpper: number,
  W: number,
  lowerWidth: number,
  edition: Asce7Edition,
  gap: { readonly s: number; readonly h: number } = { s: 0, h: Number.POSITIVE_INFINITY },
  rec?: Recorder,
): SlidingSnow {
  const reach = gap.s > 0 && gap.h <= gap.s ? 0 : Math.max(180 - gap.s, 0);
  const width = Math.min(reach, lowerWidth);
  if (width <= 0) return { intensity: 0, width: 0, total: 0 };
  const intensity = (0.4 * pfUpper * W) / 180;
  const total = (intensity * width) / 144;
  rec?.step({
    symbol: 'pslide',
    meaning: 'sliding snow on the lower roof',
    formula: '0.4 · pf · W / 15 ft',
    substituted: `0.4 · ${num(pfUpper)} · ${num(W / 12)} / 15`,
    value: intensity,
    unit: 'psf',
    clause: asce(edition, '7.9'),
    ...(gap.s > 0 || lowerWidth < 180 ? { note: `narrow or separated lower roof: ${MEMORY_NOTE}` } : {}),
  });
  return { intensity, width, total };
}

export const SNOW_RECORDS: readonly ClauseRecord[] = [
  { id: 'snow.pf', clause: 'ASCE 7-16 and 7-22 Eq. 7.3-1', title: 'Flat roof snow load', provenance: 'read' },
  { id: 'snow.exempt.7-22', clause: 'ASCE 7-22 7.2', title: 'Snow need not be considered', provenance: 'read' },
  { id: 'snow.ce', clause: 'ASCE 7-16 and 7-22 Table 7.3-1', title: 'Exposure factor', provenance: 'read' },
  {
    id: 'snow.ct',
    clause: 'ASCE 7-16 Table 7.3-2, 7-22 Tables 7.3-2, 7.3-3',
    title: 'Thermal factor',
    provenance: 'read',
  },
  { id: 'snow.pm', clause: 'ASCE 7-16 7.3.4, 7-22 7.3.3', title: 'Minimum snow load', provenance: 'read' },
  {
    id: 'snow.cs',
    clause: 'ASCE 7-16 and 7-22 Fig. 7.4-1',
    title: 'Slope factor',
    provenance: 'read',
    note: 'at Ct exactly 1.1 two 7-22 transcriptions differ; an open roof (1.2) is not affected',
  },
  { id: 'snow.density', clause: 'ASCE 7-16 and 7-22 Eq. 7.7-1', title: 'Snow density', provenance: 'read' },
  {
    id: 'snow.unbalanced',
    clause: 'ASCE 7-16 and 7-22 7.6.1',
    title: 'Unbalanced gable load',
    provenance: 'mixed',
    note: 'gable read; that a monoslope has no unbalanced case is from memory',
  },
  { id: 'snow.hd', clause: 'ASCE 7-16 Fig. 7.6-1, 7-22 Eq. 7.6-1', title: 'Drift height', provenance: 'read' },
  {
    id: 'snow.drift.step',
    clause: 'ASCE 7-16 and 7-22 7.7.1',
    title: 'Drift at a roof step',
    provenance: 'read',
    note: 'a 7-22 windward drift cut at the step keeps its full width, on the heavy side',
  },
  { id: 'snow.drift.adjacent', clause: 'ASCE 7-16 7.7.2', title: 'Drift across a gap', provenance: 'memory' },
  {
    id: 'snow.sliding',
    clause: 'ASCE 7-16 and 7-22 7.9',
    title: 'Sliding snow',
    provenance: 'mixed',
    note: 'load and combination rule read; slope triggers, narrow lower roof and gap from memory',
  },
  { id: 'snow.ros', clause: 'ASCE 7-16 and 7-22 7.10', title: 'Rain on snow', provenance: 'read' },
  {
    id: 'snow.partial',
    clause: 'ASCE 7-16 and 7-22 7.5.1',
    title: 'Partial loading of continuous members',
    provenance: 'memory',
  },
];
