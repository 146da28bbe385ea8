/**
 * Span tables from first principles: the longest simple span at which bending (D + L) and live-load deflection both
 * hold, for repetitive joists and rafters or for beams, with the product's own catalogue and clauses.
 */
import { findGrade } from '../../../src/catalog/grades.js';
import type { WoodGrade } from '../../../src/catalog/model.js';
import { dressedSize } from '../../../src/catalog/sizes.js';
import {
  adjustedE,
  adjustedFb,
  adjustedFv,
  CD,
  CF4A,
  CF4B,
  Ci,
  CM4A,
  type LoadDuration,
  momentOfInertia,
  sectionModulus,
} from '../../../src/checks/codes/nds-2018/index.js';

/** Species names as the published tables print them. */
export const SPECIES_OF: Readonly<Record<string, string>> = {
  'DF-L': 'Douglas Fir-Larch',
  HF: 'Hem-Fir',
  SP: 'Southern Pine',
  SPF: 'Spruce-Pine-Fir',
};
export const GRADE_OF: Readonly<Record<string, string>> = { SS: 'Select Structural', 'No.1': 'No. 1', 'No.2': 'No. 2' };

export interface SpanCase {
  readonly species: string;
  readonly grade: string;
  readonly nominal: readonly [thickness: number, width: number];
  readonly plies?: number;
  /** Line loads, lb/in. */
  readonly dead: number;
  readonly live: number;
  readonly duration: LoadDuration;
  readonly Cr: number;
  readonly wet?: boolean;
  readonly incised?: boolean;
  /** Live-load deflection limit, span over this; absent when deflection is not limited. */
  readonly limit?: number;
  /** Reference Fb of an older edition, where the published table still follows it. */
  readonly Fb?: number;
  /** Beams also carry shear, at its full value at the support. */
  readonly shear?: boolean;
}

export interface Span {
  readonly span: number;
  readonly governs: 'bending' | 'deflection' | 'shear';
}

const gradeFor = (s: SpanCase): WoodGrade => {
  const g = findGrade(s.species, s.grade, s.nominal[0], s.nominal[1]);
  if (g === undefined) throw new Error(`no grade ${s.species} ${s.grade} ${s.nominal.join('x')}`);
  return g;
};

/** Longest span, in, and what governs it. */
export function longestSpan(s: SpanCase): Span {
  const g = gradeFor(s);
  const [t, w] = s.nominal;
  const { b, d } = dressedSize({ thickness: t, width: w });
  const n = s.plies ?? 1;
  const southern = s.species === 'Southern Pine';
  const reference = s.Fb ?? g.Fb;
  const CF = southern ? CF4B('Fb', t, w) : CF4A('Fb', 'graded', t, w);
  const wet = (v: 'Fb' | 'Fv' | 'E', x: number): number => (s.wet ? CM4A(v, x) : 1);
  const cut = (v: 'Fb' | 'Fv' | 'E'): number => (s.incised ? Ci(v) : 1);
  const duration = CD(s.duration);
  const Fb = adjustedFb(reference, { CD: duration, CM: wet('Fb', reference * CF), CF, Ci: cut('Fb'), Cr: s.Cr });
  const E = adjustedE(g.E, { CM: wet('E', g.E), Ci: cut('E') });
  const total = s.dead + s.live;
  const bending = Math.sqrt((8 * Fb * n * sectionModulus(b, d)) / total);
  const found: [Span['governs'], number][] = [['bending', bending]];
  if (s.limit !== undefined) {
    found.push(['deflection', Math.cbrt((384 * E * n * momentOfInertia(b, d)) / (5 * s.live * s.limit))]);
  }
  if (s.shear) {
    const Fv = adjustedFv(g.Fv, { CD: duration, CM: wet('Fv', g.Fv), Ci: cut('Fv') });
    found.push(['shear', (2 * ((2 / 3) * Fv * n * b * d)) / total]);
  }
  const [governs, span] = found.sort((x, y) => x[1] - y[1])[0]!;
  return { span, governs };
}

/** Weakest of several species, as the combined columns of the deck and porch tables take it. */
export const weakestSpan = (species: readonly string[], s: Omit<SpanCase, 'species'>): Span =>
  species.map((x) => longestSpan({ ...s, species: x })).sort((a, b) => a.span - b.span)[0]!;

/** Line load, lb/in, of an area load (psf) on a tributary width (in). */
export const lineLoad = (psf: number, width: number): number => (psf / 144) * width;
