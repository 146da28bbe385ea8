import { slug, type WoodGrade } from './model.js';

/** Nominal width, Fb, Ft, Fc (psi). */
type Row = readonly [width: number, Fb: number, Ft: number, Fc: number];

const rows = (grade: string, E: number, Emin: number, list: readonly Row[]): WoodGrade[] =>
  list.map(([width, Fb, Ft, Fc]) => ({
    id: `southern-pine/${slug(grade)}/4B-${width}`,
    species: 'Southern Pine',
    grade,
    table: '4B',
    sizeClass: 'dimension',
    Fb,
    Ft,
    Fv: 175,
    FcPerp: 565,
    Fc,
    E,
    Emin,
    G: 0.55,
    width,
    source: 'NDS Supplement Table 4B (values effective 1 June 2013)',
    edition: '2018',
    provenance: 'memory',
    note: 'Fb, Ft and Fc agree within rounding with the metric values of a grading agency guide; dense grades are left out',
  }));

/** Visually graded Southern Pine, 2 in. to 4 in. thick (Table 4B). Size factors are already inside the values. */
export const SOUTHERN_PINE: readonly WoodGrade[] = [
  ...rows('Select Structural', 1.8e6, 0.66e6, [
    [4, 2350, 1650, 1900],
    [6, 2100, 1450, 1800],
    [8, 1950, 1350, 1700],
    [10, 1700, 1150, 1650],
    [12, 1600, 1100, 1650],
  ]),
  ...rows('No. 1', 1.6e6, 0.58e6, [
    [4, 1500, 1000, 1650],
    [6, 1350, 875, 1550],
    [8, 1250, 800, 1500],
    [10, 1050, 700, 1450],
    [12, 1000, 650, 1400],
  ]),
  ...rows('No. 2', 1.4e6, 0.51e6, [
    [4, 1100, 675, 1450],
    [6, 1000, 600, 1400],
    [8, 925, 550, 1350],
    [10, 800, 475, 1300],
    [12, 750, 450, 1250],
  ]),
];
