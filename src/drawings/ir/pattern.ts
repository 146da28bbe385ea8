import type { Vec2 } from '../../base/vec.js';
import { batts, diagonals, lineFamily, rings, type Strokes, scatter } from './hatch.js';
import type { PenName } from './pen.js';

/**
 * Material patterns as they are drawn in sections and elevations: common practice of the trade, no source. Spacings are
 * paper inches. A pattern is one row of the table: a function from loops to strokes, clipped here so that back-ends need
 * not know hatching.
 */
export interface Pattern {
  readonly means: string;
  readonly pen: PenName;
  readonly strokes: (loops: readonly (readonly Vec2[])[], angle: number, spacing: number) => Strokes;
  /** The same strokes as parallel families, for patterns that are nothing but these: a DXF hatch is written from them. */
  readonly families?: readonly LineFamily[];
}

/** Parallel lines: direction in radians, distances in paper inches; `dash` is on, off, on, off …; `loose` dashes are scattered. */
export interface LineFamily {
  readonly angle: number;
  readonly spacing: number;
  readonly offset: number;
  readonly dash: readonly number[] | undefined;
  readonly loose: boolean;
}

const D45 = Math.PI / 4;
const D90 = Math.PI / 2;

type Row = readonly [angle: number, spacing: number, offset?: number, dash?: readonly number[], loose?: boolean];

const familyOf = ([angle, spacing, offset = 0, dash, loose = false]: Row): LineFamily => ({
  angle,
  spacing,
  offset,
  dash,
  loose,
});

const lines =
  (...rows: readonly Row[]): Pattern['strokes'] =>
  (loops, angle, k) =>
    rows.map(familyOf).flatMap((f) =>
      lineFamily(
        loops,
        f.angle + angle,
        f.spacing * k,
        f.offset * k,
        f.dash?.map((d) => d * k),
        f.loose,
      ),
    );

/** A pattern of parallel families and nothing else, each `[angle, spacing, offset, dash?, loose?]`. */
const ruled = (...rows: readonly Row[]): Required<Pick<Pattern, 'strokes' | 'families'>> => ({
  strokes: lines(...rows),
  families: rows.map(familyOf),
});

const both =
  (...parts: readonly Pattern['strokes'][]): Pattern['strokes'] =>
  (loops, angle, k) =>
    parts.flatMap((p) => p(loops, angle, k));

export const PATTERNS = {
  generic: { means: 'cut part, any material', pen: 'hatch', ...ruled([D45, 0.07]) },
  concrete: { means: 'concrete in section', pen: 'hatch', strokes: (l, _a, k) => scatter(l, 0.16 * k, 'stone') },
  gravel: { means: 'gravel or crushed rock', pen: 'hatch', strokes: (l, _a, k) => scatter(l, 0.085 * k, 'pebble') },
  sand: { means: 'sand, mortar, plaster', pen: 'hatch', strokes: (l, _a, k) => scatter(l, 0.05 * k, 'dot') },
  earth: { means: 'undisturbed soil', pen: 'hatch', strokes: (l, _a, k) => scatter(l, 0.21 * k, 'furrow') },
  fill: {
    means: 'compacted fill',
    pen: 'hatch',
    strokes: both(lines([-D45, 0.16, 0, [0.12, 0.06], true]), (l, _a, k) => scatter(l, 0.12 * k, 'dot')),
  },
  'wood-cross': { means: 'continuous wood member, cut', pen: 'hatch-bold', strokes: (l) => diagonals(l, 2) },
  'wood-block': { means: 'wood blocking, cut', pen: 'hatch-bold', strokes: (l) => diagonals(l, 1) },
  'wood-end': { means: 'finish wood, end grain', pen: 'hatch', strokes: (l, _a, k) => rings(l, 0.05 * k) },
  'wood-grain': {
    means: 'wood seen along the grain',
    pen: 'hatch',
    ...ruled([0, 0.07, 0, [0.55, 0.09, 0.95, 0.14], true]),
  },
  plywood: { means: 'plywood in section', pen: 'hatch', ...ruled([0, 0.04], [D45, 0.12]) },
  'insulation-batt': { means: 'batt insulation', pen: 'hatch', strokes: (l, a) => batts(l, a) },
  'insulation-rigid': { means: 'rigid insulation', pen: 'hatch', ...ruled([D45, 0.09], [-D45, 0.09]) },
  steel: { means: 'steel in section', pen: 'hatch', ...ruled([D45, 0.075], [D45, 0.075, 0.018]) },
  masonry: { means: 'brick or block in section', pen: 'hatch', ...ruled([D45, 0.13], [D45, 0.13, 0.03]) },
  existing: { means: 'existing construction, cut', pen: 'hatch', ...ruled([D45, 0.055]) },
  roofing: {
    means: 'roof covering in elevation',
    pen: 'hatch',
    ...ruled([0, 0.08], [D90, 0.3, 0, [0.08, 0.08]], [D90, 0.3, 0.15, [0, 0.08, 0.08, 0]]),
  },
  seams: { means: 'standing-seam roof covering', pen: 'hatch', ...ruled([D90, 0.2]) },
  siding: { means: 'horizontal siding in elevation', pen: 'hatch', ...ruled([0, 0.1]) },
  glass: {
    means: 'glass in elevation',
    pen: 'hatch',
    ...ruled([D45, 0.32, 0, [0.35, 0.5]], [D45, 0.32, 0.035, [0.22, 0.63]]),
  },
  paver: {
    means: 'paving in plan',
    pen: 'hatch',
    ...ruled([0, 0.15], [D90, 0.3, 0, [0.15, 0.15]], [D90, 0.3, 0.15, [0, 0.15, 0.15, 0]]),
  },
} as const satisfies Record<string, Pattern>;
export type PatternName = keyof typeof PATTERNS;
