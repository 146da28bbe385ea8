/**
 * Component wind on rafters and on the ties of rafters and trusses (ASCE 7-16 30.7). A rafter bends both ways under it; a
 * tie must hold it, which the joint schedule takes up. The inside of a truss belongs to the truss plant's engineer.
 */

import { distinctCombinations, jointEnvelope, mostOf, OVER } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import { memberOf, membersOf } from '../../structure/lookup.js';
import type { Member } from '../../structure/model.js';
import { fb, RB_LIMIT } from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Finding, Subject } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, RATIO_CAP } from '../finding.js';
import { type ComponentUplift, componentUplifts } from '../joints/component-uplift.js';
import { bendingCapacity, leastCapacity } from '../members/bending.js';
import { WET_REFUSED } from '../members/design.js';
import { place } from '../members/ends.js';
import { combineInto, feetText } from '../members/scan.js';
import { type Loaded, loadedMembers, noForces } from '../members/subjects.js';
import { type ComponentCombination, componentCombinations } from './combinations.js';
import { effectiveArea, type LoadedLength, loadedLength, patternMoments } from './framing-wind.js';
import { type TieBending, tieMoment } from './tied-wind.js';
import { beyond, componentPressure } from './zone-wind.js';

const CLAUSE = 'ASCE 7-16 30.7';

/** Framing on which the roof lies, a row each. */
function framingMarks(ctx: CheckContext): readonly Subject[] {
  const seen = new Map<string, Subject>();
  for (const m of ctx.structure.members) {
    if (m.state === 'new' && m.strips.length > 0 && !seen.has(m.mark)) seen.set(m.mark, { id: m.mark, path: m.path });
  }
  return [...seen.values()];
}

interface Bent {
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
function worstBending(ctx: CheckContext, loaded: readonly Loaded[], spacing: number): Bent | Finding {
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

function areaStep(area: number, span: number, spacing: number, path: string, rec?: Recorder): void {
  rec?.step({
    symbol: 'A',
    meaning: 'effective wind area of one framing member',
    formula: 'span · max(spacing, span/3)',
    substituted: `${feetText(span)} · max(${feetText(spacing)}, ${feetText(span / 3)})`,
    value: area / 144,
    unit: 'ft²',
    clause: 'ASCE 7-16 26.2',
    from: [path],
  });
}

/** Worst tie of a row: its component uplift and the main system's at the same joint. */
function worstTie(ctx: CheckContext, members: ReadonlySet<string>): ComponentUplift | undefined {
  let worst: ComponentUplift | undefined;
  for (const u of componentUplifts(ctx).byJoint.values()) {
    if (members.has(u.joint.ties[0]!.part) && (!worst || u.up > worst.up)) worst = u;
  }
  return worst;
}

/** Tells the tie's uplift to the recorder and in words. */
function tieText(ctx: CheckContext, tie: ComponentUplift, rec?: Recorder): string {
  const main = jointEnvelope(ctx.effects, tie.joint.id, ctx.loads.combinations)?.up.value ?? 0;
  rec?.heading(`Uplift at the ties, worst at ${tie.joint.id}`);
  const roof = memberOf(ctx.structure, tie.joint.ties[0]!.part)?.roof;
  if (rec) componentPressure(ctx, roof ?? '', 'minus', tie.area, rec);
  const parts = rec ? tie.parts() : [];
  parts.forEach((part, i) => {
    rec?.step({
      symbol: parts.length > 1 ? `k${i + 1}` : 'k',
      meaning: `mean share of the wind on ${part.text} that pulls at this tie, by moments about the other bearing; counted only where it lifts`,
      formula: 'mean of the share, straight from edge to edge, where positive',
      substituted: `area ${(part.area / 144).toFixed(2)} ft²`,
      value: part.share,
      unit: '',
      clause: 'statics',
    });
  });
  rec?.step({
    symbol: 'Wup',
    meaning: `component wind at the tie; its net pressure was read at an effective area of ${(tie.area / 144).toFixed(1)} ft²`,
    formula: 'Σ p · area · k',
    substituted: parts
      .map((part) => `${part.psf.toFixed(2)} · ${(part.area / 144).toFixed(2)} · ${part.share.toFixed(4)}`)
      .join(' + '),
    value: tie.wind,
    unit: 'lb',
    clause: 'statics',
    from: [tie.joint.path],
  });
  rec?.step({
    symbol: 'U',
    meaning: 'net uplift at the tie',
    formula: tie.label,
    substituted: `wind ${tie.wind.toFixed(0)} lb up, dead ${tie.dead.toFixed(0)} lb down`,
    value: tie.up,
    unit: 'lb',
    clause: 'ASCE 7-16 2.4.1',
    note: 'the joint schedule takes the worse of this and the main system’s uplift',
  });
  rec?.step({
    symbol: 'U/Umain',
    meaning: 'component uplift over the main system’s at the same tie',
    formula: 'U / Umain',
    substituted: `${tie.up.toFixed(0)} / ${main.toFixed(0)}`,
    value: main > 0 ? Math.min(tie.up / main, RATIO_CAP) : 0,
    unit: '',
    clause: 'statics',
    ...(main > 0 ? {} : { note: 'the main system does not lift this tie; 0 stands for no ratio' }),
  });
  return `Ties ${tie.joint.mark}: ${Math.ceil(tie.up)} lb up under component wind, ${Math.ceil(main)} lb under the main system’s; the joint schedule takes the worse.`;
}

/** Answer for a row whose inside somebody else designs: the ties only. */
function tiesOnly(ctx: CheckContext, members: readonly Member[], rec?: Recorder): Finding {
  const { missing } = componentUplifts(ctx);
  const ids = new Set(members.map((m) => m.id));
  for (const j of ctx.structure.joints) {
    if (!ids.has(j.ties[0]?.part ?? '') || !missing.has(j.id)) continue;
    const why = missing.get(j.id);
    return why
      ? outsideScope(why.clause, beyond(why))
      : notEvaluated(CLAUSE, `the component uplift at ${j.id} was not worked out`);
  }
  const tie = worstTie(ctx, ids);
  if (!tie) return notEvaluated(CLAUSE, 'no tie of this framing was found');
  rec?.heading(`${members[0]!.mark}: component wind`);
  return {
    ...notApplicable(
      CLAUSE,
      `The truss itself is the plant engineer’s to design for component wind of ${tie.pressure.toFixed(1)} psf (zone 3 throughout). ${tieText(ctx, tie, rec)}`,
    ),
    demand: tie.up,
    unit: 'lb',
    combination: tie.combination,
  };
}

export const windComponents: Check = {
  id: 'wind-components',
  title: 'Component wind on framing and its ties',
  subjects: framingMarks,
  run(subject, ctx, rec) {
    const members = membersOf(ctx.structure, subject.id);
    const first = members[0]!;
    if (members.some((m) => m.truss)) return tiesOnly(ctx, members, rec);
    const loaded = loadedMembers(ctx, subject.id);
    const spacing = ctx.project.cover.roofs.find((r) => r.mark === first.roof)?.framing.spacing;
    if (!loaded || spacing === undefined) return noForces(CLAUSE);
    // A roof that no figure fits is said first: a hip has no tie that would say it.
    const fits = componentPressure(ctx, first.roof ?? '', 'minus', effectiveArea(spacing, spacing));
    if (fits !== undefined && isOutOfScope(fits)) return outsideScope(fits.clause, beyond(fits));
    const ties = tiesOnly(ctx, members);
    if (ties.status !== 'not-applicable') return ties;
    const worst = worstBending(ctx, loaded, spacing);
    if ('status' in worst) return worst;
    const { on, combination, station } = worst;
    const { section } = on.member;
    const span = on.effects.spans.find((s) => s.kind === 'span')!;
    const positive = worst.M > 0;
    const tie = worstTie(ctx, new Set(members.map((m) => m.id)));
    const note = tie ? tieText(ctx, tie, rec) : '';
    rec?.heading(`${on.member.id}: ${section.label}, ${combination.id}`);
    areaStep(worst.area, span.length, spacing, on.member.path, rec);
    componentPressure(ctx, on.member.roof ?? '', worst.sign, worst.area, rec);
    rec?.step({
      symbol: 'Mw',
      meaning: `moment of the component wind ${place(on.member, on.effects.stations[station]!)}, on the span or on the overhangs alone`,
      formula: 'w·x·(L−x)/2 on the span; w·c²/2 at a bearing from its overhang',
      substituted: `${combination.wind} of w = ${((worst.pressure * worst.width) / 12).toFixed(1)} lb/ft, L = ${feetText(span.length)}`,
      value: worst.wind,
      unit: 'lb·in',
      clause: 'statics',
      note: 'the worse of both loadings, never less than the whole member loaded',
    });
    rec?.step({
      symbol: 'M',
      meaning: `moment there, tension on the ${positive ? 'bottom' : 'top'} edge`,
      formula: combination.label,
      substituted: `${worst.others.toFixed(0)} (other loads, from the analysis) + ${worst.wind.toFixed(0)} (wind)`,
      value: Math.abs(worst.M),
      unit: 'lb·in',
      clause: combination.clause,
      from: [on.member.path],
    });
    const stress = fb(Math.abs(worst.M), section.b, section.d, rec);
    const strength = bendingCapacity(ctx, on, on.effects.spanOf[station] ?? 0, combination.CD, positive, rec)!;
    return measured(
      {
        demand: stress,
        capacity: strength.slender ? 0 : strength.Fb,
        unit: 'psi',
        combination: combination.id,
        clause: CLAUSE,
        formula: "fb / Fb'",
        note,
        remedy: strength.slender
          ? `${on.member.id} is too slender sideways (RB over ${RB_LIMIT}) under component wind: hold its ${positive ? 'top' : 'bottom'} edge or make it wider. ${note}`
          : `${on.member.id} is overstressed in bending by component wind: use a deeper or stronger section, or a closer spacing. ${note}`,
      },
      rec,
    );
  },
};
