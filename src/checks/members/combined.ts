/**
 * Bending about both axes together with the axial force: what a sloped rafter carries along its length, and what framing
 * pushes sideways on a beam. NDS 2018 3.9.
 */
import { distinctCombinations, mostOf } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { Member, MemberRole, Section } from '../../structure/model.js';
import {
  axialStress,
  bendingCompression,
  bendingTension,
  CP,
  columnSlenderness,
  FcE,
  fb,
  RB_LIMIT,
} from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, outsideScope, RATIO_CAP } from '../finding.js';
import { barLength, recordBarLength } from './bar-length.js';
import { bucklingC, designValue, WET_REFUSED } from './design.js';
import { place, source } from './ends.js';
import { repetitiveRow } from './row.js';
import { combineInto, sizeText } from './scan.js';
import { NO_LIMIT, stabilityFactor } from './stability.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'NDS 2018 3.9';
/** Stress along the member or sideways under this changes nothing worth printing, psi. */
const TRACE = 1;
/**
 * Share of Fb left to beams and stringers bent on the wide face: the least of the grades (NDS Supplement Table 4D, note
 * on flat use, recalled). Flat use factors above 1 of other sizes are not taken.
 */
const FLAT_STRINGER = 0.74;

interface Values {
  readonly Ft: number;
  readonly FcAdj: number;
  readonly FcE1: number;
  readonly FcE2: number;
  readonly FbE: number;
  /** Strong-axis value with all factors, and with all but CL; weak-axis value. */
  readonly Fb: number;
  readonly FbStar: number;
  readonly FbWeak: number;
}

/** The section as it bends sideways. */
export function onTheFlat(s: Section): Section {
  const Fb = s.values.FbY * (s.sizeClass === 'beams-stringers' ? FLAT_STRINGER : 1);
  return { ...s, values: { ...s.values, Fb, FbNeg: Fb } };
}

/** Plies bend sideways each for itself: n·d·t²/6. */
const weakModulus = (s: Section): number => (s.plies * s.d * (s.b / s.plies) ** 2) / 6;

function values(
  ctx: CheckContext,
  { member, effects }: Loaded,
  CD: number,
  positive: boolean,
  rec?: Recorder,
): Values | undefined {
  const s = member.section;
  const row = repetitiveRow(ctx, member);
  const span = longest(effects.spans);
  const at = { CD, negative: !positive, span, ...(row ? { row } : {}) };
  const FbStar = designValue('Fb', s, at);
  const Emin = designValue('Emin', s, {}, rec);
  const Ft = designValue('Ft', s, { CD }, rec);
  const FcStar = designValue('Fc', s, { CD }, rec);
  const FbWeak = designValue('Fb', onTheFlat(s), { CD }, rec);
  if (FbStar === undefined || Emin === undefined || Ft === undefined || FcStar === undefined || FbWeak === undefined) {
    return undefined;
  }
  const stable = stabilityFactor(member, positive, FbStar, rec);
  if (!stable) return undefined;
  const Fb = stable.RB > RB_LIMIT ? 0 : designValue('Fb', s, { ...at, CL: stable.CL }, rec)!;
  const bar = barLength(ctx, member);
  if (bar) recordBarLength(bar, rec);
  const FcE1 = FcE(Emin, columnSlenderness(1, bar?.l ?? span, s.d, rec), rec);
  // The edge that is held more closely keeps the member from buckling sideways.
  const sideways = bar?.l ?? Math.min(member.unbraced.top, member.unbraced.bottom);
  const FcE2 = sideways > 0 ? FcE(Emin, columnSlenderness(1, sideways, s.b / s.plies, rec), rec) : NO_LIMIT;
  const cp = CP(Math.min(FcE1, FcE2), FcStar, bucklingC(s), 1, rec);
  return { Ft, FcAdj: designValue('Fc', s, { CD, CP: cp }, rec)!, FcE1, FcE2, FbE: stable.FbE, Fb, FbStar, FbWeak };
}

const longest = (spans: readonly { readonly length: number; readonly kind: string }[]): number =>
  spans.reduce((most, s) => (s.kind === 'span' ? Math.max(most, s.length) : most), 1);

interface Actions {
  /** Strong-axis moment, weak-axis moment, lb·in; axial force, lb, tension positive. */
  readonly M: number;
  readonly Mw: number;
  readonly N: number;
}

function interaction(m: Member, v: Values, { M, Mw, N }: Actions, rec?: Recorder): number {
  if (v.Fb <= 0) return RATIO_CAP;
  const s = m.section;
  const A = s.b * s.d;
  const stress = fb(M, s.b, s.d, rec);
  const sideways = Math.abs(Mw) / weakModulus(s);
  rec?.step({
    symbol: 'fb2',
    meaning: 'sideways bending stress',
    formula: 'M2 / S2, plies each for itself',
    substituted: `${Math.abs(Mw).toFixed(0)} / ${weakModulus(s).toFixed(2)}`,
    value: sideways,
    unit: 'psi',
    clause: 'NDS 2018 3.3.2',
  });
  const weak = sideways / v.FbWeak;
  if (N >= 0) {
    // 3.9.1 knows one axis; the other adds in full.
    const one = bendingTension(axialStress('ft', N, A, rec), v.Ft, stress, v.FbStar, v.Fb, rec).ratio;
    if (weak > 0)
      rec?.step({
        symbol: 'ratio',
        meaning: 'with sideways bending in full',
        formula: "the greater of both + fb2/Fb2'",
        substituted: `${one.toFixed(4)} + ${sideways.toFixed(1)}/${v.FbWeak.toFixed(1)}`,
        value: one + weak,
        unit: '',
        clause: 'NDS 2018 3.9.1',
      });
    return one + weak;
  }
  const { FcAdj, FcE1, FcE2, FbE, Fb, FbWeak } = v;
  const fc = axialStress('fc', N, A, rec);
  return bendingCompression({ fc, fb1: stress, fb2: sideways, FcAdj, Fb1Adj: Fb, Fb2Adj: FbWeak, FcE1, FcE2, FbE }, rec)
    .ratio;
}

export interface Worst extends Actions {
  readonly on: Loaded;
  readonly combination: Combination;
  readonly station: number;
  readonly ratio: number;
}

/** Largest size in a list. */
function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]!));
  return most;
}

export function findWorst(ctx: CheckContext, loaded: readonly Loaded[]): Worst | 'none' | undefined {
  let worst: Worst | undefined;
  const known = new Map<string, Values>();
  for (const on of loaded) {
    const { effects, member } = on;
    const A = member.section.b * member.section.d;
    const S = (A * member.section.d) / 6;
    const Sw = weakModulus(member.section);
    const count = effects.stations.length;
    const m = new Float64Array(count);
    const w = new Float64Array(count);
    const n = new Float64Array(count);
    const own = new Map<number, Values>();
    for (const combination of distinctCombinations(effects, ctx.loads.combinations)) {
      if (mostOf(effects.n, combination) / A < TRACE && mostOf(effects.mWeak, combination) / Sw < TRACE) continue;
      combineInto(n, effects.n, combination);
      combineInto(w, effects.mWeak, combination);
      if (largest(n) / A < TRACE && largest(w) / Sw < TRACE) continue;
      combineInto(m, effects.m, combination);
      for (const sign of [1, -1] as const) {
        let v = own.get(sign * combination.CD);
        if (!v) {
          const { top, bottom } = member.unbraced;
          const key = `${combination.CD} ${sign} ${longest(effects.spans)} ${top} ${bottom}`;
          v = known.get(key) ?? values(ctx, on, combination.CD, sign > 0);
          if (!v) return undefined;
          known.set(key, v);
          own.set(sign * combination.CD, v);
        }
        // Places are ranked by the plain sum of stress ratios, pushed ones and pulled ones apart; the clause itself is
        // worked out for the first of each.
        let [pushed, pulled] = [-1, -1];
        let [mostPushed, mostPulled] = [-1, -1];
        for (let i = 0; i < count; i++) {
          if (m[i]! * sign < 0) continue;
          const N = n[i]!;
          const x =
            Math.abs(m[i]!) / S / Math.max(v.Fb, 1) +
            Math.abs(w[i]!) / Sw / v.FbWeak +
            Math.abs(N) / A / (N < 0 ? v.FcAdj : v.Ft);
          if (N < 0 && x > mostPushed) {
            mostPushed = x;
            pushed = i;
          } else if (N >= 0 && x > mostPulled) {
            mostPulled = x;
            pulled = i;
          }
        }
        for (const at of [pushed, pulled]) {
          if (at < 0) continue;
          const actions = { M: m[at]!, Mw: w[at]!, N: n[at]! };
          const ratio = interaction(member, v, actions);
          if (!worst || ratio > worst.ratio) worst = { on, combination, station: at, ratio, ...actions };
        }
      }
    }
  }
  return worst ?? 'none';
}

/** Steps to the axial force of the worst place, where it is more than the sum of the member's own cases. */
export type RecordAxial = (worst: Worst, rec: Recorder) => void;

function record(ctx: CheckContext, worst: Worst, rec?: Recorder, axial?: RecordAxial): void {
  if (!rec) return;
  const { on, combination, station, M, Mw, N } = worst;
  const { member, effects } = on;
  rec.heading(`${member.id}: ${member.section.label}, ${combination.id}`);
  for (const [symbol, meaning, value, unit, curve] of [
    ['M', 'moment', Math.abs(M), 'lb·in', effects.m],
    ['M2', 'sideways moment', Math.abs(Mw), 'lb·in', effects.mWeak],
    [N < 0 ? 'P' : 'T', N < 0 ? 'compression along the member' : 'tension along it', Math.abs(N), 'lb', effects.n],
  ] as const) {
    if (axial && curve === effects.n) {
      axial(worst, rec);
      continue;
    }
    rec.step({
      symbol,
      meaning: `${meaning} ${place(member, effects.stations[station]!)}, ${source(member)}`,
      formula: combination.label,
      substituted: sizeText(ctx, combination, (c) => curve[c]![station]!),
      value,
      unit,
      clause: combination.clause,
      from: [member.path],
    });
  }
}

/** The check itself on members with given forces; `loaded` may carry a second set of forces, `note` is printed with a pass. */
export function combinedFinding(
  ctx: CheckContext,
  loaded: readonly Loaded[],
  rec?: Recorder,
  note = '',
  axial?: RecordAxial,
): Finding {
  const worst = findWorst(ctx, loaded);
  if (worst === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
  if (worst === 'none') {
    return notApplicable(CLAUSE, 'no combination puts a force worth counting along this member or sideways on it');
  }
  const { on, combination, M } = worst;
  record(ctx, worst, rec, axial);
  const v = values(ctx, on, combination.CD, M >= 0, rec)!;
  const ratio = Math.min(interaction(on.member, v, worst, rec), RATIO_CAP);
  return measured(
    {
      demand: ratio,
      capacity: 1,
      unit: '',
      combination: combination.id,
      clause: CLAUSE,
      formula: "interaction of bending and axial force, not under fc/Fc' ≤ 1",
      note,
      remedy: `${on.member.id} is overloaded by bending both ways and along its length together: use a wider, deeper or stronger section.`,
    },
    rec,
  );
}

export const combinedCheck = (role: MemberRole, title: string, note = ''): Check => ({
  id: `${role}-combined`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    return loaded ? combinedFinding(ctx, loaded, rec, note) : noForces(CLAUSE);
  },
});
