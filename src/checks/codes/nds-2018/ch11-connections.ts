import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Moisture at fabrication and in service, wet meaning over 19 %. */
export interface ConnectionMoisture {
  readonly wetAtFabrication: boolean;
  readonly wetInService: boolean;
}

/** Kinds of resistance Table 11.3.3 tells apart. */
export type ConnectionKind =
  | 'dowel-lateral'
  | 'lag-or-screw-withdrawal'
  | 'nail-withdrawal'
  | 'nail-deformed-withdrawal';

/**
 * Wet service factor of a connection. Wet at fabrication and dry in service takes 0.4 laterally unless there is one
 * fastener, one row parallel to grain, separate splice plates per row (`freeToShrink`) or D < 1/4 in.
 * NDS 2018 Table 11.3.3 (recalled).
 */
export function CMConnection(
  kind: ConnectionKind,
  m: ConnectionMoisture,
  D: number,
  freeToShrink: boolean,
  rec?: Recorder,
): number {
  const value = wetConnection(kind, m, D, freeToShrink);
  rec?.step({
    symbol: 'CM',
    meaning: 'wet service factor of the connection',
    formula: 'Table 11.3.3',
    substituted: `${m.wetAtFabrication ? 'wet' : 'dry'} when made, ${m.wetInService ? 'wet' : 'dry'} in service`,
    value,
    unit: '',
    clause: 'NDS 2018 Table 11.3.3',
    note: 'recalled from memory: confirm',
  });
  return value;
}

function wetConnection(kind: ConnectionKind, m: ConnectionMoisture, D: number, freeToShrink: boolean): number {
  switch (kind) {
    case 'dowel-lateral':
      if (m.wetInService) return 0.7;
      return !m.wetAtFabrication || D < 0.25 || freeToShrink ? 1 : 0.4;
    case 'lag-or-screw-withdrawal':
      return m.wetInService ? 0.7 : 1;
    case 'nail-deformed-withdrawal':
      return 1;
    case 'nail-withdrawal':
      return m.wetAtFabrication === m.wetInService ? 1 : 0.25;
  }
}

/** Temperature factor of connections, °F; undefined above 150 °F. NDS 2018 Table 11.3.4 (recalled). */
export function CtConnection(temperature: number, wet: boolean): number | undefined {
  if (temperature <= 100) return 1;
  if (temperature > 150) return undefined;
  return temperature <= 125 ? (wet ? 0.7 : 0.8) : wet ? 0.5 : 0.7;
}

/** Load/slip modulus γ of one dowel, lb/in: wood-to-wood and wood-to-metal. NDS 2018 11.3.6.1. */
export const slipModulus = (D: number, metal: boolean): number => (metal ? 270_000 : 180_000) * D ** 1.5;

/**
 * Group action factor for `n` fasteners in a row at spacing `s` (in). `EmAm`, `EsAs` are axial stiffnesses (lb) of the
 * main member and of all side members together; `gamma` from `slipModulus`. 1 for D < 1/4 in. or n = 1.
 * NDS 2018 11.3.6, Eq. 11.3-1.
 */
export function Cg(n: number, s: number, D: number, EmAm: number, EsAs: number, gamma: number, rec?: Recorder): number {
  let value = 1;
  let m = 0;
  if (n > 1 && D >= 0.25) {
    const u = 1 + gamma * (s / 2) * (1 / EmAm + 1 / EsAs);
    m = u - Math.sqrt(u * u - 1);
    const REA = Math.min(EsAs / EmAm, EmAm / EsAs);
    const m2n = m ** (2 * n);
    value = ((m * (1 - m2n)) / (n * ((1 + REA * m ** n) * (1 + m) - 1 + m2n))) * ((1 + REA) / (1 - m));
  }
  rec?.step({
    symbol: 'Cg',
    meaning: 'group action factor',
    formula: '[m(1−m^(2n)) / n((1+REA·m^n)(1+m)−1+m^(2n))]·[(1+REA)/(1−m)]',
    substituted: n > 1 && D >= 0.25 ? `n = ${n}, m = ${say(m)}` : 'one fastener in the row, or D < 1/4 in.',
    value,
    unit: '',
    clause: 'NDS 2018 Eq. 11.3-1',
  });
  return value;
}

/** Direction of the load at an end or edge, for geometry rules of D ≥ 1/4 in. in softwood. */
export type EndLoad = 'tension' | 'compression' | 'perpendicular';

/**
 * Geometry factor from the end distance `a` (in). Undefined below half the full distance: not permitted. Full at 7D in
 * tension, 4D in compression or across grain; 1 for D < 1/4 in. NDS 2018 12.5.1.2, Table 12.5.1A.
 */
export function CdeltaEnd(a: number, D: number, load: EndLoad): number | undefined {
  if (D < 0.25) return 1;
  const full = (load === 'tension' ? 7 : 4) * D;
  return a < full / 2 - 1e-9 ? undefined : Math.min(1, a / full);
}

/**
 * Geometry factor from the spacing `s` (in) of fasteners in a row: full at 4D, not permitted below 3D (undefined).
 * NDS 2018 12.5.1.2, Table 12.5.1B.
 */
export function CdeltaSpacing(s: number, D: number): number | undefined {
  if (D < 0.25) return 1;
  return s < 3 * D - 1e-9 ? undefined : Math.min(1, s / (4 * D));
}

/** Edge conditions of Table 12.5.1C. */
export type EdgeLoad = 'parallel' | 'perpendicular-loaded-edge' | 'perpendicular-unloaded-edge';

/**
 * Least edge distance, in, for a dowel of diameter D whose bearing length is `l` in; `rowSpacing` matters for parallel
 * loading with l/D > 6 only (half of it, if larger). NDS 2018 Table 12.5.1C.
 */
export function minEdgeDistance(load: EdgeLoad, l: number, D: number, rowSpacing = 0): number {
  if (load === 'perpendicular-loaded-edge') return 4 * D;
  if (load === 'perpendicular-unloaded-edge') return 1.5 * D;
  return l / D > 6 ? Math.max(1.5 * D, rowSpacing / 2) : 1.5 * D;
}

/**
 * Least spacing between rows, in, for load across grain; 1.5D for load along it. NDS 2018 Table 12.5.1D (recalled).
 */
export function minRowSpacing(load: 'parallel' | 'perpendicular', l: number, D: number): number {
  if (load === 'parallel') return 1.5 * D;
  const ratio = l / D;
  if (ratio <= 2) return 2.5 * D;
  return ratio < 6 ? (5 * l + 10 * D) / 8 : 5 * D;
}
