/** The steps behind a diaphragm's demand, each with the numbers a pocket calculator needs. */
import type { Recorder } from '../../base/trace.js';
import { cantileverDeflection } from '../codes/sdpws-2015/index.js';
import type { CheckContext } from '../contract.js';
import { sumText } from '../members/scan.js';
import { chordsOf } from './chords.js';
import { edgeOf, shearWidth, type Worst } from './diaphragm-demand.js';
import { edgeNailLine } from './edge-nails.js';
import { editionOf, type Sheathed } from './sheathing.js';
import { caseSums, type RoofSide } from './side-loads.js';
import { recordPlaces, recordSplit } from './side-places.js';
import { ALONG } from './system.js';

export function recordDemand(ctx: CheckContext, side: RoofSide, w: Worst, s: Sheathed, rec?: Recorder): void {
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
    const all = caseSums(side.all, ctx.loads.cases.length, 0, 0);
    rec.step({
      symbol: 'V',
      meaning: `whole side load of this roof ${ALONG[w.axis]}`,
      formula: combination.label,
      substituted: sumText(ctx, combination, (c) => (w.axis === 'x' ? all.along[c]! : all.square[c]!)),
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
  const cases = ctx.loads.cases.length;
  const sums = caseSums(side.points, cases, line.centre, line.y);
  const direct = caseSums(side.direct, cases, line.centre, line.y);
  for (const [symbol, meaning, values, value, unit] of [
    ['Vx', 'side load along the wall', sums.along.map((x, c) => x + direct.along[c]!), w.along, 'lb'],
    ['Vy', 'side load square to the wall that the sheathing brings', sums.square, w.square, 'lb'],
    ['M', 'couple about the middle of the house line', sums.couple, w.couple, 'lb·in'],
  ] as const) {
    rec.step({
      symbol,
      meaning,
      formula: symbol === 'M' ? 'Σ Fx·(y − y0) − Fy·(x − xc), as below' : combination.label,
      substituted: sumText(ctx, combination, (c) => values[c]!),
      value,
      unit,
      clause,
      from: [path],
    });
  }
  recordSplit(ctx, side, combination, rec);
  recordPlaces(ctx, side, { centre: line.centre, y: line.y, about: 'the wall' }, combination, rec);
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
  );
  edgeNailLine(s, rec);
  rec.step({
    symbol: 'k',
    meaning: `what a pound square to the line asks of the nails beside one along it, load duration ${combination.CD}`,
    formula: 'va / (na1 · CD), not under 1',
    substituted: `va = ${w.allowed.toFixed(1)}`,
    value: w.k,
    unit: '',
    clause: 'NDS 2018 12.3.1',
  });
  plf(
    'vr',
    'unit load on the boundary nails',
    '√(q² + (k·n)²), not under v',
    `√(${w.q.toFixed(1)}² + (${w.k.toFixed(3)}·${w.n.toFixed(1)})²)`,
    w.v,
  );
}

/** Movement of the far end, for information. */
export function recordDrift(ctx: CheckContext, side: RoofSide, w: Worst, s: Sheathed, rec?: Recorder): void {
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
