import type { WoodGrade } from './model.js';

/**
 * Glued-laminated bending combinations (Table 5A). The Southern Pine 24F-V3 layup is left out: its values about y-y,
 * its axial values and Emin differ between editions and could not be confirmed.
 */
export const GLULAM: readonly WoodGrade[] = [
  {
    id: 'douglas-fir/24f-v4/5A',
    species: 'Douglas Fir-Larch',
    grade: '24F-V4',
    table: '5A',
    sizeClass: 'glulam',
    Fb: 2400,
    FbNeg: 1850,
    FbY: 1450,
    Ft: 1100,
    Fv: 265,
    FvY: 230,
    FcPerp: 650,
    FcPerpY: 560,
    Fc: 1650,
    E: 1.8e6,
    Emin: 0.95e6,
    EY: 1.6e6,
    EminY: 0.85e6,
    G: 0.5,
    source: 'NDS Supplement Table 5A, DF/DF',
    edition: '2018',
    provenance: 'memory',
    note: 'values about x-x and axial were read in public transcriptions (one lists Fc 1600, an older figure); values about y-y are recalled',
  },
];

/** Laminated veneer lumber, edgewise. A product chosen for the job brings its own evaluation report values. */
export const LVL: readonly WoodGrade[] = [
  {
    id: 'lvl/2-0e/SCL',
    species: 'Laminated veneer lumber',
    grade: '2.0E',
    table: 'SCL',
    sizeClass: 'lvl',
    Fb: 2600,
    Ft: 1895,
    Fv: 285,
    FcPerp: 750,
    Fc: 2510,
    E: 2.0e6,
    Emin: 1.02e6,
    G: 0.5,
    source: 'typical values of generic 2.0E laminated veneer lumber, read in a public material list',
    edition: '-',
    provenance: 'read',
    note: 'differs between producers: replace by the evaluation report of the product bought; dry service only',
  },
];
