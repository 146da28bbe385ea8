/**
 * Adjusted design values of a placed section. One entry a family; nothing else in the checks asks which family it is.
 * Temperature is ordinary (NDS 2018 2.3.3: Ct = 1 up to 100 °F), which a roof over a patio keeps.
 */
import type { Recorder } from '../../base/trace.js';
import type { Section, SectionFamily } from '../../structure/model.js';
import {
  adjusted,
  C_GLULAM_SCL,
  C_SAWN,
  CF4A,
  CF4B,
  CF4D,
  Ci,
  CM4A,
  CM4D,
  CMGlulam,
  CMScl,
  CrSawn,
  CrScl,
  CV,
  CVScl,
  type DesignValue,
  type Factors,
  type Material,
  type SizeFactorGroup,
} from '../codes/nds-2018/index.js';

/** What the place and the load add to a section's own factors. */
export interface Situation {
  readonly CD?: number;
  readonly CL?: number;
  readonly CP?: number;
  readonly Cb?: number;
  /** Repetitive use: members in the row and their spacing, inches; the sheathing joins them. */
  readonly row?: { readonly members: number; readonly spacing: number };
  /** Length between points of zero moment, inches; the span is never shorter (volume factor). */
  readonly span?: number;
  /** Tension on the face that is usually compressed. */
  readonly negative?: boolean;
}

interface Family {
  readonly material: Material;
  /** Buckling coefficient c of NDS 2018 3.7.1. */
  readonly c: number;
  size(value: DesignValue, s: Section, rec?: Recorder): number;
  /** Wet service factor; undefined when the material may not be used wet without its maker's report. */
  wet(value: DesignValue, s: Section, sized: number, rec?: Recorder): number | undefined;
  volume?(s: Section, span: number, rec?: Recorder): number;
  repetitive(s: Section, row: NonNullable<Situation['row']>): number;
}

const GROUPS: Readonly<Record<string, SizeFactorGroup>> = {
  Stud: 'stud',
  Construction: 'construction-standard',
  Standard: 'construction-standard',
  Utility: 'utility',
};

/** Depth exponent m of laminated veneer lumber, usual in makers' reports (recalled; the product's own report governs). */
const LVL_EXPONENT = 7.35;

const southern = (s: Section): boolean => s.species.startsWith('Southern Pine');

const FAMILIES: Readonly<Record<SectionFamily, Family>> = {
  'sawn-dimension': {
    material: 'sawn',
    c: C_SAWN,
    size: (value, s, rec) =>
      s.sizeInTable
        ? CF4B(value, s.nominal.thickness, s.nominal.width)
        : CF4A(value, GROUPS[s.grade] ?? 'graded', s.nominal.thickness, s.nominal.width, rec),
    wet: (value, _s, sized, rec) => CM4A(value, sized, rec),
    repetitive: (s, row) => CrSawn(s.nominal.thickness, row.members, row.spacing, true),
  },
  'sawn-timber': {
    material: 'sawn',
    c: C_SAWN,
    size: (value, s, rec) => (value === 'Fb' ? CF4D(s.d, rec) : 1),
    wet: (value, s) => CM4D(value, southern(s)),
    repetitive: () => 1,
  },
  glulam: {
    material: 'glulam',
    c: C_GLULAM_SCL,
    size: () => 1,
    wet: (value) => CMGlulam(value),
    volume: (s, span, rec) => CV(span / 12, s.d, s.b, southern(s) ? 20 : 10, rec),
    repetitive: () => 1,
  },
  lvl: {
    material: 'scl',
    c: C_GLULAM_SCL,
    size: () => 1,
    wet: (_value, s) => CMScl(s.wet),
    // Never above 1: a shallow member's gain is the maker's to state.
    volume: (s) => Math.min(1, CVScl(s.d, LVL_EXPONENT)),
    repetitive: (_s, row) => CrScl(row.members, row.spacing, true),
  },
};

/** Reference value, psi. Negative bending takes the value of the compression face in tension. */
function reference(value: DesignValue, s: Section, negative: boolean): number {
  return value === 'Fb' && negative ? s.values.FbNeg : s.values[value];
}

/**
 * Adjusted design value in psi; undefined when the section may not be used in wet service. `value` as NDS names it.
 * Source: NDS 2018 Tables 4.3.1, 5.3.1, 8.3.1.
 */
export function designValue(value: DesignValue, s: Section, at: Situation, rec?: Recorder): number | undefined {
  if (rec || at.CL !== undefined || at.CP !== undefined || at.Cb !== undefined || at.row || at.span !== undefined)
    return workOut(value, s, at, rec);
  const known = plainValues(s, value);
  const key = (at.negative ? -1 : 1) * (at.CD ?? 0.5);
  if (!known.has(key)) known.set(key, workOut(value, s, at));
  return known.get(key);
}

type ByLoad = Map<number, number | undefined>;

const plain = new WeakMap<Section, Map<DesignValue, ByLoad>>();

/**
 * Values that change with load duration and tension face only, which searches ask for at every combination: by CD (0.5,
 * shorter than any, where it does not apply), negative for the face usually compressed.
 */
function plainValues(s: Section, value: DesignValue): ByLoad {
  let values = plain.get(s);
  if (!values) {
    values = new Map();
    plain.set(s, values);
  }
  let known = values.get(value);
  if (!known) {
    known = new Map();
    values.set(value, known);
  }
  return known;
}

function workOut(value: DesignValue, s: Section, at: Situation, rec?: Recorder): number | undefined {
  const family = FAMILIES[s.family];
  const base = reference(value, s, at.negative ?? false);
  if (rec) {
    rec.step({
      symbol: value === 'FcPerp' ? 'Fc⊥' : at.negative && s.values.FbNeg !== s.values.Fb ? 'Fb−' : value,
      meaning: `reference design value, ${s.label}`,
      formula: 'tabulated',
      substituted: s.values.source,
      value: base,
      unit: 'psi',
      clause: s.values.source,
      from: [s.path],
      ...(s.values.provenance === 'memory' ? { note: 'value recalled from memory: confirm in the printed table' } : {}),
    });
  }
  const CF = family.size(value, s, rec);
  const CM = s.wet ? family.wet(value, s, base * CF, rec) : 1;
  if (CM === undefined) return undefined;
  const factors: Factors = {
    CF,
    CM,
    Ci: s.incised ? Ci(value, rec) : 1,
    Cr: at.row && value === 'Fb' ? family.repetitive(s, at.row) : 1,
    ...(at.CD === undefined ? {} : { CD: at.CD }),
    ...(at.CL === undefined ? {} : { CL: at.CL }),
    ...(at.CP === undefined ? {} : { CP: at.CP }),
    ...(at.Cb === undefined ? {} : { Cb: at.Cb }),
    ...(value === 'Fb' && family.volume && at.span !== undefined ? { CV: family.volume(s, at.span, rec) } : {}),
  };
  return adjusted(family.material, value, base, factors, rec);
}

/** Buckling coefficient c of the section's material (NDS 2018 3.7.1). */
export const bucklingC = (s: Section): number => FAMILIES[s.family].c;
/** True for materials whose CL and CV are alternatives (NDS 2018 5.3.6). */
export const hasVolumeFactor = (s: Section): boolean => FAMILIES[s.family].volume !== undefined;
/** Why no value came out. */
export const WET_REFUSED =
  'laminated veneer lumber in wet service needs its maker’s evaluation report and a licensed professional';
