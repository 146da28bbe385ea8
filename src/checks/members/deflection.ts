/**
 * Deflection of beams and rafters against the divisors chosen in the project file: live loads alone, dead with live, and
 * dead with its creep. An overhang of length L may move 2L over the divisor (IBC 2018 Table 1604.3, note i). Wind counts
 * with the 0.42 that table's note f permits.
 */
import type { MemberEffects } from '../../analysis/model.js';
import type { Recorder } from '../../base/trace.js';
import type { LoadKind } from '../../loads/model.js';
import type { MemberRole, Section } from '../../structure/model.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { designValue } from './design.js';
import { place } from './ends.js';
import { type Loaded, loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'IBC 2018 Table 1604.3';

/** Creep factor on lasting load (NDS 2018 3.5.2): 1.5 for seasoned lumber and glulam in dry service, 2.0 wet. */
export const creepFactor = (s: Section): number => (s.wet ? 2 : 1.5);

/** Share of a case that counts as live deflection; undefined for dead load. */
const LIVE_SHARE: Readonly<Record<LoadKind, number | undefined>> = { D: undefined, Lr: 1, S: 1, W: 0.42, E: 0 };

export type DeflectionKind = 'live' | 'total' | 'long-term';

interface Rule {
  readonly title: string;
  readonly divisor: 'live' | 'total';
  /** Factor on the dead load's sag. */
  dead(s: Section): number;
}

const RULES: Readonly<Record<DeflectionKind, Rule>> = {
  live: { title: 'live-load deflection', divisor: 'live', dead: () => 0 },
  total: { title: 'total deflection', divisor: 'total', dead: () => 1 },
  'long-term': { title: 'long-term deflection', divisor: 'total', dead: creepFactor },
};

interface LiveCase {
  readonly i: number;
  readonly share: number;
}

/** Cases in which the member moves differently: most cases of a large cover load other roofs only. */
function distinctCases(effects: MemberEffects, cases: readonly LiveCase[]): readonly LiveCase[] {
  const seen = new Map<Float64Array, number>();
  return cases.filter(({ i, share }) => {
    const row = effects.sag[i]!;
    if (seen.get(row) === share) return false;
    seen.set(row, share);
    return true;
  });
}

interface Worst {
  readonly on: Loaded;
  /** Live case's index, −1 for dead load alone. */
  readonly live: number;
  readonly station: number;
  readonly dead: number;
  readonly moving: number;
  readonly limit: number;
  readonly ratio: number;
}

/** Length that the divisor applies to: the span, or twice an overhang. */
const counted = (on: Loaded, station: number): number => {
  const span = on.effects.spans[on.effects.spanOf[station] ?? 0];
  if (!span) return 0;
  return span.kind === 'overhang' ? 2 * span.length : span.length;
};

/**
 * The frame is solved with the tabulated E; deflection grows by E/E' where the member is wet or incised (NDS 2018 Table
 * 4.3.1). An engineered member that may not be used wet keeps its E here; its strength checks refuse it.
 */
const softening = (s: Section, rec?: Recorder): number => s.values.E / (designValue('E', s, {}, rec) ?? s.values.E);

function worstDeflection(ctx: CheckContext, loaded: readonly Loaded[], rule: Rule): Worst | undefined {
  const divisor = ctx.project.choices.deflection[rule.divisor];
  const deadCases = ctx.loads.cases.flatMap((c, i) => (c.kind === 'D' ? [i] : []));
  const liveCases = ctx.loads.cases.flatMap((c, i) => (c.kind === 'D' ? [] : [{ i, share: LIVE_SHARE[c.kind] ?? 0 }]));
  let worst: Worst | undefined;
  for (const on of loaded) {
    const { effects, member } = on;
    const soft = softening(member.section);
    const factor = rule.dead(member.section) * soft;
    // Dead load alone is a case of the rules that count it.
    const choices = [{ i: -1, share: 0 }, ...distinctCases(effects, liveCases)];
    for (let j = 0; j < effects.stations.length; j++) {
      const length = counted(on, j);
      // A stub shorter than the section's depth has no deflection worth a limit.
      if (length < member.section.d) continue;
      const limit = length / divisor;
      let dead = 0;
      for (const d of deadCases) dead += factor * effects.sag[d]![j]!;
      for (const { i, share } of choices) {
        const moving = i < 0 ? 0 : soft * share * effects.sag[i]![j]!;
        const ratio = Math.abs(dead + moving) / limit;
        if (!worst || ratio > worst.ratio) worst = { on, live: i, station: j, dead, moving, limit, ratio };
      }
    }
  }
  return worst && worst.ratio > 0 ? worst : undefined;
}

function record(ctx: CheckContext, kind: DeflectionKind, w: Worst, name: string, rec?: Recorder): void {
  if (!rec) return;
  const { member, effects } = w.on;
  const length = counted(w.on, w.station);
  const rule = RULES[kind];
  const divisor = ctx.project.choices.deflection[rule.divisor];
  rec.heading(`${member.id}: ${member.section.label}, ${name}`);
  const { section } = member;
  softening(section, rec);
  rec.step({
    symbol: 'I',
    meaning: 'moment of inertia of the plies that count',
    formula: 'b·d³ / 12',
    substituted: `${say(section.b)} · ${say(section.d)}³ / 12`,
    value: (section.b * section.d ** 3) / 12,
    unit: 'in⁴',
    clause: 'statics',
    from: [member.path],
  });
  if (rule.dead(member.section) > 0) {
    rec.step({
      symbol: 'ΔD',
      meaning: kind === 'long-term' ? 'deflection under dead load with its creep' : 'deflection under dead load',
      formula: kind === 'long-term' ? 'Kcr · ΔD' : "frame analysis with E'·I",
      substituted:
        kind === 'long-term'
          ? `${creepFactor(member.section)} · ${(w.dead / creepFactor(member.section)).toFixed(4)}`
          : 'case D',
      value: w.dead,
      unit: 'in',
      clause: kind === 'long-term' ? 'NDS 2018 3.5.2' : 'statics',
      from: [member.path],
    });
  }
  if (w.live >= 0) {
    rec.step({
      symbol: 'ΔL',
      meaning: `deflection ${place(member, effects.stations[w.station]!)}`,
      formula: "frame analysis with E'·I",
      substituted: `case ${ctx.loads.cases[w.live]!.id}${ctx.loads.cases[w.live]!.kind === 'W' ? ' · 0.42' : ''}`,
      value: w.moving,
      unit: 'in',
      clause: 'statics',
      from: [member.path],
    });
  }
  rec.step({
    symbol: 'limit',
    meaning:
      length === effects.spans[effects.spanOf[w.station] ?? 0]?.length
        ? 'span over divisor'
        : 'twice the overhang over divisor',
    formula: 'L / divisor',
    substituted: `${length.toFixed(1)} / ${divisor}`,
    value: w.limit,
    unit: 'in',
    clause: CLAUSE,
    from: [`/choices/deflection/${rule.divisor}`],
  });
}

export const deflectionCheck = (role: MemberRole, noun: string, kind: DeflectionKind): Check => ({
  id: `${role}-deflection-${kind}`,
  title: `${noun} ${RULES[kind].title}`,
  subjects: (ctx) => memberSubjects(ctx, role),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    const w = worstDeflection(ctx, loaded, RULES[kind]);
    if (!w) return notApplicable(CLAUSE, 'no load case bends this member');
    const live = w.live < 0 ? undefined : ctx.loads.cases[w.live]!;
    const moving = live ? (live.kind === 'W' ? `0.42${live.id}` : live.id) : '';
    const dead = RULES[kind].dead(w.on.member.section) > 0 ? 'D' : '';
    const name = [dead, moving].filter((x) => x !== '').join(' + ');
    record(ctx, kind, w, name, rec);
    const sag = Math.abs(w.dead + w.moving);
    return measured(
      {
        demand: sag,
        capacity: w.limit,
        unit: 'in',
        combination: name,
        clause: kind === 'long-term' ? `${CLAUSE}, NDS 2018 3.5.2` : CLAUSE,
        formula: 'Δ / limit',
        remedy: `${w.on.member.id} would move ${sag.toFixed(2)} in where ${w.limit.toFixed(2)} in is the limit: use a deeper or stiffer section, or shorten the span.`,
      },
      rec,
    );
  },
});
