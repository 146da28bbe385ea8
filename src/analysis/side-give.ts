/**
 * How far two beams part where trusses push them outward: the beams bend sideways between their post tops, which are
 * taken not to give. Inches per pound of a balanced pair of pushes.
 */
import type { Vec3 } from '../base/vec.js';
import { idealise } from './idealise.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import { factorFrame, makeSamples, type NodalLoad, sampleElement, solveCase } from './solver/index.js';

/** Two bearings of one truss and the level unit vector from the first to the second. */
export interface Pair {
  readonly first: Bearing;
  readonly second: Bearing;
  readonly across: Vec3;
}

interface Place {
  readonly element: number;
  readonly at: number;
}

/** `give[i][j]`: opening at pair i under one pound outward at pair j. Undefined when the beams cannot be solved. */
export function sidewaysGive(index: StructureIndex, pairs: readonly Pair[]): readonly Float64Array[] | undefined {
  const support = idealise(index);
  const factored = factorFrame(support.model);
  if (!factored.ok) return undefined;
  const { frame } = factored;
  const beams = new Map(support.beams.map((b) => [b.member.id, b]));
  const placeOf = (b: Bearing): Place | undefined => {
    const beam = beams.get(b.lower);
    if (!beam) return undefined;
    const along = Math.min(Math.max(b.lowerAlong, 0), beam.length);
    const piece = beam.pieces.find((p) => along <= p.to) ?? beam.pieces.at(-1)!;
    return { element: piece.element, at: Math.min(along - piece.from, frame.lengths[piece.element]!) };
  };
  const places = pairs.map((p) => [placeOf(p.first), placeOf(p.second)] as const);
  if (places.some(([a, b]) => !a || !b)) return undefined;
  const sample = makeSamples(1);
  const station = new Float64Array(1);
  const columns = pairs.map((pushed, j) => {
    const force = (sign: number): Vec3 => ({ x: sign * pushed.across.x, y: sign * pushed.across.y, z: 0 });
    const nodal: NodalLoad[] = [];
    const load = {
      nodal,
      points: [
        { ...places[j]![0]!, force: force(-1) },
        { ...places[j]![1]!, force: force(1) },
      ],
    };
    const result = solveCase(frame, load);
    const moved = ({ element, at }: Place, to: Vec3): number => {
      station[0] = at;
      const s = sampleElement(frame, load, result, element, station, sample);
      const r = 9 * element;
      const global = (axis: number): number =>
        s.dx[0]! * frame.axes[r + axis]! + s.dy[0]! * frame.axes[r + 3 + axis]! + s.dz[0]! * frame.axes[r + 6 + axis]!;
      return global(0) * to.x + global(1) * to.y;
    };
    return Float64Array.from(pairs, (p, i) => moved(places[i]![1]!, p.across) - moved(places[i]![0]!, p.across));
  });
  // Columns are per push; rows per place.
  return pairs.map((_, i) => Float64Array.from(pairs, (_p, j) => columns[j]![i]!));
}

/** Solves `a · x = b` for several right sides in place, by elimination with the largest pivot. Small systems only. */
export function solveDense(a: readonly Float64Array[], rights: readonly Float64Array[]): void {
  const n = a.length;
  const rows = a.map((r) => r.slice());
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    if (pivot !== k) {
      [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
      for (const b of rights) [b[k], b[pivot]] = [b[pivot]!, b[k]!];
    }
    const top = rows[k]!;
    for (let i = k + 1; i < n; i++) {
      const row = rows[i]!;
      const f = row[k]! / top[k]!;
      if (f === 0) continue;
      for (let j = k; j < n; j++) row[j] = row[j]! - f * top[j]!;
      for (const b of rights) b[i] = b[i]! - f * b[k]!;
    }
  }
  for (const b of rights) {
    for (let k = n - 1; k >= 0; k--) {
      let sum = b[k]!;
      for (let j = k + 1; j < n; j++) sum -= rows[k]![j]! * b[j]!;
      b[k] = sum / rows[k]![k]!;
    }
  }
}
