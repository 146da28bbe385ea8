/** Footings as subjects, their weights, and what presses on them. Pounds and inches. */

import { combineVector } from '../../analysis/index.js';
import type { FootingForces } from '../../analysis/model.js';
import type { Recorder } from '../../base/trace.js';
import { CONCRETE_PCF } from '../../catalog/index.js';
import type { Combination } from '../../loads/model.js';
import type { Footing } from '../../structure/model.js';
import {
  type FootingPressure,
  rectangularFootingPressure,
  roundFootingPressure,
  weightOf,
} from '../codes/statics/index.js';
import type { CheckContext, Subject } from '../contract.js';

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

export function footingWeights(ctx: CheckContext, f: Footing): Weights {
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

/** Soil pressure under one combination, with `extra` pounds at the middle; undefined when the footing would tip or lift. */
export function pressureUnder(
  { footing, forces }: LoadedFooting,
  combination: Combination,
  extra: number,
  rec?: Recorder,
): FootingPressure | undefined {
  const F = combineVector(forces.force, combination);
  const M = combineVector(forces.moment, combination);
  const P = F.z + extra;
  if (P <= 0) return undefined;
  const ex = M.y / P;
  const ey = M.x / P;
  return footing.round
    ? roundFootingPressure(footing.size, P, Math.hypot(ex, ey), rec)
    : rectangularFootingPressure(footing.size, footing.size, P, ex, ey, rec);
}
