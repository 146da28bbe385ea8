/** Seismic chapters 11 and 12, the short form for a one-storey cover: exemption, base shear, load effects, weight of snow. */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord } from '../support.js';
import { asce, num } from '../support.js';

export type SeismicDesignCategory = 'A' | 'B' | 'C' | 'D' | 'E' | 'F';

/** Response modification, overstrength and deflection factors (Table 12.2-1) of systems a patio cover may use. */
export const SEISMIC_SYSTEMS = {
  timberCantileverColumns: { R: 1.5, Omega0: 1.5, Cd: 1.5 },
  steelOrdinaryCantileverColumns: { R: 1.25, Omega0: 1.25, Cd: 1.25 },
  lightFrameWoodPanelsBearing: { R: 6.5, Omega0: 3, Cd: 4 },
  lightFrameOtherPanels: { R: 2, Omega0: 2.5, Cd: 2 },
} as const;

/**
 * Greatest structural height in inches of timber cantilever columns; undefined where the category does not permit them,
 * Infinity where there is no limit.
 * ASCE 7 Table 12.2-1.
 */
export function timberCantileverHeightLimit(category: SeismicDesignCategory): number | undefined {
  if (category === 'A') return Number.POSITIVE_INFINITY;
  return category === 'E' || category === 'F' ? undefined : 35 * 12;
}

/** Whether 11.1.2 exempts a detached one- or two-family dwelling: SDC A, B or C, or mapped SS under 0.4 g. */
export function seismicExempt(detachedDwelling: boolean, category: SeismicDesignCategory, SS: number): boolean {
  return detachedDwelling && (category === 'A' || category === 'B' || category === 'C' || SS < 0.4);
}

/** Approximate fundamental period in seconds, `hn` structural height in inches (Eq. 12.8-7, "all other" systems). */
export function approximatePeriod(hn: number, edition: Asce7Edition, rec?: Recorder): number {
  const feet = hn / 12;
  const Ta = 0.02 * feet ** 0.75;
  rec?.step({
    symbol: 'Ta',
    meaning: 'approximate fundamental period',
    formula: '0.02 · hn^0.75',
    substituted: `0.02 · ${num(feet)}^0.75`,
    value: Ta,
    unit: 's',
    clause: asce(edition, 'Eq. 12.8-7'),
  });
  return Ta;
}

export interface SeismicResponseInput {
  readonly SDS: number;
  readonly SD1: number;
  /** Mapped one-second acceleration, g; 0 where not given. It raises the floor from 0.6 g on. */
  readonly S1: number;
  readonly R: number;
  readonly Ie: number;
  /** Period used, seconds, and the long-period transition TL, seconds. */
  readonly T: number;
  readonly TL: number;
}

export interface SeismicResponse {
  readonly Cs: number;
  /** SDS/(R/Ie) before the limits. */
  readonly basic: number;
  readonly upper: number;
  readonly lower: number;
}

/**
 * Seismic response coefficient of the equivalent lateral force procedure with its limits (12.8.1.1). The floor governs
 * over the ceiling where they cross.
 */
export function seismicCs(x: SeismicResponseInput, edition: Asce7Edition, rec?: Recorder): SeismicResponse {
  const rie = x.R / x.Ie;
  const basic = x.SDS / rie;
  const upper = x.T <= x.TL ? x.SD1 / (x.T * rie) : (x.SD1 * x.TL) / (x.T * x.T * rie);
  const lower = Math.max(0.044 * x.SDS * x.Ie, 0.01, x.S1 >= 0.6 ? (0.5 * x.S1) / rie : 0);
  const Cs = Math.max(Math.min(basic, upper), lower);
  if (rec) {
    const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number, eq: string) =>
      rec.step({ symbol, meaning, formula, substituted, value, unit: '', clause: asce(edition, eq) });
    const R = `(${num(x.R)}/${num(x.Ie)})`;
    step('Cs', 'seismic response coefficient', 'SDS/(R/Ie)', `${num(x.SDS)}/${R}`, basic, 'Eq. 12.8-2');
    step('Cs,max', 'upper limit', 'SD1/(T·(R/Ie))', `${num(x.SD1)}/(${num(x.T)}·${R})`, upper, 'Eq. 12.8-3, 12.8-4');
    step(
      'Cs,min',
      'lower limit',
      'max(0.044·SDS·Ie, 0.01), 0.5·S1/(R/Ie) from S1 = 0.6 g',
      `SDS = ${num(x.SDS)}, S1 = ${num(x.S1)}`,
      lower,
      'Eq. 12.8-5, 12.8-6',
    );
    step(
      'Cs',
      'coefficient used',
      'max(min(Cs, Cs,max), Cs,min)',
      `${num(basic)}, ${num(upper)}, ${num(lower)}`,
      Cs,
      '12.8.1.1',
    );
  }
  return { Cs, basic, upper, lower };
}

/**
 * Seismic base shear V in pounds from `Cs` and the effective seismic weight `W` (lb). One storey: V acts at the roof.
 * ASCE 7 Eq. 12.8-1.
 */
export function baseShear(Cs: number, W: number, edition: Asce7Edition, rec?: Recorder): number {
  const V = Cs * W;
  rec?.step({
    symbol: 'V',
    meaning: 'seismic base shear',
    formula: 'Cs · W',
    substituted: `${num(Cs)} · ${num(W)}`,
    value: V,
    unit: 'lb',
    clause: asce(edition, 'Eq. 12.8-1'),
  });
  return V;
}

/** Redundancy factor of a cover on four posts in categories D to F; 1.0 in B and C (12.3.4). */
export const redundancyRho = (category: SeismicDesignCategory): number =>
  category === 'D' || category === 'E' || category === 'F' ? 1.3 : 1.0;

/** Horizontal seismic load effect Eh = rho · QE (12.4.2.1), any unit. */
export const horizontalSeismicEffect = (rho: number, QE: number): number => rho * QE;

/** Vertical seismic load effect Ev = 0.2 · SDS · D (12.4.2.2), in the unit of D. */
export const verticalSeismicEffect = (SDS: number, D: number): number => 0.2 * SDS * D;

/** Snow in the effective seismic weight, psf (12.7.2): 20 % of pf above 30 psf in 7-16, 15 % above 45 psf in 7-22. */
export function seismicSnow(pf: number, edition: Asce7Edition): number {
  return edition === '7-16' ? (pf > 30 ? 0.2 * pf : 0) : pf > 45 ? 0.15 * pf : 0;
}

export const SEISMIC_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'seis.elf',
    clause: 'ASCE 7-16 12.8.1, 12.8.2',
    title: 'Equivalent lateral force',
    provenance: 'mixed',
    note: 'read in 7-16 permit calculations; the long-period branch and the 7-22 identity from memory (7-22 derives spectra from more periods)',
  },
  {
    id: 'seis.R',
    clause: 'ASCE 7-16 Table 12.2-1',
    title: 'Response factors',
    provenance: 'mixed',
    note: 'R = 1.25 and 1.5 read in use; Omega0, Cd, heights and the two light-frame rows from memory',
  },
  {
    id: 'seis.rho',
    clause: 'ASCE 7-16 12.3.4, 12.4.2',
    title: 'Redundancy',
    provenance: 'mixed',
    note: '1.3 in SDC D read; Ev = 0.2·SDS·D from memory',
  },
  { id: 'seis.weight.snow', clause: 'ASCE 7-16 and 7-22 12.7.2', title: 'Snow in seismic weight', provenance: 'read' },
  {
    id: 'seis.exempt',
    clause: 'ASCE 7-16 11.1.2',
    title: 'Exempt dwellings',
    provenance: 'read',
    note: 'the list of exempt structures read in a copy of the text of an earlier edition (SS under 0.4, or category A, B, C)',
  },
];
