/** Bending of rafters under component wind together with the other loads: where and under what it is worst. */
import { distinctCombinations, mostOf, OVER } from '../../analysis/index.js';
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import type { CheckContext, Finding } from '../contract.js';
import { notApplicable, notEvaluated, outsideScope, RATIO_CAP } from '../finding.js';
import { bendingCapacity, leastCapacity } from '../members/bending.js';
import { WET_REFUSED } from '../members/design.js';
import { combineInto } from '../members/scan.js';
import type { Loaded } from '../members/subjects.js';
import { type ComponentCombination, componentCombinations } from './combinations.js';
import { effectiveArea, type LoadedLength, loadedLength, patternMoments } from './framing-wind.js';
import { type TieBending, tieMoment } from './tied-wind.js';
import { beyond, COMPONENT_CLAUSE as CLAUSE, componentPressure } from './zone-wind.js';

export interface Bent {
  readonly on: Loaded;
  readonly sign: 'plus' | 'minus';
  readonly area: number;
  readonly pressure: number;
  readonly width: number;
  readonly combination: ComponentCombination;
  readonly station: number;
  /** Moments: all together, the other loads', and the factored wind's, lb·in. */
  readonly M: number;
  readonly others: number;
  readonly wind: number;
  readonly ratio: number;
}

/**
 * Moments under 1 lb/in of wind, two for each station: the span loaded, and the overhangs loaded. A tie adds to the loading
 * it bends the same way as.
 */
function unitMoments(
  { effects }: Loaded,
  load: LoadedLength,
  [from, to]: readonly [number, number],
  tied: TieBending | undefined,
): Float64Array {
  const units = new Float64Array(2 * effects.stations.length);
  effects.stations.forEach((x, i) => {
    const extra = tied?.moment(x) ?? 0;
    patternMoments(x, from, to, load).forEach((pattern, k) => {
      units[2 * i + k] = pattern + (extra > 0 === (k === 0) ? extra : 0);
    });
  });
  return units;
}

/** Fb' of a member, psi, 0 where too slender; equal members share `known`. Undefined where it may not be used wet. */
function capacityOf(
  ctx: CheckContext,
  on: Loaded,
  known: Map<string, number | undefined>,
): (span: number, CD: number, positive: boolean) => number | undefined {
  const { spans } = on.effects;
  const { top, bottom } = on.member.unbraced;
  const own = new Map<number, number | undefined>();
  const ask = (span: number, CD: number, positive: boolean): number | undefined => {
    const key = `${positive} ${CD} ${spans[span]?.length} ${top} ${bottom}`;
    if (!known.has(key)) {
      const c = bendingCapacity(ctx, on, span, CD, positive);
      known.set(key, c && (c.slender ? 0 : c.Fb));
    }
    return known.get(key);
  };
  return (span, CD, positive) => {
    const mine = (positive ? 1 : -1) * (1000 * span + CD);
    let Fb = own.get(mine);
    if (Fb === undefined) {
      Fb = ask(span, CD, positive);
      own.set(mine, Fb);
    }
    return Fb;
  };
}

/** Worst bending of one row; a finding where it cannot be answered. */
export function worstBending(ctx: CheckContext, loaded: readonly Loaded[], spacing: number): Bent | Finding {
  const surfaces = new Map(ctx.structure.surfaces.map((s) => [s.id, s]));
  const capacities = new Map<string, number | undefined>();
  let worst: Bent | undefined;
  for (const on of loaded) {
    const { member, effects } = on;
    const index = effects.spans.findIndex((s) => s.kind === 'span');
    const span = effects.spans[index];
    const load = loadedLength(member, surfaces);
    if (!span || !load || effects.spans.filter((s) => s.kind === 'span').length !== 1) {
      return notEvaluated(
        CLAUSE,
        `${member.id} does not lie on one slope over one span; its component wind is not worked out.`,
      );
    }
    const area = effectiveArea(span.length, spacing);
    const tied = tieMoment(ctx.structure, member, load);
    const S = (member.section.b * member.section.d ** 2) / 6;
    const units = unitMoments(on, load, [span.from, tied?.hinge ?? span.to], tied);
    const capacity = capacityOf(ctx, on, capacities);
    const least = leastCapacity(ctx, on);
    const mostUnit = units.reduce((most, u) => Math.max(most, Math.abs(u)), 0);
    const combinations = distinctCombinations(effects, componentCombinations(ctx.loads));
    const others = new Float64Array(effects.stations.length);
    for (const sign of ['plus', 'minus'] as const) {
      const pressure = componentPressure(ctx, member.roof ?? '', sign, area);
      if (pressure === undefined) return notEvaluated(CLAUSE, 'the roof of this framing was not placed');
      if (isOutOfScope(pressure)) return outsideScope(pressure.clause, beyond(pressure));
      const line = (pressure / 144) * load.width;
      for (const combination of combinations) {
        const most = mostOf(effects.m, combination) + Math.abs(combination.wind * line) * mostUnit * OVER;
        if (worst && most / S < worst.ratio * least(combination.CD)) continue;
        combineInto(others, effects.m, combination);
        for (let i = 0; i < others.length; i++) {
          const at = effects.spanOf[i] ?? index;
          for (let k = 0; k < 2; k++) {
            const wind = combination.wind * line * units[2 * i + k]!;
            const M = others[i]! + wind;
            const Fb = capacity(at, combination.CD, M > 0);
            if (Fb === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
            const ratio = Fb > 0 ? Math.abs(M) / S / Fb : RATIO_CAP;
            if (worst && ratio <= worst.ratio) continue;
            const { width } = load;
            worst = { on, sign, area, pressure, width, combination, station: i, M, others: others[i]!, wind, ratio };
          }
        }
      }
    }
  }
  return worst ?? notApplicable(CLAUSE, 'no combination has wind');
}
