/**
 * The part of the pad that stands out beyond pier or post, as plain concrete under the strength combinations. Bars shown
 * in the pad are not counted on. ACI 318-14 14.5.
 */
import { combineVector } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
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
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { footingSubjects, type LoadedFooting, loadedFootings, pressureUnder } from './footing.js';

const CLAUSE = 'ACI 318-14 14.5';

interface Pad {
  readonly on: LoadedFooting;
  readonly combination: Combination;
  readonly qu: number;
  readonly B: number;
  readonly c: number;
  readonly h: number;
}

/** Side of the square that carries the load into the pad: the pier's equal, or the post itself. */
function columnSide(ctx: CheckContext, { footing }: LoadedFooting): number {
  if (footing.pierDiameter > 0) return equivalentSquare(footing.pierDiameter);
  const joint = ctx.structure.joints.find((j) => j.ties.some((t) => t.part === footing.id));
  const post = joint && ctx.structure.members.find((m) => joint.ties.some((t) => t.part === m.id));
  return post ? Math.min(post.section.width, post.section.depth) : 0;
}

/** Pad with its greatest factored pressure; undefined where nothing stands out. Its own weight makes no bending. */
function worstPad(ctx: CheckContext, loaded: readonly LoadedFooting[]): Pad | undefined {
  let worst: Pad | undefined;
  for (const on of loaded) {
    const { footing } = on;
    const B = footing.round ? equivalentSquare(footing.size) : footing.size;
    const c = columnSide(ctx, on);
    if (footing.padThickness <= 0 || c >= B - 1e-6) continue;
    for (const combination of ctx.loads.strength) {
      if (combineVector(on.forces.force, combination).z <= 0) continue;
      const p = pressureUnder(on, combination, 0);
      // A load outside the base is the soil check's failure; the pad then sees all of it on a strip: taken as tipping there.
      if (!p || (worst && p.qMax <= worst.qu)) continue;
      worst = { on, combination, qu: p.qMax, B, c, h: effectiveThickness(footing.padThickness) };
    }
  }
  return worst;
}

function record(pad: Pad, a: FootingActions, rec?: Recorder): void {
  const { footing } = pad.on;
  rec?.heading(`${footing.id}: pad ${footing.size} in, ${footing.padThickness} in thick, ${pad.combination.id}`);
  pressureUnder(pad.on, pad.combination, 0, rec);
  rec?.step({
    symbol: 'h',
    meaning: 'thickness that counts: 2 in against the soil left out',
    formula: 't − 2',
    substituted: `${footing.padThickness} − 2`,
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
    const pad = worstPad(ctx, loaded);
    if (!pad) return notApplicable(CLAUSE, 'no pad stands out beyond the pier or post');
    const a = squareFootingActions(pad.B, pad.c, pad.h, pad.qu);
    record(pad, a, rec);
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
    const pad = worstPad(ctx, loaded);
    if (!pad) return notApplicable(CLAUSE, 'no pad stands out beyond the pier or post');
    const a = squareFootingActions(pad.B, pad.c, pad.h, pad.qu);
    const { fc } = pad.on.footing;
    record(pad, a, rec);
    const oneWay = a.Vu1 / Math.max(plainOneWayShear(fc, pad.B, pad.h), 1e-9);
    const twoWay = a.Vu2 / Math.max(plainTwoWayShear(fc, a.bo, pad.h, 1), 1e-9);
    const punching = twoWay >= oneWay;
    rec?.step({
      symbol: 'Vu',
      meaning: punching
        ? 'punching shear half a thickness round the pier or post'
        : 'shear one thickness from the face',
      formula: punching ? 'qu·(B² − (c + h)²)' : 'qu·B·((B − c)/2 − h)',
      substituted: `qu = ${pad.qu.toFixed(0)} psf, B = ${pad.B.toFixed(1)}, c = ${pad.c.toFixed(1)}, h = ${pad.h}`,
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
