/**
 * The roof as a level deep beam. Where the house holds side load the roof is held along that one side (4.2.5.2): its
 * sheathing hands the whole of it over at the house edge, together with the pull and push that stop it from turning.
 * Where posts or braces hold it, the shear anywhere is at most the whole load over the roof's extent, wherever they stand.
 */
import type { Recorder } from '../../base/trace.js';
import { allowableUnitShear, CANTILEVER, spanAspect } from '../codes/sdpws-2015/index.js';
import type { CheckContext, Finding } from '../contract.js';
import { measured, notApplicable, notEvaluated, outsideScope, ratioOf } from '../finding.js';
import { chordsOf } from './chords.js';
import { atHouse, betweenLines, type Demand, edgeOf, shearWidth, type Worst } from './diaphragm-demand.js';
import { recordDemand, recordDrift } from './diaphragm-trace.js';
import { edgeNailLine } from './edge-nails.js';
import { once } from './once.js';
import { clauseOf, editionOf, hazardOf, type Sheathed, sheathedRoof } from './sheathing.js';
import { type RoofSide, sideOf } from './side-loads.js';
import { ALONG, type Axis } from './system.js';

const AXES: readonly Axis[] = ['x', 'y'];
/** How far the house line may end short of a chord before shear must be gathered by a collector, inches. No source. */
const SHORT = 24;

/** The house line must reach from chord to chord, since no collector is designed here. */
function shortLine(ctx: CheckContext, side: RoofSide): string | undefined {
  const chords = chordsOf(ctx, side.roof, 'y');
  const { lateral } = ctx.project.cover;
  if (lateral.x !== 'house' && lateral.y !== 'house') return undefined;
  if (!side.line || !chords) return undefined;
  const from = Math.min(...side.line.seats.map((s) => s.from));
  const to = Math.max(...side.line.seats.map((s) => s.to));
  const open = chords.apart - side.line.length;
  if (from - chords.low.off <= SHORT && chords.high.off - to <= SHORT && open <= 2 * SHORT) return undefined;
  const marks = side.line.seats.map((s) => s.mark).join(' and ');
  return `${marks} does not run over the width of ${side.roof.mark}, ${(chords.apart / 12).toFixed(1)} ft between its edge members: lengthen it to within ${SHORT / 12} ft of both, or have a licensed professional design a collector.`;
}

function worstOf(ctx: CheckContext, s: Sheathed, demands: readonly Demand[], axis: Worst['axis']): Worst | undefined {
  const edition = editionOf(ctx);
  const known = new Map<string, number>();
  const nails = edgeNailLine(s);
  let worst: Worst | undefined;
  for (const d of demands) {
    const hazard = hazardOf(ctx, d.combination);
    const key = `${hazard} ${d.combination.CD}`;
    const allowed = known.get(key) ?? allowableUnitShear(s.found, hazard, d.combination.CD, s.G, edition);
    known.set(key, allowed);
    const k = Math.max(1, ratioOf(allowed, nails * d.combination.CD));
    const v = Math.max(d.field, Math.hypot(d.q, k * d.n));
    const ratio = ratioOf(v, allowed);
    if (!worst || ratio > worst.ratio) worst = { ...d, v, k, allowed, ratio, axis };
  }
  return worst;
}

/** Shape limits, in words, when one is broken. */
function shapeFault(ctx: CheckContext, side: RoofSide, s: Sheathed, rec?: Recorder): string | undefined {
  const { lateral } = ctx.project.cover;
  const { min, max, mark } = side.roof;
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
      clause: clauseOf(ctx, 'oneSide'),
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
      clause: clauseOf(ctx, 'shape'),
      note: 'limit recalled from memory: confirm',
    });
    if (ratio > limit + 1e-9)
      return `${mark} is ${ratio.toFixed(1)} times as long as wide for load ${ALONG[axis]}; a diaphragm may be ${limit} times. Block the panel edges, or have a licensed professional design it.`;
  }
  return undefined;
}

export const diaphragm = once({
  id: 'diaphragm',
  title: 'Roof as a diaphragm',
  subjects: (ctx) => ctx.project.cover.roofs.map((r) => ({ id: r.mark, path: r.path })),
  run(subject, ctx, rec): Finding {
    const clause = clauseOf(ctx);
    const roof = ctx.project.cover.roofs.find((r) => r.mark === subject.id);
    const side = sideOf(ctx, subject.id);
    if (!roof || !side) return notEvaluated(clause, 'this roof was not placed');
    if (side.turned) {
      return outsideScope(
        clause,
        `${roof.mark} is held by a wall square to the rear one: side load handed to such a wall needs a licensed professional.`,
      );
    }
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
    const fault = shapeFault(ctx, side, s, rec) ?? shortLine(ctx, side);
    if (fault !== undefined) return outsideScope(clauseOf(ctx, 'oneSide'), fault);
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
        clause: clauseOf(ctx, 'capacity'),
        formula: worst.axis === 'house' ? 'vr / va' : 'v / va',
        note: side.roof.surfaces.length > 1 ? `${RIDGE} ${s.text}.` : `${s.text}.`,
        remedy: `The sheathing of ${roof.mark} cannot carry the side load: ${cure}.`,
      },
      rec,
    );
  },
});

/** Two slopes work as one only when shear crosses the ridge. */
export const RIDGE =
  'Block between the frames along ridge and hips and nail both slopes to the blocks as at boundaries:';
