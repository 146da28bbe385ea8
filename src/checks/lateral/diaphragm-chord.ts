/**
 * Edge members that take the push and pull of the roof's bending as a level beam, on top of what they carry anyway. Under
 * every combination with side load the force along the chord joins the member's own axial force and bending (NDS 3.9), and
 * by itself it is compared with plain tension (NDS 3.8.1). Combinations without side load bend no roof: the members are
 * proved for those by their own checks.
 */
import type { Recorder } from '../../base/trace.js';
import type { Member } from '../../structure/model.js';
import type { CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, RATIO_CAP } from '../finding.js';
import { durationPart, ratings } from '../joints/rating.js';
import { productFor } from '../joints/serving.js';
import { combinedFinding, type Worst } from '../members/combined.js';
import { designValue, WET_REFUSED } from '../members/design.js';
import { sumText } from '../members/scan.js';
import { type Loaded, noForces } from '../members/subjects.js';
import { type Chording, chordings, type Greatest, greatest, sideCombinations, type Which } from './chord-force.js';
import type { ChordLine } from './chords.js';
import { once } from './once.js';
import { clauseOf } from './sheathing.js';
import { type RoofSide, sideOf, under } from './side-loads.js';
import { ALONG } from './system.js';
import { NO_SIDE_LOAD, trussChordFinding } from './truss-chord.js';

const CLAUSE = 'NDS 2018 3.8.1, 3.9';
/** Forces under this are rounding, lb. */
const SMALL = 1;

/** A chord member with its own forces, those with the chord force on top, and where its stations lie along the chord. */
interface Chord {
  readonly member: Member;
  readonly own: Loaded;
  readonly both: Loaded;
  readonly places: readonly number[];
  /** Chord force at each of them, per case, lb. */
  readonly forces: readonly Float64Array[];
  /** Level run over length: the chord force is level, the member may slope. */
  readonly cos: number;
}

function chordOf(ctx: CheckContext, m: Member, c: Chording, line: Which): Chord | undefined {
  const effects = ctx.effects.members.get(m.id);
  if (!effects || effects.stations.length === 0) return undefined;
  const { along } = c.chords;
  const run = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y, m.end.z - m.start.z);
  const cos = Math.abs(m.end[along] - m.start[along]) / run;
  const places = Array.from(effects.stations, (s) => m.start[along] + ((m.end[along] - m.start[along]) * s) / run);
  const forces = places.map((at) => c.force(line, at));
  const different = [...new Set(forces)];
  // A case that does not bend the roof leaves the member's own row as it is.
  const n = effects.n.map((row, k) =>
    different.some((force) => force[k] !== 0) ? row.map((own, i) => own + forces[i]![k]! / cos) : row,
  );
  const both = { member: m, effects: { ...effects, n } };
  return { member: m, own: { member: m, effects }, both, places, forces, cos };
}

/** The chord force alone against plain tension. */
function plainFinding({ member: m, cos }: Chord, most: Greatest, rec?: Recorder): Finding {
  const CD = most.combination?.CD ?? 1;
  const T = most.value / cos;
  const Ft = designValue('Ft', m.section, { CD }, rec);
  if (Ft === undefined) return outsideScope('NDS 2018 8.1.4', WET_REFUSED);
  const A = m.section.b * m.section.d;
  rec?.step({
    symbol: "T'",
    meaning: `allowable tension of ${m.id}, gross section`,
    formula: "A · Ft'",
    substituted: `${m.section.b}·${m.section.d} · ${Ft.toFixed(0)}`,
    value: A * Ft,
    unit: 'lb',
    clause: 'NDS 2018 3.8.1',
  });
  return measured(
    {
      demand: T,
      capacity: A * Ft,
      unit: 'lb',
      combination: most.combination?.id ?? '',
      clause: 'NDS 2018 3.8.1',
      formula: cos < 1 ? "(Tc / cos of the slope) / T'" : "Tc / T'",
      remedy: `${m.id} is too weak as a chord of the roof: use a larger or stronger section.`,
    },
    rec,
  );
}

/** Own force, chord force and their sum at the governing place, in place of the sum alone. */
function recordSum(ctx: CheckContext, chord: Chord, c: Chording, line: Which, w: Worst, rec: Recorder): void {
  const { effects } = chord.own;
  const at = chord.places[w.station]!;
  const { combination } = w;
  const own = combination.terms.reduce((sum, t) => sum + t.factor * effects.n[t.case]![w.station]!, 0);
  rec.step({
    symbol: 'N0',
    meaning: 'its own force along it there, pull positive',
    formula: combination.label,
    substituted: sumText(ctx, combination, (k) => effects.n[k]![w.station]!),
    value: own,
    unit: 'lb',
    clause: combination.clause,
    from: [chord.member.path],
  });
  c.record(line, at, combination, rec);
  const Tc = under(combination, chord.forces[w.station]!);
  rec.step({
    symbol: 'N',
    meaning: w.N < 0 ? 'push with the chord force on top' : 'pull with the chord force on top',
    formula: chord.cos < 1 ? 'N0 + Tc / cos of the slope' : 'N0 + Tc',
    substituted: `${own.toFixed(1)} + ${Tc.toFixed(1)}${chord.cos < 1 ? ` / ${chord.cos.toFixed(4)}` : ''}`,
    value: w.N,
    unit: 'lb',
    clause: 'statics',
  });
}

/** Splices of a chord must hold its force: a product rated along the beam. */
function spliceFinding(ctx: CheckContext, line: ChordLine, which: Which, c: Chording): Finding | undefined {
  const ids = new Set(line.members.map((m) => m.id));
  for (const j of ctx.structure.joints) {
    if (j.kind !== 'beam-splice' || !j.ties.some((t) => ids.has(t.part))) continue;
    const { value: T, combination } = greatest(ctx, c, which, [j.at[c.chords.along]]);
    if (T < SMALL || !combination) continue;
    const product = productFor(ctx.project.choices, j.mark, j.kind);
    const rated = product && ratings(product, 'alike')[c.chords.along === 'x' ? 'along' : 'across'];
    const path = `${j.mark} splices a chord of the roof and must hold ${Math.ceil(T)} lb of pull along the beam`;
    if (!product || rated === undefined) {
      return notEvaluated(
        'NDS 2018 chapter 11',
        `${path}. Needed: a strap or plate rated along the beam, under choices.joints.`,
      );
    }
    const allowed = rated * durationPart(combination.CD, product.duration);
    if (T > allowed) {
      return measured({
        demand: T,
        capacity: allowed,
        unit: 'lb',
        combination: combination.id,
        clause: 'NDS 2018 chapter 11',
        formula: 'T / T′',
        remedy: `${path}; the product allows ${Math.floor(allowed)} lb: use a stronger strap or run the beam in one piece.`,
      });
    }
  }
  return undefined;
}

const rank = (f: Finding): number =>
  f.status === 'outside-scope'
    ? 4
    : f.status === 'not-evaluated'
      ? 3
      : f.status === 'fail'
        ? 2 + f.ratio / (RATIO_CAP + 1)
        : f.ratio;

interface Asked {
  readonly run: (rec?: Recorder) => Finding;
}

/** One chord member: its chord force, alone and with all else it carries. */
function chordFinding(
  ctx: CheckContext,
  side: RoofSide,
  m: Member,
  c: Chording,
  which: Which,
  rec?: Recorder,
): Finding {
  const chord = m.truss ? undefined : chordOf(ctx, m, c, which);
  if (!m.truss && !chord) return noForces(CLAUSE);
  const most = greatest(ctx, c, which, [c.inner, ...new Set(chord?.places)]);
  if (most.value < SMALL || !most.combination) return notApplicable(CLAUSE, NO_SIDE_LOAD);
  rec?.heading(`${m.id} as chord of ${side.roof.mark}: greatest chord force, ${most.combination.id}`);
  if (rec) c.record(which, most.at, most.combination, rec);
  if (!chord) return trussChordFinding(ctx, m, most, rec);
  const plain = plainFinding(chord, most, rec);
  // Only what bends the roof: other combinations are in the member's own checks.
  const different = [...new Set(chord.forces)];
  const combinations = sideCombinations(ctx).filter((k) =>
    different.some((force) => Math.abs(under(k, force)) >= SMALL),
  );
  const only: CheckContext = { ...ctx, loads: { ...ctx.loads, combinations } };
  const both = combinedFinding(only, [chord.both], rec, '', (w, r) => recordSum(ctx, chord, c, which, w, r));
  const [worse, word] =
    both.status !== 'not-applicable' && rank(both) >= rank(plain)
      ? [both, 'with all it carries']
      : [plain, 'chord force alone'];
  rec?.step({
    symbol: 'ratio',
    meaning: `${m.id} as chord: ${word} governs`,
    formula: 'greater of chord force alone and with all it carries',
    substituted: `${plain.ratio.toFixed(4)}; ${both.ratio.toFixed(4)}`,
    value: worse.ratio,
    unit: '',
    clause: worse.clause,
  });
  return worse;
}

/** Every chord member as a question, so that the worst can be asked again with a recorder. */
function questions(ctx: CheckContext, side: RoofSide): readonly Asked[] {
  const out: Asked[] = [];
  for (const c of chordings(ctx, side)) {
    if (typeof c === 'string') {
      const none = `${side.roof.mark} has no two members ${ALONG[c]} at its edges to be its chords.`;
      out.push({ run: () => notEvaluated(clauseOf(ctx), none) });
      continue;
    }
    for (const which of ['low', 'high'] as const) {
      const line = c.chords[which];
      const splice = spliceFinding(ctx, line, which, c);
      if (splice) out.push({ run: () => splice });
      for (const m of line.members) out.push({ run: (rec) => chordFinding(ctx, side, m, c, which, rec) });
    }
  }
  return out;
}

export const diaphragmChord = once({
  id: 'diaphragm-chord',
  title: 'Edge members as chords of the roof',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path })),
  run(subject, ctx, rec): Finding {
    const side = sideOf(ctx, subject.id);
    if (!side) return notEvaluated(clauseOf(ctx), 'this roof was not placed');
    let worst: { asked: Asked; finding: Finding } | undefined;
    const told = new Set<string>();
    for (const asked of questions(ctx, side)) {
      const finding = asked.run();
      if (finding.status === 'not-applicable') {
        if (finding.note !== NO_SIDE_LOAD) told.add(finding.note);
        continue;
      }
      if (!worst || rank(finding) > rank(worst.finding)) worst = { asked, finding };
    }
    const note = [...told].join('; ');
    if (!worst) return notApplicable(CLAUSE, note || NO_SIDE_LOAD);
    if (rec) worst.asked.run(rec);
    // What is still to come is said, whichever member is used most.
    return worst.finding.status === 'pass' && note !== '' ? { ...worst.finding, note } : worst.finding;
  },
});
