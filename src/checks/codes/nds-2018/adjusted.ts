import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import type { DesignValue } from './ch2-adjustment.js';

/** Adjustment factors; one that is absent is 1 and is left out of the product, but not out of the printed formula. */
export interface Factors {
  readonly CD?: number;
  readonly CM?: number;
  readonly Ct?: number;
  readonly CL?: number;
  /** Volume factor; with CL, the lesser of the two counts (glulam; structural composite lumber where CV ≤ 1). */
  readonly CV?: number;
  readonly CF?: number;
  readonly Cfu?: number;
  readonly Ci?: number;
  readonly Cr?: number;
  readonly CP?: number;
  readonly Cb?: number;
  /** Shear reduction factor (glulam). */
  readonly Cvr?: number;
}

/** Materials with their own table of applicable factors. */
export type Material = 'sawn' | 'glulam' | 'scl';
type Factor = keyof Factors;

/** NDS 2018 Tables 4.3.1, 5.3.1 and 8.3.1, allowable-stress columns. */
export const APPLICABLE: Readonly<Record<Material, Readonly<Record<DesignValue, readonly Factor[]>>>> = {
  sawn: {
    Fb: ['CD', 'CM', 'Ct', 'CL', 'CF', 'Cfu', 'Ci', 'Cr'],
    Ft: ['CD', 'CM', 'Ct', 'CF', 'Ci'],
    Fv: ['CD', 'CM', 'Ct', 'Ci'],
    FcPerp: ['CM', 'Ct', 'Ci', 'Cb'],
    Fc: ['CD', 'CM', 'Ct', 'CF', 'Ci', 'CP'],
    E: ['CM', 'Ct', 'Ci'],
    Emin: ['CM', 'Ct', 'Ci'],
  },
  glulam: {
    Fb: ['CD', 'CM', 'Ct', 'CL', 'CV', 'Cfu'],
    Ft: ['CD', 'CM', 'Ct'],
    Fv: ['CD', 'CM', 'Ct', 'Cvr'],
    FcPerp: ['CM', 'Ct', 'Cb'],
    Fc: ['CD', 'CM', 'Ct', 'CP'],
    E: ['CM', 'Ct'],
    Emin: ['CM', 'Ct'],
  },
  scl: {
    Fb: ['CD', 'CM', 'Ct', 'CL', 'CV', 'Cr'],
    Ft: ['CD', 'CM', 'Ct'],
    Fv: ['CD', 'CM', 'Ct'],
    FcPerp: ['CM', 'Ct', 'Cb'],
    Fc: ['CD', 'CM', 'Ct', 'CP'],
    E: ['CM', 'Ct'],
    Emin: ['CM', 'Ct'],
  },
};

const CLAUSE: Readonly<Record<Material, string>> = {
  sawn: 'NDS 2018 Table 4.3.1',
  glulam: 'NDS 2018 Table 5.3.1',
  scl: 'NDS 2018 Table 8.3.1',
};

const MEANING: Readonly<Record<DesignValue, string>> = {
  Fb: 'adjusted bending design value',
  Ft: 'adjusted tension design value',
  Fv: 'adjusted shear design value',
  FcPerp: 'adjusted bearing design value',
  Fc: 'adjusted compression design value',
  E: 'adjusted modulus of elasticity',
  Emin: 'adjusted modulus for stability',
};

const print = (v: DesignValue): string => (v === 'FcPerp' ? 'Fc⊥' : v);

/**
 * CL and CV do not both apply where CV ≤ 1: the factor in the CL place is then the lesser and CV drops out. A CV above
 * 1 (structural composite lumber) multiplies along. NDS 2018 5.3.6, 8.3.6.
 */
function factorOf(name: Factor, f: Factors): number {
  if (name === 'CV') return f.CV !== undefined && f.CV > 1 ? f.CV : 1;
  if (name === 'CL' && f.CV !== undefined && f.CV <= 1) return Math.min(f.CL ?? 1, f.CV);
  return f[name] ?? 1;
}

/** Adjusted design value: the reference value (psi) times every factor its table allows. NDS 2018 4.3.1, 5.3.1, 8.3.1. */
export function adjusted(
  material: Material,
  value: DesignValue,
  reference: number,
  f: Factors,
  rec?: Recorder,
): number {
  const names = APPLICABLE[material][value];
  let result = reference;
  for (let i = 0; i < names.length; i++) result *= factorOf(names[i]!, f);
  rec?.step({
    symbol: `${print(value)}'`,
    meaning: MEANING[value],
    formula: [print(value), ...names.map((n) => (n === 'CL' && f.CV !== undefined && f.CV <= 1 ? 'min(CL,CV)' : n))]
      .filter((n) => !(n === 'CV' && f.CV !== undefined && f.CV <= 1))
      .join('·'),
    substituted: [
      reference,
      ...names.filter((n) => !(n === 'CV' && f.CV !== undefined && f.CV <= 1)).map((n) => factorOf(n, f)),
    ]
      .map(say)
      .join('·'),
    value: result,
    unit: 'psi',
    clause: CLAUSE[material],
  });
  return result;
}

type Adjust = (reference: number, f: Factors, rec?: Recorder) => number;

/** Fb' of sawn lumber: Fb·CD·CM·Ct·CL·CF·Cfu·Ci·Cr, psi. NDS 2018 Table 4.3.1. */
export const adjustedFb: Adjust = (x, f, rec) => adjusted('sawn', 'Fb', x, f, rec);
/** Ft' of sawn lumber: Ft·CD·CM·Ct·CF·Ci, psi. NDS 2018 Table 4.3.1. */
export const adjustedFt: Adjust = (x, f, rec) => adjusted('sawn', 'Ft', x, f, rec);
/** Fv' of sawn lumber: Fv·CD·CM·Ct·Ci, psi. NDS 2018 Table 4.3.1. */
export const adjustedFv: Adjust = (x, f, rec) => adjusted('sawn', 'Fv', x, f, rec);
/** Fc⊥' of sawn lumber: Fc⊥·CM·Ct·Ci·Cb, psi; never CD. NDS 2018 Table 4.3.1. */
export const adjustedFcPerp: Adjust = (x, f, rec) => adjusted('sawn', 'FcPerp', x, f, rec);
/** Fc' of sawn lumber: Fc·CD·CM·Ct·CF·Ci·CP, psi. NDS 2018 Table 4.3.1. */
export const adjustedFc: Adjust = (x, f, rec) => adjusted('sawn', 'Fc', x, f, rec);
/** E' of sawn lumber: E·CM·Ct·Ci, psi. NDS 2018 Table 4.3.1. */
export const adjustedE: Adjust = (x, f, rec) => adjusted('sawn', 'E', x, f, rec);
/** Emin' of sawn lumber: Emin·CM·Ct·Ci, psi. NDS 2018 Table 4.3.1. */
export const adjustedEmin: Adjust = (x, f, rec) => adjusted('sawn', 'Emin', x, f, rec);

/** Factors of a dowel-type connection (NDS 2018 Table 11.3.1, lateral and withdrawal). */
export interface ConnectionFactors {
  readonly CD?: number;
  readonly CM?: number;
  readonly Ct?: number;
  readonly Cg?: number;
  readonly Cdelta?: number;
  readonly Ceg?: number;
  readonly Cdi?: number;
  readonly Ctn?: number;
}

/** Z' of one dowel, lb: Z·CD·CM·Ct·Cg·CΔ·Ceg·Cdi·Ctn. NDS 2018 Table 11.3.1. */
export function adjustedZ(Z: number, f: ConnectionFactors, rec?: Recorder): number {
  const value =
    Z *
    (f.CD ?? 1) *
    (f.CM ?? 1) *
    (f.Ct ?? 1) *
    (f.Cg ?? 1) *
    (f.Cdelta ?? 1) *
    (f.Ceg ?? 1) *
    (f.Cdi ?? 1) *
    (f.Ctn ?? 1);
  rec?.step({
    symbol: "Z'",
    meaning: 'adjusted lateral design value',
    formula: 'Z·CD·CM·Ct·Cg·CΔ·Ceg·Cdi·Ctn',
    substituted: [Z, f.CD, f.CM, f.Ct, f.Cg, f.Cdelta, f.Ceg, f.Cdi, f.Ctn].map((x) => say(x ?? 1)).join('·'),
    value,
    unit: 'lb',
    clause: 'NDS 2018 Table 11.3.1',
  });
  return value;
}

/** W' of one fastener, lb/in: W·CD·CM·Ct·Ceg·Ctn. NDS 2018 Table 11.3.1. */
export function adjustedW(W: number, f: ConnectionFactors, rec?: Recorder): number {
  const value = W * (f.CD ?? 1) * (f.CM ?? 1) * (f.Ct ?? 1) * (f.Ceg ?? 1) * (f.Ctn ?? 1);
  rec?.step({
    symbol: "W'",
    meaning: 'adjusted withdrawal design value',
    formula: 'W·CD·CM·Ct·Ceg·Ctn',
    substituted: [W, f.CD, f.CM, f.Ct, f.Ceg, f.Ctn].map((x) => say(x ?? 1)).join('·'),
    value,
    unit: 'lb/in',
    clause: 'NDS 2018 Table 11.3.1',
  });
  return value;
}
