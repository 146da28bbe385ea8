/** Wind chapter 26: velocity pressure and its factors. Exposure-dependent numbers changed between 7-16 and 7-22. */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord, Scoped } from '../support.js';
import { asce, interpolate, num, outOfScope } from '../support.js';

export type Exposure = 'B' | 'C' | 'D';

/** Gust-effect factor of a rigid structure (26.11.1), permitted value. */
export const G_RIGID = 0.85;
/** Wind directionality factor for buildings, main system and components (Table 26.6-1). */
export const KD_BUILDINGS = 0.85;

/** Internal pressure coefficients, plus and minus (Table 26.13-1). None is used with free-roof CN, which is already net. */
export const GCPI = { open: 0, partiallyOpen: 0.18, enclosed: 0.18, partiallyEnclosed: 0.55 } as const;

interface PowerLaw {
  readonly coefficient: number;
  readonly alpha: Readonly<Record<Exposure, number>>;
  /** Gradient height, feet. */
  readonly zg: Readonly<Record<Exposure, number>>;
}

/** Table 26.11-1 and Note 1 of Table 26.10-1. */
const POWER_LAW: Readonly<Record<Asce7Edition, PowerLaw>> = {
  '7-16': { coefficient: 2.01, alpha: { B: 7, C: 9.5, D: 11.5 }, zg: { B: 1200, C: 900, D: 700 } },
  '7-22': { coefficient: 2.41, alpha: { B: 7.5, C: 9.8, D: 11.5 }, zg: { B: 3280, C: 2460, D: 1935 } },
};

/** Velocity pressure exposure coefficient from the power law, `z` in inches above ground. ASCE 7 Table 26.10-1. */
export function exposureKz(z: number, exposure: Exposure, edition: Asce7Edition, rec?: Recorder): Scoped<number> {
  const law = POWER_LAW[edition];
  const zg = law.zg[exposure];
  const alpha = law.alpha[exposure];
  const feet = Math.max(z / 12, 15);
  const clause = asce(edition, 'Table 26.10-1 Note 1');
  if (feet > zg) return outOfScope(clause, `height ${num(feet)} ft is above the gradient height of ${zg} ft`);
  const Kz = law.coefficient * (feet / zg) ** (2 / alpha);
  rec?.step({
    symbol: 'Kz',
    meaning: `velocity pressure exposure coefficient, Exposure ${exposure}`,
    formula: `${law.coefficient} · (max(z, 15 ft)/zg)^(2/α)`,
    substituted: `${law.coefficient} · (${num(feet)}/${zg})^(2/${alpha})`,
    value: Kz,
    unit: '',
    clause,
  });
  return Kz;
}

const TABLE_Z = [15, 20, 25, 30, 40, 50, 60];
const TABLE_KZ: Readonly<Record<Exposure, readonly number[]>> = {
  B: [0.57, 0.62, 0.66, 0.7, 0.76, 0.81, 0.85],
  C: [0.85, 0.9, 0.94, 0.98, 1.04, 1.09, 1.13],
  D: [1.03, 1.08, 1.12, 1.16, 1.22, 1.27, 1.31],
};

/**
 * The printed table of 7-16 to 60 ft with linear interpolation, `z` in inches. It differs from the power law by up to
 * 0.8 %; both are permitted. The 7-22 table is not held: use the power law.
 */
export function exposureKzTable(z: number, exposure: Exposure, rec?: Recorder): Scoped<number> {
  const feet = z / 12;
  const clause = 'ASCE 7-16 Table 26.10-1';
  if (feet > 60) return outOfScope(clause, `height ${num(feet)} ft is above 60 ft`);
  const Kz = interpolate(TABLE_Z, TABLE_KZ[exposure], feet);
  rec?.step({
    symbol: 'Kz',
    meaning: `velocity pressure exposure coefficient, Exposure ${exposure}`,
    formula: 'printed table, linear between rows',
    substituted: `z = ${num(feet)} ft`,
    value: Kz,
    unit: '',
    clause,
    note: 'some rows of this table are recalled from memory; the power law is read',
  });
  return Kz;
}

/** Chapter 28 footnote: in Exposure B below 30 ft, Kz is not taken below 0.70. `z` in inches. */
export function exposureKzChapter28(
  z: number,
  exposure: Exposure,
  edition: Asce7Edition,
  rec?: Recorder,
): Scoped<number> {
  if (exposure !== 'B' || z >= 30 * 12) return exposureKz(z, exposure, edition, rec);
  rec?.step({
    symbol: 'Kz',
    meaning: 'velocity pressure exposure coefficient, chapter 28, Exposure B below 30 ft',
    formula: '0.70',
    substituted: `z = ${num(z / 12)} ft`,
    value: 0.7,
    unit: '',
    clause: asce(edition, 'Table 26.10-1 footnote'),
  });
  return 0.7;
}

/** Ground elevation factor, `ze` in inches above sea level (1.0 is permitted everywhere and is never unsafe above sea level). */
export function elevationKe(ze: number, edition: Asce7Edition, rec?: Recorder): number {
  const feet = ze / 12;
  const Ke = Math.exp(-0.0000362 * feet);
  rec?.step({
    symbol: 'Ke',
    meaning: 'ground elevation factor',
    formula: 'e^(−0.0000362·ze)',
    substituted: `e^(−0.0000362 · ${num(feet)})`,
    value: Ke,
    unit: '',
    clause: asce(edition, 'Table 26.9-1'),
  });
  return Ke;
}

export interface VelocityPressureInput {
  readonly Kz: number;
  /** Topographic factor as given for the site; 1.0 on flat ground. */
  readonly Kzt: number;
  /** Directionality factor. Part of q in 7-16 only; 7-22 puts it in each pressure equation. */
  readonly Kd: number;
  readonly Ke: number;
  /** Basic wind speed for the risk category, mph, 3-second gust. */
  readonly V: number;
}

/**
 * Velocity pressure q in psf. In 7-22 it holds no Kd, so printed q differs between editions while pressures agree.
 * ASCE 7 Eq. 26.10-1.
 */
export function velocityPressure(x: VelocityPressureInput, edition: Asce7Edition, rec?: Recorder): number {
  const inQ = edition === '7-16';
  const q = 0.00256 * x.Kz * x.Kzt * (inQ ? x.Kd : 1) * x.Ke * x.V * x.V;
  rec?.step({
    symbol: 'qz',
    meaning: inQ ? 'velocity pressure' : 'velocity pressure, without Kd',
    formula: inQ ? '0.00256 · Kz · Kzt · Kd · Ke · V²' : '0.00256 · Kz · Kzt · Ke · V²',
    substituted: `0.00256 · ${num(x.Kz)} · ${num(x.Kzt)}${inQ ? ` · ${num(x.Kd)}` : ''} · ${num(x.Ke)} · ${num(x.V)}²`,
    value: q,
    unit: 'psf',
    clause: asce(edition, 'Eq. 26.10-1'),
  });
  return q;
}

/** The Kd that a pressure equation still needs: 1 in 7-16, where q already holds it. ASCE 7 26.6, 26.10.2. */
export const pressureKd = (Kd: number, edition: Asce7Edition): number => (edition === '7-22' ? Kd : 1);

export const WIND_26_RECORDS: readonly ClauseRecord[] = [
  { id: 'wind.qz', clause: 'ASCE 7-16 and 7-22 Eq. 26.10-1', title: 'Velocity pressure', provenance: 'read' },
  { id: 'wind.kz', clause: 'ASCE 7-16 and 7-22 Table 26.10-1 Note 1', title: 'Kz power law', provenance: 'read' },
  {
    id: 'wind.kz.table.7-16',
    clause: 'ASCE 7-16 Table 26.10-1',
    title: 'Printed Kz to 60 ft',
    provenance: 'mixed',
    note: 'read: B 0.57, 0.66, 0.85; C 0.85, 0.90, 1.04; D 1.03, 1.08 and the 0.70 footnote; other cells from memory',
  },
  { id: 'wind.ke', clause: 'ASCE 7-16 and 7-22 Table 26.9-1', title: 'Ground elevation factor', provenance: 'read' },
  { id: 'wind.kd.g', clause: 'ASCE 7-16 and 7-22 Table 26.6-1, 26.11.1', title: 'Kd and G', provenance: 'read' },
  { id: 'wind.gcpi', clause: 'ASCE 7-16 and 7-22 Table 26.13-1', title: 'Internal pressure', provenance: 'read' },
];
