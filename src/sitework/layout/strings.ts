/** Strings over rows of footings, and the batter boards that hold them. */
import type { Vec2 } from '../../base/vec.js';
import { heightAt, slabAt } from '../../structure/ground.js';
import type { Footing, Structure } from '../../structure/model.js';
import type { BatterBoard, StringLine } from './model.js';
import { BOARD_REACH } from './words.js';

/** Centers this near one line share its string. */
const SAME_LINE = 1 / 16;
/** Strings stand at least this far above ground and concrete, to be clear of both. Common practice, no source. */
const CLEAR = 6;

interface Row {
  readonly at: number;
  readonly footings: readonly Footing[];
}

export function rowsOf(footings: readonly Footing[], axis: 'x' | 'y'): readonly Row[] {
  const rows: { at: number; footings: Footing[] }[] = [];
  for (const f of [...footings].sort((a, b) => a.at[axis] - b.at[axis])) {
    const last = rows.at(-1);
    if (last && f.at[axis] - last.at <= SAME_LINE) last.footings.push(f);
    else rows.push({ at: f.at[axis], footings: [f] });
  }
  return rows;
}

/** A, B … Z, AA, AB … */
export const letters = (i: number): string =>
  i < 26 ? String.fromCharCode(65 + i) : letters(Math.floor(i / 26) - 1) + letters(i % 26);

/** Ground or slab at a point; behind the wall line the ground is level. */
export const groundAt = (structure: Structure, p: Vec2): number =>
  heightAt(slabAt(structure, p)?.top ?? structure.grade, { x: p.x, y: Math.max(0, p.y) });

export interface Strings {
  readonly strings: readonly StringLine[];
  readonly boards: readonly BatterBoard[];
  readonly level: number;
}

export function stringPlan(structure: Structure, footings: readonly Footing[], home: Vec2): Strings {
  if (footings.length === 0) return { strings: [], boards: [], level: 0 };
  const reach = (f: Footing): number => f.size / 2 + BOARD_REACH;
  const low = {
    x: Math.min(...footings.map((f) => f.at.x - reach(f))),
    y: Math.min(...footings.map((f) => f.at.y - reach(f))),
  };
  const high = {
    x: Math.max(...footings.map((f) => f.at.x + reach(f))),
    y: Math.max(...footings.map((f) => f.at.y + reach(f))),
  };
  // Where the near board would stand in the house, the string is tied to the wall itself.
  const wallAt = (x: number): boolean =>
    structure.walls.some(
      (w) =>
        Math.abs(w.start.y) < 1 &&
        Math.abs(w.end.y) < 1 &&
        x >= Math.min(w.start.x, w.end.x) &&
        x <= Math.max(w.start.x, w.end.x),
    );
  const places: { nail: string; at: Vec2; onWall: boolean }[] = [];
  const strings: StringLine[] = [];
  rowsOf(footings, 'x').forEach((row, i) => {
    const name = letters(i);
    const onWall = low.y <= 0 && wallAt(row.at);
    places.push({ nail: `${name}-near`, at: { x: row.at, y: onWall ? 0 : low.y }, onWall });
    places.push({ nail: `${name}-far`, at: { x: row.at, y: high.y }, onWall: false });
    strings.push({
      name,
      runs: 'out',
      at: row.at - home.x,
      stations: [...row.footings]
        .sort((a, b) => a.at.y - b.at.y)
        .map((f) => ({ footing: f.mark, running: f.at.y - home.y })),
      ends: [`${name}-near`, `${name}-far`],
    });
  });
  rowsOf(footings, 'y').forEach((row, i) => {
    const name = String(i + 1);
    places.push({ nail: `${name}-left`, at: { x: low.x, y: row.at }, onWall: false });
    places.push({ nail: `${name}-right`, at: { x: high.x, y: row.at }, onWall: false });
    strings.push({
      name,
      runs: 'along',
      at: row.at - home.y,
      stations: [...row.footings]
        .sort((a, b) => a.at.x - b.at.x)
        .map((f) => ({ footing: f.mark, running: f.at.x - home.x })),
      ends: [`${name}-left`, `${name}-right`],
    });
  });
  const grounds = places.map((p) => groundAt(structure, p.at));
  const highest = Math.max(...grounds, ...footings.map((f) => Math.max(f.top, f.surface)));
  const level = Math.ceil(highest + CLEAR - 1e-6);
  return {
    strings,
    level,
    boards: places.map((p, i) => ({
      nail: p.nail,
      along: p.at.x - home.x,
      out: p.at.y - home.y,
      onWall: p.onWall,
      ground: grounds[i]!,
      height: level - grounds[i]!,
    })),
  };
}
