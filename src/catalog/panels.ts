import type { Sourced } from './model.js';

/** A structural sheathing panel laid with its strength axis across the supports over two or more spans. */
export interface SheathingPanel extends Sourced {
  readonly id: string;
  /** Trade thickness, e.g. `15/32`. */
  readonly name: string;
  /** Thickness in inches. */
  readonly thickness: number;
  /** Roof / floor span rating, e.g. `32/16`. */
  readonly spanRating: string;
  /** Largest support spacing with panel clips, tongue and groove or blocking at the edges, inches. */
  readonly maxSpanEdgeSupported: number;
  /** Largest support spacing without edge support, inches. */
  readonly maxSpanUnsupported: number;
  /** Total and live load at the largest span, psf. */
  readonly totalLoad: number;
  readonly liveLoad: number;
  /** Weight, psf. */
  readonly weight: number;
}

/** Plywood weighs 0.4 psf per 1/8 in. of thickness (ASCE/SEI 7 commentary Table C3.1-1a, recalled). */
export const PLYWOOD_PSF_PER_INCH = 3.2;

type Row = readonly [
  name: string,
  thickness: number,
  spanRating: string,
  edgeSupported: number,
  unsupported: number,
  total: number,
  live: number,
];

const ROWS: readonly Row[] = [
  ['3/8', 0.375, '24/0', 24, 20, 40, 30],
  ['7/16', 0.437, '24/16', 24, 24, 50, 40],
  ['15/32', 0.469, '32/16', 32, 28, 40, 30],
  ['1/2', 0.5, '32/16', 32, 28, 40, 30],
  ['19/32', 0.594, '40/20', 40, 32, 40, 30],
  ['5/8', 0.625, '40/20', 40, 32, 40, 30],
  ['23/32', 0.719, '48/24', 48, 36, 45, 35],
  ['3/4', 0.75, '48/24', 48, 36, 45, 35],
];

/** Roof sheathing by span rating, thinnest first. Sheets are 4 ft by 8 ft. */
export const SHEATHING: readonly SheathingPanel[] = ROWS.map(
  ([name, thickness, spanRating, maxSpanEdgeSupported, maxSpanUnsupported, totalLoad, liveLoad]) =>
    Object.freeze({
      id: `sheathing-${name.replace('/', '-')}`,
      name,
      thickness,
      spanRating,
      maxSpanEdgeSupported,
      maxSpanUnsupported,
      totalLoad,
      liveLoad,
      weight: Math.round(thickness * PLYWOOD_PSF_PER_INCH * 100) / 100,
      source: 'IBC Table 2304.8(3) and IRC Table R503.2.1.1(1); weight from ASCE/SEI 7-16 Table C3.1-1a',
      edition: '2018',
      provenance: 'memory' as const,
    }),
);

export const findSheathing = (name: string): SheathingPanel | undefined => SHEATHING.find((p) => p.name === name);

/** Sheet size, inches. */
export const SHEET_WIDTH = 48;
export const SHEET_LENGTH = 96;
