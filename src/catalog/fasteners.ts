import type { Sourced } from './model.js';

/** A dowel-type fastener as sold; inches and psi. */
export interface Fastener extends Sourced {
  readonly id: string;
  readonly name: string;
  /** Shank (nominal) diameter D. */
  readonly D: number;
  /** Root diameter Dr of the thread; absent for nails and bolts, which bear on the full body. */
  readonly Dr?: number;
  /** Length, for fasteners sold in one length per name. */
  readonly length?: number;
  /** Length E of the tapered tip, which does not count toward withdrawal. */
  readonly tip?: number;
  /** Head diameter, for nails with a full round head. */
  readonly head?: number;
  /** Bending yield strength. */
  readonly Fyb: number;
}

/**
 * Bending yield strength of nails and wood screws by shank diameter, psi (NDS 2018 Table 12N and 12L footnotes; the
 * ranges up to 0.254 in. were read in the building code, 2303.6). Undefined outside the listed diameters.
 */
export function nailFyb(D: number): number | undefined {
  if (D < 0.099 || D > 0.273) return undefined;
  if (D <= 0.142) return 100000;
  if (D <= 0.177) return 90000;
  return D <= 0.236 ? 80000 : 70000;
}

/** Head diameters as of ASTM F1667 nails, recalled. */
const nail = (kind: string, pennyweight: string, D: number, length: number, head: number): Fastener =>
  Object.freeze({
    id: `${kind}-${pennyweight}`,
    name: `${pennyweight} ${kind} nail`,
    D,
    length,
    head,
    Fyb: nailFyb(D)!,
    source: 'NDS Appendix L Table L4 (nail sizes)',
    edition: '2018',
    provenance: 'memory' as const,
  });

/** Nails by pennyweight. */
export const NAILS: readonly Fastener[] = [
  nail('common', '8d', 0.131, 2.5, 0.281),
  nail('common', '10d', 0.148, 3, 0.312),
  nail('common', '12d', 0.148, 3.25, 0.312),
  nail('common', '16d', 0.162, 3.5, 0.344),
  nail('common', '20d', 0.192, 4, 0.406),
  nail('box', '8d', 0.113, 2.5, 0.297),
  nail('box', '10d', 0.128, 3, 0.312),
  nail('box', '16d', 0.135, 3.5, 0.344),
  nail('sinker', '16d', 0.148, 3.25, 0.344),
];

const screw = (number: number, D: number, Dr: number): Fastener =>
  Object.freeze({
    id: `wood-screw-${number}`,
    name: `No. ${number} wood screw`,
    D,
    Dr,
    Fyb: nailFyb(D)!,
    source: 'NDS Appendix L Table L3 (wood screw sizes)',
    edition: '2018',
    provenance: 'memory' as const,
  });

/** Cut-thread wood screws by number. */
export const WOOD_SCREWS: readonly Fastener[] = [
  screw(8, 0.164, 0.131),
  screw(10, 0.19, 0.152),
  screw(12, 0.216, 0.171),
  screw(14, 0.242, 0.196),
];

const lag = (name: string, D: number, Dr: number, tip: number, Fyb: number): Fastener =>
  Object.freeze({
    id: `lag-${name.replace('/', '-')}`,
    name: `${name} in. lag screw`,
    D,
    Dr,
    tip,
    Fyb,
    source: 'NDS Appendix L Table L2 (lag screw sizes)',
    edition: '2018',
    provenance: 'memory' as const,
  });

/** Hex-head lag screws by nominal diameter. */
export const LAG_SCREWS: readonly Fastener[] = [
  lag('1/4', 0.25, 0.173, 5 / 32, 70000),
  lag('5/16', 0.3125, 0.227, 3 / 16, 60000),
  lag('3/8', 0.375, 0.265, 7 / 32, 45000),
  lag('7/16', 0.4375, 0.328, 9 / 32, 45000),
  lag('1/2', 0.5, 0.371, 5 / 16, 45000),
  lag('5/8', 0.625, 0.471, 13 / 32, 45000),
  lag('3/4', 0.75, 0.579, 1 / 2, 45000),
];

/** Lag screw length and its least thread length T, tip included, inches (NDS Appendix L Table L2, recalled). */
export const LAG_THREAD: readonly (readonly [length: number, T: number])[] = [
  [1, 0.75],
  [1.5, 1.25],
  [2, 1.5],
  [2.5, 1.75],
  [3, 2],
  [4, 2.5],
  [5, 3],
  [6, 3.5],
  [7, 4],
  [8, 4.5],
  [9, 5],
  [10, 5.25],
  [11, 5.5],
  [12, 6],
];

const bolt = (name: string, D: number): Fastener =>
  Object.freeze({
    id: `bolt-${name.replace('/', '-')}`,
    name: `${name} in. bolt`,
    D,
    Fyb: 45000,
    source: 'NDS Tables 12A to 12I (bolt diameters and Fyb, full-body diameter)',
    edition: '2018',
    provenance: 'memory' as const,
  });

/** Bolts by diameter. */
export const BOLTS: readonly Fastener[] = [
  bolt('3/8', 0.375),
  bolt('1/2', 0.5),
  bolt('5/8', 0.625),
  bolt('3/4', 0.75),
  bolt('7/8', 0.875),
  bolt('1', 1),
];

export const FASTENERS: readonly Fastener[] = [...NAILS, ...WOOD_SCREWS, ...LAG_SCREWS, ...BOLTS];

export const findFastener = (id: string): Fastener | undefined => FASTENERS.find((f) => f.id === id);

/** A steel side plate: thickness in inches and dowel bearing strength in psi. */
export interface SteelPlate extends Sourced {
  readonly id: string;
  readonly thickness: number;
  readonly Fe: number;
}

const plate = (id: string, thickness: number, Fe: number, provenance: 'read' | 'memory'): SteelPlate =>
  Object.freeze({
    id,
    thickness,
    Fe,
    source: 'NDS Tables 12B and 12K (steel side plates)',
    edition: '2018',
    provenance,
  });

/** Thin sheet is structural grade 33; 1/4 in. and thicker is carbon structural plate. */
export const STEEL_PLATES: readonly SteelPlate[] = [
  plate('14-gage', 0.075, 61850, 'read'),
  plate('12-gage', 0.105, 61850, 'read'),
  plate('11-gage', 0.12, 61850, 'read'),
  plate('10-gage', 0.134, 61850, 'read'),
  plate('7-gage', 0.179, 61850, 'memory'),
  plate('3-gage', 0.239, 61850, 'memory'),
  plate('1/4', 0.25, 87000, 'read'),
];

/** Dowel bearing strength of concrete with f'c of 2,500 psi or more, psi (NDS 2018 Table 12E, recalled). */
export const CONCRETE_FE = 7500;
