/** Footings as subjects, their weights, and what presses on them. Pounds and inches. */

import type { FootingForces } from '../../analysis/model.js';
import { contains } from '../../base/plane.js';
import type { Recorder } from '../../base/trace.js';
import { CONCRETE_PCF } from '../../catalog/index.js';
import { footingsOf } from '../../structure/lookup.js';
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
  for (const footing of footingsOf(ctx.structure, mark)) {
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

/** z where soil begins under and beside a footing: the grade, the surface there, or the underside of a slab through which it comes up, the lowest. */
export function soilTop(ctx: CheckContext, f: Footing): number {
  const { grade, slabs } = ctx.structure;
  const z = (p: { readonly z0: number; readonly gx: number; readonly gy: number }): number =>
    p.z0 + p.gx * f.at.x + p.gy * f.at.y;
  const under = slabs
    .filter((s) => s.state !== 'removed' && contains(s.outline, f.at))
    .map((s) => z(s.top) - s.thickness);
  return Math.min(f.surface, z(grade), ...under);
}

/** z on which the soil over a footing stands: the top of its pad, or the plug under a post in tamped soil. */
const soilBottom = (f: Footing): number =>
  f.embedded && !f.embedded.cast ? f.embedded.foot : f.bottom + f.padThickness;

/** Height of concrete that stands out of the soil, in the air or in a slab, in. */
const outOfSoil = (ctx: CheckContext, f: Footing): number => Math.max(f.top - soilTop(ctx, f), 0);

/** Volume of that concrete, the part of a pad that lies bare included, in³. */
function volumeOut(ctx: CheckContext, f: Footing): number {
  const bare = f.padThickness > 0 ? Math.max(f.bottom + f.padThickness - soilTop(ctx, f), 0) : 0;
  return outOfSoil(ctx, f) * shaft(f) + bare * (f.bearingArea - shaft(f));
}

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
  const displaced = weightOf(Math.max(f.concrete - volumeOut(ctx, f), 0), density);
  // The placed volume reaches up to the surface; a slab there and what is over the grade are not counted.
  const cover = f.surface - soilBottom(f);
  const standing = cover > 0 ? f.soilOver * (Math.max(0, soilTop(ctx, f) - soilBottom(f)) / cover) : 0;
  return { concrete, soilOver: weightOf(standing, density), net: Math.max(concrete - displaced, 0) };
}

const short = (n: number): number => Number(n.toFixed(2));

/** Concrete up to `top` as a reader would work it out; from the placed footing where it is no plain pad and pier. */
function volumeText(f: Footing, top: number): string {
  if (f.embedded || (f.round && f.pierDiameter <= 0)) {
    const out = f.top - top;
    const whole = `${f.concrete.toFixed(0)} in³${f.embedded ? ', the hole less the post' : ''}`;
    return out > 0 ? `${whole} − ${shaft(f).toFixed(1)} · ${short(out)}` : whole;
  }
  const padTop = f.bottom + f.padThickness;
  const pad = f.padThickness > 0 && !f.round ? [`${f.size}² · ${short(Math.min(padTop, top) - f.bottom)}`] : [];
  const pier = f.pierDiameter > 0 && top > padTop ? [`π/4 · ${f.pierDiameter}² · ${short(top - padTop)}`] : [];
  return [...pad, ...pier].join(' + ');
}

/** The soil over a footing, height last. */
function soilOverText(ctx: CheckContext, f: Footing, volume: number): string {
  const height = short(soilTop(ctx, f) - soilBottom(f));
  if (f.embedded || f.round) return `${volume.toFixed(0)}`;
  return `(${f.size}² − π/4 · ${f.pierDiameter}²) · ${height}`;
}

/** The weights as steps: concrete, soil over the pad, and the soil that the concrete displaces. */
export function recordWeights(ctx: CheckContext, f: Footing, rec?: Recorder): void {
  if (!rec) return;
  const w = footingWeights(ctx, f);
  const { density } = ctx.project.basis.soil;
  const soil = { unit: 'lb', clause: 'statics', from: [f.path, '/basis/soil/density'] } as const;
  const top = Math.min(f.top, soilTop(ctx, f));
  const out = outOfSoil(ctx, f);
  rec.step({
    symbol: 'Wc',
    meaning: `weight of the concrete at ${CONCRETE_PCF} pcf`,
    formula: `volume/1728 · ${CONCRETE_PCF}`,
    substituted: `(${volumeText(f, f.top)})/1728 · ${CONCRETE_PCF}`,
    value: w.concrete,
    unit: 'lb',
    clause: 'statics',
    from: [f.path],
  });
  if (w.soilOver > 0)
    rec.step({
      symbol: 'Ws',
      meaning: `weight of the soil straight over the pad, ${short(soilTop(ctx, f) - soilBottom(f))} in high: up to the grade beside it or the underside of the slab`,
      formula: 'volume/1728 · density',
      substituted: `${soilOverText(ctx, f, (w.soilOver / density) * 1728)}/1728 · ${density}`,
      value: w.soilOver,
      ...soil,
    });
  rec.step({
    symbol: 'Wd',
    meaning: `weight of the soil displaced by concrete, up to the same height${out > 0.005 ? `: the top ${short(out)} in, in the slab or the air, displaces none` : ''}`,
    formula: 'volume/1728 · density',
    substituted: `(${volumeText(f, top)})/1728 · ${density}`,
    value: w.concrete - w.net,
    ...soil,
  });
}
