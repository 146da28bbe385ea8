/** Pressure between footing and soil under one combination. Pounds, inches, psf. */
import type { Recorder } from '../../base/trace.js';
import { rectangularFootingPressure, roundFootingPressure } from '../codes/statics/index.js';
import type { Actions } from './actions.js';
import type { LoadedFooting, Weights } from './footing.js';

export interface Contact {
  /** Whole load on the soil, weights of footing and soil over it included. */
  readonly N: number;
  readonly ex: number;
  readonly ey: number;
  /** Greatest pressure, psf; undefined when the resultant leaves the base. */
  readonly q: number | undefined;
  readonly lifts: boolean;
}

/** Pressure under the base of a footing that takes its moment there; its weights take the dead factor of the combination. */
export function contactUnder({ footing }: LoadedFooting, a: Actions, w: Weights, rec?: Recorder): Contact {
  const N = a.P + a.dead * (w.concrete + w.soilOver);
  rec?.step({
    symbol: 'N',
    meaning: 'load on the soil, weight of the footing and of the soil over it with the dead factor',
    formula: 'P + γ·(Wc + Ws)',
    substituted: `${a.P.toFixed(0)} + ${a.dead} · (${w.concrete.toFixed(0)} + ${w.soilOver.toFixed(0)})`,
    value: N,
    unit: 'lb',
    clause: a.combination.clause,
  });
  if (N <= 0) return { N, ex: 0, ey: 0, q: undefined, lifts: true };
  const ex = Math.abs(a.My) / N;
  const ey = Math.abs(a.Mx) / N;
  const p = footing.round
    ? roundFootingPressure(footing.size, N, Math.hypot(ex, ey), rec)
    : rectangularFootingPressure(footing.size, footing.size, N, ex, ey, rec);
  return { N, ex, ey, q: p?.qMax, lifts: !p || p.contact < 1 };
}

/** Even pressure under a central load of `P` pounds. */
export function evenPressure({ footing }: LoadedFooting, P: number, rec?: Recorder): number {
  // Where the base is the whole outline, its own formula is printed.
  const whole = footing.round ? (Math.PI / 4) * footing.size ** 2 : footing.size ** 2;
  if (Math.abs(whole - footing.bearingArea) <= 1e-6 * whole) {
    const p = footing.round
      ? roundFootingPressure(footing.size, P, 0, rec)
      : rectangularFootingPressure(footing.size, footing.size, P, 0, 0, rec);
    return p?.qMax ?? 0;
  }
  const q = (P / footing.bearingArea) * 144;
  rec?.step({
    symbol: 'qmax',
    meaning: 'soil pressure under the foot',
    formula: 'P/A · 144',
    substituted: `${P.toFixed(0)}/${footing.bearingArea.toFixed(1)} · 144`,
    value: q,
    unit: 'psf',
    clause: 'statics',
  });
  return q;
}
