/** Lettering of the lot plan: lengths as surveyors write them, texts along lines, places clear of what is drawn. */
import { formatNumber } from '../../../base/quantity/index.js';
import type { Vec2 } from '../../../base/vec.js';
import { placeNote } from '../../annotate/index.js';
import type { FaceName, LayerName, Primitive } from '../../ir/index.js';

/** Feet and hundredths: `44.00'`. */
export const feet = (inches: number): string => `${formatNumber(inches / 12, 2)}'`;

export const middle = (a: Vec2, b: Vec2): Vec2 => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

export const between = (a: Vec2, b: Vec2, t: number): Vec2 => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });

/** Reads from the bottom or the right of the sheet. */
export function readable(angle: number): number {
  let a = angle;
  while (a > Math.PI / 2 + 1e-9) a -= Math.PI;
  while (a <= -Math.PI / 2 + 1e-9) a += Math.PI;
  return a;
}

export interface Word {
  readonly content: string;
  readonly layer?: LayerName;
  readonly angle?: number;
  readonly face?: FaceName;
  readonly path?: string;
  readonly mark?: string;
}

/** A word at a place of the model, moved by paper inches. */
export function word(w: Word, at: Vec2, height: number, dx = 0, dy = 0): Primitive {
  const layer = w.layer ?? 'C-ANNO-NOTE';
  const lines = w.content.split('\n');
  const angle = w.angle ?? 0;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    kind: 'symbol',
    layer,
    at,
    ...(w.path !== undefined && { path: w.path }),
    ...(w.mark !== undefined && { mark: w.mark }),
    items: lines.map((content, i) => {
      const down = (i - (lines.length - 1) / 2) * 1.6 * height;
      return {
        kind: 'text' as const,
        layer,
        at: { x: dx + s * down, y: dy - c * down },
        content,
        height,
        align: 'center' as const,
        valign: 'middle' as const,
        mask: true,
        angle,
        ...(w.face !== undefined && { face: w.face }),
      };
    }),
  };
}

/** Sets words one after another where they touch nothing lettered before. */
export interface Lettering {
  readonly over: Primitive[];
  set(ways: readonly Primitive[]): void;
}

export function lettering(height: number, ratio: number, over: Primitive[], lines: readonly Primitive[]): Lettering {
  return {
    over,
    set(ways) {
      if (ways.length === 0) return;
      over.push(placeNote(ways as readonly [Primitive, ...Primitive[]], 0.35 * height, ratio, over, lines));
    },
  };
}

/** Places along a line, the middle first. */
export const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88] as const;

/** Ways to set a word inside or round a box, its middle first. */
export function roundBox(
  w: Word,
  b: { readonly x: number; readonly y: number; readonly w: number; readonly h: number },
  h: number,
): Primitive[] {
  const at = (u: number, v: number): Vec2 => ({ x: b.x + u * b.w, y: b.y + v * b.h });
  const inside = [0.5, 0.32, 0.68, 0.18, 0.82].flatMap((v) => [0.5, 0.3, 0.7].map((u) => word(w, at(u, v), h)));
  const out = [
    word(w, at(0.5, 1), h, 0, 1.6 * h),
    word(w, at(0.5, 0), h, 0, -1.6 * h),
    word(w, at(0.5, 1), h, 0, 3.4 * h),
    word(w, at(0.5, 0), h, 0, -3.4 * h),
  ];
  return [...inside, ...out];
}
