/**
 * The roof as a level deep beam. Where the house holds side load the roof is held along that one side (4.2.5.2): its
 * sheathing hands the whole of it over at the house edge, together with the pull and push that stop it from turning.
 * Where posts or braces hold it, the shear anywhere is at most the whole load over the roof's extent, wherever they stand.
 */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import { allowableUnitShear, CANTILEVER, cantileverDeflection, spanAspect } from '../codes/sdpws-2015/index.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, ratioOf } from '../finding.js';
import { chordsOf } from './chords.js';
import { clauseOf, editionOf, hazardOf, type Sheathed, sheathedRoof } from './sheathing.js';
import { caseSums, type RoofSide, sideOf, under } from './side-loads.js';
import { ALONG, type Axis } from './system.js';

const AXES: readonly Axis[] = ['x', 'y'];

interface Demand {
  readonly combination: Combination;
  /** Shear through the field, line load along and square to the house edge, and their resultant, plf. */
  readonly field: number;
  readonly q: number;
  readonly n: number;
  readonly v: number;
  readonly along: number;
  readonly square: number;
  readonly couple: number;
}

/** Plan width that carries shear along the wall, inches: between the chords, never wider than the roof. */
export const shearWidth = (ctx: CheckContext, side: RoofSide): number => {
  const { min, max } = side.roof;
  return Math.min(chordsOf(ctx, side.roof, 'y')?.apart ?? max.x - min.x, max.x - min.x);
};

/** Distance of the house line, and its length, inches; the roof's own edge where none is named yet. */
function edgeOf(ctx: CheckContext, side: RoofSide) {
  const { min, max } = side.roof;
  if (side.line) return side.line;
  const length = shearWidth(ctx, side);
  return {
    y: min.y,
    centre: (min.x + max.x) / 2,
    length,
    second: length ** 3 / 12,
    reach: length / 2,
  };
}

function atHouse(ctx: CheckContext, side: RoofSide): readonly Demand[] {
  const line = edgeOf(ctx, side);
  const cases = ctx.loads.cases.length;
  const sums = caseSums(side.points, cases, line.centre, line.y);
  const direct = caseSums(side.direct, cases, line.centre, line.y);
  const width = shearWidth(ctx, side);
  return ctx.loads.combinations.map((combination) => {
    // What reaches the ledger directly along the wall still crosses its nails; square to the wall the framing brings it.
    const along = under(combination, sums.along) + under(combination, direct.along);
    const square = under(combination, sums.square);
    const couple = under(combination, sums.couple);
    const q = (12 * Math.abs(along)) / line.length;
    const n = (12 * Math.abs(square)) / line.length + (12 * Math.abs(couple) * line.reach) / line.second;
    const field = (12 * Math.abs(along)) / width;
    return { combination, field, q, n, v: Math.max(field, Math.hypot(q, n)), along, square, couple };
  });
}

/** Shear between lines of posts or braces: the whole load of the direction over the roof's extent that way. */
function betweenLines(ctx: CheckContext, side: RoofSide, axis: Axis): readonly Demand[] {
  const { min, max } = side.roof;
  const sums = caseSums(side.all, ctx.loads.cases.length, 0, 0);
  const values = axis === 'x' ? sums.along : sums.square;
  const extent = max[axis] - min[axis];
  return ctx.loads.combinations.map((combination) => {
    const total = under(combination, values);
    const field = (12 * Math.abs(total)) / extent;
    return {
      combination,
      field,
      q: field,
      n: 0,
      v: field,
      along: axis === 'x' ? total : 0,
      square: axis === 'y' ? total : 0,
      couple: 0,
    };
  });
}

interface Worst extends Demand {
  readonly allowed: number;
  readonly ratio: number;
  readonly axis: Axis | 'house';
}

function worstOf(ctx: CheckContext, s: Sheathed, demands: readonly Demand[], axis: Worst['axis']): Worst | undefined {
  const edition = editionOf(ctx);
  const known = new Map<string, number>();
  let worst: Worst | undefined;
  for (const d of demands) {
    const hazard = hazardOf(ctx, d.combination);
    const key = `${hazard} ${d.combination.CD}`;
    const allowed = known.get(key) ?? allowableUnitShear(s.found, hazard, d.combination.CD, s.G, edition);
    known.set(key, allowed);
    const ratio = ratioOf(d.v, allowed);
    if (!worst || ratio > worst.ratio) worst = { ...d, allowed, ratio, axis };
  }
  return worst;
}

/** Shape limits, in words, when one is broken. */
function shapeFault(ctx: CheckContext, side: RoofSide, s: Sheathed, rec?: Recorder): string | undefined {
  const { lateral } = ctx.project.cover;
  const { min, max, mark } = side.roof;
  const clause = clauseOf(ctx);
  if (lateral.x === 'house' || lateral.y === 'house') {
    const L = max.y - edgeOf(ctx, side).y;
    const W = shearWidth(ctx, side);
    rec?.step({
      symbol: "L'/W'",
      meaning: `reach from the house over width, at most ${CANTILEVER.aspect}; L' at most ${CANTILEVER.length} ft`,
      formula: "L' / W'",
      substituted: `${(L / 12).toFixed(2)} ft / ${(W / 12).toFixed(2)} ft`,
      value: L / W,
      unit: '',
      clause: `${clause}.5.2`,
      note: 'limits recalled from memory (one story, torsionally irregular); written for earthquake, kept here for wind too',
    });
    if (L > CANTILEVER.length * 12 || L / W > CANTILEVER.aspect + 1e-9) {
      return `${mark} reaches ${(L / 12).toFixed(1)} ft out from the house and is ${(W / 12).toFixed(1)} ft wide: past the limits of a diaphragm held along one side (L'/W' ${CANTILEVER.aspect}, ${CANTILEVER.length} ft). Hold the outer posts with knee braces, or have a licensed professional design it.`;
    }
  }
  for (const axis of AXES) {
    if (lateral[axis] === 'house') continue;
    const o = axis === 'x' ? 'y' : 'x';
    const ratio = (max[o] - min[o]) / (max[axis] - min[axis]);
    const limit = spanAspect(s.nailed.blocked);
    rec?.step({
      symbol: 'L/W',
      meaning: `length over width for load ${ALONG[axis]}, at most ${limit}`,
      formula: 'L / W',
      substituted: `${((max[o] - min[o]) / 12).toFixed(2)} ft / ${((max[axis] - min[axis]) / 12).toFixed(2)} ft`,
      value: ratio,
      unit: '',
      clause: `${clause}.4 Table 4.2.4`,
      note: 'limit recalled from memory: confirm',
    });
    if (ratio > limit + 1e-9)
      return `${mark} is ${ratio.toFixed(1)} times as long as wide for load ${ALONG[axis]}; a diaphragm may be ${limit} times. Block the panel edges, or have a licensed professional design it.`;
  }
  return undefined;
}

function recordDemand(ctx: CheckContext, side: RoofSide, w: Worst, s: Sheathed, rec?: Recorder): void {
  if (!rec) return;
  const { combination } = w;
  const { clause } = combination;
  const path = side.roof.path;
  rec.heading(`${side.roof.mark}: ${s.text}, ${combination.id}`);
  const plf = (symbol: string, meaning: string, formula: string, substituted: string, value: number, note?: string) =>
    rec.step({
      symbol,
      meaning,
      formula,
      substituted,
      value,
      unit: 'plf',
      clause: 'statics',
      from: [path],
      ...(note === undefined ? {} : { note }),
    });
  if (w.axis !== 'house') {
    const extent = (side.roof.max[w.axis] - side.roof.min[w.axis]) / 12;
    const total = Math.abs(w.along + w.square);
    rec.step({
      symbol: 'V',
      meaning: `whole side load of this roof ${ALONG[w.axis]}`,
      formula: combination.label,
      substituted: combination.id,
      value: total,
      unit: 'lb',
      clause,
      from: [path],
    });
    plf(
      'v',
      'unit shear, at most: the whole load passing one line',
      'V / extent of the roof in the direction of the load',
      `${total.toFixed(0)} / ${extent.toFixed(2)}`,
      w.v,
      'holds wherever the lines of posts or braces stand',
    );
    return;
  }
  const line = edgeOf(ctx, side);
  for (const [symbol, meaning, value, unit] of [
    ['Vx', 'side load along the wall, from every place where the roof is held', w.along, 'lb'],
    ['Vy', 'side load square to the wall that the sheathing brings', w.square, 'lb'],
    ['M', 'couple about the middle of the house line: ΣFx·(y − y0) − ΣFy·(x − xc)', w.couple, 'lb·in'],
  ] as const) {
    rec.step({
      symbol,
      meaning,
      formula: combination.label,
      substituted: combination.id,
      value: Math.abs(value),
      unit,
      clause,
      from: [path],
    });
  }
  const width = shearWidth(ctx, side) / 12;
  plf(
    'v',
    'unit shear in the sheathing at the house; on slopes the same along the slope, since V/W holds per foot of plan',
    'Vx / W',
    `${Math.abs(w.along).toFixed(0)} / ${width.toFixed(2)}`,
    w.field,
  );
  plf(
    'q',
    'shear along the line that the house holds',
    'Vx / ΣL',
    `${Math.abs(w.along).toFixed(0)} / ${(line.length / 12).toFixed(2)}`,
    w.q,
  );
  plf(
    'n',
    'greatest pull or push square to that line',
    'Vy / ΣL + M·c / I',
    `${Math.abs(w.square).toFixed(0)} / ${(line.length / 12).toFixed(2)} + 12·${Math.abs(w.couple).toFixed(0)}·${line.reach.toFixed(1)} / ${line.second.toFixed(0)}`,
    w.n,
    'nails of less than 1/4 in hold alike along and square to the line (NDS 2018 12.3.3)',
  );
  plf(
    'vr',
    'unit load on the boundary nails',
    '√(q² + n²), not under v',
    `√(${w.q.toFixed(1)}² + ${w.n.toFixed(1)}²)`,
    w.v,
  );
}

/** Movement of the far end, for information. */
function recordDrift(ctx: CheckContext, side: RoofSide, w: Worst, s: Sheathed, rec?: Recorder): void {
  const chord = chordsOf(ctx, side.roof, 'y')?.low.members[0];
  if (!rec || !chord || w.axis !== 'house') return;
  const { E } = chord.section.values;
  const L = (side.roof.max.y - edgeOf(ctx, side).y) / 12;
  const Ga = s.plywood ? s.found.cell.GaPly : s.found.cell.GaOsb;
  cantileverDeflection(
    w.field,
    L,
    shearWidth(ctx, side) / 12,
    E,
    chord.section.b * chord.section.d,
    Ga,
    editionOf(ctx),
    rec,
  );
}

export const diaphragm: Check = {
  id: 'diaphragm',
  title: 'Roof as a diaphragm',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path })),
  run(subject, ctx, rec): Finding {
    const clause = clauseOf(ctx);
    const roof = ctx.project.cover.roofs.find((r) => r.mark === subject.id);
    const side = sideOf(ctx, subject.id);
    if (!roof || !side) return notEvaluated(clause, 'this roof was not placed');
    const s = sheathedRoof(ctx, roof);
    if ('finding' in s) return s.finding;
    if (side.split) {
      return outsideScope(
        clause,
        `${roof.mark} is tied to more than one wall: how they share side load needs a licensed professional.`,
      );
    }
    const { lateral } = ctx.project.cover;
    const wanted: Worst[] = [];
    if (lateral.x === 'house' || lateral.y === 'house') {
      const w = worstOf(ctx, s, atHouse(ctx, side), 'house');
      if (w) wanted.push(w);
    }
    for (const axis of AXES) {
      const w = lateral[axis] === 'house' ? undefined : worstOf(ctx, s, betweenLines(ctx, side, axis), axis);
      if (w) wanted.push(w);
    }
    const worst = wanted.sort((a, b) => b.ratio - a.ratio)[0];
    if (!worst) return notApplicable(clause, 'no combination of loads exists');
    recordDemand(ctx, side, worst, s, rec);
    const fault = shapeFault(ctx, side, s, rec);
    if (fault !== undefined) return outsideScope(`${clause}.5.2`, fault);
    recordDrift(ctx, side, worst, s, rec);
    allowableUnitShear(s.found, hazardOf(ctx, worst.combination), worst.combination.CD, s.G, editionOf(ctx), rec);
    const cure = s.nailed.blocked
      ? 'nail closer, or use a thicker panel with 10d nails'
      : 'block the panel edges, nail closer, or use a thicker panel';
    return measured(
      {
        demand: worst.v,
        capacity: worst.allowed,
        unit: 'plf',
        combination: worst.combination.id,
        clause: `${clause}.3`,
        formula: worst.axis === 'house' ? 'vr / va' : 'v / va',
        note: side.roof.surfaces.length > 1 ? `${RIDGE} ${s.text}.` : `${s.text}.`,
        remedy: `The sheathing of ${roof.mark} cannot carry the side load: ${cure}.`,
      },
      rec,
    );
  },
};

/** Two slopes work as one only when shear crosses the ridge. */
export const RIDGE =
  'Block between the frames along ridge and hips and nail both slopes to the blocks as at boundaries:';
