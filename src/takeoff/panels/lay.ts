/**
 * Panels laid on a surface: rows from the eave up, the long side across the frames, ends on frames and off the ends of the
 * row below. Edges past the last frame (rakes) are part of the panel there.
 */

import { area, clipConvex } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import { SHEET_LENGTH, SHEET_WIDTH } from '../../catalog/index.js';
import type { Surface } from '../../structure/model.js';
import { convexParts } from '../../structure/pieces/convex.js';
import type { PanelPiece, PanelRow } from './model.js';

/** Panel ends closer than this to the roof's edge would leave a strip too narrow to nail, inches. Common practice, no source. */
const LEAST = 24;
const SAME = 1 / 16;
/** Left between panels so that they may swell, inches. Common practice, no source. */
const GAP = 1 / 8;

const box = (u0: number, u1: number, v0: number, v1: number): Vec2[] => [
  { x: u0, y: v0 },
  { x: u1, y: v0 },
  { x: u1, y: v1 },
  { x: u0, y: v1 },
];

const within = (parts: readonly (readonly Vec2[])[], window: readonly Vec2[]): Vec2[][] =>
  parts.map((p) => clipConvex(p, window)).filter((p) => p.length > 2 && area(p) > 0.5);

/** Panels of a row when the first ends at `first`: each as long as it may be, none leaving a strip too narrow at the end. */
function run(u0: number, u1: number, frames: readonly number[], first: number): number[] {
  const out = [first];
  let at = first;
  while (u1 - at > SHEET_LENGTH + SAME) {
    const ends = frames.filter((f) => f > at + SAME && f <= at + SHEET_LENGTH + SAME);
    const kept = ends.filter((f) => u1 - f >= LEAST);
    // Frames farther apart than a panel carry no sheathing; then the panel simply ends where it ends.
    at = (kept.length > 0 ? kept : ends).at(-1) ?? at + SHEET_LENGTH;
    out.push(at);
  }
  return out.filter((b) => b > u0 + SAME && b < u1 - SAME);
}

/** Sheets a row takes, its short panels cut from one another's rests; first-fit decreasing. */
function sheetsOf(u0: number, u1: number, breaks: readonly number[]): number {
  const ends = [u0, ...breaks, u1];
  const short = ends
    .slice(1)
    .map((e, i) => e - ends[i]!)
    .sort((a, b) => b - a);
  const rest: number[] = [];
  for (const l of short) {
    const i = rest.findIndex((r) => r >= l - SAME);
    if (i < 0) rest.push(SHEET_LENGTH - l);
    else rest[i]! -= l;
  }
  return rest.length;
}

/**
 * Where the panels of a row end: on frames, none longer than a panel. Of the rows that can be laid the one of fewest sheets,
 * then of fewest panels; its ends keep off those of the row below.
 */
export function rowBreaks(u0: number, u1: number, frames: readonly number[], below: readonly number[]): number[] {
  if (u1 - u0 <= SHEET_LENGTH + SAME) return [];
  const starts = frames.filter((f) => f - u0 >= LEAST - SAME && f - u0 <= SHEET_LENGTH + SAME && f < u1 - SAME);
  const rows = (starts.length > 0 ? starts : [u0 + SHEET_LENGTH])
    .map((f) => run(u0, u1, frames, f))
    .map((breaks) => ({
      breaks,
      sheets: sheetsOf(u0, u1, breaks),
      lined: breaks.filter((b) => below.some((x) => Math.abs(x - b) < SAME)).length,
    }))
    .sort(
      (a, b) =>
        a.lined - b.lined || a.sheets - b.sheets || a.breaks.length - b.breaks.length || b.breaks[0]! - a.breaks[0]!,
    );
  return rows[0]!.breaks;
}

export function laySurface(s: Surface, frames: readonly number[]): { rows: PanelRow[]; pieces: PanelPiece[] } {
  const parts = convexParts(s.outline);
  const vs = s.outline.map((p) => p.y);
  const us = s.outline.map((p) => p.x);
  const [low, high] = [Math.min(...vs), Math.max(...vs)];
  const rows: PanelRow[] = [];
  const pieces: PanelPiece[] = [];
  let below: readonly number[] = [];
  // Rows lie a gap apart, so what is left over them is that much less.
  for (let v0 = low, row = 1; v0 < high - Math.max(SAME, (row - 1) * GAP); v0 += SHEET_WIDTH, row++) {
    const v1 = Math.min(high, v0 + SHEET_WIDTH);
    const band = within(parts, box(Math.min(...us), Math.max(...us), v0, v1));
    const at = band.flat().map((p) => p.x);
    if (at.length === 0) continue;
    const [u0, u1] = [Math.min(...at), Math.max(...at)];
    rows.push({ surface: s.id, row, v0, v1, u0, u1 });
    below = rowBreaks(u0, u1, frames, below);
    const ends = [u0, ...below, u1];
    for (let i = 0; i + 1 < ends.length; i++) {
      const piece = within(band, box(ends[i]!, ends[i + 1]!, v0, v1));
      const points = piece.flat();
      if (points.length === 0) continue;
      const [a, b] = [Math.min(...points.map((p) => p.x)), Math.max(...points.map((p) => p.x))];
      const [c, d] = [Math.min(...points.map((p) => p.y)), Math.max(...points.map((p) => p.y))];
      const whole = b - a > SHEET_LENGTH - SAME && d - c > SHEET_WIDTH - SAME;
      pieces.push({
        id: `${s.mark} ${row}.${i + 1}`,
        surface: s.id,
        row,
        u0: a,
        u1: b,
        v0: c,
        v1: d,
        parts: piece,
        whole,
      });
    }
  }
  return { rows, pieces };
}
