/** Footings as subjects, their weights, and what presses on them. Pounds and inches. */

import type { FootingForces } from '../../analysis/model.js';
import type { Recorder } from '../../base/trace.js';
import { CONCRETE_PCF } from '../../catalog/index.js';
import type { Footing } from '../../structure/model.js';
import { rectangularFootingPressure, roundFootingPressure, weightOf } from '../codes/statics/index.js';
import type { CheckContext, Subject } from '../contract.js';
import type { Actions } from './actions.js';

export const footingSubjects = (ctx: CheckContext): readonly Subject[] => {
  const seen = new Map<string, Subject>();
  for (const f of ctx.structure.footings) if (!seen.has(f.mark)) seen.set(f.mark, { id: f.mark, path: f.path });
  return [...seen.values()];
};

export interface LoadedFooting {
  readonly footing: Footing;
  readonly forces: FootingForces;
}

/** Footings of a mark with their forces; undefined when one has none. */
export function loadedFootings(ctx: CheckContext, mark: string): readonly LoadedFooting[] | undefined {
  const out: LoadedFooting[] = [];
  for (const footing of ctx.structure.footings) {
    if (footing.mark !== mark) continue;
    const forces = ctx.effects.footings.get(footing.id);
    if (!forces) return undefined;
    out.push({ footing, forces });
  }
  return out.length > 0 ? out : undefined;
}

export interface Weights {
  readonly concrete: number;
  readonly soilOver: number;
  /** Concrete less the soil it displaces: what the footing adds to what the ground already carried. */
  readonly net: number;
}

/** Section of what reaches the surface: the pier, or the pad itself where there is none. */
const shaft = (f: Footing): number => (f.pierDiameter > 0 ? (Math.PI / 4) * f.pierDiameter ** 2 : f.bearingArea);

const weighed = new WeakMap<CheckContext, Map<Footing, Weights>>();

export function footingWeights(ctx: CheckContext, f: Footing): Weights {
  let known = weighed.get(ctx);
  if (!known) {
    known = new Map();
    weighed.set(ctx, known);
  }
  let w = known.get(f);
  if (!w) {
    w = weigh(ctx, f);
    known.set(f, w);
  }
  return w;
}

function weigh(ctx: CheckContext, f: Footing): Weights {
  const density = ctx.project.basis.soil.density;
  const concrete = weightOf(f.concrete, CONCRETE_PCF);
  const above = Math.max(f.top - f.surface, 0) * shaft(f);
  const displaced = weightOf(Math.max(f.concrete - above, 0), density);
  // Soil stands on the pad up to the grade beside it; a slab higher than that and what is under it are not counted.
  const { grade } = ctx.structure;
  const cover = f.surface - f.bottom - f.padThickness;
  const missing = Math.max(0, f.surface - (grade.z0 + grade.gx * f.at.x + grade.gy * f.at.y));
  const standing = cover > 0 ? f.soilOver * Math.max(0, 1 - missing / cover) : 0;
  return { concrete, soilOver: weightOf(standing, density), net: Math.max(concrete - displaced, 0) };
}

export interface Contact {
  /** Whole load on the soil, weights of footing and soil over it included. */
  readonly N: number;
  readonly ex: number;
  readonly ey: number;
  /** Greatest pressure, psf; undefined when the resultant leaves the base. */
  readonly q: number | undefined;
  readonly lifts: boolean;
}

/** Pressure under the base of a footing that takes its moment there, `weights` with the dead factor of the combination. */
export function contactUnder({ footing }: LoadedFooting, a: Actions, weight: number, rec?: Recorder): Contact {
  const N = a.P + a.dead * weight;
  rec?.step({
    symbol: 'N',
    meaning: 'load on the soil, weight of the footing and of the soil over it with the dead factor',
    formula: 'P + γ·W',
    substituted: `${a.P.toFixed(0)} + ${a.dead} · ${weight.toFixed(0)}`,
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
