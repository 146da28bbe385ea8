/**
 * Edge members that take the push and pull of the roof's bending as a level beam, on top of what they carry anyway. The
 * force along a chord is linear in the load, so it is added case by case and the members are proved as ever (NDS 3.9).
 */
import type { Recorder } from '../../base/trace.js';
import type { Member } from '../../structure/model.js';
import type { CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, RATIO_CAP } from '../finding.js';
import { durationPart, ratings } from '../joints/rating.js';
import { productFor } from '../joints/serving.js';
import { combinedFinding } from '../members/combined.js';
import { designValue } from '../members/design.js';
import type { Loaded } from '../members/subjects.js';
import { type ChordLine, type Chords, chordsOf } from './chords.js';
import { once } from './once.js';
import { clauseOf } from './sheathing.js';
import { caseSums, type RoofSide, sideOf, under } from './side-loads.js';
import { ALONG, type Axis } from './system.js';

/** Part of a truss chord's plain strength that roof bending may use unasked; more is the truss engineer's. No source. */
const TRUSS_SHARE = 0.1;
/** Forces under this are rounding, lb. */
const SMALL = 1;

/** Axial force in a chord of one roof, tension positive, per case, at a place along the chord (house axis), lb. */
type ChordForce = (line: 'low' | 'high', at: number) => Float64Array;

interface Chording {
  readonly chords: Chords;
  readonly force: ChordForce;
  /** How the force comes about, for the trace. */
  readonly formula: string;
  readonly text: string;
}

/** Chords square to the wall of a roof held by the house: the couple of all that acts farther out, over their distance. */
function heldByHouse(ctx: CheckContext, side: RoofSide, chords: Chords): Chording {
  const cases = ctx.loads.cases.length;
  const centre = side.line?.centre ?? (side.roof.min.x + side.roof.max.x) / 2;
  const known = new Map<number, Float64Array>();
  const coupleAt = (y: number): Float64Array => {
    let sum = known.get(y);
    if (!sum) {
      sum = caseSums(
        side.points.filter((p) => p.at.y > y),
        cases,
        centre,
        y,
      ).couple;
      known.set(y, sum);
    }
    return sum;
  };
  return {
    chords,
    // A positive couple stretches the chord on the −x side.
    force: (line, at) => coupleAt(at).map((m) => (line === 'low' ? m : -m) / chords.apart),
    formula: 'M(y) / d, M(y) = Σ over places farther out of Fx·(yi − y) − Fy·(xi − xc)',
    text: `d = ${(chords.apart / 12).toFixed(2)} ft`,
  };
}

/** Chords of a roof held by posts or braces: at most V·L/4 wherever the lines stand. */
function heldByPosts(ctx: CheckContext, side: RoofSide, chords: Chords, load: Axis): Chording {
  const sums = caseSums(side.all, ctx.loads.cases.length, 0, 0);
  const L = side.roof.max[chords.along] - side.roof.min[chords.along];
  const total = load === 'x' ? sums.along : sums.square;
  const low = total.map((V) => (V * L) / 4 / chords.apart);
  const high = low.map((T) => -T);
  return {
    chords,
    force: (line) => (line === 'low' ? low : high),
    formula: 'V·L/(4·d), not exceeded wherever the lines of posts or braces stand',
    text: `L = ${(L / 12).toFixed(2)} ft, d = ${(chords.apart / 12).toFixed(2)} ft`,
  };
}

/** A member with the chord force added to its own. */
function withChord(ctx: CheckContext, m: Member, c: Chording, line: 'low' | 'high'): Loaded | undefined {
  const effects = ctx.effects.members.get(m.id);
  if (!effects || effects.stations.length === 0) return undefined;
  const { along } = c.chords;
  const run = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y, m.end.z - m.start.z);
  const cos = Math.abs(m.end[along] - m.start[along]) / run;
  const n = effects.n.map((row) => Float64Array.from(row));
  effects.stations.forEach((s, i) => {
    const at = m.start[along] + ((m.end[along] - m.start[along]) * s) / run;
    const force = c.force(line, at);
    for (let k = 0; k < n.length; k++) n[k]![i] = n[k]![i]! + force[k]! / cos;
  });
  return { member: m, effects: { ...effects, n } };
}

/** Greatest size of a chord force over the combinations, and the combination. */
function greatest(ctx: CheckContext, perCase: Float64Array) {
  let value = 0;
  let combination = ctx.loads.combinations[0];
  for (const c of ctx.loads.combinations) {
    const T = Math.abs(under(c, perCase));
    if (T > value) {
      value = T;
      combination = c;
    }
  }
  return { value, combination };
}

const innerEnd = (side: RoofSide, along: Axis): number =>
  along === 'y' ? (side.line?.y ?? side.roof.min.y) : side.roof.min[along];

/** A truss or trim as chord: plain tension against a small part of its strength. */
function plain(
  ctx: CheckContext,
  side: RoofSide,
  m: Member,
  c: Chording,
  line: 'low' | 'high',
  rec?: Recorder,
): Finding {
  const { value: T, combination } = greatest(ctx, c.force(line, innerEnd(side, c.chords.along)));
  const CD = combination?.CD ?? 1;
  const Ft = designValue('Ft', m.section, { CD }, rec);
  if (!combination || Ft === undefined || Ft <= 0)
    return notEvaluated('NDS 2018 3.8', `${m.id} has no tension value to be a chord with.`);
  const A = m.section.plyWidth * (m.truss?.chordDepth ?? m.section.d);
  const allowed = TRUSS_SHARE * A * Ft;
  rec?.step({
    symbol: 'Ta',
    meaning: `part of the top chord of ${m.id} that roof bending may use unasked`,
    formula: `${TRUSS_SHARE} · A · Ft'`,
    substituted: `${TRUSS_SHARE} · ${A.toFixed(2)} · ${Ft.toFixed(0)}`,
    value: allowed,
    unit: 'lb',
    clause: 'rule of this program, no source',
  });
  if (T > allowed) {
    return outsideScope(
      'NDS 2018 3.8',
      `${m.id} is a chord of the roof with ${Math.ceil(T)} lb, more than ${Math.floor(allowed)} lb: the truss engineer must design it for that force.`,
    );
  }
  return measured(
    {
      demand: T,
      capacity: allowed,
      unit: 'lb',
      combination: combination.id,
      clause: 'NDS 2018 3.8',
      formula: 'T / Ta',
      note: `Tell the truss plant: the top chord of ${m.id} takes ${Math.ceil(T)} lb of roof bending.`,
      remedy: '',
    },
    rec,
  );
}

/** Splices of a chord must hold its force: a product rated along the beam. */
function spliceFinding(ctx: CheckContext, line: ChordLine, which: 'low' | 'high', c: Chording): Finding | undefined {
  const ids = new Set(line.members.map((m) => m.id));
  for (const j of ctx.structure.joints) {
    if (j.kind !== 'beam-splice' || !j.ties.some((t) => ids.has(t.part))) continue;
    const { value: T, combination } = greatest(ctx, c.force(which, j.at[c.chords.along]));
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

function chordings(ctx: CheckContext, side: RoofSide): readonly (Chording | Axis)[] {
  const { lateral } = ctx.project.cover;
  const out: (Chording | Axis)[] = [];
  if (lateral.x === 'house' || lateral.y === 'house') {
    const chords = chordsOf(ctx, side.roof, 'y');
    out.push(chords ? heldByHouse(ctx, side, chords) : 'y');
  }
  for (const load of ['x', 'y'] as const) {
    if (lateral[load] === 'house') continue;
    const along = load === 'x' ? 'y' : 'x';
    const chords = chordsOf(ctx, side.roof, along);
    out.push(chords ? heldByPosts(ctx, side, chords, load) : along);
  }
  return out;
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

/** Every chord member as a question, so that the worst can be asked again with a recorder. */
function questions(ctx: CheckContext, side: RoofSide): readonly Asked[] {
  const out: Asked[] = [];
  for (const c of chordings(ctx, side)) {
    if (typeof c === 'string') {
      out.push({
        run: () =>
          notEvaluated(
            clauseOf(ctx),
            `${side.roof.mark} has no two members ${ALONG[c]} at its edges to be its chords.`,
          ),
      });
      continue;
    }
    for (const which of ['low', 'high'] as const) {
      const line = c.chords[which];
      const splice = spliceFinding(ctx, line, which, c);
      if (splice) out.push({ run: () => splice });
      for (const m of line.members) {
        out.push({
          run: (rec) => {
            const { value, combination } = greatest(ctx, c.force(which, innerEnd(side, c.chords.along)));
            rec?.heading(`${m.id} as chord of ${side.roof.mark}`);
            rec?.step({
              symbol: 'Tc',
              meaning: 'greatest pull or push along the chord from the bending of the roof, at its inner end',
              formula: c.formula,
              substituted: `${(value * c.chords.apart).toFixed(0)} lb·in / ${c.chords.apart.toFixed(1)} in, ${combination?.id ?? ''}`,
              note: c.text,
              value,
              unit: 'lb',
              clause: 'statics',
              from: [m.path],
            });
            const loaded = m.truss ? undefined : withChord(ctx, m, c, which);
            return loaded ? combinedFinding(ctx, [loaded], rec) : plain(ctx, side, m, c, which, rec);
          },
        });
      }
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
      if (finding.status === 'not-applicable') continue;
      if (finding.status === 'pass' && finding.note !== '') told.add(finding.note);
      if (!worst || rank(finding) > rank(worst.finding)) worst = { asked, finding };
    }
    if (!worst) return notApplicable(clauseOf(ctx), 'no side load bends this roof');
    if (rec) worst.asked.run(rec);
    // What has to be told is told, whichever member is used most.
    return worst.finding.status === 'pass' ? { ...worst.finding, note: [...told].join(' ') } : worst.finding;
  },
});
