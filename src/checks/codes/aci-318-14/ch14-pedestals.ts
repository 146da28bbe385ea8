/**
 * ACI 318-14 chapters 14 and 16: plain concrete pedestals under axial load and moment, and the least steel of a reinforced
 * one. psi, inches, pounds, pound-inches; loads are factored. All from memory: confirm in the adopted code.
 */
import type { Recorder } from '../../../base/trace.js';
import { MEMORY_NOTE } from '../clause-record.js';
import { say } from '../say.js';
import { PHI_PLAIN } from './ch14-plain-concrete.js';

/** Tallest plain pedestal: unsupported height over its average least lateral dimension (14.3.3.1). */
export const PEDESTAL_SLENDERNESS = 3;
/** Least steel of a reinforced pedestal, and across its joint with the footing, over the gross area (10.6.1.1 with 10.3.1.2, 16.3.4.1). */
export const PEDESTAL_STEEL = 0.005;
/** Strength reduction of bars in tension (Table 21.2.1) and yield of ordinary bars, psi. */
export const PHI_TENSION = 0.9;
export const BAR_YIELD = 60000;

/** Area in in² of a reinforcing bar by its number in eighths of an inch (ASTM A615). */
export const BAR_AREAS: Readonly<Record<number, number>> = { 3: 0.11, 4: 0.2, 5: 0.31, 6: 0.44, 7: 0.6, 8: 0.79 };

/** Section modulus of a circle of diameter `D`, in³. */
export const circleModulus = (D: number): number => (Math.PI * D ** 3) / 32;

/** Design axial strength φPn in pounds of plain concrete of area `Ag`, height `lc` and least dimension `h` (14.5.3.1). */
export function plainAxial(fc: number, Ag: number, lc: number, h: number, rec?: Recorder): number {
  const value = PHI_PLAIN * 0.6 * fc * Ag * Math.max(0, 1 - (lc / (32 * h)) ** 2);
  rec?.step({
    symbol: 'φPn',
    meaning: 'design axial strength, plain concrete',
    formula: "φ·0.60·f'c·Ag·(1 − (lc/(32·h))²)",
    substituted: `${PHI_PLAIN} · 0.60 · ${say(fc)} · ${say(Ag)} · (1 − (${say(lc)}/(32 · ${say(h)}))²)`,
    value,
    unit: 'lb',
    clause: 'ACI 318-14 14.5.3.1',
    note: MEMORY_NOTE,
  });
  return value;
}

/** Demand over strength of the tension face, Mu/Sm − Pu/Ag against φ·5·λ·√f'c (Table 14.5.4.1). `Pu` positive pressing. */
export function plainTensionFace(fc: number, Ag: number, Sm: number, Pu: number, Mu: number, rec?: Recorder): number {
  const stress = Mu / Sm - Pu / Ag;
  const limit = PHI_PLAIN * 5 * Math.sqrt(fc);
  rec?.step({
    symbol: 'ft',
    meaning: `tension at the edge of the pier, against φ·5·√f'c = ${say(PHI_PLAIN)} · 5 · √${say(fc)} = ${say(limit)} psi`,
    formula: 'Mu/Sm − Pu/Ag',
    substituted: `${say(Mu)}/${say(Sm)} − ${say(Pu)}/${say(Ag)}`,
    value: stress,
    unit: 'psi',
    clause: 'ACI 318-14 Table 14.5.4.1',
    note: MEMORY_NOTE,
  });
  return Math.max(0, stress) / limit;
}

/** Demand over strength of the compression face: Mu/(φ·0.85·f'c·Sm) + Pu/φPn (Table 14.5.4.1). */
export function plainCompressionFace(
  fc: number,
  Sm: number,
  axial: number,
  Pu: number,
  Mu: number,
  rec?: Recorder,
): number {
  const bending = PHI_PLAIN * 0.85 * fc * Sm;
  const value = Mu / bending + Math.max(0, Pu) / axial;
  rec?.step({
    symbol: 'c',
    meaning: 'compression edge of the pier, at most 1',
    formula: "Mu/(φ·0.85·f'c·Sm) + Pu/φPn",
    substituted: `${say(Mu)}/(${PHI_PLAIN} · 0.85 · ${say(fc)} · ${say(Sm)}) + ${say(Math.max(0, Pu))}/${say(axial)}`,
    value,
    unit: '',
    clause: 'ACI 318-14 Table 14.5.4.1',
    note: MEMORY_NOTE,
  });
  return value;
}

/**
 * Design tension strength in pounds of bars of area `As` at `stress` psi: their yield, or the share of it their hooks reach.
 * ACI 318-14 22.4.3.1.
 */
export function barTension(As: number, stress = BAR_YIELD, rec?: Recorder): number {
  const value = PHI_TENSION * As * stress;
  rec?.step({
    symbol: 'φTn',
    meaning: 'design strength of the vertical bars in tension',
    formula: 'φ·As·fs',
    substituted: `${PHI_TENSION} · ${say(As)} · ${say(stress)}`,
    value,
    unit: 'lb',
    clause: 'ACI 318-14 22.4.3.1',
    note: MEMORY_NOTE,
  });
  return value;
}

/** Least area in in² of the bars of a reinforced pedestal of gross area `Ag`. ACI 318-14 10.6.1.1, 16.3.4.1. */
export function leastPedestalSteel(Ag: number, rec?: Recorder): number {
  const value = PEDESTAL_STEEL * Ag;
  rec?.step({
    symbol: 'As,min',
    meaning: 'least vertical steel where bars are needed, pier and its joint with the footing',
    formula: '0.005·Ag',
    substituted: `0.005 · ${say(Ag)}`,
    value,
    unit: 'in²',
    clause: 'ACI 318-14 10.6.1.1 with 10.3.1.2, 16.3.4.1',
    note: MEMORY_NOTE,
  });
  return value;
}
