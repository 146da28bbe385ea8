import { type Provenance, type SizeClass, slug, type WoodGrade } from './model.js';

/** Grade, Fb, Ft, Fv, Fc_perp, Fc, E, Emin (psi), provenance. */
type Row = readonly [
  grade: string,
  Fb: number,
  Ft: number,
  Fv: number,
  FcPerp: number,
  Fc: number,
  E: number,
  Emin: number,
  provenance: Provenance,
];

const rows = (species: string, G: number, sizeClass: SizeClass, list: readonly Row[], note?: string): WoodGrade[] =>
  list.map(([grade, Fb, Ft, Fv, FcPerp, Fc, E, Emin, provenance]) => ({
    id: `${slug(species)}/${slug(grade)}/4D-${sizeClass}`,
    species,
    grade,
    table: '4D',
    sizeClass,
    Fb,
    Ft,
    Fv,
    FcPerp,
    Fc,
    E,
    Emin,
    G,
    source: 'NDS Supplement Table 4D',
    edition: '2018',
    provenance,
    ...(note === undefined ? {} : { note }),
  }));

const WET_ALREADY = 'Southern Pine timber values already contain wet service: CM is not applied again';

/** Table 4D does not part Southern Pine timbers by shape: one list serves both size classes. */
const SOUTHERN_PINE_TIMBER: readonly Row[] = [
  ['Select Structural', 1500, 1000, 165, 375, 950, 1.5e6, 0.55e6, 'memory'],
  ['No. 1', 1350, 900, 165, 375, 825, 1.5e6, 0.55e6, 'memory'],
  ['No. 2', 850, 550, 165, 375, 525, 1.2e6, 0.44e6, 'memory'],
];

/** Timbers 5 in. x 5 in. and larger (Table 4D). */
export const TIMBERS: readonly WoodGrade[] = [
  ...rows('Douglas Fir-Larch', 0.5, 'posts-timbers', [
    ['No. 2', 750, 475, 170, 625, 700, 1.3e6, 0.47e6, 'read'],
    ['No. 1', 1200, 825, 170, 625, 1000, 1.6e6, 0.58e6, 'memory'],
    ['Select Structural', 1500, 1000, 170, 625, 1150, 1.6e6, 0.58e6, 'memory'],
  ]),
  ...rows('Douglas Fir-Larch', 0.5, 'beams-stringers', [
    ['Select Structural', 1600, 950, 170, 625, 1100, 1.6e6, 0.58e6, 'memory'],
    ['No. 1', 1350, 675, 170, 625, 925, 1.6e6, 0.58e6, 'memory'],
    ['No. 2', 875, 425, 170, 625, 600, 1.3e6, 0.47e6, 'memory'],
  ]),
  ...rows('Hem-Fir', 0.43, 'beams-stringers', [
    ['No. 2', 675, 350, 140, 405, 500, 1.1e6, 0.4e6, 'read'],
    ['No. 1', 1050, 525, 140, 405, 750, 1.3e6, 0.47e6, 'memory'],
  ]),
  ...rows('Hem-Fir', 0.43, 'posts-timbers', [
    ['No. 2', 575, 375, 140, 405, 575, 1.1e6, 0.4e6, 'read'],
    ['No. 1', 975, 650, 140, 405, 850, 1.3e6, 0.47e6, 'memory'],
  ]),
  ...rows('Southern Pine', 0.55, 'beams-stringers', SOUTHERN_PINE_TIMBER, WET_ALREADY),
  ...rows('Southern Pine', 0.55, 'posts-timbers', SOUTHERN_PINE_TIMBER, WET_ALREADY),
];
