/**
 * ACI 318-14 chapters 22 and 25: a round pier with a ring of vertical bars, in bending and in tension with bending. A lower
 * bound by statics: half the bars pull at the centroid of their half ring, the others are left out. psi, inches, pounds;
 * loads are factored. From memory: confirm in the adopted code.
 */
import type { Recorder } from '../../../base/trace.js';
import { MEMORY_NOTE } from '../clause-record.js';
import { say } from '../say.js';
import { BAR_YIELD, PHI_TENSION } from './ch14-pedestals.js';

/** Cover of concrete cast against earth (20.6.1.3.1), and a #3 tie, inches. */
export const EARTH_COVER = 3;
export const TIE = 0.375;

/** Depth of the stress block over that of the neutral axis (22.2.2.4.3). */
export const beta1 = (fc: number): number => Math.max(0.65, Math.min(0.85, 0.85 - (0.05 * (fc - 4000)) / 1000));

/** Development length in inches of a standard hook with 2 in of cover or more on its tail (25.4.3.1, ψc = 0.7). */
export const hookLength = (fc: number, db: number): number =>
  Math.max((0.7 * BAR_YIELD * db) / (50 * Math.min(Math.sqrt(fc), 100)), 8 * db, 6);

/** Share of its yield that a hooked bar reaches in `room` inches of concrete (25.4.3.1, 25.4.10.1). */
export function hookShare(fc: number, db: number, room: number, rec?: Recorder): number {
  const need = hookLength(fc, db);
  const value = Math.max(0, Math.min(1, room / need));
  rec?.step({
    symbol: 'k',
    meaning: `share of yield that the hooks reach in the pad: ${say(room)} in under the pier, ldh = max(0.7·fy·db/(50·√f'c), 8·db, 6) = ${say(need)} in`,
    formula: 'min(1, room/ldh)',
    substituted: `min(1, ${say(room)}/${say(need)})`,
    value,
    unit: '',
    clause: 'ACI 318-14 25.4.3.1, 25.4.10.1',
    note: MEMORY_NOTE,
  });
  return value;
}

/** Half angle of the segment of a circle of radius `R` with area `A`. */
function segmentAngle(R: number, A: number): number {
  let low = 0;
  let high = Math.PI;
  for (let i = 0; i < 60; i += 1) {
    const mid = (low + high) / 2;
    if (R * R * (mid - Math.sin(mid) * Math.cos(mid)) < A) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

/**
 * Design moment φMn in lb·in of a pier of diameter `D` with bars of total area `As` and diameter `db` in a ring, `stress` of
 * them in psi. Undefined where the bars at mid-depth would not be tension-controlled, or do not fit: not this method's.
 * ACI 318-14 22.2, 22.4.
 */
export function pierBending(
  fc: number,
  D: number,
  As: number,
  db: number,
  stress: number,
  rec?: Recorder,
): number | undefined {
  const R = D / 2;
  const ring = R - EARTH_COVER - TIE - db / 2;
  const pull = (As / 2) * stress;
  const area = pull / (0.85 * fc);
  if (ring <= 0 || area >= (Math.PI * R * R) / 2) return undefined;
  const angle = segmentAngle(R, area);
  const c = (R * (1 - Math.cos(angle))) / beta1(fc);
  // 0.003·(R − c)/c ≥ 0.005 at the middle of the section (21.2.2).
  if (c > 0.375 * R) return undefined;
  const arm = area > 0 ? ((2 / 3) * R ** 3 * Math.sin(angle) ** 3) / area : R;
  const value = PHI_TENSION * pull * ((2 * ring) / Math.PI + arm);
  rec?.step({
    symbol: 'T',
    meaning: 'pull of half the bars, at 2/π of the radius of their ring',
    formula: '(As/2)·fs',
    substituted: `${say(As)}/2 · ${say(stress)}`,
    value: pull,
    unit: 'lb',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'r',
    meaning: 'radius of the ring: 3 in of cover and a #3 tie',
    formula: 'D/2 − 3 − 0.375 − db/2',
    substituted: `${say(D)}/2 − 3 − 0.375 − ${say(db)}/2`,
    value: ring,
    unit: 'in',
    clause: 'ACI 318-14 20.6.1.3.1',
    note: MEMORY_NOTE,
  });
  rec?.step({
    symbol: 'α',
    meaning: "half angle of the segment in compression, found by trial (radians): R²·(α − sinα·cosα) = T/(0.85·f'c)",
    formula: "T/(0.85·f'c)",
    substituted: `${say(R)}² · (α − sinα·cosα) = ${say(pull)}/(0.85 · ${say(fc)}) = ${say(area)} in²`,
    value: angle,
    unit: '',
    clause: 'ACI 318-14 22.2.2.4',
    note: MEMORY_NOTE,
  });
  rec?.step({
    symbol: 'yc',
    meaning: `centroid of that segment from the middle; neutral axis ${say(c)} in deep, at most 0.375·R`,
    formula: "(2/3)·R³·sin³α/(T/(0.85·f'c))",
    substituted: `2/3 · ${say(R)}³ · sin³(${say(angle)})/${say(area)}`,
    value: arm,
    unit: 'in',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'φMn',
    meaning: 'design moment of the pier with its bars',
    formula: 'φ·T·(2·r/π + yc)',
    substituted: `${PHI_TENSION} · ${say(pull)} · (2 · ${say(ring)}/π + ${say(arm)})`,
    value,
    unit: 'lb·in',
    clause: 'ACI 318-14 22.3',
    note: MEMORY_NOTE,
  });
  return value;
}

/** Tension and bending together on the straight line between both strengths, inside the true curve (22.4, statics). */
export function tensionWithBending(T: number, M: number, tension: number, bending: number, rec?: Recorder): number {
  const value = T / tension + M / bending;
  rec?.step({
    symbol: 'i',
    meaning: 'pull and moment together, at most 1: the straight line lies inside the curve of the section',
    formula: 'Tu/φTn + Mu/φMn',
    substituted: `${say(T)}/${say(tension)} + ${say(M)}/${say(bending)}`,
    value,
    unit: '',
    clause: 'ACI 318-14 22.4, statics',
  });
  return value;
}
