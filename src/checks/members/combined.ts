/** Bending together with the axial force that a sloped rafter carries. NDS 2018 3.9. */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { Member, MemberRole } from '../../structure/model.js';
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
import { measured, notApplicable, outsideScope } from '../finding.js';
import { bucklingC, designValue, WET_REFUSED } from './design.js';
import { repetitiveRow } from './row.js';
import { combineInto, feetText } from './scan.js';
import { stabilityFactor } from './stability.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'NDS 2018 3.9';
/** Stands for no limit where an edge is held all along. */
const NO_LIMIT = 1e12;
/** Axial stress under this changes nothing worth printing, psi. */
const TRACE = 1;

interface Values {
  readonly Ft: number;
  readonly FcAdj: number;
  readonly FcE1: number;
  readonly FcE2: number;
  /** Fb with all factors; with all but CL; with all but CV. */
  readonly Fb: number;
  readonly FbStar: number;
}

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
  if (FbStar === undefined || Emin === undefined || Ft === undefined || FcStar === undefined) return undefined;
  const CL = stabilityFactor(member, positive, FbStar, rec)?.CL ?? 1;
  const Fb = designValue('Fb', s, { ...at, CL }, rec)!;
  const FcE1 = FcE(Emin, columnSlenderness(1, span, s.d, rec), rec);
  // The held edge keeps a member from buckling sideways.
  const sideways = Math.min(member.unbraced.top, member.unbraced.bottom);
  const FcE2 = sideways > 0 ? FcE(Emin, columnSlenderness(1, sideways, s.b, rec), rec) : NO_LIMIT;
  const cp = CP(Math.min(FcE1, FcE2), FcStar, bucklingC(s), 1, rec);
  return { Ft, FcAdj: designValue('Fc', s, { CD, CP: cp }, rec)!, FcE1, FcE2, Fb, FbStar };
}

const longest = (spans: readonly { readonly length: number; readonly kind: string }[]): number =>
  spans.reduce((most, s) => (s.kind === 'span' ? Math.max(most, s.length) : most), 1);

/** Interaction of one place. CL already lowers Fb, so sideways buckling in bending is not counted a second time. */
function interaction(m: Member, v: Values, M: number, N: number, rec?: Recorder): number {
  const A = m.section.b * m.section.d;
  const stress = fb(M, m.section.b, m.section.d, rec);
  if (N >= 0) return bendingTension(axialStress('ft', N, A, rec), v.Ft, stress, v.FbStar, v.Fb, rec).ratio;
  return bendingCompression(
    {
      fc: axialStress('fc', N, A, rec),
      fb1: stress,
      fb2: 0,
      FcAdj: v.FcAdj,
      Fb1Adj: v.Fb,
      Fb2Adj: v.Fb,
      FcE1: v.FcE1,
      FcE2: v.FcE2,
      FbE: NO_LIMIT,
    },
    rec,
  ).ratio;
}

interface Worst {
  readonly on: Loaded;
  readonly combination: Combination;
  readonly station: number;
  readonly M: number;
  readonly N: number;
  readonly ratio: number;
}

export const combinedCheck = (role: MemberRole, title: string): Check => ({
  id: `${role}-combined`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let worst: Worst | undefined;
    const known = new Map<string, Values>();
    for (const on of loaded) {
      const { effects, member } = on;
      const A = member.section.b * member.section.d;
      const S = (A * member.section.d) / 6;
      const m = new Float64Array(effects.stations.length);
      const n = new Float64Array(effects.stations.length);
      const own = new Map<number, Values>();
      for (const combination of ctx.loads.combinations) {
        combineInto(n, effects.n, combination);
        let axial = 0;
        for (let i = 0; i < n.length; i++) axial = Math.max(axial, Math.abs(n[i]!));
        if (axial / A < TRACE) continue;
        combineInto(m, effects.m, combination);
        for (const sign of [1, -1] as const) {
          let v = own.get(sign * combination.CD);
          if (!v) {
            const key = `${combination.CD} ${sign} ${longest(effects.spans)} ${member.unbraced.top} ${member.unbraced.bottom}`;
            v = known.get(key) ?? values(ctx, on, combination.CD, sign > 0);
            if (!v) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
            known.set(key, v);
            own.set(sign * combination.CD, v);
          }
          // Rank places by a plain sum of stress ratios, then work the clause out for the first of them only.
          let at = -1;
          let most = -1;
          for (let i = 0; i < m.length; i++) {
            const M = m[i]!;
            if (M * sign < 0) continue;
            const N = n[i]!;
            const x = Math.abs(M) / S / v.Fb + Math.abs(N) / A / (N < 0 ? v.FcAdj : v.Ft);
            if (x > most) {
              most = x;
              at = i;
            }
          }
          if (at < 0 || (worst && 1.5 * most < worst.ratio)) continue;
          const ratio = interaction(member, v, m[at]!, n[at]!);
          if (!worst || ratio > worst.ratio) worst = { on, combination, station: at, M: m[at]!, N: n[at]!, ratio };
        }
      }
    }
    if (!worst) return notApplicable(CLAUSE, 'no combination puts a force worth counting along this member');
    const { on, combination, M, N } = worst;
    const { member } = on;
    rec?.heading(`${member.id}: ${member.section.label}, ${combination.id}`);
    for (const [symbol, meaning, value, unit] of [
      ['M', 'moment', Math.abs(M), 'lb·in'],
      [N < 0 ? 'P' : 'T', N < 0 ? 'compression along the member' : 'tension along the member', Math.abs(N), 'lb'],
    ] as const) {
      rec?.step({
        symbol,
        meaning: `${meaning} ${feetText(on.effects.stations[worst.station]!)} from the start`,
        formula: combination.label,
        substituted: combination.id,
        value,
        unit,
        clause: combination.clause,
        from: [member.path],
      });
    }
    const v = values(ctx, on, combination.CD, M > 0, rec)!;
    const ratio = interaction(member, v, M, N, rec);
    return measured(
      {
        demand: ratio,
        capacity: 1,
        unit: '',
        combination: combination.id,
        clause: CLAUSE,
        formula: 'interaction of bending and axial force ≤ 1',
        remedy: `${member.id} is overloaded in bending and along its length together: use a deeper or stronger section.`,
      },
      rec,
    );
  },
});
