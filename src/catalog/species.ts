import type { Sourced } from './model.js';

export interface Species extends Sourced {
  readonly name: string;
  /** Specific gravity for connections, oven-dry weight and volume. */
  readonly G: number;
}

const LIST: readonly (readonly [name: string, G: number])[] = [
  ['Douglas Fir-Larch', 0.5],
  ['Douglas Fir-Larch (North)', 0.49],
  ['Douglas Fir-South', 0.46],
  ['Eastern Softwoods', 0.36],
  ['Hem-Fir', 0.43],
  ['Hem-Fir (North)', 0.46],
  ['Mixed Southern Pine', 0.51],
  ['Northern Species', 0.35],
  ['Ponderosa Pine', 0.43],
  ['Red Oak', 0.67],
  ['Redwood', 0.37],
  ['Southern Pine', 0.55],
  ['Spruce-Pine-Fir', 0.42],
  ['Spruce-Pine-Fir (South)', 0.36],
  ['Western Cedars', 0.36],
  ['Western Cedars (North)', 0.35],
  ['Western Hemlock', 0.47],
  ['Western Woods', 0.36],
  ['White Oak', 0.73],
];

/** Species combinations and their specific gravity (NDS 2018 Table 12.3.3A). */
export const SPECIES: readonly Species[] = LIST.map(([name, G]) =>
  Object.freeze({
    name,
    G,
    source: 'NDS Table 12.3.3A, read in a public transcription',
    edition: '2018',
    provenance: 'read' as const,
  }),
);

export const findSpecies = (name: string): Species | undefined => SPECIES.find((s) => s.name === name);

/** Moisture content the weights of framing are taken at, percent: the published lists reproduce with it. */
export const WEIGHT_MOISTURE_PERCENT = 15;

/**
 * Weight of wood in pounds per cubic foot from specific gravity `G` (oven-dry) and moisture content in percent.
 * NDS Supplement 3.1.3: 62.4 [G / (1 + 0.009 G MC)] (1 + MC/100).
 */
export const woodWeightPcf = (G: number, moisturePercent = WEIGHT_MOISTURE_PERCENT): number =>
  ((62.4 * G) / (1 + 0.009 * G * moisturePercent)) * (1 + moisturePercent / 100);
