/**
 * The ledger between its fasteners: each bay as a simple span under rafters standing where they hurt most, since nobody
 * knows where the studs are; the end beyond the first place as a cantilever. Bending down and outward together, and shear
 * where it hangs on its fasteners. NDS 2018 3.3, 3.4.3.3, 3.9.2.
 */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { Member } from '../../structure/model.js';
import { fb, VrConnection } from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, RATIO_CAP, ratioOf } from '../finding.js';
import { designValue, WET_REFUSED } from '../members/design.js';
import { sumText } from '../members/scan.js';
import { stabilityFactor } from '../members/stability.js';
import { bayMoment, bayShear, endBayShear, tipMoment, tipShear } from './bay.js';
import { type HousePlace, housePlaces } from './places.js';
import { sideDemand } from './side.js';

const CLAUSE = 'NDS 2018 3.9.2, 3.4.3.3';

interface Layout {
  /** Bay, rafter spacing, end past the first place, inches. */
  readonly s: number;
  readonly r: number;
  readonly a: number;
  /** Depth from the ledger's top to the lowest fastener, and from its bottom to the highest. */
  readonly deDown: number;
  readonly deUp: number;
}

const rafterJoints = (ctx: CheckContext, place: HousePlace) =>
  ctx.structure.joints.filter((j) => j.kind === 'rafter-to-ledger' && j.ties.at(-1)?.part === place.member.id);

function layout(ctx: CheckContext, place: HousePlace): Layout | undefined {
  const f = place.ledger?.fastening;
  if (!f) return undefined;
  const at = rafterJoints(ctx, place)
    .map((j) => j.ties.at(-1)!.along)
    .sort((p, q) => p - q);
  let r = Number.POSITIVE_INFINITY;
  for (let i = 1; i < at.length; i++) if (at[i]! - at[i - 1]! > 1) r = Math.min(r, at[i]! - at[i - 1]!);
  const places = place.joints.map((j) => j.ties[0]!.along).sort((p, q) => p - q);
  let s = 0;
  for (let i = 1; i < places.length; i++) s = Math.max(s, places[i]! - places[i - 1]!);
  const depth = place.member.section.depth;
  return {
    s: Math.max(s, f.spacing),
    r: Number.isFinite(r) ? r : 1e6,
    a: places[0] ?? 0,
    deDown: f.rows[f.rows.length - 1]!,
    deUp: depth - f.rows[0]!,
  };
}

/** Values at one load duration, psi; FbE is the buckling limit of the edge that is less held. */
interface Strengths {
  readonly Fb1: number;
  readonly Fb2: number;
  readonly Fv: number;
  readonly FbE: number;
}

function strengths(member: Member, CD: number, rec?: Recorder): Strengths | undefined {
  const { section } = member;
  const star = designValue('Fb', section, { CD });
  if (star === undefined) return undefined;
  // Either edge may be the compressed one over a fastener or between two.
  const top = stabilityFactor(member, true, star);
  const low = stabilityFactor(member, false, star);
  if (!top || !low) return undefined;
  const governs = top.CL <= low.CL;
  stabilityFactor(member, governs, star, rec);
  const { CL, FbE } = governs ? top : low;
  const Fb1 = designValue('Fb', section, { CD, CL }, rec);
  const Fb2 = designValue('Fb', { ...section, values: { ...section.values, Fb: section.values.FbY } }, { CD }, rec);
  const Fv = designValue('Fv', section, { CD }, rec);
  return Fb1 === undefined || Fb2 === undefined || Fv === undefined ? undefined : { Fb1, Fb2, Fv, FbE };
}

interface Answer {
  readonly combination: Combination;
  readonly joint: string;
  /** Rafter on the ledger, lb: down positive, and out from the wall. */
  readonly R: number;
  readonly O: number;
  readonly at: Strengths;
  /** Side load in O. */
  readonly more: number;
  readonly bending: number;
  readonly shear: number;
}

interface Assessed {
  readonly lever: number;
  readonly M: number;
  readonly My: number;
  readonly V: number;
  readonly bending: number;
  readonly shear: number;
}

/** Numbers of the layout that no load changes. */
const levers = (lay: Layout) => ({
  bay: bayMoment(lay.r, lay.s),
  tip: tipMoment(lay.r, lay.a),
  v: Math.max(bayShear(lay.r, lay.s), tipShear(lay.r, lay.a), endBayShear(lay.r, lay.s, lay.a)),
});

/** Ratios under one rafter load R (down positive) and pull outward O, lb. */
function assess(
  place: HousePlace,
  lay: Layout,
  lever: number,
  v: number,
  R: number,
  O: number,
  k: Strengths,
): Assessed {
  const { section } = place.member;
  const M = Math.abs(R) * lever + (section.weight * lay.s * lay.s) / 8;
  const My = Math.max(0, O) * lever;
  const V = Math.abs(R) * v + (section.weight * lay.s) / 2;
  const fb1 = (6 * M) / (section.b * section.d * section.d);
  const fb2 = (6 * My) / (section.d * section.b * section.b);
  const room = 1 - (fb1 / k.FbE) ** 2;
  const bending = room > 0 ? ratioOf(fb1, k.Fb1) + ratioOf(fb2, k.Fb2 * room) : RATIO_CAP;
  // Taken as near an end everywhere: the first places are, and the others have no more shear.
  const Vr = VrConnection(k.Fv, section.b, section.d, R >= 0 ? lay.deDown : lay.deUp, 0);
  return { lever, M, My, V, bending, shear: ratioOf(V, Vr) };
}

/** The steps of one assessment, and the numbers that the finding prints. */
function explainStrength(place: HousePlace, lay: Layout, w: Answer, rec?: Recorder) {
  const { member } = place;
  const { section } = member;
  const { bay, tip, v } = levers(lay);
  const { R, O } = w;
  const a = assess(place, lay, Math.max(bay, tip), v, R, O, w.at);
  const n = (x: number): string => String(Number(x.toFixed(3)));
  const say = (symbol: string, meaning: string, formula: string, substituted: string, value: number, unit: string) =>
    rec?.step({ symbol, meaning, formula, substituted, value, unit, clause: 'statics', from: [member.path] });
  say(
    'c',
    bay >= tip ? 'bay as a simple span, rafters where they hurt most' : 'end beyond the first place',
    bay >= tip ? (lay.r >= lay.s ? 's/4' : 's²/(8·r) + r/8') : 'Σ distances of rafters from the first place',
    `s = ${n(lay.s)}, r = ${n(lay.r)}, a = ${n(lay.a)}`,
    a.lever,
    'in',
  );
  say(
    'M',
    'moment in the upright plane, own weight with it',
    'R·c + w·s²/8',
    `${n(Math.abs(R))}·${n(a.lever)} + ${n(section.weight)}·${n(lay.s)}²/8`,
    a.M,
    'lb·in',
  );
  say('My', 'moment outward', 'O·c', `${n(Math.max(0, O))}·${n(a.lever)}`, a.My, 'lb·in');
  const k = strengths(member, w.combination.CD, rec) ?? w.at;
  const fb1 = fb(a.M, section.b, section.d, rec);
  const fb2 = fb(a.My, section.d, section.b, rec);
  rec?.step({
    symbol: 'ratio',
    meaning: 'bending about both axes',
    formula: "fb1/Fb1' + fb2/(Fb2'·(1 − (fb1/FbE)²))",
    substituted: `${n(fb1)}/${n(k.Fb1)} + ${n(fb2)}/(${n(k.Fb2)}·(1 − (${n(fb1)}/${n(k.FbE)})²))`,
    value: a.bending,
    unit: '',
    clause: 'NDS 2018 Eq. 3.9-3',
  });
  say(
    'v',
    'rafters counted beside a place: x inside a bay, u beyond the end place, whichever side has most',
    'greatest of Σ(1 − x/s), number beyond the end, Σ(1 − x/s) + 1.268·Σu/s',
    `s = ${n(lay.s)}, r = ${n(lay.r)}, a = ${n(lay.a)}`,
    v,
    '',
  );
  say(
    'V',
    'shear beside a place',
    'R·v + w·s/2',
    `${n(Math.abs(R))}·${n(v)} + ${n(section.weight)}·${n(lay.s)}/2`,
    a.V,
    'lb',
  );
  const Vr = VrConnection(k.Fv, section.b, section.d, R >= 0 ? lay.deDown : lay.deUp, 0, rec);
  return { ...a, Vr, fb1, Fb1: k.Fb1 };
}

function worstOf(ctx: CheckContext, place: HousePlace, lay: Layout): Answer | 'none' | undefined {
  let worst = undefined as Answer | undefined;
  const { x, y } = place.wall.out;
  // Side load reaches the ledger evenly: a rafter takes the share of its spacing.
  const share = Math.min(lay.r, 1e5) / lay.s;
  // Per case and place once; the loop over combinations then only adds.
  const outward = place.joints.map((j) => sideDemand(ctx, j.id).map((f) => share * (f.x * x + f.y * y)));
  const more = ctx.loads.combinations.map((combination) => {
    let most = 0;
    for (const row of outward) {
      let sum = 0;
      for (const t of combination.terms) sum += t.factor * (row[t.case] ?? 0);
      if (sum > most) most = sum;
    }
    return most;
  });
  const byDuration = new Map<number, Strengths>();
  for (const { CD } of ctx.loads.combinations) {
    const at = byDuration.get(CD) ?? strengths(place.member, CD);
    if (!at) return undefined;
    byDuration.set(CD, at);
  }
  const { bay, tip, v } = levers(lay);
  const lever = Math.max(bay, tip);
  for (const joint of rafterJoints(ctx, place)) {
    const force = ctx.effects.joints.get(joint.id)?.force;
    if (!force) return undefined;
    ctx.loads.combinations.forEach((combination, k) => {
      let R = 0;
      let O = more[k]!;
      for (const t of combination.terms) {
        const f = force[t.case]!;
        R -= t.factor * f.z;
        O += t.factor * (f.x * x + f.y * y);
      }
      const at = byDuration.get(combination.CD)!;
      const a = assess(place, lay, lever, v, R, O, at);
      if (!worst || Math.max(a.bending, a.shear) > Math.max(worst.bending, worst.shear))
        worst = { combination, joint: joint.id, R, O, at, more: more[k]!, bending: a.bending, shear: a.shear };
    });
  }
  return worst ?? 'none';
}

export const ledgerStrength: Check = {
  id: 'ledger-strength',
  title: 'Ledger between its fasteners',
  subjects(ctx) {
    const { ledgers } = ctx.project.cover;
    return ledgers.length > 0 ? ledgers.map((l) => ({ id: l.mark, path: l.path })) : [{ id: 'cover', path: '/cover' }];
  },
  run(subject, ctx, rec): Finding {
    const place = housePlaces(ctx).find((p) => p.id === subject.id && p.kind === 'ledger');
    if (!place) return notApplicable(CLAUSE, 'no ledger is fastened to the house');
    const lay = layout(ctx, place);
    if (!lay) return notEvaluated(CLAUSE, `The spacing of ${place.id}'s fasteners is not said. Needed: "fastening".`);
    const worst = worstOf(ctx, place, lay);
    if (worst === undefined)
      return place.member.section.family === 'lvl' && place.member.section.wet
        ? outsideScope('NDS 2018 8.1.4', WET_REFUSED)
        : notEvaluated(CLAUSE, 'no forces were worked out for this ledger, see the frame check');
    if (worst === 'none') return notApplicable(CLAUSE, 'nothing hangs on this ledger');
    rec?.heading(`${place.id}: ${place.member.section.label}, ${worst.joint} under ${worst.combination.id}`);
    const { x, y } = place.wall.out;
    const own = ctx.effects.joints.get(worst.joint)!.force;
    for (const [symbol, meaning, value, of] of [
      [
        'R',
        worst.R >= 0 ? 'rafter down on the ledger' : 'rafter lifting the ledger',
        Math.abs(worst.R),
        (c: number) => -own[c]!.z,
      ],
      [
        'O',
        `rafter pulling the ledger out, and ${worst.more.toFixed(1)} lb of side load`,
        Math.max(0, worst.O),
        (c: number) => own[c]!.x * x + own[c]!.y * y,
      ],
    ] as const)
      rec?.step({
        symbol,
        meaning,
        formula: worst.combination.label,
        substituted: `${sumText(ctx, worst.combination, of)}${symbol === 'O' ? ` + ${worst.more.toFixed(1)}` : ''}`,
        value,
        unit: 'lb',
        clause: worst.combination.clause,
        from: [place.path],
        note: worst.joint,
      });
    const a = explainStrength(place, lay, worst, rec);
    const bends = a.bending >= a.shear;
    return measured(
      {
        demand: bends ? a.fb1 : a.V,
        capacity: bends ? a.Fb1 : a.Vr,
        unit: bends ? 'psi' : 'lb',
        combination: worst.combination.id,
        clause: bends ? 'NDS 2018 3.9.2' : 'NDS 2018 3.4.3.3',
        formula: bends ? 'bending both ways ≤ 1' : "V / Vr'",
        ratio: Math.max(a.bending, a.shear),
        remedy: bends
          ? `${place.id} is overstressed in bending between its fasteners: closer fasteners or a deeper ledger.`
          : `${place.id} is overstressed in shear where it hangs on its fasteners: closer spacing, the lower row nearer its bottom edge, or a deeper ledger.`,
      },
      rec,
    );
  },
};
