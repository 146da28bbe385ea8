/**
 * Posts: slenderness, compression with an off-centre load, bearing at the ends, tension. Ends are pinned (a standoff base
 * and a wood joint hold no moment), so le = l, unless the posts hold the side load (post-ends.ts). NDS 2018 3.6 to 3.10,
 * 15.4.
 */

import { distinctCombinations } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import { membersOf } from '../../structure/lookup.js';
import type { Member } from '../../structure/model.js';
import {
  axialStress,
  CL,
  CP,
  columnSlenderness,
  eccentricCompression,
  effectiveLength,
  FbE,
  FcE,
  Kf,
  needsBearingPlate,
  RB,
  SLENDERNESS_LIMIT,
} from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Subject } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope } from '../finding.js';
import { type Raise, raised, raiseToStatics } from '../hand.js';
import { plyFastening } from '../plies/ply-fastening.js';
import { bucklingC, designValue, WET_REFUSED } from './design.js';
import { postEnds, recordEnds } from './post-ends.js';
import { combineInto, extreme, sizeText } from './scan.js';
import { NO_LIMIT } from './stability.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

/** Distance of the load off the centre of the post, as a share of its size; the worse of the two directions governs. */
export const ECCENTRICITY = 1 / 6;

const subjects = (ctx: CheckContext): readonly Subject[] => memberSubjects(ctx, 'post');

const raiseOf = (ctx: CheckContext, m: Member): Raise =>
  raiseToStatics(ctx, (about) => about.endsWith(` on ${m.id}`) || about.endsWith(` under ${m.id}`));

interface Axial {
  readonly on: Loaded;
  readonly combination: Combination;
  /** Compression or tension, lb, positive. */
  readonly P: number;
  readonly station: number;
}

/** Worst axial force of one sign for a measure that may weigh each combination by its CD. */
function worstAxial(
  ctx: CheckContext,
  loaded: readonly Loaded[],
  sign: 1 | -1,
  measure: (on: Loaded, combination: Combination, P: number) => number,
): Axial | undefined {
  let worst: Axial | undefined;
  let most = 0;
  for (const on of loaded) {
    const n = new Float64Array(on.effects.stations.length);
    for (const combination of distinctCombinations(on.effects, ctx.loads.combinations)) {
      combineInto(n, on.effects.n, combination);
      const station = extreme(n, sign);
      if (station < 0) continue;
      const P = sign * n[station]!;
      const x = measure(on, combination, P);
      if (x > most) {
        most = x;
        worst = { on, combination, P, station };
      }
    }
  }
  return worst;
}

function recordP(ctx: CheckContext, { on, combination, P, station }: Axial, word: string, rec?: Recorder): void {
  const s = on.member.section;
  rec?.heading(`${on.member.id}: ${s.label}, ${combination.id}`);
  rec?.step({
    symbol: word === 'tension' ? 'T' : 'P',
    meaning: `greatest ${word} in the post, from the frame`,
    formula: combination.label,
    substituted: sizeText(ctx, combination, (c) => on.effects.n[c]![station]!),
    value: P,
    unit: 'lb',
    clause: combination.clause,
    from: [on.member.path],
  });
}

export const postSlenderness: Check = {
  id: 'post-slenderness',
  title: 'Post slenderness',
  subjects,
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.7.1.4';
    const m = membersOf(ctx.structure, subject.id).find((q) => q.role === 'post');
    if (!m) return notApplicable(clause, 'no such post');
    const { b, d } = m.section;
    const ends = postEnds(ctx, m);
    const { one, two } = ends;
    const first = (one.Ke * one.l) / d >= (two.Ke * two.l) / b;
    recordEnds(ends, rec);
    return measured(
      {
        demand: first ? columnSlenderness(one.Ke, one.l, d, rec) : columnSlenderness(two.Ke, two.l, b, rec),
        capacity: SLENDERNESS_LIMIT,
        unit: '',
        clause,
        formula: 'le/d / 50',
        remedy: `${m.id} is too slender: use a thicker post.`,
      },
      rec,
    );
  },
};

/** Values of one post for one load duration, psi. */
export interface Column {
  readonly FcAdj: number;
  readonly Fb: number;
  readonly FcE1: number;
  readonly FcE2: number;
  /** Lateral buckling limit for bending about the strong axis. */
  readonly FbE: number;
}

export function column(ctx: CheckContext, m: Member, CD: number, rec?: Recorder): Column | undefined {
  const s = m.section;
  const ends = postEnds(ctx, m);
  const { one, two } = ends;
  const Emin = designValue('Emin', s, {}, rec);
  const FcStar = designValue('Fc', s, { CD }, rec);
  const span = Math.max(one.l, two.l);
  const FbStar = designValue('Fb', s, { CD, span });
  if (Emin === undefined || FcStar === undefined || FbStar === undefined) return undefined;
  const lateral =
    s.d > s.b ? FbE(Emin, RB(effectiveLength('equal-end-moments', span, s.d, rec), s.b, s.d, rec), rec) : NO_LIMIT;
  const Fb = designValue('Fb', s, { CD, span, ...(s.d > s.b ? { CL: CL(lateral, FbStar, rec) } : {}) }, rec)!;
  recordEnds(ends, rec);
  const slender1 = columnSlenderness(one.Ke, one.l, s.d, rec);
  const FcE1 = FcE(Emin, slender1, rec);
  const alike = s.b === s.d && one.Ke === two.Ke && one.l === two.l;
  const FcE2 = alike ? FcE1 : FcE(Emin, columnSlenderness(two.Ke, two.l, s.b, rec), rec);
  const cp =
    s.plies > 1
      ? Math.min(
          CP(FcE1, FcStar, bucklingC(s), 1, rec),
          // Plies slip on each other where the post bends across them.
          CP(FcE2, FcStar, bucklingC(s), Kf('nailed', true, rec), rec),
        )
      : CP(Math.min(FcE1, FcE2), FcStar, bucklingC(s), 1, rec);
  const FcAdj = designValue('Fc', s, { CD, CP: cp }, rec);
  return FcAdj === undefined
    ? undefined
    : {
        FcAdj,
        Fb,
        FcE1,
        // The moment grows by the same slip as the buckling load falls.
        FcE2: s.plies > 1 ? FcE2 * Kf('nailed', true) : FcE2,
        FbE: lateral,
      };
}

/**
 * The greater of fc/Fc' (3.7.1) and the interaction with the load off centre by a sixth of the size (15.4), worse of the two
 * directions.
 */
function offCentre(m: Member, c: Column, fc: number, rec?: Recorder): number {
  const k = 6 * ECCENTRICITY;
  const input = {
    fc,
    fb1: 0,
    fb2: 0,
    FcAdj: c.FcAdj,
    Fb1Adj: c.Fb,
    Fb2Adj: c.Fb,
    FcE1: c.FcE1,
    FcE2: c.FcE2,
    FbE: c.FbE,
  };
  const one = eccentricCompression(input, k, 0).ratio;
  const two = eccentricCompression(input, 0, k).ratio;
  const first = one >= two;
  rec?.step({
    symbol: 'e',
    meaning: 'load off the centre of the post',
    formula: first ? 'd / 6' : 'b / 6',
    substituted: `${first ? m.section.d : m.section.b} / 6`,
    value: (first ? m.section.d : m.section.b) * ECCENTRICITY,
    unit: 'in',
    clause: 'common practice, no source',
    note: 'stands for a beam that does not bear truly on the middle of its post',
  });
  return eccentricCompression(input, first ? k : 0, first ? 0 : k, rec).ratio;
}

export const postStability: Check = {
  id: 'post-stability',
  title: 'Post in compression',
  subjects,
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.7.1, 15.4';
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(clause);
    const first = loaded[0]!.member;
    if (first.section.plies > 1) {
      const joined = plyFastening.run({ id: first.mark, path: first.section.path }, ctx);
      if (joined.status === 'outside-scope') return joined;
      if (joined.status !== 'pass')
        return notEvaluated(
          'NDS 2018 15.3',
          `The plies of ${first.id} are not joined as the rules ask. ${joined.note}`,
        );
    }
    const known = new Map<number, Column>();
    let refused = false;
    const worst = worstAxial(ctx, loaded, -1, (on, combination, P) => {
      let c = known.get(combination.CD);
      if (!c) {
        c = column(ctx, on.member, combination.CD);
        if (!c) {
          refused = true;
          return 0;
        }
        known.set(combination.CD, c);
      }
      return offCentre(on.member, c, P / (on.member.section.b * on.member.section.d));
    });
    if (refused) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    if (!worst) return notApplicable(clause, 'no combination compresses this post');
    const { member } = worst.on;
    recordP(ctx, worst, 'compression', rec);
    const P = raised(worst.P, 'P', 'lb', raiseOf(ctx, member), rec);
    const fc = axialStress('fc', P, member.section.b * member.section.d, rec);
    const c = column(ctx, member, worst.combination.CD, rec)!;
    return measured(
      {
        demand: fc,
        capacity: c.FcAdj,
        unit: 'psi',
        combination: worst.combination.id,
        clause,
        formula: "the greatest of fc/Fc', Eq. 15.4-1 and 15.4-2 ≤ 1",
        ratio: offCentre(member, c, fc, rec),
        remedy: `${member.id} is overloaded: use a thicker or stronger post, or another post nearby.`,
      },
      rec,
    );
  },
};

export const postBearing: Check = {
  id: 'post-bearing',
  title: 'Post end bearing',
  subjects,
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.10.1';
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(clause);
    const worst = worstAxial(
      ctx,
      loaded,
      -1,
      (on, combination, P) => P / combination.CD / (on.member.section.b * on.member.section.d),
    );
    if (!worst) return notApplicable(clause, 'no combination compresses this post');
    const { member } = worst.on;
    recordP(ctx, worst, 'compression', rec);
    const P = raised(worst.P, 'P', 'lb', raiseOf(ctx, member), rec);
    const fc = axialStress('fc', P, member.section.b * member.section.d, rec);
    const FcStar = designValue('Fc', member.section, { CD: worst.combination.CD }, rec);
    if (FcStar === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    return measured(
      {
        demand: fc,
        capacity: FcStar,
        unit: 'psi',
        combination: worst.combination.id,
        clause,
        formula: 'fc / Fc*',
        ...(needsBearingPlate(fc, FcStar)
          ? { note: 'a steel plate is needed between the post end and what it bears on' }
          : {}),
        remedy: `${member.id} crushes at its end: use a thicker or stronger post.`,
      },
      rec,
    );
  },
};

export const postTension: Check = {
  id: 'post-tension',
  title: 'Post in uplift',
  subjects,
  run(subject, ctx, rec) {
    const clause = 'NDS 2018 3.8.1';
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(clause);
    const worst = worstAxial(
      ctx,
      loaded,
      1,
      (on, combination, P) => P / combination.CD / (on.member.section.b * on.member.section.d),
    );
    if (!worst) return notApplicable(clause, 'no combination lifts this post');
    const { member } = worst.on;
    recordP(ctx, worst, 'tension', rec);
    const ft = axialStress('ft', worst.P, member.section.b * member.section.d, rec);
    const Ft = designValue('Ft', member.section, { CD: worst.combination.CD }, rec);
    if (Ft === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    return measured(
      {
        demand: ft,
        capacity: Ft,
        unit: 'psi',
        combination: worst.combination.id,
        clause,
        formula: "ft / Ft'",
        note: 'gross section: bolt holes are taken off with the joint’s own design',
        remedy: `${member.id} is overloaded in tension: use a thicker or stronger post.`,
      },
      rec,
    );
  },
};
