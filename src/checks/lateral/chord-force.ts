/** Push and pull that the edge members of a roof take when side load bends it as a deep level beam, and how it comes about. */
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { CheckContext } from '../contract.js';
import { sumText } from '../members/scan.js';
import { type Chords, chordsOf } from './chords.js';
import { caseSums, coupleOf, type RoofSide, under } from './side-loads.js';
import { recordPlaces } from './side-places.js';
import type { Axis } from './system.js';

export type Which = 'low' | 'high';

export interface Chording {
  readonly chords: Chords;
  /** House axis coordinate of the chords' inner end, where the bending is greatest, inches. */
  readonly inner: number;
  /** Axial force in a chord, tension positive, per case, at a place along it (house axis, inches), lb. */
  force(line: Which, at: number): Float64Array;
  /** The steps to it under one combination; the last has the symbol `Tc`. */
  record(line: Which, at: number, combination: Combination, rec: Recorder): void;
}

/** Chords square to the wall of a roof held by the house: the couple of all that acts farther out, over their distance. */
function heldByHouse(ctx: CheckContext, side: RoofSide, chords: Chords): Chording {
  const cases = ctx.loads.cases.length;
  const centre = side.line?.centre ?? (side.roof.min.x + side.roof.max.x) / 2;
  const beyond = (y: number) => side.points.filter((p) => p.at.y > y);
  const known = new Map<number, Float64Array>();
  const forces = { low: new Map<number, Float64Array>(), high: new Map<number, Float64Array>() };
  const coupleAt = (y: number): Float64Array => {
    let sum = known.get(y);
    if (!sum) {
      sum = coupleOf(beyond(y), cases, centre, y);
      known.set(y, sum);
    }
    return sum;
  };
  // A positive couple stretches the chord on the −x side.
  const sign = (line: Which): 1 | -1 => (line === 'low' ? 1 : -1);
  return {
    chords,
    inner: side.line?.y ?? side.roof.min.y,
    force(line, at) {
      let force = forces[line].get(at);
      if (!force) {
        force = coupleAt(at).map((m) => (sign(line) * m) / chords.apart);
        forces[line].set(at, force);
      }
      return force;
    },
    record(line, at, combination, rec) {
      const about = `the section at y = ${at.toFixed(1)} in`;
      recordPlaces(ctx, { points: beyond(at) }, { centre, y: at, about }, combination, rec);
      const M = under(combination, coupleAt(at));
      rec.step({
        symbol: 'Tc',
        meaning: `force along the chord ${at.toFixed(1)} in out of the wall, pull positive`,
        formula: `${sign(line) < 0 ? '−' : ''}M / d, M = Σ Mi, d between the chords`,
        substituted: `${sign(line) < 0 ? '−' : ''}${M.toFixed(0)} / ${chords.apart.toFixed(1)}`,
        value: (sign(line) * M) / chords.apart,
        unit: 'lb',
        clause: 'statics',
        from: [side.roof.path],
      });
    },
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
    inner: side.roof.min[chords.along],
    force: (line) => (line === 'low' ? low : high),
    record(line, _at, combination, rec) {
      const V = under(combination, total);
      rec.step({
        symbol: 'V',
        meaning: 'side load that bends the roof',
        formula: combination.label,
        substituted: sumText(ctx, combination, (c) => total[c]!),
        value: V,
        unit: 'lb',
        clause: combination.clause,
        from: [side.roof.path],
      });
      rec.step({
        symbol: 'Tc',
        meaning: 'force along the chord, pull or push, not exceeded wherever the lines of posts or braces stand',
        formula: 'V·L / (4·d), L of the roof along the chord, d between the chords',
        substituted: `${V.toFixed(0)}·${L.toFixed(1)} / (4·${chords.apart.toFixed(1)})`,
        value: (line === 'low' ? 1 : -1) * ((V * L) / 4 / chords.apart),
        unit: 'lb',
        clause: 'statics',
        from: [side.roof.path],
      });
    },
  };
}

/** Each way in which a roof is bent by side load; the axis alone where it has no two members to be its chords. */
export function chordings(ctx: CheckContext, side: RoofSide): readonly (Chording | Axis)[] {
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

const isSide = new WeakMap<CheckContext, readonly Combination[]>();

/** Combinations with wind or earthquake: only these bend a roof sideways. */
export function sideCombinations(ctx: CheckContext): readonly Combination[] {
  let known = isSide.get(ctx);
  if (!known) {
    known = ctx.loads.combinations.filter((c) =>
      c.terms.some((t) => ['W', 'E'].includes(ctx.loads.cases[t.case]?.kind ?? 'D')),
    );
    isSide.set(ctx, known);
  }
  return known;
}

export interface Greatest {
  /** Size of the force, lb; 0 when no combination bends the roof. */
  readonly value: number;
  readonly at: number;
  readonly combination: Combination | undefined;
}

/** Greatest size of a chord force over the places and the combinations with side load. */
export function greatest(ctx: CheckContext, c: Chording, line: Which, places: readonly number[]): Greatest {
  let worst: Greatest = { value: 0, at: c.inner, combination: undefined };
  const seen = new Set<Float64Array>();
  for (const at of places) {
    const force = c.force(line, at);
    // Held by posts, a chord has one force all along it.
    if (seen.has(force)) continue;
    seen.add(force);
    for (const combination of sideCombinations(ctx)) {
      const value = Math.abs(under(combination, force));
      if (value > worst.value) worst = { value, at, combination };
    }
  }
  return worst;
}
