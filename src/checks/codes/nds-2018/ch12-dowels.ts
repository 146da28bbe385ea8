import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Dowel bearing strength of fasteners thinner than 1/4 in., psi: 16600·G^1.84. NDS 2018 Table 12.3.3 footnote 2. */
export const FeSmall = (G: number): number => 16600 * G ** 1.84;
/** Dowel bearing strength parallel to grain, D ≥ 1/4 in., psi: 11200·G. NDS 2018 Table 12.3.3 footnote 2. */
export const FeParallel = (G: number): number => 11200 * G;
/** Dowel bearing strength across grain, D ≥ 1/4 in., psi: 6100·G^1.45/√D. NDS 2018 Table 12.3.3 footnote 2. */
export const FePerp = (G: number, D: number): number => (6100 * G ** 1.45) / Math.sqrt(D);

/** The tables of chapter 12 use bearing strengths rounded to 50 psi. */
export const roundFe = (Fe: number): number => Math.round(Fe / 50) * 50;

/**
 * Dowel bearing strength of wood, psi, for a fastener of nominal diameter D (in) loaded at `theta` radians to the grain;
 * `rounded` rounds the two principal values to 50 psi as the tables do. NDS 2018 12.3.3, Eq. 12.3-11.
 */
export function dowelBearing(G: number, D: number, theta: number, rounded: boolean, rec?: Recorder): number {
  const round = rounded ? roundFe : (x: number): number => x;
  let value: number;
  if (D < 0.25) {
    value = round(FeSmall(G));
  } else {
    const par = round(FeParallel(G));
    const perp = round(FePerp(G, D));
    const s = Math.sin(theta) ** 2;
    value = (par * perp) / (par * s + perp * (1 - s));
  }
  rec?.step({
    symbol: 'Fe',
    meaning: 'dowel bearing strength',
    formula:
      D < 0.25
        ? '16600·G^1.84'
        : 'Fe0·Fe⊥ / (Fe0·sin²θ + Fe⊥·cos²θ), along the grain Fe0 = 11200·G, Fe⊥ = 6100·G^1.45/√D',
    substituted: `G = ${say(G)}, D = ${say(D)}, θ = ${say((theta * 180) / Math.PI)}°`,
    value,
    unit: 'psi',
    clause: 'NDS 2018 12.3.3',
  });
  return value;
}

/** Yield modes; III and I are told apart by the member that yields, m(ain) or s(ide). */
export type YieldMode = 'Im' | 'Is' | 'II' | 'IIIm' | 'IIIs' | 'IV';
export const YIELD_MODES: readonly YieldMode[] = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'];

/** One dowel in shear. Lengths in inches, strengths in psi. */
export interface Dowel {
  /** Diameter that resists bending and bears: the root of a thread in the shear plane, else the shank. */
  readonly D: number;
  /** Nominal diameter when it differs from D (threaded fasteners): it decides the reduction term. */
  readonly nominalD?: number;
  /** Bearing length in the main and in each side member. */
  readonly lm: number;
  readonly ls: number;
  readonly Fem: number;
  readonly Fes: number;
  /** Bending yield strength. */
  readonly Fyb: number;
  /** Largest angle of load to grain in any member, radians. */
  readonly thetaMax: number;
}

/** Kθ = 1 + 0.25·(θ/90°). NDS 2018 Table 12.3.1B. */
export const Ktheta = (theta: number): number => 1 + (0.25 * theta) / (Math.PI / 2);

/** KD of fasteners under 1/4 in.: 2.2 up to 0.17 in., else 10·D + 0.5. NDS 2018 Table 12.3.1B. */
export const KD = (D: number): number => (D <= 0.17 ? 2.2 : 10 * D + 0.5);

/** Reduction term Rd of a yield mode. NDS 2018 Table 12.3.1B. */
export function Rd(mode: YieldMode, D: number, nominalD: number, thetaMax: number): number {
  if (nominalD < 0.25) return KD(D);
  const k = Ktheta(thetaMax);
  if (D < 0.25) return KD(D) * k;
  return k * (mode === 'Im' || mode === 'Is' ? 4 : mode === 'II' ? 3.6 : 3.2);
}

/** Reference lateral value of one fastener, its governing mode, and every mode, lb. */
export interface LateralValue {
  readonly Z: number;
  readonly mode: YieldMode;
  readonly modes: Readonly<Record<YieldMode, number>>;
}

/**
 * Yield limit values of one dowel in single or double shear, lb. In double shear modes II and IIIm do not exist and are
 * reported as the value of IIIs. NDS 2018 12.3.1, Table 12.3.1A.
 */
export function lateralValue(f: Dowel, shear: 'single' | 'double', rec?: Recorder): LateralValue {
  const { D, lm, ls, Fem, Fes, Fyb } = f;
  const nominal = f.nominalD ?? D;
  const rd = (mode: YieldMode): number => Rd(mode, D, nominal, f.thetaMax);
  const Re = Fem / Fes;
  const Rt = lm / ls;
  const k1 = (Math.sqrt(Re + 2 * Re * Re * (1 + Rt + Rt * Rt) + Rt * Rt * Re ** 3) - Re * (1 + Rt)) / (1 + Re);
  const k2 = -1 + Math.sqrt(2 * (1 + Re) + (2 * Fyb * (1 + 2 * Re) * D * D) / (3 * Fem * lm * lm));
  const k3 = -1 + Math.sqrt((2 * (1 + Re)) / Re + (2 * Fyb * (2 + Re) * D * D) / (3 * Fem * ls * ls));
  const twice = shear === 'double' ? 2 : 1;
  const IIIs = (twice * k3 * D * ls * Fem) / ((2 + Re) * rd('IIIs'));
  const modes: Record<YieldMode, number> = {
    Im: (D * lm * Fem) / rd('Im'),
    Is: (twice * D * ls * Fes) / rd('Is'),
    II: shear === 'double' ? IIIs : (k1 * D * ls * Fes) / rd('II'),
    IIIm: shear === 'double' ? IIIs : (k2 * D * lm * Fem) / ((1 + 2 * Re) * rd('IIIm')),
    IIIs,
    IV: ((twice * D * D) / rd('IV')) * Math.sqrt((2 * Fem * Fyb) / (3 * (1 + Re))),
  };
  let mode: YieldMode = 'Im';
  for (const m of YIELD_MODES) {
    // In double shear these two stand for IIIs and are not modes of their own.
    if (shear === 'double' && (m === 'II' || m === 'IIIm')) continue;
    if (modes[m] < modes[mode]) mode = m;
  }
  const Z = modes[mode];
  rec?.step({
    symbol: 'Z',
    meaning: `reference lateral design value, ${shear} shear, mode ${mode} governs`,
    formula: FORMULAS[mode].replace('#', shear === 'double' ? '2·' : ''),
    substituted: YIELD_MODES.filter((m) => shear === 'single' || (m !== 'II' && m !== 'IIIm'))
      .map((m) => `${m} ${say(modes[m])}`)
      .join(', '),
    value: Z,
    unit: 'lb',
    clause: 'NDS 2018 Table 12.3.1A',
    note: `D ${say(D)}, lm ${say(lm)}, ls ${say(ls)}, Fem ${say(Fem)}, Fes ${say(Fes)}, Fyb ${say(Fyb)}, Rd ${say(rd(mode))}, Re ${say(Re)}, k1 ${say(k1)}, k2 ${say(k2)}, k3 ${say(k3)}`,
  });
  return { Z, mode, modes };
}

const FORMULAS: Readonly<Record<YieldMode, string>> = {
  Im: 'D·lm·Fem/Rd',
  Is: '#D·ls·Fes/Rd',
  II: 'k1·D·ls·Fes/Rd',
  IIIm: 'k2·D·lm·Fem/((1+2Re)·Rd)',
  IIIs: '#k3·D·ls·Fem/((2+Re)·Rd)',
  IV: '#(D²/Rd)·√(2·Fem·Fyb/(3(1+Re)))',
};

/** Plastic moment of a dowel, lb·in: Fyb·D³/6. AWC Technical Report 12. */
export const plasticMoment = (Fyb: number, D: number): number => (Fyb * D ** 3) / 6;
