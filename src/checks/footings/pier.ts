/** Piers as plain concrete under axial load and moment, their bars under uplift, and the bearing of the post base. ACI 318-14. */
import type { Recorder } from '../../base/trace.js';
import {
  BAR_YIELD,
  barTension,
  circleModulus,
  EARTH_COVER,
  equivalentSquare,
  hookShare,
  leastPedestalSteel,
  PEDESTAL_SLENDERNESS,
  pierBending,
  plainAxial,
  plainCompressionFace,
  plainOneWayShear,
  plainTensionFace,
  tensionWithBending,
} from '../codes/aci-318-14/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, outsideScope, ratioOf } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, groundBeside, NO_FORCE, NO_MOMENT, recordActions } from './actions.js';
import { footingSubjects, type LoadedFooting, loadedFootings } from './footing.js';
import { pierMoment, verticalBars } from './pier-parts.js';

const CLAUSE = 'ACI 318-14 14.5';

type What =
  | 'height'
  | 'shear'
  | 'tension edge'
  | 'compression edge'
  | 'bars in bending'
  | 'bars'
  | 'least steel'
  | 'too many bars';

interface Asked {
  readonly on: LoadedFooting;
  readonly a: Actions;
  readonly what: What;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
}

/** Share of f'c·Ag under which axial load only helps a pier in bending, and is left out. */
const SMALL_AXIAL = 0.1;

/** What the bars must hold where plain concrete may not: pull, or a moment past its cracking, or both. */
function barsAsked(on: LoadedFooting, a: Actions, Mu: number, rec?: Recorder): readonly Asked[] {
  const { footing } = on;
  const { fc, pierDiameter: D } = footing;
  const Ag = (Math.PI / 4) * D * D;
  const of = (what: What, demand: number, capacity: number, unit: string): Asked => ({
    on,
    a,
    what,
    demand,
    capacity,
    unit,
  });
  const bars = verticalBars(footing);
  rec?.step({
    symbol: 'As',
    meaning: bars
      ? `vertical bars: ${bars.text}`
      : 'vertical bars: none named, as "(4) #5 vertical", in the steel of this footing',
    formula: 'number · area of one',
    substituted: footing.steel === '' ? 'none' : footing.steel,
    value: bars?.area ?? 0,
    unit: 'in²',
    clause: 'ASTM A615',
    from: [footing.path],
  });
  const T = Math.max(0, -a.P);
  if (!bars) return [of('bars', Math.max(T, Mu), 0, T > 0 ? 'lb' : 'lb·in')];
  // Hooks stand in the pad; in a pier without one the bars run its whole depth.
  const share = footing.padThickness > 0 ? hookShare(fc, bars.diameter, footing.padThickness - EARTH_COVER, rec) : 1;
  const stress = share * BAR_YIELD;
  const least = of('least steel', leastPedestalSteel(Ag, rec), bars.area, 'in²');
  const tension = barTension(bars.area, stress, rec);
  if (Mu < NO_MOMENT) return [of('bars', T, tension, 'lb'), least];
  const bending = pierBending(fc, D, bars.area, bars.diameter, stress, rec);
  if (bending === undefined || a.P > SMALL_AXIAL * fc * Ag) return [of('too many bars', 1, 0, '')];
  return [of('bars in bending', tensionWithBending(T, Mu, tension, bending, rec), 1, ''), least];
}

/** Every limit of one pier under one combination. */
function asked(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): readonly Asked[] {
  const { footing } = on;
  const D = footing.pierDiameter;
  const Ag = (Math.PI / 4) * D * D;
  const Sm = circleModulus(D);
  const free = Math.max(0, footing.top - groundBeside(ctx, footing));
  const height = footing.top - footing.bottom - footing.padThickness;
  const of = (what: What, demand: number, capacity: number, unit: string): Asked => ({
    on,
    a,
    what,
    demand,
    capacity,
    unit,
  });
  const out: Asked[] = [];
  rec?.step({
    symbol: 'free',
    meaning: `pier above the ground, at most ${PEDESTAL_SLENDERNESS} times its diameter`,
    formula: 'z(top) − z(ground)',
    substituted: `${footing.top.toFixed(1)} − ${groundBeside(ctx, footing).toFixed(1)}, limit ${PEDESTAL_SLENDERNESS} · ${D}`,
    value: free,
    unit: 'in',
    clause: 'ACI 318-14 14.3.3.1',
  });
  if (free > 0) out.push(of('height', free, PEDESTAL_SLENDERNESS * D, 'in'));
  const Mu = pierMoment(ctx, on, a, rec);
  if (a.V >= NO_FORCE) {
    const side = equivalentSquare(D);
    out.push(of('shear', a.V, plainOneWayShear(footing.fc, side, side, 1, rec), 'lb'));
  }
  if (a.P < -NO_FORCE) return [...out, ...barsAsked(on, a, Mu, rec)];
  if (Mu >= NO_MOMENT) {
    const edge = plainTensionFace(footing.fc, Ag, Sm, Math.max(0, a.P), Mu, rec);
    if (edge > 1 && verticalBars(footing)) out.push(...barsAsked(on, a, Mu, rec));
    else out.push(of('tension edge', edge, 1, ''));
  }
  const axial = plainAxial(footing.fc, Ag, height, D, rec);
  if (a.P > 0 || Mu > 0)
    out.push(of('compression edge', plainCompressionFace(footing.fc, Sm, axial, a.P, Mu, rec), 1, ''));
  return out;
}

const REMEDY: Readonly<Record<What, string>> = {
  shear: 'it would shear through as plain concrete: make it wider',
  height: 'it stands too far out of the ground: make it wider or lower',
  'tension edge':
    'it would crack as plain concrete: make it wider, or name vertical bars, as "(4) #5 vertical", in its steel',
  'compression edge': 'it is too slight for its load: make it wider',
  'bars in bending':
    'its bars are too weak for moment and pull together: more or larger bars, a wider pier or a thicker pad',
  bars: 'wind lifts it, and plain concrete may not hang: name vertical bars, as "(4) #5 vertical", in its steel, or larger ones',
  'least steel':
    'plain concrete alone does not do, so that its vertical bars must be 0.005 of its area at least: use more or larger bars',
  'too many bars': '',
};

type Side = 'bars' | 'concrete' | 'height';

/** What bars hold where plain concrete may not, what the concrete holds, and what no load changes. */
const SIDE: Readonly<Record<What, Side>> = {
  height: 'height',
  shear: 'concrete',
  'tension edge': 'concrete',
  'compression edge': 'concrete',
  'bars in bending': 'bars',
  bars: 'bars',
  'least steel': 'bars',
  'too many bars': 'bars',
};

const worse = (x: Asked, known: Asked | undefined): Asked =>
  known && ratioOf(x.demand, x.capacity) <= ratioOf(known.demand, known.capacity) ? known : x;

/** One pier under one combination, as steps. */
function recordPier(ctx: CheckContext, { on, a, what }: Asked, rec?: Recorder): void {
  if (!rec) return;
  rec.heading(`${on.footing.id}: pier ${on.footing.pierDiameter} in, ${what}, ${a.combination.id}`);
  recordActions(ctx, on, a, rec);
  asked(ctx, on, a, rec);
}

export const pierStrength: Check = {
  id: 'pier-strength',
  title: 'Pier concrete and bars',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    // Pull on the bars and the strength of the concrete each have a combination of their own.
    const worst: { [side in Side]?: Asked } = {};
    let least: Asked | undefined;
    for (const on of loaded) {
      // Where the post itself runs down, it carries; the concrete round it is backfill.
      if (on.footing.pierDiameter <= 0 || on.footing.embedded) continue;
      for (const a of actionsUnder(ctx, on, ctx.loads.strength)) {
        for (const x of asked(ctx, on, a)) {
          if (x.what === 'least steel') least = worse(x, least);
          else worst[SIDE[x.what]] = worse(x, worst[SIDE[x.what]]);
        }
      }
    }
    const { bars, concrete, height } = worst;
    if (!bars && !concrete && !height) return notApplicable(CLAUSE, 'no pier carries this post');
    // The least steel is one and the same under every pull: the combination that pulls hardest stands for it.
    const steel = bars && least && { ...least, on: bars.on, a: bars.a };
    const governs = [steel, bars, concrete, height].reduce((w, x) => (x ? worse(x, w) : w), undefined)!;
    const other = { bars: concrete, concrete: bars, height: undefined }[SIDE[governs.what]];
    const { on, a, what } = governs;
    if (what === 'too many bars')
      return outsideScope(
        CLAUSE,
        `The pier of ${on.footing.id} is too slight for its bars or its load under ${a.combination.id}: make it wider, or have it designed by a licensed professional.`,
      );
    if (other && other.a !== a) recordPier(ctx, other, rec);
    recordPier(ctx, governs, rec);
    return measured(
      {
        demand: governs.demand,
        capacity: governs.capacity,
        unit: governs.unit,
        combination: a.combination.id,
        clause: what === 'least steel' ? 'ACI 318-14 10.6.1.1, 16.3.4.1' : CLAUSE,
        formula: `${what}: demand / limit`,
        remedy: `Pier of ${on.footing.id}: ${REMEDY[what]}.`,
      },
      rec,
    );
  },
};
