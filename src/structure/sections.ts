/**
 * SectionChoice → Section. One maker a kind; nothing else asks which kind a section is.
 * Plywood strips between plies count in width and weight only, never in strength, stiffness or bearing.
 */
import {
  dressedSize,
  findGrade,
  GLULAM,
  LVL,
  PLYWOOD_PSF_PER_INCH,
  parseNominal,
  type WoodGrade,
  woodWeightPcf,
} from '../catalog/index.js';
import type { SectionChoice, SectionKind, WoodChoice } from '../project/model.js';
import { CUBIC_INCHES_PER_CUBIC_FOOT } from './constants.js';
import type { DesignValues, Section, SectionFamily } from './model.js';
import { inches } from './text.js';

export type MadeSection =
  | { readonly ok: true; readonly section: Section }
  | { readonly ok: false; readonly message: string; readonly found: string; readonly expected: string };

type Origin = { readonly choice: string; readonly path: string };
type Maker<K extends SectionKind> = (choice: Extract<SectionChoice, { kind: K }>, origin: Origin) => MadeSection;

const refuse = (message: string, found: string, expected: string): MadeSection => ({
  ok: false,
  message,
  found,
  expected,
});

const valuesOf = (g: WoodGrade): DesignValues => ({
  Fb: g.Fb,
  FbNeg: g.FbNeg ?? g.Fb,
  FbY: g.FbY ?? g.Fb,
  Ft: g.Ft ?? 0,
  Fv: g.Fv,
  FcPerp: g.FcPerp,
  Fc: g.Fc ?? 0,
  E: g.E,
  Emin: g.Emin,
  EminY: g.EminY ?? g.Emin,
  G: g.G,
  source: `${g.source} (${g.edition})`,
  provenance: g.provenance,
});

/** Short species names as grade marks print them; others are written out. Common practice, no source. */
const SHORT: Readonly<Record<string, string>> = {
  'Douglas Fir-Larch': 'DF-L',
  'Douglas Fir-Larch (North)': 'DF-L(N)',
  'Hem-Fir': 'HF',
  'Hem-Fir (North)': 'HF(N)',
  'Southern Pine': 'SP',
  'Spruce-Pine-Fir': 'SPF',
  'Spruce-Pine-Fir (South)': 'SPF-S',
};
/** Species and grade as lumber lists print them: `DF-L No. 2`. */
export const gradeText = (w: Pick<WoodChoice, 'species' | 'grade'>): string =>
  `${SHORT[w.species] ?? w.species} ${w.grade}`;

/** Pounds per inch of a solid section, at the moisture content the catalogue states. */
const weightOf = (G: number, area: number): number => (woodWeightPcf(G) / CUBIC_INCHES_PER_CUBIC_FOOT) * area;

interface Sawn {
  readonly b: number;
  readonly d: number;
  readonly nominal: { readonly thickness: number; readonly width: number };
  readonly grade: WoodGrade;
}

function sawn(size: string, wood: WoodChoice): Sawn | MadeSection {
  const nominal = parseNominal(size);
  if (nominal === undefined) return refuse('This is not a lumber size.', size, 'a nominal size, e.g. "2x10" or "6x6"');
  const grade = findGrade(wood.species, wood.grade, nominal.thickness, nominal.width);
  if (grade === undefined) {
    return refuse(
      'The catalogue has no design values for this species and grade in this size.',
      `${size} ${wood.species} ${wood.grade}`,
      'a species and grade of NDS Supplement Table 4A, 4B or 4D, e.g. "Douglas Fir-Larch" "No. 2"',
    );
  }
  const { b, d } = dressedSize(nominal);
  return { b, d, nominal, grade };
}

const wood = (w: Pick<WoodChoice, 'treatment' | 'service'> & { readonly incised?: boolean }) => ({
  treatment: w.treatment,
  incised: w.incised ?? false,
  wet: w.service === 'wet',
});

const sawnFamily = (g: WoodGrade): SectionFamily => (g.table === '4D' ? 'sawn-timber' : 'sawn-dimension');

const solid: Maker<'solid'> = (c, origin) => {
  const s = sawn(c.size, c);
  if (!('grade' in s)) return s;
  return {
    ok: true,
    section: {
      ...origin,
      label: `${c.size} ${gradeText(c)}`,
      width: s.b,
      depth: s.d,
      b: s.b,
      d: s.d,
      plies: 1,
      plyWidth: s.b,
      family: sawnFamily(s.grade),
      nominal: s.nominal,
      species: c.species,
      grade: c.grade,
      sizeClass: s.grade.sizeClass,
      sizeInTable: s.grade.table === '4B',
      values: valuesOf(s.grade),
      ...wood(c),
      weight: weightOf(s.grade.G, s.b * s.d),
    },
  };
};

const builtUp: Maker<'built-up'> = (c, origin) => {
  const s = sawn(c.ply, c);
  if (!('grade' in s)) return s;
  if (!(Number.isInteger(c.plies) && c.plies >= 2))
    return refuse('A built-up section needs two or more plies.', String(c.plies), '2 or more');
  if (!(c.spacers >= 0 && c.spacers < c.plies))
    return refuse(
      'Plywood strips go between plies: one fewer than the plies at most.',
      String(c.spacers),
      `0 to ${c.plies - 1}`,
    );
  const b = c.plies * s.b;
  const strips = c.spacers * c.spacerThickness;
  const filler = c.spacers > 0 ? ` + (${c.spacers}) ${inches(c.spacerThickness)} ply` : '';
  return {
    ok: true,
    section: {
      ...origin,
      label: `(${c.plies}) ${c.ply}${filler} ${gradeText(c)}`,
      width: b + strips,
      depth: s.d,
      b,
      d: s.d,
      plies: c.plies,
      plyWidth: s.b,
      family: sawnFamily(s.grade),
      nominal: s.nominal,
      species: c.species,
      grade: c.grade,
      sizeClass: s.grade.sizeClass,
      sizeInTable: s.grade.table === '4B',
      values: valuesOf(s.grade),
      ...wood(c),
      weight: weightOf(s.grade.G, b * s.d) + (PLYWOOD_PSF_PER_INCH / 144) * strips * s.d,
    },
  };
};

const glulam: Maker<'glulam'> = (c, origin) => {
  const grade = GLULAM.find((g) => g.grade === c.combination);
  if (grade === undefined)
    return refuse(
      'The catalogue has no such glulam combination.',
      c.combination,
      GLULAM.map((g) => `"${g.grade}"`).join(', '),
    );
  if (!(c.width > 0 && c.depth > 0))
    return refuse('A glulam needs a width and a depth.', `${c.width} x ${c.depth}`, '5-1/2 in by 12 in');
  return {
    ok: true,
    section: {
      ...origin,
      label: `${inches(c.width)} x ${inches(c.depth)} ${c.combination} glulam`,
      width: c.width,
      depth: c.depth,
      b: c.width,
      d: c.depth,
      plies: 1,
      plyWidth: c.width,
      family: 'glulam',
      nominal: { thickness: 0, width: 0 },
      species: grade.species,
      grade: c.combination,
      sizeClass: 'glulam',
      sizeInTable: false,
      values: valuesOf(grade),
      ...wood(c),
      weight: weightOf(grade.G, c.width * c.depth),
    },
  };
};

const lvl: Maker<'lvl'> = (c, origin) => {
  const grade = LVL.find((g) => g.grade === c.grade);
  if (grade === undefined)
    return refuse('The catalogue has no such veneer lumber grade.', c.grade, LVL.map((g) => `"${g.grade}"`).join(', '));
  const b = c.plies * c.thickness;
  if (!(b > 0 && c.depth > 0 && Number.isInteger(c.plies)))
    return refuse(
      'Veneer lumber needs plies, thickness and depth.',
      `${c.plies} x ${c.thickness} x ${c.depth}`,
      '2 plies of 1-3/4 in by 11-7/8 in',
    );
  return {
    ok: true,
    section: {
      ...origin,
      label: `(${c.plies}) ${inches(c.thickness)} x ${inches(c.depth)} ${c.grade} LVL`,
      width: b,
      depth: c.depth,
      b,
      d: c.depth,
      plies: c.plies,
      plyWidth: c.thickness,
      family: 'lvl',
      nominal: { thickness: 0, width: 0 },
      species: grade.species,
      grade: c.grade,
      sizeClass: 'lvl',
      sizeInTable: false,
      values: valuesOf(grade),
      ...wood(c),
      weight: weightOf(grade.G, b * c.depth),
    },
  };
};

const MAKERS: { readonly [K in SectionKind]: Maker<K> } = { solid, 'built-up': builtUp, glulam, lvl };

/** Resolves a choice against the catalogue. `origin` names the choice in the project file. */
export function makeSection<K extends SectionKind>(
  choice: Extract<SectionChoice, { kind: K }>,
  origin: Origin,
): MadeSection {
  return (MAKERS[choice.kind as K] as Maker<K>)(choice, origin);
}

/**
 * Wood of a section, plywood strips left out, over a middle stretch `across` of its width, inches: strips lie between the
 * plies, so all of them are taken to lie in the stretch, and of the plies what is left.
 */
export const woodAcross = ({ b, width }: Pick<Section, 'b' | 'width'>, across: number): number =>
  across >= width ? b : Math.max(0, across - (width - b));
