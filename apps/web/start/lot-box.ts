/** A lot of four square corners, as the starters write it: read from the file's tree and written back. */
import { parseLength, type TextEdit, writeLength } from '../../../src/drawing.js';
import { valueAt } from '../fields/schema.js';

export interface LotBoxValues {
  readonly width: number;
  readonly depth: number;
  /** From the patio wall to the rear line, and from its left end to the left line, inches. */
  readonly rear: number;
  readonly left: number;
}

const number = (v: unknown): number | undefined => {
  if (typeof v !== 'string') return undefined;
  const p = parseLength(v);
  return p.ok ? p.value : undefined;
};

const SQUARE = [/^N 90/, /^N 0?0°/, /^N 90/, /^S 0?0°/];

/** Left end of the wall that stands along the house axis. */
function wallLeft(tree: unknown): number | undefined {
  const walls = valueAt(tree, '/house/walls') as readonly { start?: readonly unknown[] }[] | undefined;
  const xs = (walls ?? []).filter((w) => Math.abs(number(w.start?.[1]) ?? 1) < 1).map((w) => number(w.start?.[0]));
  const known = xs.filter((x): x is number => x !== undefined);
  return known.length > 0 ? Math.min(...known) : undefined;
}

/** The four distances, when the lot is such a box with the yard to the north; else undefined. */
export function boxOf(tree: unknown): LotBoxValues | undefined {
  const courses = valueAt(tree, '/lot/courses') as readonly { bearing?: string; distance?: string }[] | undefined;
  if (courses?.length !== 4 || !courses.every((c, i) => SQUARE[i]!.test(c.bearing ?? ''))) return undefined;
  const width = number(courses[0]!.distance);
  const depth = number(courses[1]!.distance);
  const east = number(valueAt(tree, '/lot/origin/east'));
  const north = number(valueAt(tree, '/lot/origin/north'));
  const wall = wallLeft(tree);
  const outward = valueAt(tree, '/lot/outward');
  if (width === undefined || depth === undefined || east === undefined || north === undefined || wall === undefined)
    return undefined;
  if (typeof outward !== 'string' || !/^N 0?0°/.test(outward)) return undefined;
  return { width, depth, rear: depth - north, left: east + wall };
}

export function boxEdits(tree: unknown, b: LotBoxValues, units: 'us' | 'metric'): TextEdit[] {
  const w = (x: number): string => writeLength(x, units);
  return [
    ...[b.width, b.depth, b.width, b.depth].map((d, i) => ({ path: `/lot/courses/${i}/distance`, value: w(d) })),
    { path: '/lot/origin/east', value: w(b.left - (wallLeft(tree) ?? 0)) },
    { path: '/lot/origin/north', value: w(b.depth - b.rear) },
  ];
}
