/**
 * Load combinations of ASCE 7 chapter 2 as data: sections 2.3.1 and 2.3.6 (strength), 2.4.1 and 2.4.5 (allowable
 * stress). "Lr or S or R" is written out as three combinations, so a combination is a plain list of factors.
 *
 * Fluid, soil, flood, ice and self-straining loads do not act on a patio cover and are left out. The load factor on L
 * stays 1.0 where the standard would permit 0.5: a cover carries no floor live load, so nothing is lost.
 */
import type { Asce7Edition, ClauseRecord } from '../support.js';
import { asce } from '../support.js';

/** Nominal loads the factors apply to. Ev and Eh are the two parts of the seismic effect (12.4.2). */
export type NominalLoad = 'D' | 'L' | 'Lr' | 'S' | 'R' | 'W' | 'Ev' | 'Eh';
export type CombinationMethod = 'ASD' | 'LRFD';

export interface LoadCombination {
  /** Stable id, `ASD-3S`: the method, the number in the standard's list, the alternate taken. */
  readonly id: string;
  readonly method: CombinationMethod;
  readonly factors: Readonly<Partial<Record<NominalLoad, number>>>;
  /** As a reader writes it: `D + 0.75L + 0.75S`. */
  readonly text: string;
  readonly clause: string;
}

type Factors = Partial<Record<NominalLoad, number>>;
type RoofLoad = 'Lr' | 'S' | 'R';
const ROOF_LOADS: readonly RoofLoad[] = ['Lr', 'S', 'R'];

const writeTerm = (load: string, factor: number): string =>
  Math.abs(factor) === 1 ? load : `${Math.abs(factor)}${load}`;

function writeFactors(factors: Factors): string {
  return (Object.entries(factors) as [NominalLoad, number][])
    .map(([load, factor], i) => `${i === 0 ? '' : factor < 0 ? ' − ' : ' + '}${writeTerm(load, factor)}`)
    .join('');
}

function combination(
  edition: Asce7Edition,
  method: CombinationMethod,
  name: string,
  factors: Factors,
): LoadCombination {
  const section = method === 'ASD' ? '2.4' : '2.3';
  const part = factors.Ev === undefined ? '.1' : method === 'ASD' ? '.5' : '.6';
  return {
    id: `${method}-${name}`,
    method,
    factors,
    text: writeFactors(factors),
    clause: asce(edition, `${section}${part} (${Number.parseInt(name, 10)})`),
  };
}

/** One combination for each of Lr, S and R with its own factor. */
const eachRoofLoad = (factor: Record<RoofLoad, number>, make: (load: RoofLoad, factor: number) => LoadCombination) =>
  ROOF_LOADS.map((load) => make(load, factor[load]));

function lrfd(edition: Asce7Edition): readonly LoadCombination[] {
  const is22 = edition === '7-22';
  const c = (name: string, factors: Factors) => combination(edition, 'LRFD', name, factors);
  // 7-22 maps snow at strength level, so the principal snow factor is 1.0 and the companion one 0.3.
  const principal = { Lr: 1.6, S: is22 ? 1.0 : 1.6, R: 1.6 };
  const companion = { Lr: 0.5, S: is22 ? 0.3 : 0.5, R: 0.5 };
  return [
    c('1', { D: 1.4 }),
    ...eachRoofLoad(companion, (x, f) => c(`2${x}`, { D: 1.2, L: 1.6, [x]: f })),
    ...eachRoofLoad(principal, (x, f) => c(`3${x}-L`, { D: 1.2, [x]: f, L: 1.0 })),
    ...eachRoofLoad(principal, (x, f) => c(`3${x}-W`, { D: 1.2, [x]: f, W: 0.5 })),
    ...eachRoofLoad(companion, (x, f) => c(`4${x}`, { D: 1.2, W: 1.0, L: 1.0, [x]: f })),
    c('5', { D: 0.9, W: 1.0 }),
    c('6', { D: 1.2, Ev: 1.0, Eh: 1.0, L: 1.0, S: is22 ? 0.15 : 0.2 }),
    c('7', { D: 0.9, Ev: -1.0, Eh: 1.0 }),
  ];
}

function asd(edition: Asce7Edition): readonly LoadCombination[] {
  const is22 = edition === '7-22';
  const c = (name: string, factors: Factors) => combination(edition, 'ASD', name, factors);
  const principal = { Lr: 1.0, S: is22 ? 0.7 : 1.0, R: 1.0 };
  // 0.75 × 0.7, written as the rounded product so that no factor carries binary noise.
  const companion = { Lr: 0.75, S: is22 ? 0.525 : 0.75, R: 0.75 };
  return [
    c('1', { D: 1.0 }),
    c('2', { D: 1.0, L: 1.0 }),
    ...eachRoofLoad(principal, (x, f) => c(`3${x}`, { D: 1.0, [x]: f })),
    ...eachRoofLoad(companion, (x, f) => c(`4${x}`, { D: 1.0, L: 0.75, [x]: f })),
    c('5', { D: 1.0, W: 0.6 }),
    ...eachRoofLoad(companion, (x, f) => c(`6${x}`, { D: 1.0, L: 0.75, W: 0.45, [x]: f })),
    c('7', { D: 0.6, W: 0.6 }),
    c('8', { D: 1.0, Ev: 0.7, Eh: 0.7 }),
    c('9', { D: 1.0, Ev: 0.525, Eh: 0.525, L: 0.75, S: is22 ? 0.1 : 0.75 }),
    c('10', { D: 0.6, Ev: -0.7, Eh: 0.7 }),
  ];
}

/** The full lists. Wood and soil bearing use ASD, concrete LRFD. W and Eh act in either sense: the cases carry the sign. */
export const COMBINATIONS: Readonly<
  Record<Asce7Edition, Readonly<Record<CombinationMethod, readonly LoadCombination[]>>>
> = {
  '7-16': { ASD: asd('7-16'), LRFD: lrfd('7-16') },
  '7-22': { ASD: asd('7-22'), LRFD: lrfd('7-22') },
};

/** The factored sum of nominal effects; a load without a value counts as zero. Any one unit. ASCE 7 2.3.1, 2.4.1. */
export function combine(
  factors: Readonly<Partial<Record<NominalLoad, number>>>,
  effects: Readonly<Partial<Record<NominalLoad, number>>>,
): number {
  let sum = 0;
  for (const load in factors) sum += factors[load as NominalLoad]! * (effects[load as NominalLoad] ?? 0);
  return sum;
}

export const COMBINATION_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'combo.lrfd.7-16',
    clause: 'ASCE 7-16 2.3.1, 2.3.6',
    title: 'Strength combinations',
    provenance: 'mixed',
    note: 'combinations 1 to 5 read in a building code that adopts them; 6 and 7 (seismic) from memory',
  },
  {
    id: 'combo.lrfd.7-22',
    clause: 'ASCE 7-22 2.3.1, 2.3.6',
    title: 'Strength combinations',
    provenance: 'mixed',
    note: '1.2D + 1.0S read; companion snow 0.3 and 0.15 and the rest from memory',
  },
  {
    id: 'combo.asd.7-16',
    clause: 'ASCE 7-16 2.4.1, 2.4.5',
    title: 'Allowable stress combinations',
    provenance: 'memory',
  },
  {
    id: 'combo.asd.7-22',
    clause: 'ASCE 7-22 2.4.1, 2.4.5',
    title: 'Allowable stress combinations',
    provenance: 'mixed',
    note: '0.7S read; list from memory; 0.1S in combination 9 recalled with less certainty',
  },
];
