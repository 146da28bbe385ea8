/**
 * What the preliminary frame says about the assumed chords and webs. Information for the order only: it never stands for
 * the sealed design, so it neither blocks a set nor clears one. Plates are not looked at.
 */
import { type BarForces, CHORD_STATIONS, type TrussEffects } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import {
  axialStress,
  bendingCompression,
  bendingTension,
  CP,
  columnSlenderness,
  FcE,
  fb,
} from '../codes/nds-2018/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notEvaluated, RATIO_CAP } from '../finding.js';
import { bucklingC, designValue } from '../members/design.js';
import { combineInto } from '../members/scan.js';
import { NO_LIMIT } from '../members/stability.js';
import { ofMark, trussMarks } from './subjects.js';

const CLAUSE = 'NDS 2018 3.9';

interface Bar {
  readonly truss: TrussEffects;
  readonly set: 'one bearing slides' | 'both held';
  readonly bar: number;
  readonly combination: Combination;
  readonly N: number;
  readonly M: number;
  readonly ratio: number;
}

const lengthOf = (t: TrussEffects, bar: number): number => t.model.frame.lengths[bar]!;

interface Limits {
  readonly Fb: number;
  readonly Ft: number;
  readonly FcAdj: number;
  readonly FcE1: number;
  readonly FcE2: number;
}

/**
 * Adjusted values of one bar, psi. Buckling in the truss's plane over the panel, factor 1; out of it the top chord is
 * held by the sheathing, everything else over its own length.
 */
function limitsOf(t: TrussEffects, bar: number, CD: number, rec?: Recorder): Limits {
  const s = t.member.section;
  const l = lengthOf(t, bar);
  const held = t.model.bars[bar]!.role === 'top' && t.member.unbraced.top === 0;
  const Fb = designValue('Fb', s, { CD }, rec)!;
  const Ft = designValue('Ft', s, { CD }, rec)!;
  const FcStar = designValue('Fc', s, { CD }, rec)!;
  const Emin = designValue('Emin', s, {}, rec)!;
  const FcE1 = FcE(Emin, columnSlenderness(1, l, s.d, rec), rec);
  const FcE2 = held ? NO_LIMIT : FcE(Emin, columnSlenderness(1, l, s.b, rec), rec);
  const cp = CP(Math.min(FcE1, FcE2), FcStar, bucklingC(s), 1, rec);
  return { Fb, Ft, FcAdj: designValue('Fc', s, { CD, CP: cp }, rec)!, FcE1, FcE2 };
}

/** Bending and axial force together. `M` lb·in, `N` lb, tension positive. */
function ratioOf(t: TrussEffects, limits: Limits, N: number, M: number, rec?: Recorder): number {
  const s = t.member.section;
  const A = s.b * s.d;
  const { Fb, Ft, FcAdj, FcE1, FcE2 } = limits;
  const stress = fb(Math.abs(M), s.b, s.d, rec);
  if (N >= 0) return bendingTension(axialStress('ft', N, A, rec), Ft, stress, Fb, Fb, rec).ratio;
  const fc = axialStress('fc', N, A, rec);
  if (M === 0) return fc / FcAdj;
  return bendingCompression({ fc, fb1: stress, fb2: 0, FcAdj, Fb1Adj: Fb, Fb2Adj: Fb, FcE1, FcE2, FbE: NO_LIMIT }, rec)
    .ratio;
}

/**
 * The heel's wedge and the chord beside it are one piece of lumber there: the chord's bending counts with the force of
 * both. Gives for each chord bar the bar whose force joins its own, or −1.
 */
function beside(t: TrussEffects): Int32Array {
  const { bars, layout } = t.model;
  const out = new Int32Array(bars.length).fill(-1);
  bars.forEach((b, i) => {
    if (b.role !== 'heel' || layout.joints[b.from]!.x === layout.joints[b.to]!.x) return;
    const chord = bars.findIndex(
      (k) =>
        k.role === 'top' &&
        (k.from === b.to || k.to === b.to) &&
        (layout.joints[k.from]!.x === layout.joints[b.from]!.x || layout.joints[k.to]!.x === layout.joints[b.from]!.x),
    );
    if (chord >= 0) out[chord] = i;
  });
  return out;
}

const limitsMade = new WeakMap<TrussEffects['model'], Map<string, Map<number, readonly Limits[]>>>();

/** Limits by CD of a frame under one way of holding its top chord; filled as they are asked for. */
function limitsKnown(t: TrussEffects): Map<number, readonly Limits[]> {
  let ways = limitsMade.get(t.model);
  if (!ways) {
    ways = new Map();
    limitsMade.set(t.model, ways);
  }
  const way = `${t.member.unbraced.top}`;
  let known = ways.get(way);
  if (!known) {
    known = new Map();
    ways.set(way, known);
  }
  return known;
}

/** Largest moment of each bar in one case, either way. */
function peaksOf({ m }: BarForces, bars: number): Float64Array {
  const peaks = new Float64Array(bars);
  for (let i = 0; i < m.length; i++) {
    const bar = Math.floor(i / CHORD_STATIONS);
    peaks[bar] = Math.max(peaks[bar]!, Math.abs(m[i]!));
  }
  return peaks;
}

/** A bar's moment of one combination, the largest of either sign over its stations. */
function momentOf(forces: readonly BarForces[], bar: number, terms: Combination['terms']): number {
  let M = 0;
  for (let i = bar * CHORD_STATIONS; i < (bar + 1) * CHORD_STATIONS; i++) {
    let m = 0;
    for (const t of terms) m += t.factor * forces[t.case]!.m[i]!;
    if (Math.abs(m) > Math.abs(M)) M = m;
  }
  return M;
}

/** Keeps the rounding of a bound from ruling a bar out. */
const OVER = 1 + 1e-9;

/**
 * Bars are ranked by the plain sum of their stress ratios; the clause is worked out for the first of them. The peaks of the
 * cases bound a bar's moment, so that its stations are looked at only where they could matter.
 */
function worstBar(ctx: CheckContext, mark: string): Bar | undefined {
  let worst: (Omit<Bar, 'ratio'> & { readonly rank: number }) | undefined;
  for (const truss of ofMark(ctx, mark)) {
    const { bars, layout } = truss.model;
    const s = truss.member.section;
    const A = s.b * s.d;
    const S = (A * s.d) / 6;
    const joined = beside(truss);
    // A wedge beside the chord is counted with it.
    const alone = bars.map((b, i) => !joined.includes(i) || layout.joints[b.from]!.x === layout.joints[b.to]!.x);
    const n = new Float64Array(bars.length);
    const known = limitsKnown(truss);
    for (const [set, forces] of [
      ['one bearing slides', truss.sliding],
      ['both held', truss.held],
    ] as const) {
      if (set === 'both held' && truss.member.truss?.slides !== undefined) continue;
      const rows = forces.map((f) => f.n);
      const peaks = forces.map((f) => peaksOf(f, bars.length));
      for (const combination of ctx.loads.combinations) {
        const { CD } = combination;
        let limits = known.get(CD);
        if (!limits) {
          limits = bars.map((_, bar) => limitsOf(truss, bar, CD));
          known.set(CD, limits);
        }
        combineInto(n, rows, combination);
        for (let bar = 0; bar < bars.length; bar++) {
          if (!alone[bar]) continue;
          const extra = joined[bar]!;
          const N = n[bar]! + (extra >= 0 ? n[extra]! : 0);
          const { Fb, Ft, FcAdj } = limits[bar]!;
          const axial = Math.abs(N) / (A * (N < 0 ? FcAdj : Ft));
          let most = 0;
          for (const t of combination.terms) most += Math.abs(t.factor) * peaks[t.case]![bar]!;
          if (worst && (most / (S * Fb) + axial) * OVER <= worst.rank) continue;
          const M = momentOf(forces, bar, combination.terms);
          const rank = Math.abs(M) / (S * Fb) + axial;
          if (rank > (worst?.rank ?? 0)) worst = { truss, set, bar, combination, N, M, rank };
        }
      }
    }
  }
  if (!worst) return undefined;
  const { truss, bar, combination, N, M } = worst;
  return { ...worst, ratio: ratioOf(truss, limitsOf(truss, bar, combination.CD), N, M) };
}

export const trussPreliminary: Check = {
  id: 'truss-preliminary',
  title: 'Truss members, preliminary',
  subjects: (ctx) => trussMarks(ctx),
  run(subject, ctx, rec) {
    const worst = worstBar(ctx, subject.id);
    if (!worst) return notEvaluated(CLAUSE, 'no forces were worked out for this truss');
    const { truss, bar, combination, N, M, set } = worst;
    const { layout, bars } = truss.model;
    const name = `${bars[bar]!.role} bar ${layout.joints[bars[bar]!.from]!.name}–${layout.joints[bars[bar]!.to]!.name}`;
    rec?.heading(`${subject.id}: ${name}, ${layout.pattern} layout, ${set}, ${combination.id}`);
    rec?.step({
      symbol: N < 0 ? 'C' : 'T',
      meaning: `${N < 0 ? 'compression' : 'tension'} in the bar, ${(lengthOf(truss, bar) / 12).toFixed(2)} ft long`,
      formula: 'plane frame of the preliminary layout',
      substituted: `moment ${M.toFixed(0)} lb·in beside it`,
      value: Math.abs(N),
      unit: 'lb',
      clause: combination.clause,
      from: [truss.member.path],
    });
    const ratio = Math.min(ratioOf(truss, limitsOf(truss, bar, combination.CD, rec), N, M, rec), RATIO_CAP);
    const found = measured(
      {
        demand: ratio,
        capacity: 1,
        unit: '',
        combination: combination.id,
        clause: CLAUSE,
        formula: 'interaction of bending and axial force, for information',
        remedy: '',
      },
      rec,
    );
    const state = ratio > 1 ? 'would be overloaded' : 'would do';
    return {
      ...found,
      // Neither a pass nor a fail of this set: the question is the plant's.
      status: 'not-applicable',
      note: `For the order only: the ${truss.member.section.label.replace(' chords', '')} assumed for ${subject.id} ${state} (${name}, ratio ${ratio.toFixed(2)}); webs and lumber are assumed, plates are not looked at. The truss plant’s engineer decides.`,
    };
  },
};
