import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import type { DesignValue } from './ch2-adjustment.js';

/** Grade groups of the size factor table 4A. */
export type SizeFactorGroup = 'graded' | 'stud' | 'construction-standard' | 'utility';

type ByWidth = readonly (readonly [upTo: number, factor: number])[];
const pick = (table: ByWidth, width: number): number => table.find(([upTo]) => width <= upTo)?.[1] ?? table.at(-1)![1];
const INF = Number.POSITIVE_INFINITY;

const FB_THIN: ByWidth = [[4, 1.5], [5, 1.4], [6, 1.3], [8, 1.2], [10, 1.1], [12, 1.0], [INF, 0.9]]; // biome-ignore format: one row a table
const FB_4IN: ByWidth = [[4, 1.5], [5, 1.4], [6, 1.3], [8, 1.3], [10, 1.2], [12, 1.1], [INF, 1.0]]; // biome-ignore format: one row a table
const FC: ByWidth = [[4, 1.15], [6, 1.1], [8, 1.05], [12, 1.0], [INF, 0.9]]; // biome-ignore format: one row a table

/**
 * Size factor of dimension lumber other than Southern Pine, by nominal thickness and width (in). Stud grade wider than
 * 6 in. takes the No. 3 values with the factors of the `graded` group. NDS Supplement 2018 Table 4A.
 */
export function CF4A(
  value: DesignValue,
  group: SizeFactorGroup,
  nominalThickness: number,
  nominalWidth: number,
  rec?: Recorder,
): number {
  const factor = sizeFactor4A(value, group, nominalThickness, nominalWidth);
  if (value === 'Fb' || value === 'Ft' || value === 'Fc') {
    rec?.step({
      symbol: 'CF',
      meaning: `size factor on ${value}`,
      formula: 'Table 4A size factors',
      substituted: `${nominalThickness} in. thick, ${nominalWidth} in. wide`,
      value: factor,
      unit: '',
      clause: 'NDS Supplement 2018 Table 4A',
    });
  }
  return factor;
}

function sizeFactor4A(value: DesignValue, group: SizeFactorGroup, thickness: number, width: number): number {
  if (value !== 'Fb' && value !== 'Ft' && value !== 'Fc') return 1;
  if (group === 'construction-standard') return 1;
  if (group === 'utility') return value === 'Fc' ? (width <= 3 ? 0.6 : 1) : width <= 3 ? 0.4 : 1;
  if (group === 'stud' && width <= 6) return width <= 4 ? (value === 'Fc' ? 1.05 : 1.1) : 1;
  if (value === 'Fc') return pick(FC, width);
  return pick(value === 'Fb' && thickness >= 4 ? FB_4IN : FB_THIN, width);
}

/**
 * Size factor of Southern Pine dimension lumber, whose table already counts the width up to 12 in.: Fb × 1.1 for 4 in.
 * thick and 8 in. or wider; Fb, Ft and Fc × 0.9 wider than 12 in. NDS Supplement 2018 Table 4B (recalled).
 */
export function CF4B(value: DesignValue, nominalThickness: number, nominalWidth: number): number {
  if (value !== 'Fb' && value !== 'Ft' && value !== 'Fc') return 1;
  const wide = nominalWidth > 12 ? 0.9 : 1;
  return value === 'Fb' && nominalThickness >= 4 && nominalWidth >= 8 ? wide * 1.1 : wide;
}

/**
 * Size factor on Fb of timbers: (12/d)^(1/9) deeper than 12 in., d dressed, loaded on the narrow face.
 * NDS Supplement 2018 Table 4D.
 */
export function CF4D(d: number, rec?: Recorder): number {
  const value = d > 12 ? (12 / d) ** (1 / 9) : 1;
  rec?.step({
    symbol: 'CF',
    meaning: 'size factor on Fb',
    formula: d > 12 ? '(12/d)^(1/9)' : '1.0 for d ≤ 12 in',
    substituted: d > 12 ? `(12/${say(d)})^(1/9)` : `d = ${say(d)}`,
    value,
    unit: '',
    clause: 'NDS Supplement 2018 Table 4D',
  });
  return value;
}

/**
 * Flat use factor on Fb of dimension lumber loaded on the wide face. NDS Supplement 2018 Tables 4A and 4B
 * (2 in. and 3 in. read; 4 in. recalled).
 */
export function Cfu4A(nominalThickness: number, nominalWidth: number): number {
  if (nominalThickness >= 4) return nominalWidth <= 4 ? 1 : nominalWidth <= 8 ? 1.05 : 1.1;
  if (nominalWidth <= 3) return 1;
  return nominalWidth <= 5 ? 1.1 : nominalWidth <= 8 ? 1.15 : 1.2;
}

/**
 * Repetitive member factor on Fb: 1.15 for dimension lumber 2 to 4 in. thick, three or more members touching or not
 * more than 24 in. on centre, joined by a floor, roof or other load-distributing element. NDS 2018 4.3.9.
 */
export function CrSawn(nominalThickness: number, members: number, spacing: number, distributing: boolean): number {
  return nominalThickness <= 4 && members >= 3 && spacing <= 24 && distributing ? 1.15 : 1;
}

/**
 * Wet service factor of dimension lumber (moisture content over 19 % for long). `reference` is the reference value
 * times CF, psi: Fb·CF ≤ 1150 and Fc·CF ≤ 750 keep 1.0. NDS Supplement 2018 Tables 4A, 4B.
 */
export function CM4A(value: DesignValue, reference: number, rec?: Recorder): number {
  const factor = wet4A(value, reference);
  rec?.step({
    symbol: 'CM',
    meaning: `wet service factor on ${value}`,
    formula: 'Table 4A wet service factors',
    substituted: value === 'Fb' || value === 'Fc' ? `${value}·CF = ${say(reference)} psi` : 'moisture over 19 %',
    value: factor,
    unit: '',
    clause: 'NDS Supplement 2018 Table 4A',
  });
  return factor;
}

function wet4A(value: DesignValue, reference: number): number {
  switch (value) {
    case 'Fb':
      return reference <= 1150 ? 1 : 0.85;
    case 'Fc':
      return reference <= 750 ? 1 : 0.8;
    case 'Ft':
      return 1;
    case 'Fv':
      return 0.97;
    case 'FcPerp':
      return 0.67;
    default:
      return 0.9;
  }
}

/** Wet service factor of timbers; Southern Pine values already are wet ones. NDS Supplement 2018 Table 4D. */
export function CM4D(value: DesignValue, southernPine: boolean): number {
  if (southernPine) return 1;
  return value === 'FcPerp' ? 0.67 : value === 'Fc' ? 0.91 : 1;
}

/** Incising factor of dimension lumber incised for treatment. NDS 2018 Table 4.3.8. */
export function Ci(value: DesignValue, rec?: Recorder): number {
  const factor = value === 'FcPerp' ? 1 : value === 'E' || value === 'Emin' ? 0.95 : 0.8;
  rec?.step({
    symbol: 'Ci',
    meaning: `incising factor on ${value}`,
    formula: 'Table 4.3.8',
    substituted: 'incised parallel to grain, up to 0.4 in. deep',
    value: factor,
    unit: '',
    clause: 'NDS 2018 Table 4.3.8',
  });
  return factor;
}

/** What must hold a sawn beam against rotation or lateral movement, weakest first. */
export type LateralSupport = 'none' | 'ends' | 'one-edge-and-ends' | 'one-edge-ends-and-bracing-8ft' | 'both-edges';

/**
 * Lateral support that lets CL be 1 without a calculation, from the nominal depth over the nominal breadth.
 * NDS 2018 4.4.1.2.
 */
export function lateralSupportRule(nominalBreadth: number, nominalDepth: number): LateralSupport {
  const ratio = nominalDepth / nominalBreadth;
  if (ratio <= 2) return 'none';
  if (ratio <= 4) return 'ends';
  if (ratio <= 5) return 'one-edge-and-ends';
  return ratio <= 6 ? 'one-edge-ends-and-bracing-8ft' : 'both-edges';
}

/** Where a notch sits, for the rule of 4.4.3. */
export interface Notch {
  readonly place: 'end' | 'outer-third' | 'middle-third';
  readonly edge: 'tension' | 'compression';
  /** Depth of the notch, in. */
  readonly depth: number;
  /** Length along the member, in; does not matter at an end. */
  readonly length: number;
}

/**
 * True when a notch in a sawn bending member d deep and b thick (in) is permitted: at the ends d/4 deep; elsewhere d/6
 * deep and d/3 long in the outer thirds, none in the middle third, and none in the tension edge where b is 3-1/2 in.
 * or more. NDS 2018 4.4.3 (end rule read, the rest recalled).
 */
export function notchPermitted(n: Notch, b: number, d: number): boolean {
  if (n.place === 'end') return n.depth <= d / 4;
  if (n.place === 'middle-third') return false;
  if (n.edge === 'tension' && b >= 3.5) return false;
  return n.depth <= d / 6 && n.length <= d / 3;
}
