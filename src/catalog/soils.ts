import type { Sourced } from './model.js';

/** Presumptive values of a soil class, to be used with allowable-stress load combinations. */
export interface SoilClass extends Sourced {
  readonly id: string;
  /** Class number in the building code. */
  readonly number: 1 | 2 | 3 | 4 | 5;
  readonly name: string;
  /** Vertical bearing, psf. */
  readonly bearing: number;
  /** Lateral bearing, psf per foot of depth below grade. */
  readonly lateral: number;
  /** Sliding friction coefficient, times dead load; absent for clay. */
  readonly friction?: number;
  /** Sliding cohesion, psf times contact area; clay only. */
  readonly cohesion?: number;
}

type Row = Omit<SoilClass, keyof Sourced>;

const ROWS: readonly Row[] = [
  { id: 'bedrock', number: 1, name: 'Crystalline bedrock', bearing: 12000, lateral: 1200, friction: 0.7 },
  {
    id: 'sedimentary-rock',
    number: 2,
    name: 'Sedimentary and foliated rock',
    bearing: 4000,
    lateral: 400,
    friction: 0.35,
  },
  { id: 'gravel', number: 3, name: 'Sandy gravel and gravel (GW, GP)', bearing: 3000, lateral: 200, friction: 0.35 },
  {
    id: 'sand',
    number: 4,
    name: 'Sand, silty or clayey sand, silty or clayey gravel (SW, SP, SM, SC, GM, GC)',
    bearing: 2000,
    lateral: 150,
    friction: 0.25,
  },
  {
    id: 'clay',
    number: 5,
    name: 'Clay, sandy or silty clay, clayey silt, silt (CL, ML, MH, CH)',
    bearing: 1500,
    lateral: 100,
    cohesion: 130,
  },
];

/**
 * Presumptive soil values. Mud, organic silt, organic clay, peat and unprepared fill have none: outside the table, a
 * licensed professional decides. The one-third increase belongs to the alternative combinations only.
 */
export const SOIL_CLASSES: readonly SoilClass[] = ROWS.map((r) =>
  Object.freeze({
    ...r,
    source: 'IBC Table 1806.2, read in a reprint',
    edition: '2012 to 2021',
    provenance: 'read' as const,
  }),
);

export const findSoil = (id: string): SoilClass | undefined => SOIL_CLASSES.find((s) => s.id === id);
