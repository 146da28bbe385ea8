import { type Provenance, slug, type WoodGrade } from './model.js';

/** Grade, Fb, Ft, Fv, Fc_perp, Fc, E, Emin (psi); provenance and note only where a row differs from its table. */
type Row = readonly [
  grade: string,
  Fb: number,
  Ft: number,
  Fv: number,
  FcPerp: number,
  Fc: number,
  E: number,
  Emin: number,
  provenance?: Provenance,
  note?: string,
];

const rows = (species: string, G: number, list: readonly Row[]): WoodGrade[] =>
  list.map(([grade, Fb, Ft, Fv, FcPerp, Fc, E, Emin, provenance, note]) => ({
    id: `${slug(species)}/${slug(grade)}/4A`,
    species,
    grade,
    table: '4A',
    sizeClass: 'dimension',
    Fb,
    Ft,
    Fv,
    FcPerp,
    Fc,
    E,
    Emin,
    G,
    source: 'NDS Supplement Table 4A, read in a public transcription of the table',
    edition: '2018',
    provenance: provenance ?? 'read',
    ...(note === undefined ? {} : { note }),
  }));

const REDWOOD_EMIN =
  'the transcription read shows Emin 370000, which does not follow from E; the lower value of the E-to-Emin relation is used: confirm';

/** Visually graded dimension lumber, 2 in. to 4 in. thick, all species but Southern Pine (Table 4A). */
export const DIMENSION_LUMBER: readonly WoodGrade[] = [
  ...rows('Douglas Fir-Larch', 0.5, [
    ['Select Structural', 1500, 1000, 180, 625, 1700, 1.9e6, 0.69e6],
    ['No. 1 & Btr', 1200, 800, 180, 625, 1550, 1.8e6, 0.66e6],
    ['No. 1', 1000, 675, 180, 625, 1500, 1.7e6, 0.62e6],
    ['No. 2', 900, 575, 180, 625, 1350, 1.6e6, 0.58e6],
    ['No. 3', 525, 325, 180, 625, 775, 1.4e6, 0.51e6],
    ['Stud', 700, 450, 180, 625, 850, 1.4e6, 0.51e6],
  ]),
  ...rows('Douglas Fir-Larch (North)', 0.49, [
    ['Select Structural', 1350, 825, 180, 625, 1900, 1.9e6, 0.69e6],
    ['No. 1 & Btr', 1150, 750, 180, 625, 1800, 1.8e6, 0.66e6],
    ['No. 1 / No. 2', 850, 500, 180, 625, 1400, 1.6e6, 0.58e6],
    ['No. 3', 475, 300, 180, 625, 825, 1.4e6, 0.51e6],
    ['Stud', 650, 400, 180, 625, 900, 1.4e6, 0.51e6],
  ]),
  ...rows('Hem-Fir', 0.43, [
    ['Select Structural', 1400, 925, 150, 405, 1500, 1.6e6, 0.58e6],
    ['No. 1 & Btr', 1100, 725, 150, 405, 1350, 1.5e6, 0.55e6],
    ['No. 1', 975, 625, 150, 405, 1350, 1.5e6, 0.55e6],
    ['No. 2', 850, 525, 150, 405, 1300, 1.3e6, 0.47e6],
    ['No. 3', 500, 300, 150, 405, 725, 1.2e6, 0.44e6],
    ['Stud', 675, 400, 150, 405, 800, 1.2e6, 0.44e6],
  ]),
  ...rows('Hem-Fir (North)', 0.46, [
    ['Select Structural', 1300, 775, 145, 405, 1700, 1.7e6, 0.62e6],
    ['No. 1 & Btr', 1200, 725, 145, 405, 1550, 1.7e6, 0.62e6],
    ['No. 1 / No. 2', 1000, 575, 145, 405, 1450, 1.6e6, 0.58e6],
    ['No. 3', 575, 325, 145, 405, 850, 1.4e6, 0.51e6],
    ['Stud', 775, 450, 145, 405, 925, 1.4e6, 0.51e6],
  ]),
  ...rows('Northern Species', 0.35, [
    ['Select Structural', 975, 425, 110, 350, 1100, 1.1e6, 0.4e6],
    ['No. 1 / No. 2', 625, 275, 110, 350, 850, 1.1e6, 0.4e6],
    ['No. 3', 350, 150, 110, 350, 500, 1.0e6, 0.37e6],
    ['Stud', 475, 225, 110, 350, 550, 1.0e6, 0.37e6],
  ]),
  ...rows('Redwood', 0.37, [
    ['Select Structural', 1100, 625, 160, 425, 1100, 1.1e6, 0.4e6],
    ['No. 1', 775, 450, 160, 425, 900, 1.1e6, 0.4e6],
    ['No. 2', 725, 425, 160, 425, 700, 1.0e6, 0.37e6],
    ['No. 3', 425, 250, 160, 425, 400, 0.9e6, 0.33e6, 'memory', REDWOOD_EMIN],
    ['Stud', 575, 325, 160, 425, 450, 0.9e6, 0.33e6, 'memory', REDWOOD_EMIN],
  ]),
  ...rows('Spruce-Pine-Fir', 0.42, [
    ['Select Structural', 1250, 700, 135, 425, 1400, 1.5e6, 0.55e6],
    ['No. 1 / No. 2', 875, 450, 135, 425, 1150, 1.4e6, 0.51e6],
    ['No. 3', 500, 250, 135, 425, 650, 1.2e6, 0.44e6],
    ['Stud', 675, 350, 135, 425, 725, 1.2e6, 0.44e6],
  ]),
  ...rows('Spruce-Pine-Fir (South)', 0.36, [
    ['Select Structural', 1300, 575, 135, 335, 1200, 1.3e6, 0.47e6],
    ['No. 1', 875, 400, 135, 335, 1050, 1.2e6, 0.44e6],
    ['No. 2', 775, 350, 135, 335, 1000, 1.1e6, 0.4e6],
    ['No. 3', 450, 200, 135, 335, 575, 1.0e6, 0.37e6],
    ['Stud', 600, 275, 135, 335, 625, 1.0e6, 0.37e6],
  ]),
  ...rows('Western Cedars', 0.36, [
    ['Select Structural', 1000, 600, 155, 425, 1000, 1.1e6, 0.4e6],
    ['No. 1', 725, 425, 155, 425, 825, 1.0e6, 0.37e6],
    ['No. 2', 700, 425, 155, 425, 650, 1.0e6, 0.37e6],
    ['No. 3', 400, 250, 155, 425, 375, 0.9e6, 0.33e6],
    ['Stud', 550, 325, 155, 425, 400, 0.9e6, 0.33e6],
  ]),
  ...rows('Western Woods', 0.36, [
    ['Select Structural', 900, 400, 135, 335, 1050, 1.2e6, 0.44e6],
    ['No. 1', 675, 300, 135, 335, 950, 1.1e6, 0.4e6],
    ['No. 2', 675, 300, 135, 335, 900, 1.0e6, 0.37e6],
    ['No. 3', 375, 175, 135, 335, 525, 0.9e6, 0.33e6],
    ['Stud', 525, 225, 135, 335, 575, 0.9e6, 0.33e6],
  ]),
];
