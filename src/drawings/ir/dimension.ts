import type { Vec2 } from '../../base/vec.js';
import type { Dimension, Primitive } from './primitive.js';
import { textWidth } from './text.js';

/** Proportions of a dimension, as multiples of its text height. */
export const DIMENSION_FORM = {
  /** Clear gap between the object and its extension line. */
  gap: 0.55,
  /** Extension line beyond the dimension line. */
  beyond: 0.6,
  /** Half length of the oblique tick. */
  tick: 0.5,
  /** Text above the dimension line. */
  clear: 0.42,
  /** Baseline distance of staggered rows. */
  row: 1.75,
} as const;

/** Reading direction of text along a line: from the bottom or from the right of the sheet, never upside down. */
export function readingAngle(angle: number): number {
  // A line has the same reading whichever way it runs: bring its angle into (−90°, 90°].
  const a = angle % Math.PI;
  if (a > Math.PI / 2 + 1e-9) return a - Math.PI;
  return a <= -Math.PI / 2 + 1e-9 ? a + Math.PI : a;
}

/** Strokes and text of a dimension whose coordinates are already paper inches. */
export function explodeDimension(d: Dimension): Primitive[] {
  const u = { x: Math.cos(d.angle), y: Math.sin(d.angle) };
  const n = { x: -u.y, y: u.x };
  const level = d.base.x * n.x + d.base.y * n.y + d.offset;
  const on = (p: Vec2): Vec2 => {
    const t = p.x * u.x + p.y * u.y;
    return { x: t * u.x + level * n.x, y: t * u.y + level * n.y };
  };
  const h = d.height;
  const a = on(d.a);
  const b = on(d.b);
  const head = { layer: d.layer, ...(d.mark && { mark: d.mark }), ...(d.path && { path: d.path }) };
  const out: Primitive[] = [];

  const extension = (from: Vec2, to: Vec2) => {
    const reach = (to.x - from.x) * n.x + (to.y - from.y) * n.y;
    const side = reach < 0 ? -1 : 1;
    const start = Math.min(Math.abs(reach), DIMENSION_FORM.gap * h);
    const end = Math.abs(reach) + DIMENSION_FORM.beyond * h;
    const at = (k: number): Vec2 => ({ x: from.x + n.x * side * k, y: from.y + n.y * side * k });
    out.push({ ...head, kind: 'line', a: at(start), b: at(end), pen: 'dimension' });
  };
  if (!d.noExtensionA) extension(d.a, a);
  if (!d.noExtensionB) extension(d.b, b);

  const reading = readingAngle(d.angle);
  const e = { x: Math.cos(reading), y: Math.sin(reading) };
  const f = { x: -e.y, y: e.x };
  const width = textWidth(d.text, h);
  const mid = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const along = d.shift?.x ?? 0;
  const away = d.shift?.y ?? 0;
  const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
  const move = (p: Vec2, x: number, y: number): Vec2 => ({ x: p.x + e.x * x + f.x * y, y: p.y + e.y * x + f.y * y });

  // The line runs on under a text set outside its segment, so that the eye finds what it belongs to.
  const low = away === 0 && along < -half ? along - width / 2 : -half - 0.35 * h;
  const high = away === 0 && along > half ? along + width / 2 : half + 0.35 * h;
  out.push({ ...head, kind: 'line', a: move(mid, low, 0), b: move(mid, high, 0), pen: 'dimension' });
  for (const p of [a, b]) {
    const k = (DIMENSION_FORM.tick * h) / Math.SQRT2;
    out.push({ ...head, kind: 'line', a: move(p, -k, -k), b: move(p, k, k), pen: 'tick' });
  }
  const baseline = DIMENSION_FORM.clear * h + away;
  if (away !== 0) {
    const foot = away > 0 ? baseline - 0.25 * h : baseline + 1.25 * h;
    const lean = Math.max(-width / 2, Math.min(width / 2, -along));
    out.push({ ...head, kind: 'line', a: mid, b: move(mid, along + lean * 0.6, foot), pen: 'leader' });
  }
  out.push({
    ...head,
    kind: 'text',
    at: move(mid, along, baseline),
    content: d.text,
    height: h,
    align: 'center',
    angle: reading,
    mask: true,
  });
  return out;
}
