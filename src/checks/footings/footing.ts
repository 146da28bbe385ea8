/** Footings as subjects, their weights, and what presses on them. Pounds and inches. */

import type { FootingForces } from '../../analysis/model.js';
import type { Recorder } from '../../base/trace.js';
import { CONCRETE_PCF } from '../../catalog/index.js';
import type { Footing } from '../../structure/model.js';
import { weightOf } from '../codes/statics/index.js';
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

/** Volume of concrete as a reader would work it out; from the placed footing where it is no plain pad and pier. */
function volumeText(f: Footing): string {
  if (f.embedded) return `${f.concrete.toFixed(0)} in³, the hole less the post`;
  const pad = f.padThickness > 0 && !f.round ? [`${f.size}² · ${f.padThickness}`] : [];
  const height = f.top - f.bottom - f.padThickness;
  const pier = f.pierDiameter > 0 ? [`π/4 · ${f.pierDiameter}² · ${Number(height.toFixed(2))}`] : [];
  return [...pad, ...pier].join(' + ');
}

/** The weights as steps: concrete, soil over the pad, and the soil that the concrete displaces. */
export function recordWeights(ctx: CheckContext, f: Footing, rec?: Recorder): void {
  if (!rec) return;
  const w = footingWeights(ctx, f);
  const { density } = ctx.project.basis.soil;
  const soil = { unit: 'lb', clause: 'statics', from: [f.path, '/basis/soil/density'] } as const;
  rec.step({
    symbol: 'Wc',
    meaning: `weight of the concrete at ${CONCRETE_PCF} pcf`,
    formula: `volume/1728 · ${CONCRETE_PCF}`,
    substituted: `(${volumeText(f)})/1728 · ${CONCRETE_PCF}`,
    value: w.concrete,
    unit: 'lb',
    clause: 'statics',
    from: [f.path],
  });
  if (w.soilOver > 0)
    rec.step({
      symbol: 'Ws',
      meaning: 'weight of the soil straight over the pad, up to the grade beside it',
      formula: 'volume/1728 · density',
      substituted: `${((w.soilOver / density) * 1728).toFixed(0)}/1728 · ${density}`,
      value: w.soilOver,
      ...soil,
    });
  rec.step({
    symbol: 'Wd',
    meaning: 'weight of the soil displaced by concrete in the ground',
    formula: 'volume/1728 · density',
    substituted: `${(((w.concrete - w.net) / density) * 1728).toFixed(0)}/1728 · ${density}`,
    value: w.concrete - w.net,
    ...soil,
  });
}
