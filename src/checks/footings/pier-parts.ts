/** Bars of a pier as its steel names them, and the greatest moment along it. */
import type { Recorder } from '../../base/trace.js';
import type { Footing } from '../../structure/model.js';
import { BAR_AREAS } from '../codes/aci-318-14/index.js';
import type { CheckContext } from '../contract.js';
import { type Actions, momentAt } from './actions.js';
import type { LoadedFooting } from './footing.js';
import { shaftWidth, sidewaysOf } from './sideways.js';

/** `(4) #4 vertical` in the steel as the sheets print it. */
const VERTICAL = /\((\d+)\)\s*#(\d+)\s+vertical/i;

export interface Bars {
  readonly text: string;
  readonly area: number;
  readonly diameter: number;
}

const read = new WeakMap<Footing, Bars | 'none'>();

/** Four bars or more make a ring; fewer are not counted. */
const RING = 4;

function readBars(f: Footing): Bars | undefined {
  const m = VERTICAL.exec(f.steel);
  if (!m || Number(m[1]) < RING) return undefined;
  const one = BAR_AREAS[Number(m[2])];
  return one === undefined ? undefined : { text: m[0], area: Number(m[1]) * one, diameter: Number(m[2]) / 8 };
}

export function verticalBars(f: Footing): Bars | undefined {
  let bars = read.get(f);
  if (!bars) {
    bars = readBars(f) ?? 'none';
    read.set(f, bars);
  }
  return bars === 'none' ? undefined : bars;
}

function momentStep(a: Actions, up: number, where: string, value: number, rec?: Recorder): void {
  if (value > 0)
    rec?.step({
      symbol: 'Mu',
      meaning: `moment at ${where}, u above the underside`,
      formula: '√((Mx + u·Vy)² + (My − u·Vx)²)',
      substituted: `√((${a.Mx.toFixed(0)} + ${up.toFixed(1)} · ${a.Vy.toFixed(2)})² + (${a.My.toFixed(0)} − ${up.toFixed(1)} · ${a.Vx.toFixed(2)})²)`,
      value,
      unit: 'lb·in',
      clause: 'statics',
    });
}

/** At the top of the pier or of the pad, or where the soil beside the shaft has taken the whole side force. */
export function pierMoment(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): number {
  const { footing } = on;
  const side = sidewaysOf(ctx, on);
  const height = footing.top - footing.bottom;
  const atTop = momentAt(a, height);
  if (side.by !== 'soil') {
    const atPad = momentAt(a, footing.padThickness);
    if (atTop > atPad) momentStep(a, height, 'the top of the pier', atTop, rec);
    else momentStep(a, footing.padThickness, 'the top of the pad', atPad, rec);
    return Math.max(atTop, atPad);
  }
  const Mg = momentAt(a, side.depth);
  const lateral = ctx.project.basis.soil.lateral.value;
  const z0 = Math.min(12 * Math.sqrt((2 * a.V) / (lateral * (shaftWidth(footing) / 12))), side.depth);
  const below = Mg + (2 / 3) * a.V * z0;
  if (atTop > below) {
    momentStep(a, height, 'the top of the pier', atTop, rec);
    return atTop;
  }
  momentStep(a, side.depth, 'the ground surface (Mg)', Mg, rec);
  rec?.step({
    symbol: 'z0',
    meaning:
      'depth at which soil at its allowable lateral bearing has taken the side force (V = S·b·z0²/2), at most the depth',
    formula: '12·√(2·V/(S·b))',
    substituted: `12 · √(2 · ${a.V.toFixed(1)}/(${lateral} · ${(shaftWidth(footing) / 12).toFixed(3)})), d = ${side.depth.toFixed(1)}`,
    value: z0,
    unit: 'in',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'Mu',
    meaning: 'greatest moment in the shaft, there',
    formula: 'Mg + (2/3)·V·z0',
    substituted: `${Mg.toFixed(0)} + 2/3 · ${a.V.toFixed(1)} · ${z0.toFixed(2)}`,
    value: below,
    unit: 'lb·in',
    clause: 'statics',
  });
  return below;
}
