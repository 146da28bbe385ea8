/**
 * Component wind on rafters and on the ties of rafters and trusses (ASCE 7-16 30.7). A rafter bends both ways under it; a
 * tie must hold it, which the joint schedule takes up. The inside of a truss belongs to the truss plant's engineer.
 */

import { jointEnvelope } from '../../analysis/index.js';
import type { Recorder } from '../../base/trace.js';
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import { memberOf, membersOf } from '../../structure/lookup.js';
import type { Member } from '../../structure/model.js';
import { fb, RB_LIMIT } from '../codes/nds-2018/index.js';
import type { Check, CheckContext, Finding, Subject } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, RATIO_CAP } from '../finding.js';
import { type ComponentUplift, componentUplifts } from '../joints/component-uplift.js';
import { bendingCapacity } from '../members/bending.js';
import { place } from '../members/ends.js';
import { feetText } from '../members/scan.js';
import { loadedMembers, noForces } from '../members/subjects.js';
import { effectiveArea } from './framing-wind.js';
import { worstBending } from './wind-bending.js';
import { beyond, COMPONENT_CLAUSE as CLAUSE, componentPressure } from './zone-wind.js';

/** Framing on which the roof lies, a row each. */
function framingMarks(ctx: CheckContext): readonly Subject[] {
  const seen = new Map<string, Subject>();
  for (const m of ctx.structure.members) {
    if (m.state === 'new' && m.strips.length > 0 && !seen.has(m.mark)) seen.set(m.mark, { id: m.mark, path: m.path });
  }
  return [...seen.values()];
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
