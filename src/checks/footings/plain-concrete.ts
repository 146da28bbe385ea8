/**
 * The part of the pad that stands out beyond pier or post, as plain concrete under the strength combinations. Bars shown
 * in the pad are not counted on. ACI 318-14 14.5.
 */

import type { Recorder } from '../../base/trace.js';
import { CONCRETE_PCF } from '../../catalog/index.js';
import type { Combination } from '../../loads/model.js';
import { standsOn } from '../../structure/lookup.js';
import type { Footing } from '../../structure/model.js';
import {
  effectiveThickness,
  equivalentSquare,
  type FootingActions,
  plainFlexure,
  plainOneWayShear,
  plainTwoWayShear,
  sectionModulus,
  squareFootingActions,
} from '../codes/aci-318-14/index.js';
import { say } from '../codes/say.js';
import { weightOf } from '../codes/statics/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, recordActions } from './actions.js';
import { contactUnder, evenPressure } from './contact.js';
import { footingSubjects, footingWeights, type LoadedFooting, loadedFootings, recordWeights } from './footing.js';
import { recordCentral, sidewaysOf } from './sideways.js';

const CLAUSE = 'ACI 318-14 14.5';

interface Pad {
  readonly on: LoadedFooting;
  readonly a: Actions;
  readonly tips: boolean;
  readonly combination: Combination;
  readonly qu: number;
  readonly B: number;
  readonly c: number;
  readonly h: number;
}

/** Side of the square that carries the load into the pad: the pier's equal, or the post itself. */
function columnSide(ctx: CheckContext, { footing }: LoadedFooting): number {
  if (footing.pierDiameter > 0) return equivalentSquare(footing.pierDiameter);
  const post = standsOn(ctx.structure, footing.id);
  return post ? Math.min(post.section.width, post.section.depth) : 0;
}

/** Weight of the pad itself and of the soil on it, which bends the pad the other way where the soil lets go. */
const padWeight = (ctx: CheckContext, f: Footing): number =>
  weightOf(f.size ** 2 * f.padThickness, CONCRETE_PCF) + footingWeights(ctx, f).soilOver;

interface Bending {
  readonly qu: number;
  readonly down: boolean;
  readonly tips: boolean;
}

/**
 * Even pressure, psf, that bends the pad at least as hard as the truth: the greatest soil pressure less pad and soil over
 * it, or where the base lifts the weight of pad and soil hanging on the pier.
 */
function bendingUnder(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): Bending {
  const { footing } = on;
  const hangs = a.dead * padWeight(ctx, footing);
  if (sidewaysOf(ctx, on).by !== 'base') {
    // The pad's own weight goes straight into the soil and makes no bending, until the pier lifts it.
    if (a.P >= 0) return { qu: a.P > 0 ? evenPressure(on, a.P, rec) : 0, down: false, tips: false };
    const qu = (Math.min(-a.P, hangs) / footing.bearingArea) * 144;
    rec?.step({
      symbol: 'qu',
      meaning: 'pad and soil hanging on the lifted pier, no more than lifts it',
      formula: 'min(U, γ·W)/A · 144',
      substituted: `min(${(-a.P).toFixed(0)}, ${hangs.toFixed(0)})/${footing.bearingArea.toFixed(0)} · 144`,
      value: qu,
      unit: 'psf',
      clause: 'statics',
    });
    return { qu, down: true, tips: false };
  }
  const w = footingWeights(ctx, footing);
  const c = contactUnder(on, a, w, rec);
  if (c.q === undefined) return { qu: 0, down: false, tips: true };
  const relief = (hangs / footing.bearingArea) * 144;
  const up = c.q - relief;
  const down = c.lifts && relief > up;
  rec?.step({
    symbol: 'qu',
    meaning: down
      ? 'weight on the lifted side'
      : 'greatest pressure less pad and soil over it, taken over the whole pad',
    formula: down ? 'γ·W/A · 144' : 'qmax − γ·W/A · 144',
    substituted: `${down ? '' : `${c.q.toFixed(0)} − `}${hangs.toFixed(0)}/${footing.bearingArea.toFixed(0)} · 144`,
    value: down ? relief : up,
    unit: 'psf',
    clause: 'statics',
  });
  return { qu: down ? relief : Math.max(up, 0), down, tips: false };
}

const found = new WeakMap<CheckContext, Map<string, Pad | undefined>>();

/** Pad of a mark with the pressure that bends it hardest; undefined where nothing stands out. Two checks ask. */
function worstPad(ctx: CheckContext, mark: string, loaded: readonly LoadedFooting[]): Pad | undefined {
  let pads = found.get(ctx);
  if (!pads) {
    pads = new Map();
    found.set(ctx, pads);
  }
  if (!pads.has(mark)) pads.set(mark, searchPad(ctx, loaded));
  return pads.get(mark);
}

function searchPad(ctx: CheckContext, loaded: readonly LoadedFooting[]): Pad | undefined {
  let worst: Pad | undefined;
  for (const on of loaded) {
    const { footing } = on;
    const B = footing.round ? equivalentSquare(footing.size) : footing.size;
    const c = columnSide(ctx, on);
    if (footing.padThickness <= 0 || footing.onSlab || c >= B - 1e-6) continue;
    for (const a of actionsUnder(ctx, on, ctx.loads.strength)) {
      const { qu, tips } = bendingUnder(ctx, on, a);
      if (worst && (worst.tips || (!tips && qu <= worst.qu))) continue;
      worst = { on, a, combination: a.combination, tips, qu, B, c, h: effectiveThickness(footing.padThickness) };
    }
  }
  return worst;
}

/** The resultant leaves the base under a strength combination: no pressure balances it. */
const overturned = (pad: Pad): Finding =>
  failed(
    CLAUSE,
    `${pad.on.footing.id} would tip over under ${pad.combination.id}, before its pad is asked: make its base wider.`,
  );

function record(ctx: CheckContext, pad: Pad, a: FootingActions, rec?: Recorder): void {
  const { footing } = pad.on;
  rec?.heading(`${footing.id}: pad ${footing.size} in, ${footing.padThickness} in thick, ${pad.combination.id}`);
  recordActions(ctx, pad.on, pad.a, rec);
  recordCentral(ctx, pad.on, rec);
  if (sidewaysOf(ctx, pad.on).by === 'base') recordWeights(ctx, footing, rec);
  bendingUnder(ctx, pad.on, pad.a, rec);
  if (footing.pierDiameter > 0)
    rec?.step({
      symbol: 'c',
      meaning: 'side of the square equal to the pier',
      formula: 'D·√π/2',
      substituted: `${say(footing.pierDiameter)} · √π/2`,
      value: pad.c,
      unit: 'in',
      clause: 'ACI 318-14 13.2.7.3',
      from: [footing.path],
    });
  rec?.step({
    symbol: 'h',
    meaning: 'thickness that counts: 2 in against the soil left out',
    formula: 't − 2',
    substituted: `${say(footing.padThickness)} − 2`,
    value: pad.h,
    unit: 'in',
    clause: 'ACI 318-14 14.5.1.7',
    from: [footing.path],
  });
  rec?.step({
    symbol: 'Mu',
    meaning: 'factored moment at the face of the pier or post, bars not counted',
    formula: 'qu·B·((B − c)/2)²/2',
    substituted: `${pad.qu.toFixed(0)}/144 · ${pad.B.toFixed(1)} · ((${pad.B.toFixed(1)} − ${pad.c.toFixed(1)})/2)²/2`,
    value: a.Mu,
    unit: 'lb·in',
    clause: CLAUSE,
  });
}

export const footingFlexure: Check = {
  id: 'footing-flexure',
  title: 'Footing pad in bending',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const pad = worstPad(ctx, subject.id, loaded);
    if (!pad) return notApplicable(CLAUSE, 'no pad stands out beyond the pier or post');
    if (pad.tips) return overturned(pad);
    const a = squareFootingActions(pad.B, pad.c, pad.h, pad.qu);
    record(ctx, pad, a, rec);
    return measured(
      {
        demand: a.Mu,
        capacity: plainFlexure(pad.on.footing.fc, sectionModulus(pad.B, pad.h), 1, rec),
        unit: 'lb·in',
        combination: pad.combination.id,
        clause: 'ACI 318-14 14.5.2.1',
        formula: 'Mu / φMn',
        remedy: `The pad of ${pad.on.footing.id} would crack as plain concrete: make it thicker or its pier wider.`,
      },
      rec,
    );
  },
};

export const footingShear: Check = {
  id: 'footing-shear',
  title: 'Footing pad in shear',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const pad = worstPad(ctx, subject.id, loaded);
    if (!pad) return notApplicable(CLAUSE, 'no pad stands out beyond the pier or post');
    if (pad.tips) return overturned(pad);
    const a = squareFootingActions(pad.B, pad.c, pad.h, pad.qu);
    const { fc } = pad.on.footing;
    record(ctx, pad, a, rec);
    const oneWay = a.Vu1 / Math.max(plainOneWayShear(fc, pad.B, pad.h), 1e-9);
    const twoWay = a.Vu2 / Math.max(plainTwoWayShear(fc, a.bo, pad.h, 1), 1e-9);
    const punching = twoWay >= oneWay;
    rec?.step({
      symbol: 'Vu',
      meaning: punching
        ? 'punching shear half a thickness round the pier or post'
        : 'shear one thickness from the face',
      formula: punching ? 'qu·(B² − (c + h)²)' : 'qu·B·((B − c)/2 − h)',
      substituted: `qu = ${pad.qu.toFixed(0)} psf, B = ${pad.B.toFixed(1)}, c = ${pad.c.toFixed(1)}, h = ${say(pad.h)}`,
      value: punching ? a.Vu2 : a.Vu1,
      unit: 'lb',
      clause: CLAUSE,
    });
    return measured(
      {
        demand: punching ? a.Vu2 : a.Vu1,
        capacity: punching ? plainTwoWayShear(fc, a.bo, pad.h, 1, 1, rec) : plainOneWayShear(fc, pad.B, pad.h, 1, rec),
        unit: 'lb',
        combination: pad.combination.id,
        clause: 'ACI 318-14 14.5.5.1',
        formula: 'Vu / φVn',
        remedy: `The pad of ${pad.on.footing.id} would shear through as plain concrete: make it thicker.`,
      },
      rec,
    );
  },
};
