/** Bending of beams and rafters, both signs, every combination with its own load duration. NDS 2018 3.3. */
import { distinctCombinations, mostOf } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { MemberRole } from '../../structure/model.js';
import { fb, RB_LIMIT } from '../codes/nds-2018/index.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable, outsideScope, RATIO_CAP } from '../finding.js';
import { raised, raiseToStatics } from '../hand.js';
import { designValue, WET_REFUSED } from './design.js';
import { place, source } from './ends.js';
import { repetitiveRow } from './row.js';
import { combineInto, extreme, sizeText } from './scan.js';
import { stabilityFactor } from './stability.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'NDS 2018 3.3';

/** Fb' for one sign and load duration, psi; 0 where the member is too slender to be used. */
export interface Capacity {
  readonly Fb: number;
  readonly slender: boolean;
}

export function bendingCapacity(
  ctx: CheckContext,
  { member, effects }: Loaded,
  span: number,
  CD: number,
  positive: boolean,
  rec?: Recorder,
): Capacity | undefined {
  const row = repetitiveRow(ctx, member);
  const at = { CD, negative: !positive, ...(row ? { row } : {}) };
  // Fb* leaves CL and CV out; it only sets CL.
  const FbStar = designValue('Fb', member.section, at);
  if (FbStar === undefined) return undefined;
  const stable = stabilityFactor(member, positive, FbStar, rec);
  if (!stable) return undefined;
  const length = effects.spans[span]?.length ?? member.length;
  const Fb = designValue('Fb', member.section, { ...at, CL: stable.CL, span: length }, rec);
  return Fb === undefined ? undefined : { Fb, slender: stable.RB > RB_LIMIT };
}

interface Worst {
  readonly on: Loaded;
  readonly combination: Combination;
  readonly station: number;
  readonly M: number;
  readonly ratio: number;
}

/**
 * No span, either way up, is worth less than this under a load duration, psi: what the largest moment cannot use up of it
 * need not be looked at station by station. 0, which rules nothing out, where there is no such value.
 */
export function leastCapacity(ctx: CheckContext, on: Loaded): (CD: number) => number {
  const known = new Map<number, number>();
  const lengths = new Map(on.effects.spans.map((s, i) => [s.length, i]));
  return (CD) => {
    let least = known.get(CD);
    if (least === undefined) {
      least = Number.POSITIVE_INFINITY;
      for (const span of lengths.values()) {
        for (const positive of [true, false]) {
          const c = bendingCapacity(ctx, on, span, CD, positive);
          least = Math.min(least, c && !c.slender ? c.Fb : 0);
        }
      }
      known.set(CD, least);
    }
    return least;
  };
}

export function findWorstBending(ctx: CheckContext, loaded: readonly Loaded[]): Worst | 'none' | undefined {
  let worst: Worst | undefined;
  // Members of one mark share a section; capacity changes with load duration, sign, span and unheld length only.
  const known = new Map<string, number>();
  for (const on of loaded) {
    const { member, effects } = on;
    const section = member.section;
    const S = (section.b * section.d * section.d) / 6;
    const values = new Float64Array(effects.stations.length);
    const own = new Map<number, number>();
    const least = leastCapacity(ctx, on);
    for (const combination of distinctCombinations(effects, ctx.loads.combinations)) {
      if (worst && mostOf(effects.m, combination) / S < worst.ratio * least(combination.CD)) continue;
      combineInto(values, effects.m, combination);
      for (const sign of [1, -1] as const) {
        const i = extreme(values, sign);
        if (i < 0) continue;
        const span = effects.spanOf[i] ?? 0;
        const mine = sign * (1000 * span + combination.CD);
        let Fb = own.get(mine);
        if (Fb === undefined) {
          const lu = sign > 0 ? member.unbraced.top : member.unbraced.bottom;
          const key = `${combination.CD} ${sign} ${effects.spans[span]?.length} ${lu}`;
          Fb = known.get(key);
          if (Fb === undefined) {
            const c = bendingCapacity(ctx, on, span, combination.CD, sign > 0);
            if (!c) return undefined;
            Fb = c.slender ? 0 : c.Fb;
            known.set(key, Fb);
          }
          own.set(mine, Fb);
        }
        const M = values[i]!;
        const ratio = Fb > 0 ? Math.abs(M) / S / Fb : RATIO_CAP;
        if (!worst || ratio > worst.ratio) worst = { on, combination, station: i, M, ratio };
      }
    }
  }
  return worst ?? 'none';
}

export const bendingCheck = (role: MemberRole, title: string): Check => ({
  id: `${role}-bending`,
  title,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const worst = findWorstBending(ctx, loaded);
    if (worst === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
    if (worst === 'none') return notApplicable(CLAUSE, 'no combination bends this member');
    const { on, combination, station, M } = worst;
    const { member, effects } = on;
    const { section } = member;
    const positive = M > 0;
    const tension = positive ? 'bottom' : 'top';
    rec?.heading(`${member.id}: ${section.label}, ${combination.id}`);
    rec?.step({
      symbol: 'M',
      meaning: `moment ${place(member, effects.stations[station]!)}, ${source(member)}, tension on the ${tension} edge`,
      formula: combination.label,
      substituted: sizeText(ctx, combination, (c) => effects.m[c]![station]!),
      value: Math.abs(M),
      unit: 'lb·in',
      clause: combination.clause,
      from: [member.path],
    });
    const raise = raiseToStatics(ctx, (about) => about.startsWith(`${member.id} moment`));
    const stress = fb(raised(Math.abs(M), 'M', 'lb·in', raise, rec), section.b, section.d, rec);
    const strength = bendingCapacity(ctx, on, effects.spanOf[station] ?? 0, combination.CD, positive, rec)!;
    return measured(
      {
        demand: stress,
        capacity: strength.slender ? 0 : strength.Fb,
        unit: 'psi',
        combination: combination.id,
        clause: CLAUSE,
        formula: "fb / Fb'",
        remedy: strength.slender
          ? `${member.id} is too slender sideways (RB over ${RB_LIMIT}): hold its ${positive ? 'top' : 'bottom'} edge or make it wider.`
          : `${member.id} is overstressed in bending: use a deeper or stronger section, or shorten the span.`,
      },
      rec,
    );
  },
});
