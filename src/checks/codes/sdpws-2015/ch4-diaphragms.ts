/** Clauses of chapter 4 on wood-frame diaphragms. `edition` only names the book in the trace. */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import {
  BOUNDARY,
  type Cell,
  type DiaphragmRow,
  type Grade,
  OTHER_EDGES,
  TABLE_4_2,
  TABLE_NAILS,
} from './table-4-2.js';

export type Edition = '2015' | '2021';

/** Where each rule stands in the two editions (section numbers recalled; the 2021 edition is arranged anew). */
const PLACES = {
  2015: { capacity: '4.2.3', shape: 'Table 4.2.4', oneSide: '4.2.5.2', deflection: '4.2.2', whole: '4.2' },
  2021: {
    capacity: '4.1.4',
    shape: 'diaphragm aspect ratios',
    oneSide: 'cantilevered diaphragms',
    deflection: 'diaphragm deflection',
    whole: '4.2',
  },
} as const;

/** A rule's place in the edition, as printed. SDPWS. */
export const clause = (edition: Edition, rule: keyof (typeof PLACES)['2015']): string =>
  `SDPWS ${edition} ${PLACES[edition][rule]}`;

/** What load the shear comes from: wind, earthquake, or neither (a thrust of snow or of roof live load). */
export type Hazard = 'wind' | 'earthquake' | 'other';

export interface Nailed {
  readonly grade: Grade;
  /** Panel thickness, nail shank diameter and length, inches. */
  readonly thickness: number;
  readonly D: number;
  readonly length: number;
  /** Actual width of the framing under adjoining panel edges, inches. */
  readonly framing: number;
  readonly blocked: boolean;
  /** Nail spacing at diaphragm boundaries, at panel edges, inches. */
  readonly boundary: number;
  readonly edge: number;
}

export interface Found {
  readonly row: DiaphragmRow;
  readonly cell: Cell;
  /** As printed: `Table 4.2C, cases 2 to 6`. */
  readonly where: string;
}

/** What a gauge cannot tell from the nominal thickness, inches. */
const NOMINAL = 0.01;
/** Actual width from which framing counts as 3-inch nominal. */
const WIDE = 2.5;

/**
 * The best row that panel, nail and framing reach, read so that it holds for every panel layout and load direction:
 * unblocked as cases 2 to 6, blocked in the column whose boundary spacing the panel edges keep too. Columns closer than
 * 4 in. are used only with 3-inch nominal framing (4.2.7.1.1). Undefined when no row is reached.
 */
export function findCell(n: Nailed): Found | undefined {
  const wide = n.framing >= WIDE;
  const reached = TABLE_4_2.filter((r) => {
    const nail = TABLE_NAILS[r.nail];
    return (
      r.grade === n.grade &&
      r.framing === (wide ? 3 : 2) &&
      n.thickness >= r.thickness - NOMINAL &&
      n.D >= nail.D - 1e-9 &&
      n.length >= nail.length - 1e-9 &&
      n.length - n.thickness >= nail.penetration - 1e-9
    );
  });
  if (!n.blocked) {
    if (Math.max(n.boundary, n.edge) > 6) return undefined;
    const row = best(reached, (r) => r.otherCases);
    return row && { row, cell: row.otherCases, where: 'Table 4.2C, unblocked, cases 2 to 6' };
  }
  const spacing = Math.max(n.boundary, n.edge);
  let column = -1;
  for (const [i, s] of BOUNDARY.entries()) if (spacing <= s + 1e-9 && (wide || s >= 4)) column = i;
  if (column < 0) return undefined;
  const row = best(reached, (r) => r.blocked[column]!);
  return (
    row && {
      row,
      cell: row.blocked[column]!,
      where: `Table 4.2A, blocked, ${BOUNDARY[column]} in at boundaries, ${OTHER_EDGES[column]} in at other edges`,
    }
  );
}

function best(rows: readonly DiaphragmRow[], of: (r: DiaphragmRow) => Cell): DiaphragmRow | undefined {
  let found: DiaphragmRow | undefined;
  for (const r of rows) if (!found || of(r).seismic > of(found).seismic) found = r;
  return found;
}

/** Specific gravity adjustment factor [1 − (0.5 − G)], never above 1. Table 4.2A footnote 2. */
export function gravityFactor(G: number, edition: Edition, rec?: Recorder): number {
  const value = Math.min(1, 1 - (0.5 - G));
  rec?.step({
    symbol: 'CG',
    meaning: 'specific gravity adjustment factor of the framing',
    formula: '1 − (0.5 − G) ≤ 1',
    substituted: `1 − (0.5 − ${say(G)})`,
    value,
    unit: '',
    clause: `SDPWS ${edition} Table 4.2A footnote`,
  });
  return value;
}

/**
 * Allowable unit shear, plf. 2015: half of the column for wind or earthquake (4.2.3). 2021: its one nominal column, the
 * wind column here, over 2.0 for wind and 2.8 for earthquake (4.1.4). Tabulated values are for loads of ten minutes
 * (CD 1.6); a longer load takes the earthquake value lowered by CD/1.6.
 */
export function allowableUnitShear(
  found: Found,
  hazard: Hazard,
  CD: number,
  G: number,
  edition: Edition,
  rec?: Recorder,
): number {
  const wind = hazard === 'wind';
  const [symbol, nominal, factor] =
    edition === '2021'
      ? (['vn', found.cell.wind, wind ? 2 : 2.8] as const)
      : ([wind ? 'vw' : 'vs', wind ? found.cell.wind : found.cell.seismic, 2] as const);
  const duration = hazard === 'other' ? Math.min(1, CD / 1.6) : 1;
  const CG = gravityFactor(G, edition, rec);
  const value = (nominal / factor) * CG * duration;
  rec?.step({
    symbol: 'va',
    meaning: `allowable unit shear, ${found.row.nail} nails, ${found.row.framing}-inch nominal framing, ${found.where}`,
    formula: `${symbol} / ${factor} · CG${hazard === 'other' ? ' · CD/1.6' : ''}`,
    substituted: `${nominal} / ${factor} · ${say(CG)}${hazard === 'other' ? ` · ${say(duration)}` : ''}`,
    value,
    unit: 'plf',
    clause: clause(edition, 'capacity'),
    note: 'halves of the earthquake column read in a published construction guide; wind column recalled: confirm',
  });
  return value;
}

/** Largest length to width of a diaphragm spanning between lines that hold it. Table 4.2.4 (recalled). */
export const spanAspect = (blocked: boolean): number => (blocked ? 4 : 3);

/** Limits of a diaphragm held along one side only. 4.2.5.2 (recalled; a one-story, torsionally irregular cover). */
export const CANTILEVER = { aspect: 1, length: 35 } as const;

/**
 * Deflection at the free end of a diaphragm held along one side under even load, in: bending of the chords and shear of
 * the sheathing; no slip of chord splices. `v` plf at the held side, `L` and `W` ft, `A` in², `Ga` kips/in.
 * Statics; the form of Eq. 4.2-1 for one side held (printed in the 2021 edition).
 */
export function cantileverDeflection(
  v: number,
  L: number,
  W: number,
  E: number,
  A: number,
  Ga: number,
  edition: Edition,
  rec?: Recorder,
): number {
  const value = (3 * v * L ** 3) / (E * A * W) + (0.5 * v * L) / (1000 * Ga);
  rec?.step({
    symbol: 'δ',
    meaning: 'sideways movement of the free end by the diaphragm alone, load taken as even',
    formula: '3·v·L³/(E·A·W) + 0.5·v·L/(1000·Ga)',
    substituted: `v = ${say(v)}, L = ${say(L)}, E·A = ${say(E)}·${say(A)}, W = ${say(W)}, Ga = ${say(Ga)}`,
    value,
    unit: 'in',
    clause: clause(edition, 'deflection'),
    note: 'for information: no limit under wind in the code; Ga recalled from memory',
  });
  return value;
}
