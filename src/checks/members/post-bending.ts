/**
 * Posts that hold side load bend: combined bending about both axes with the axial force of either sign, and shear. The
 * moments are those of the frame; that a post sways under its own load is in Eq. 3.9-3 by FcE with the length of a swaying
 * post. A load off the centre of the post is added as in `post-stability`. NDS 2018 3.4, 3.9, 15.4.
 */
import { distinctCombinations } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import { axialStress, bendingTension, eccentricCompression, fb } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Subject } from '../contract.js';
import { measured, notApplicable, outsideScope, RATIO_CAP } from '../finding.js';
import { onTheFlat } from './combined.js';
import { designValue, WET_REFUSED } from './design.js';
import { type Column, column, ECCENTRICITY } from './posts.js';
import { combineInto, feetText, sizeText } from './scan.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'NDS 2018 3.9, 15.4';
const SHEAR = 'NDS 2018 3.4.2';

/** Posts, where the frame bends them: a bar in compression has two stations only. */
const subjects = (ctx: CheckContext): readonly Subject[] =>
  memberSubjects(ctx, 'post').filter((s) =>
    ctx.structure.members.some((m) => m.mark === s.id && (ctx.effects.members.get(m.id)?.stations.length ?? 0) > 2),
  );

interface Values extends Column {
  readonly Ft: number;
  readonly Fb2: number;
}

function values(ctx: CheckContext, { member }: Loaded, CD: number, rec?: Recorder): Values | undefined {
  const c = column(ctx, member, CD, rec);
  const Ft = designValue('Ft', member.section, { CD }, rec);
  const Fb2 = designValue('Fb', onTheFlat(member.section), { CD }, rec);
  return c && Ft !== undefined && Fb2 !== undefined ? { ...c, Ft, Fb2 } : undefined;
}

interface Actions {
  /** Moments about the strong and the weak axis, lb·in; axial force, lb, tension positive. */
  readonly M: number;
  readonly M2: number;
  readonly N: number;
}

function interaction({ member }: Loaded, v: Values, { M, M2, N }: Actions, rec?: Recorder): number {
  const { b, d } = member.section;
  const A = b * d;
  const fb1 = fb(M, b, d, rec);
  const fb2 = fb(M2, d, b, rec);
  if (N >= 0) {
    // 3.9.1 knows one axis; the other adds in full. The post is not slender in tension, so Fb* is Fb here.
    const one = bendingTension(axialStress('ft', N, A, rec), v.Ft, fb1, v.Fb, v.Fb, rec).ratio;
    rec?.step({
      symbol: 'ratio',
      meaning: 'with bending about the other axis in full',
      formula: "ratio + fb2/Fb2'",
      substituted: `${one.toFixed(3)} + ${fb2.toFixed(1)}/${v.Fb2.toFixed(1)}`,
      value: one + fb2 / v.Fb2,
      unit: '',
      clause: 'NDS 2018 3.9.1',
    });
    return one + fb2 / v.Fb2;
  }
  const input = {
    fc: axialStress('fc', N, A, rec),
    fb1,
    fb2,
    FcAdj: v.FcAdj,
    Fb1Adj: v.Fb,
    Fb2Adj: v.Fb2,
    FcE1: v.FcE1,
    FcE2: v.FcE2,
    FbE: v.FbE,
  };
  const k = 6 * ECCENTRICITY;
  const first = eccentricCompression(input, k, 0).ratio >= eccentricCompression(input, 0, k).ratio;
  rec?.step({
    symbol: 'e',
    meaning: 'load off the centre of the post',
    formula: first ? 'd / 6' : 'b / 6',
    substituted: `${first ? d : b} / 6`,
    value: (first ? d : b) * ECCENTRICITY,
    unit: 'in',
    clause: 'common practice, no source',
    note: 'added to the moments of the frame',
  });
  return eccentricCompression(input, first ? k : 0, first ? 0 : k, rec).ratio;
}

interface Worst extends Actions {
  readonly on: Loaded;
  readonly combination: Combination;
  readonly station: number;
  readonly ratio: number;
}

function findWorst(ctx: CheckContext, loaded: readonly Loaded[]): Worst | undefined | 'refused' {
  let worst: Worst | undefined;
  for (const on of loaded) {
    const { effects, member } = on;
    const { b, d } = member.section;
    const A = b * d;
    const count = effects.stations.length;
    const [m, w, n] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
    const known = new Map<number, Values>();
    for (const combination of distinctCombinations(effects, ctx.loads.combinations)) {
      let v = known.get(combination.CD);
      if (!v) {
        v = values(ctx, on, combination.CD);
        if (!v) return 'refused';
        known.set(combination.CD, v);
      }
      combineInto(m, effects.m, combination);
      combineInto(w, effects.mWeak, combination);
      combineInto(n, effects.n, combination);
      // Places are ranked by the plain sum of stress ratios, pushed ones and pulled ones apart; the clause itself is worked
      // out for the first of each.
      const at = { pushed: -1, pulled: -1 };
      const most = { pushed: -1, pulled: -1 };
      for (let i = 0; i < count; i++) {
        const N = n[i]!;
        const kind = N < 0 ? 'pushed' : 'pulled';
        const x =
          (6 * Math.abs(m[i]!)) / (A * d) / v.Fb +
          (6 * Math.abs(w[i]!)) / (A * b) / v.Fb2 +
          Math.abs(N) / A / (N < 0 ? v.FcAdj : v.Ft);
        if (x > most[kind]) {
          most[kind] = x;
          at[kind] = i;
        }
      }
      for (const station of [at.pushed, at.pulled]) {
        if (station < 0) continue;
        const actions = { M: m[station]!, M2: w[station]!, N: n[station]! };
        const ratio = interaction(on, v, actions);
        if (!worst || ratio > worst.ratio) worst = { on, combination, station, ratio, ...actions };
      }
    }
  }
  return worst;
}

function record(ctx: CheckContext, { on, combination, station, M, M2, N }: Worst, rec?: Recorder): void {
  if (!rec) return;
  const { member, effects } = on;
  rec.heading(`${member.id}: ${member.section.label}, ${combination.id}`);
  for (const [symbol, meaning, value, unit, curve] of [
    ['M', 'moment square to the beam', Math.abs(M), 'lb·in', effects.m],
    ['M2', 'moment along the beam', Math.abs(M2), 'lb·in', effects.mWeak],
    [N < 0 ? 'P' : 'T', N < 0 ? 'compression' : 'tension', Math.abs(N), 'lb', effects.n],
  ] as const) {
    rec.step({
      symbol,
      meaning: `${meaning} ${feetText(effects.stations[station]!)} from its bottom, from the frame`,
      formula: combination.label,
      substituted: sizeText(ctx, combination, (c) => curve[c]![station]!),
      value,
      unit,
      clause: combination.clause,
      from: [member.path],
    });
  }
}

export const postCombined: Check = {
  id: 'post-combined',
  title: 'Post bent by side load',
  subjects,
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const worst = findWorst(ctx, loaded);
    if (worst === 'refused') return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    if (!worst) return notApplicable(CLAUSE, 'no combination loads this post');
    const { member } = worst.on;
    if (member.section.plies > 1) {
      return outsideScope(
        'NDS 2018 15.3',
        `${member.id} is a built-up post, which is outside the program’s range: use a solid one.`,
      );
    }
    record(ctx, worst, rec);
    const v = values(ctx, worst.on, worst.combination.CD, rec)!;
    const ratio = Math.min(interaction(worst.on, v, worst, rec), RATIO_CAP);
    return measured(
      {
        demand: ratio,
        capacity: 1,
        unit: '',
        combination: worst.combination.id,
        clause: CLAUSE,
        formula: "interaction of bending both ways and axial force, not under fc/Fc' ≤ 1",
        remedy: `${member.id} is overloaded by side load: use a thicker or stronger post, lower or larger knee braces, or more posts.`,
      },
      rec,
    );
  },
};

export const postShear: Check = {
  id: 'post-shear',
  title: 'Post shear',
  subjects,
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(SHEAR);
    let worst: { on: Loaded; combination: Combination; station: number; V: number; V2: number } | undefined;
    let most = 0;
    for (const on of loaded) {
      const count = on.effects.stations.length;
      const [v, w] = [new Float64Array(count), new Float64Array(count)];
      for (const combination of distinctCombinations(on.effects, ctx.loads.combinations)) {
        combineInto(v, on.effects.v, combination);
        combineInto(w, on.effects.vWeak, combination);
        for (let i = 0; i < count; i++) {
          const x = Math.hypot(v[i]!, w[i]!) / combination.CD;
          if (x <= most) continue;
          most = x;
          worst = { on, combination, station: i, V: v[i]!, V2: w[i]! };
        }
      }
    }
    if (!worst) return notApplicable(SHEAR, 'no combination shears this post');
    const { on, combination, station, V, V2 } = worst;
    const { section } = on.member;
    rec?.heading(`${on.member.id}: ${section.label}, ${combination.id}`);
    for (const [symbol, meaning, value, curve] of [
      ['V', 'shear square to the beam', V, on.effects.v],
      ['V2', 'shear along the beam', V2, on.effects.vWeak],
    ] as const) {
      rec?.step({
        symbol,
        meaning: `${meaning} ${feetText(on.effects.stations[station]!)} from its bottom, from the frame`,
        formula: combination.label,
        substituted: sizeText(ctx, combination, (c) => curve[c]![station]!),
        value: Math.abs(value),
        unit: 'lb',
        clause: combination.clause,
        from: [on.member.path],
      });
    }
    const stress = (1.5 * Math.hypot(V, V2)) / (section.b * section.d);
    rec?.step({
      symbol: 'fv',
      meaning: 'shear stress, both directions together at the centre of the post',
      formula: '1.5·√(V² + V2²) / (b·d)',
      substituted: `1.5·√(${say(Math.abs(V))}² + ${say(Math.abs(V2))}²) / (${say(section.b)}·${say(section.d)})`,
      value: stress,
      unit: 'psi',
      clause: 'NDS 2018 Eq. 3.4-2',
    });
    const Fv = designValue('Fv', section, { CD: combination.CD }, rec);
    if (Fv === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    return measured(
      {
        demand: stress,
        capacity: Fv,
        unit: 'psi',
        combination: combination.id,
        clause: SHEAR,
        formula: "fv / Fv'",
        remedy: `${on.member.id} is overstressed in shear: use a thicker or stronger post or longer knee braces.`,
      },
      rec,
    );
  },
};
