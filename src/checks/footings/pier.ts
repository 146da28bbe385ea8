/** Piers as plain concrete under axial load and moment, their bars under uplift, and the bearing of the post base. ACI 318-14. */
import type { Recorder } from '../../base/trace.js';
import type { Footing } from '../../structure/model.js';
import {
  BAR_AREAS,
  barTension,
  circleModulus,
  equivalentSquare,
  leastPedestalSteel,
  PEDESTAL_SLENDERNESS,
  plainAxial,
  plainBearing,
  plainCompressionFace,
  plainOneWayShear,
  plainTensionFace,
} from '../codes/aci-318-14/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, outsideScope, ratioOf } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { type Actions, actionsUnder, groundBeside, momentAt, NO_FORCE, NO_MOMENT, recordActions } from './actions.js';
import { footingSubjects, type LoadedFooting, loadedFootings } from './footing.js';
import { shaftWidth, sidewaysOf } from './sideways.js';

const CLAUSE = 'ACI 318-14 14.5';

/** `(4) #4 vertical` in the steel as the sheets print it. */
const VERTICAL = /\((\d+)\)\s*#(\d+)\s+vertical/i;

interface Bars {
  readonly text: string;
  readonly area: number;
}

const read = new WeakMap<Footing, Bars | 'none'>();

function verticalBars(f: Footing): Bars | undefined {
  let bars = read.get(f);
  if (!bars) {
    bars = readBars(f) ?? 'none';
    read.set(f, bars);
  }
  return bars === 'none' ? undefined : bars;
}

function readBars(f: Footing): Bars | undefined {
  const m = VERTICAL.exec(f.steel);
  const one = m ? BAR_AREAS[Number(m[2])] : undefined;
  return m && one !== undefined ? { text: m[0], area: Number(m[1]) * one } : undefined;
}

/** Greatest moment in the pier: at the pad's top, or where the soil beside it has taken the whole side force. */
function pierMoment(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): number {
  const { footing } = on;
  const side = sidewaysOf(ctx, on);
  if (side.by !== 'soil') {
    const M = momentAt(a, footing.padThickness);
    if (M > 0)
      rec?.step({
        symbol: 'Mu',
        meaning: 'moment at the top of the pad, t above the underside',
        formula: '√((Mx + t·Vy)² + (My − t·Vx)²)',
        substituted: `√((${a.Mx.toFixed(0)} + ${footing.padThickness} · ${a.Vy.toFixed(1)})² + (${a.My.toFixed(0)} − ${footing.padThickness} · ${a.Vx.toFixed(1)})²)`,
        value: M,
        unit: 'lb·in',
        clause: 'statics',
      });
    return M;
  }
  const Mg = momentAt(a, side.depth);
  const lateral = ctx.project.basis.soil.lateral.value;
  const z0 = Math.min(12 * Math.sqrt((2 * a.V) / (lateral * (shaftWidth(footing) / 12))), side.depth);
  const M = Mg + (2 / 3) * a.V * z0;
  rec?.step({
    symbol: 'z0',
    meaning:
      'depth at which soil at its allowable lateral bearing has taken the side force (V = S·b·z0²/2), at most the depth',
    formula: '12·√(2·V/(S·b))',
    substituted: `12 · √(2 · ${a.V.toFixed(0)}/(${lateral} · ${(shaftWidth(footing) / 12).toFixed(3)})), d = ${side.depth.toFixed(1)}`,
    value: z0,
    unit: 'in',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'Mu',
    meaning: 'greatest moment in the shaft, there',
    formula: 'Mg + (2/3)·V·z0',
    substituted: `${Mg.toFixed(0)} + 2/3 · ${a.V.toFixed(0)} · ${z0.toFixed(2)}`,
    value: M,
    unit: 'lb·in',
    clause: 'statics',
  });
  return M;
}

interface Asked {
  readonly on: LoadedFooting;
  readonly a: Actions;
  readonly what:
    | 'height'
    | 'shear'
    | 'tension edge'
    | 'compression edge'
    | 'bars'
    | 'least steel'
    | 'tension and bending';
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
}

/** Every limit of one pier under one combination. */
function asked(ctx: CheckContext, on: LoadedFooting, a: Actions, rec?: Recorder): readonly Asked[] {
  const { footing } = on;
  const D = footing.pierDiameter;
  const Ag = (Math.PI / 4) * D * D;
  const Sm = circleModulus(D);
  const free = Math.max(0, footing.top - groundBeside(ctx, footing));
  const height = footing.top - footing.bottom - footing.padThickness;
  const of = (what: Asked['what'], demand: number, capacity: number, unit: string): Asked => ({
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
    meaning: `pier above the ground, at most ${PEDESTAL_SLENDERNESS} times its diameter where plain`,
    formula: 'z(top) − z(ground)',
    substituted: `limit ${PEDESTAL_SLENDERNESS} · ${D}`,
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
  if (a.P < -NO_FORCE) {
    if (Mu >= NO_MOMENT) return [...out, of('tension and bending', Mu, 0, 'lb·in')];
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
    const As = bars?.area ?? 0;
    return [
      ...out,
      of('bars', -a.P, barTension(As, rec), 'lb'),
      of('least steel', leastPedestalSteel(Ag, rec), As, 'in²'),
    ];
  }
  if (Mu >= NO_MOMENT)
    out.push(of('tension edge', plainTensionFace(footing.fc, Ag, Sm, Math.max(0, a.P), Mu, rec), 1, ''));
  const axial = plainAxial(footing.fc, Ag, height, D, rec);
  if (a.P > 0 || Mu > 0)
    out.push(of('compression edge', plainCompressionFace(footing.fc, Sm, axial, a.P, Mu, rec), 1, ''));
  return out;
}

const REMEDY: Readonly<Record<Asked['what'], string>> = {
  shear: 'it would shear through as plain concrete: make it wider',
  height: 'it stands too far out of the ground for plain concrete: make it wider or lower',
  'tension edge': 'it would crack as plain concrete: make it wider, or have it designed as a reinforced column',
  'compression edge': 'it is too slight for its load: make it wider',
  bars: 'wind lifts it, and plain concrete may not hang: name vertical bars, as "(4) #5 vertical", in its steel',
  'least steel':
    'the wind lifts it, so that its vertical bars must be 0.005 of its area at least: use more or larger bars',
  'tension and bending': '',
};

export const pierStrength: Check = {
  id: 'pier-strength',
  title: 'Pier concrete and bars',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let worst: Asked | undefined;
    for (const on of loaded) {
      // Where the post itself runs down, it carries; the concrete round it is backfill.
      if (on.footing.pierDiameter <= 0 || on.footing.embedded) continue;
      for (const a of actionsUnder(ctx, on, ctx.loads.strength)) {
        for (const x of asked(ctx, on, a)) {
          if (!worst || ratioOf(x.demand, x.capacity) > ratioOf(worst.demand, worst.capacity)) worst = x;
        }
      }
    }
    if (!worst) return notApplicable(CLAUSE, 'no pier carries this post');
    const { on, a, what } = worst;
    if (what === 'tension and bending')
      return outsideScope(
        CLAUSE,
        `${on.footing.id} is lifted and bent at once under ${a.combination.id}: a reinforced pier for that needs a licensed professional.`,
      );
    rec?.heading(`${on.footing.id}: pier ${on.footing.pierDiameter} in, ${what}, ${a.combination.id}`);
    recordActions(ctx, on, a, rec);
    asked(ctx, on, a, rec);
    return measured(
      {
        demand: worst.demand,
        capacity: worst.capacity,
        unit: worst.unit,
        combination: a.combination.id,
        clause: what === 'least steel' ? 'ACI 318-14 10.6.1.1, 16.3.4.1' : CLAUSE,
        formula: `${what}: demand / limit`,
        remedy: `Pier of ${on.footing.id}: ${REMEDY[what]}.`,
      },
      rec,
    );
  },
};

export const baseBearing: Check = {
  id: 'base-bearing',
  title: 'Post base on concrete',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const clause = 'ACI 318-14 14.5.6.1';
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(clause);
    let worst: { on: LoadedFooting; a: Actions; A1: number; A2: number; ratio: number } | undefined;
    for (const on of loaded) {
      const { footing } = on;
      // A post that stands on bare soil in its hole bears on no concrete.
      if (footing.embedded && footing.embedded.foot <= footing.bottom) continue;
      const joint = ctx.structure.joints.find((j) => j.ties.some((t) => t.part === footing.id));
      const post = joint && ctx.structure.members.find((m) => joint.ties.some((t) => t.part === m.id));
      if (!post) continue;
      const A1 = post.section.b * post.section.d;
      // The same shape, larger, that still fits on top: in a circle by its diagonal, in a square by its longer side.
      const scale =
        footing.pierDiameter > 0
          ? footing.pierDiameter / Math.hypot(post.section.b, post.section.d)
          : footing.size / Math.max(post.section.b, post.section.d);
      const A2 = A1 * Math.max(1, scale) ** 2;
      for (const a of actionsUnder(ctx, on, ctx.loads.strength)) {
        const ratio = ratioOf(a.P, plainBearing(footing.fc, A1, A2));
        if (!worst || ratio > worst.ratio) worst = { on, a, A1, A2, ratio };
      }
    }
    if (!worst) return notApplicable(clause, 'no post stands on concrete here');
    const { on, a, A1, A2 } = worst;
    rec?.heading(`${on.footing.id}: foot of the post on the concrete, ${a.combination.id}`);
    recordActions(ctx, on, a, rec);
    rec?.step({
      symbol: 'A1',
      meaning: `section of the post; A2 = ${A2.toFixed(1)} in² is the same shape as large as fits on the concrete`,
      formula: 'b·d',
      substituted: A1.toFixed(2),
      value: A1,
      unit: 'in²',
      clause: 'ACI 318-14 14.5.6.1',
    });
    return measured(
      {
        demand: Math.max(0, a.P),
        capacity: plainBearing(on.footing.fc, A1, A2, rec),
        unit: 'lb',
        combination: a.combination.id,
        clause,
        formula: 'Pu / φBn',
        remedy: `The post crushes the concrete of ${on.footing.id}: use stronger concrete or a larger post.`,
      },
      rec,
    );
  },
};
