/**
 * Nominal unit shear of wood structural panel roof and floor diaphragms, blocked (Table 4.2A) and unblocked (Table 4.2C).
 * Halves of the seismic columns were read in an industry construction guide (its Table 38, form E30V, 2011: allowable
 * shear, the same numbers rounded to 5 plf); nominal values, wind columns and stiffness are recalled. The 2021 edition
 * prints one nominal column, equal to the wind column here, and divides it by 2.0 for wind and 2.8 for earthquake.
 */

export type Grade = 'structural-1' | 'sheathing';

/** Nails of the tables: least shank diameter and length of the common nail, and least penetration into framing, inches. */
export const TABLE_NAILS = {
  '6d': { D: 0.113, length: 2, penetration: 1.25 },
  '8d': { D: 0.131, length: 2.5, penetration: 1.375 },
  '10d': { D: 0.148, length: 3, penetration: 1.5 },
} as const;
export type TableNail = keyof typeof TABLE_NAILS;

/** Boundary spacing of the blocked columns, inches; other panel edges at 6, 6, 4 and 3. */
export const BOUNDARY = [6, 4, 2.5, 2] as const;
export const OTHER_EDGES = [6, 6, 4, 3] as const;

/** Nominal unit shear, plf, and apparent shear stiffness Ga, kips/in, for oriented strand board and for plywood. */
export interface Cell {
  readonly seismic: number;
  readonly wind: number;
  readonly GaOsb: number;
  readonly GaPly: number;
}

export interface DiaphragmRow {
  readonly grade: Grade;
  readonly nail: TableNail;
  /** Least nominal panel thickness, inches. */
  readonly thickness: number;
  /** Nominal width of framing at adjoining panel edges and boundaries. */
  readonly framing: 2 | 3;
  readonly blocked: readonly [Cell, Cell, Cell, Cell];
  /** Case 1: no unblocked edges or continuous joints parallel to load. */
  readonly case1: Cell;
  readonly otherCases: Cell;
}

type Quad = readonly [seismic: number, wind: number, GaOsb: number, GaPly: number];
type Written = readonly [Grade, TableNail, number, 2 | 3, readonly Quad[], readonly Quad[]];

// biome-ignore format: one table row a line
const ROWS: readonly Written[] = [
  ['structural-1', '6d', 5 / 16, 2, [[370, 520, 15, 12], [500, 700, 8.5, 7.5], [750, 1050, 12, 10], [840, 1175, 20, 15]], [[330, 460, 9, 7], [250, 350, 6, 4.5]]],
  ['structural-1', '6d', 5 / 16, 3, [[420, 590, 12, 9.5], [560, 785, 7, 6], [840, 1175, 9.5, 8.5], [950, 1330, 17, 13]], [[370, 520, 7, 6], [280, 390, 4.5, 4]]],
  ['structural-1', '8d', 3 / 8, 2, [[540, 755, 14, 11], [720, 1010, 9, 7.5], [1060, 1485, 13, 10], [1200, 1680, 21, 15]], [[480, 670, 8.5, 7], [360, 505, 6, 4.5]]],
  ['structural-1', '8d', 3 / 8, 3, [[600, 840, 12, 10], [800, 1120, 7.5, 6.5], [1200, 1680, 10, 9], [1350, 1890, 18, 13]], [[530, 740, 7.5, 6], [400, 560, 5, 4]]],
  ['structural-1', '10d', 15 / 32, 2, [[640, 895, 24, 17], [850, 1190, 15, 12], [1280, 1790, 20, 15], [1460, 2045, 31, 21]], [[570, 800, 14, 10], [430, 600, 9.5, 7]]],
  ['structural-1', '10d', 15 / 32, 3, [[720, 1010, 20, 15], [960, 1345, 12, 9.5], [1440, 2015, 16, 13], [1640, 2295, 26, 18]], [[640, 895, 12, 9], [480, 670, 8, 6]]],
  ['sheathing', '6d', 5 / 16, 2, [[340, 475, 15, 10], [450, 630, 9, 7], [670, 940, 13, 9.5], [760, 1065, 21, 13]], [[300, 420, 9, 6.5], [220, 310, 6, 4]]],
  ['sheathing', '6d', 5 / 16, 3, [[380, 530, 12, 9], [500, 700, 7, 6], [760, 1065, 10, 8], [860, 1205, 17, 12]], [[340, 475, 7, 5.5], [250, 350, 5, 3.5]]],
  ['sheathing', '6d', 3 / 8, 2, [[370, 520, 13, 9.5], [500, 700, 7, 6], [750, 1050, 10, 8], [840, 1175, 18, 12]], [[330, 460, 7.5, 5.5], [250, 350, 5, 4]]],
  ['sheathing', '6d', 3 / 8, 3, [[420, 590, 10, 8], [560, 785, 5.5, 5], [840, 1175, 8.5, 7], [950, 1330, 14, 10]], [[370, 520, 6, 4.5], [280, 390, 4, 3]]],
  ['sheathing', '8d', 3 / 8, 2, [[480, 670, 15, 11], [640, 895, 9.5, 7.5], [960, 1345, 13, 9.5], [1090, 1525, 21, 13]], [[430, 600, 9, 6.5], [320, 450, 6, 4.5]]],
  ['sheathing', '8d', 3 / 8, 3, [[540, 755, 12, 9.5], [720, 1010, 7.5, 6], [1080, 1510, 11, 8.5], [1220, 1710, 18, 12]], [[480, 670, 7.5, 5.5], [360, 505, 5, 3.5]]],
  ['sheathing', '8d', 7 / 16, 2, [[510, 715, 14, 10], [680, 950, 8.5, 7], [1010, 1415, 12, 9.5], [1150, 1610, 20, 13]], [[460, 645, 8.5, 6], [340, 475, 5.5, 4]]],
  ['sheathing', '8d', 7 / 16, 3, [[570, 800, 11, 9], [760, 1065, 7, 6], [1140, 1595, 10, 8], [1290, 1805, 17, 12]], [[510, 715, 7, 5.5], [380, 530, 4.5, 3.5]]],
  ['sheathing', '8d', 15 / 32, 2, [[540, 755, 13, 9.5], [720, 1010, 7.5, 6.5], [1060, 1485, 11, 8.5], [1200, 1680, 19, 13]], [[480, 670, 7.5, 5.5], [360, 505, 5, 4]]],
  ['sheathing', '8d', 15 / 32, 3, [[600, 840, 10, 8.5], [800, 1120, 6, 5.5], [1200, 1680, 9, 7.5], [1350, 1890, 15, 11]], [[530, 740, 6.5, 5], [400, 560, 4, 3.5]]],
  ['sheathing', '10d', 15 / 32, 2, [[580, 810, 25, 15], [770, 1080, 15, 11], [1150, 1610, 21, 14], [1310, 1835, 33, 18]], [[510, 715, 15, 9], [380, 530, 10, 6]]],
  ['sheathing', '10d', 15 / 32, 3, [[650, 910, 21, 14], [860, 1205, 12, 9.5], [1300, 1820, 17, 12], [1470, 2060, 28, 16]], [[580, 810, 12, 8], [430, 600, 8, 5.5]]],
  ['sheathing', '10d', 19 / 32, 2, [[640, 895, 21, 14], [850, 1190, 13, 9.5], [1280, 1790, 18, 12], [1460, 2045, 28, 17]], [[570, 800, 13, 8.5], [430, 600, 8.5, 5.5]]],
  ['sheathing', '10d', 19 / 32, 3, [[720, 1010, 17, 12], [960, 1345, 10, 8], [1440, 2015, 14, 11], [1640, 2295, 24, 15]], [[640, 895, 10, 7.5], [480, 670, 7, 5]]],
];

const cell = ([seismic, wind, GaOsb, GaPly]: Quad): Cell => Object.freeze({ seismic, wind, GaOsb, GaPly });

export const TABLE_4_2: readonly DiaphragmRow[] = ROWS.map(([grade, nail, thickness, framing, blocked, unblocked]) =>
  Object.freeze({
    grade,
    nail,
    thickness,
    framing,
    blocked: [cell(blocked[0]!), cell(blocked[1]!), cell(blocked[2]!), cell(blocked[3]!)] as const,
    case1: cell(unblocked[0]!),
    otherCases: cell(unblocked[1]!),
  }),
);
