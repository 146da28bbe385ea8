/** Footings that take side force and moment through their base: tipping over and sliding. IBC 2018 1806, ASCE 7-16 2.4.1. */
import type { Recorder } from '../../base/trace.js';
import { facePressure, slidingCohesion, slidingFriction } from '../codes/ibc-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, ratioOf } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, groundBeside, NO_FORCE, NO_MOMENT, recordActions, sourced } from './actions.js';
import { footingSubjects, footingWeights, type LoadedFooting, loadedFootings, recordWeights } from './footing.js';
import { sidewaysOf } from './sideways.js';

interface Answer {
  readonly demand: number;
  readonly capacity: number;
}

interface Worst extends Answer {
  readonly on: LoadedFooting;
  readonly a: Actions;
}

type Ask = (ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder) => Answer | undefined;

/** Worst combination over the footings of a mark whose base takes the side force; else why there is none. */
function worstOf(ctx: CheckContext, mark: string, clause: string, ask: Ask): Worst | Finding {
  const loaded = loadedFootings(ctx, mark);
  if (!loaded) return noForces(clause);
  let worst: Worst | undefined;
  let soil = false;
  for (const on of loaded) {
    const side = sidewaysOf(ctx, on);
    soil ||= side.by === 'soil';
    if (side.by !== 'base' || on.footing.onSlab) continue;
    for (const a of actionsUnder(ctx, on, ctx.loads.combinations)) {
      const x = ask(ctx, on, a);
      if (x && (!worst || ratioOf(x.demand, x.capacity) > ratioOf(worst.demand, worst.capacity)))
        worst = { ...x, on, a };
    }
  }
  if (worst) return worst;
  const why = soil
    ? 'the soil beside the shaft takes side force and moment, see the depth'
    : 'nothing pushes this footing sideways';
  return notApplicable(clause, why);
}

/** Whole load on the base with the dead factor of the combination on concrete and soil over it. */
function onBase(ctx: CheckContext, { footing }: LoadedFooting, a: Actions, rec?: Recorder): number {
  recordWeights(ctx, footing, rec);
  const w = footingWeights(ctx, footing);
  const N = a.P + a.dead * (w.concrete + w.soilOver);
  rec?.step({
    symbol: 'N',
    meaning: 'load on the soil: post, and concrete and soil over it with the dead factor',
    formula: 'P + γ·(Wc + Ws)',
    substituted: `${a.P.toFixed(0)} + ${a.dead} · (${w.concrete.toFixed(0)} + ${w.soilOver.toFixed(0)})`,
    value: N,
    unit: 'lb',
    clause: a.combination.clause,
    from: [footing.path],
  });
  return N;
}

/** Dead load that rubs on the soil: no more than what presses at all in this combination. */
function deadOn(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): number {
  const N = onBase(ctx, on, a, rec);
  const D = Math.min(N, N - a.P + a.Pd);
  rec?.step({
    symbol: 'D',
    meaning: 'dead load of that, less what the wind lifts off',
    formula: 'min(N, N − P + dead part of P)',
    substituted: `min(${N.toFixed(0)}, ${N.toFixed(0)} − ${a.P.toFixed(0)} + ${a.Pd.toFixed(0)})`,
    value: D,
    unit: 'lb',
    clause: 'IBC 2018 1806.3.2',
  });
  return D;
}

const tipping: Ask = (ctx, on, a, rec) => {
  const { footing } = on;
  // A square base turns over an edge, one axis at a time; a round one over its rim.
  const M = footing.round ? Math.hypot(a.Mx, a.My) : Math.max(Math.abs(a.Mx), Math.abs(a.My));
  if (M < NO_MOMENT) return undefined;
  const N = onBase(ctx, on, a, rec);
  const capacity = (Math.max(N, 0) * footing.size) / 2;
  rec?.step({
    symbol: 'Mo',
    meaning: 'moment that tips it',
    formula: footing.round ? '√(Mx² + My²)' : 'max(|Mx|, |My|)',
    substituted: `Mx = ${a.Mx.toFixed(0)}, My = ${a.My.toFixed(0)}`,
    value: M,
    unit: 'lb·in',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'Mr',
    meaning: 'moment of the weight about the edge of the base; nothing else is counted',
    formula: 'N·B/2',
    substituted: `${Math.max(N, 0).toFixed(0)} · ${say(footing.size)}/2`,
    value: capacity,
    unit: 'lb·in',
    clause: 'statics',
  });
  return { demand: M, capacity };
};

/** Friction or cohesion the user gave with a source, and the soil in front of pad and pier. */
const sliding: Ask = (ctx, on, a, rec) => {
  const { footing } = on;
  if (a.V < NO_FORCE) return undefined;
  rec?.step({
    symbol: 'V',
    meaning: 'side force',
    formula: '√(Vx² + Vy²)',
    substituted: `√(${Math.abs(a.Vx).toFixed(1)}² + ${Math.abs(a.Vy).toFixed(1)}²)`,
    value: a.V,
    unit: 'lb',
    clause: 'statics',
  });
  const { friction, cohesion, lateral } = ctx.project.basis.soil;
  const N = Math.max(0, deadOn(ctx, on, a, rec));
  const mu = sourced(friction);
  const cu = sourced(cohesion);
  // A soil has the one or the other (Table 1806.2); of two given, the lesser is counted.
  const rubs = mu === undefined ? undefined : slidingFriction(mu, N);
  const clings = cu === undefined ? undefined : slidingCohesion(cu, footing.bearingArea, N);
  let base = 0;
  if (rubs !== undefined && (clings === undefined || rubs <= clings)) base = slidingFriction(mu!, N, rec);
  else if (clings !== undefined) base = slidingCohesion(cu!, footing.bearingArea, N, rec);
  const ground = groundBeside(ctx, footing);
  const depth = ground - footing.bottom;
  const padTop = Math.max(depth - footing.padThickness, 0);
  const pad = facePressure(lateral.value, footing.size, padTop, depth, rec);
  const pier =
    footing.pierDiameter > 0 && padTop > 0 ? facePressure(lateral.value, footing.pierDiameter, 0, padTop, rec) : 0;
  const capacity = base + pad + pier;
  rec?.step({
    symbol: 'R',
    meaning: base > 0 ? 'base and faces together' : 'faces only: no friction or cohesion is given with a source',
    formula: 'Rs + Rp',
    substituted: `${base.toFixed(0)} + ${pad.toFixed(0)} + ${pier.toFixed(0)}`,
    value: capacity,
    unit: 'lb',
    clause: 'IBC 2018 1806.3.1',
    from: [lateral.path],
  });
  return { demand: a.V, capacity };
};

const check = (
  id: string,
  title: string,
  clause: string,
  unit: string,
  formula: string,
  ask: Ask,
  remedy: (id: string) => string,
): Check => ({
  id,
  title,
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const worst = worstOf(ctx, subject.id, clause, ask);
    if (!('on' in worst)) return worst;
    const { on, a } = worst;
    rec?.heading(
      `${on.footing.id}: ${on.footing.size} in ${on.footing.round ? 'round' : 'square'}, ${a.combination.id}`,
    );
    recordActions(ctx, on, a, rec);
    ask(ctx, on, a, rec);
    return measured(
      {
        demand: worst.demand,
        capacity: worst.capacity,
        unit,
        combination: a.combination.id,
        clause,
        formula,
        remedy: remedy(on.footing.id),
      },
      rec,
    );
  },
});

export const footingOverturning = check(
  'footing-overturning',
  'Footing tipping over',
  'ASCE 7-16 2.4.1',
  'lb·in',
  'Mo / Mr',
  tipping,
  (id) =>
    `${id} would tip over: make its base wider or heavier, or its pier deep and wide enough to stand by the soil.`,
);

export const footingSliding = check(
  'footing-sliding',
  'Footing sliding',
  'IBC 2018 1806.3',
  'lb',
  'V / R',
  sliding,
  (id) =>
    `${id} would slide: set it deeper, make it wider, or give the friction or cohesion of the soil with its source under basis.soil.`,
);
