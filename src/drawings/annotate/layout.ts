import { type Flat, flatten, type Rect, type Sheet } from '../ir/index.js';

/** Splits a rectangle into columns (left to right) in proportion to `shares`. */
export function splitColumns(r: Rect, shares: readonly number[], gap: number): Rect[] {
  const total = shares.reduce((a, b) => a + b, 0);
  const room = r.w - gap * (shares.length - 1);
  let x = r.x;
  return shares.map((s) => {
    const w = (room * s) / total;
    const out = { x, y: r.y, w, h: r.h };
    x += w + gap;
    return out;
  });
}

/** Splits a rectangle into rows (top to bottom) in proportion to `shares`. */
export function splitRows(r: Rect, shares: readonly number[], gap: number): Rect[] {
  const total = shares.reduce((a, b) => a + b, 0);
  const room = r.h - gap * (shares.length - 1);
  let top = r.y + r.h;
  return shares.map((s) => {
    const h = (room * s) / total;
    const out = { x: r.x, y: top - h, w: r.w, h };
    top -= h + gap;
    return out;
  });
}

/** Text on a sheet as an oriented box: centre, full size, angle. Paper inches. */
export interface TextBox {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly angle: number;
  readonly content: string;
  readonly layer: string;
}

const HANGING = /[gjpqy,;()[\]Q/"_]/;

/** Boxes of every text on a sheet: from the descenders, where there are any, to the top of the capitals. */
export function textBoxes(sheet: Sheet | readonly Flat[]): TextBox[] {
  const flats = 'viewports' in sheet ? flatten(sheet) : sheet;
  const out: TextBox[] = [];
  for (const t of flats) {
    if (t.kind !== 'text' || t.content.trim() === '') continue;
    const low = HANGING.test(t.content) ? -0.22 * t.height : 0;
    const u = t.align === 'left' ? t.width / 2 : t.align === 'center' ? 0 : -t.width / 2;
    const v = (low + t.height) / 2;
    const [c, s] = [Math.cos(t.angle), Math.sin(t.angle)];
    out.push({
      x: t.x + c * u - s * v,
      y: t.y + s * u + c * v,
      w: t.width,
      h: t.height - low,
      angle: t.angle,
      content: t.content,
      layer: t.layer,
    });
  }
  return out;
}

/** True when two oriented boxes share more than `tolerance` in every separating direction. */
function boxesMeet(a: TextBox, b: TextBox, tolerance: number): boolean {
  for (const box of [a, b]) {
    for (const turn of [0, Math.PI / 2]) {
      const [c, s] = [Math.cos(box.angle + turn), Math.sin(box.angle + turn)];
      const radius = (q: TextBox) =>
        (q.w / 2) * Math.abs(Math.cos(q.angle) * c + Math.sin(q.angle) * s) +
        (q.h / 2) * Math.abs(-Math.sin(q.angle) * c + Math.cos(q.angle) * s);
      const gap = Math.abs((b.x - a.x) * c + (b.y - a.y) * s) - radius(a) - radius(b);
      if (gap > -tolerance) return false;
    }
  }
  return true;
}

/** Half of what a box takes up and down the sheet, and to both sides. */
function halfOf(b: TextBox): { readonly w: number; readonly h: number } {
  const [c, s] = [Math.abs(Math.cos(b.angle)), Math.abs(Math.sin(b.angle))];
  return { w: (b.w * c + b.h * s) / 2, h: (b.w * s + b.h * c) / 2 };
}

/** Pairs of texts that overlap by more than `tolerance` paper inches. */
export function overlaps(boxes: readonly TextBox[], tolerance = 0.005): (readonly [TextBox, TextBox])[] {
  // From the foot of the sheet up: most lettering is level, so few boxes share a height.
  const sorted = boxes.map((b) => ({ b, ...halfOf(b) })).sort((p, q) => p.b.y - p.h - (q.b.y - q.h));
  const out: (readonly [TextBox, TextBox])[] = [];
  for (let i = 0; i < sorted.length; i++) {
    const p = sorted[i]!;
    for (let j = i + 1; j < sorted.length; j++) {
      const q = sorted[j]!;
      if (q.b.y - q.h > p.b.y + p.h) break;
      if (Math.abs(q.b.x - p.b.x) < p.w + q.w && boxesMeet(p.b, q.b, tolerance)) out.push([p.b, q.b]);
    }
  }
  return out;
}

/** Texts that reach outside a rectangle, e.g. the inside of the sheet's border. */
export function outside(boxes: readonly TextBox[], r: Rect, tolerance = 0.005): TextBox[] {
  return boxes.filter((b) => {
    const { w, h } = halfOf(b);
    return (
      b.x - w < r.x - tolerance ||
      b.x + w > r.x + r.w + tolerance ||
      b.y - h < r.y - tolerance ||
      b.y + h > r.y + r.h + tolerance
    );
  });
}
