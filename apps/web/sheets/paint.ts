/** Paints a packed sheet on a canvas. Nothing is made anew for a frame: the numbers are read where they lie. */
import { FACES, type FaceName, PENS } from '../../../src/drawing.js';
import { HEAD, KIND, type PackedSheet } from '../core/pack.js';
import type { Camera, Size } from './camera.js';
import type { Box } from './dirty.js';
import type { Ink } from './ink.js';

const FULL = 2 * Math.PI - 1e-9;

export interface Look {
  readonly camera: Camera;
  readonly size: Size;
  readonly dpr: number;
  readonly ink: Ink;
  /** Marks shown as picked. */
  readonly picked: string | undefined;
  /** Role of the dimension pointed at. */
  readonly role: string | undefined;
}

const widths: Readonly<Record<string, number>> = Object.fromEntries(
  Object.entries(PENS).map(([n, p]) => [n, p.width_mm / 25.4]),
);
const dashes: Readonly<Record<string, readonly number[]>> = Object.fromEntries(
  Object.entries(PENS).map(([n, p]) => [n, 'dash' in p ? (p.dash as readonly number[]) : []]),
);

/** How far ink may reach past the points of an item, paper inches: half the broadest line, picked parts included. */
export const MARGIN = 0.05;

type Context = CanvasRenderingContext2D;

function trace(ctx: Context, s: PackedSheet, i: number): void {
  const at = s.head[i * HEAD + 6]!;
  const d = s.data;
  if (s.head[i * HEAD] === KIND.arc) {
    ctx.moveTo(d[at]! + d[at + 2]! * Math.cos(d[at + 3]!), d[at + 1]! + d[at + 2]! * Math.sin(d[at + 3]!));
    ctx.arc(d[at]!, d[at + 1]!, d[at + 2]!, d[at + 3]!, d[at + 4]!, false);
    if (d[at + 4]! - d[at + 3]! >= FULL) ctx.closePath();
    return;
  }
  const closed = d[at] === 1;
  let k = at + 2;
  for (let n = 0; n < d[at + 1]!; n++) {
    const length = d[k++]!;
    ctx.moveTo(d[k]!, d[k + 1]!);
    for (let j = 2; j < length; j += 2) ctx.lineTo(d[k + j]!, d[k + j + 1]!);
    if (closed) ctx.closePath();
    k += length;
  }
}

function text(ctx: Context, s: PackedSheet, i: number, ink: string): void {
  const at = s.head[i * HEAD + 6]!;
  const d = s.data;
  const align = d[at + 4]!;
  ctx.save();
  ctx.translate(d[at]!, d[at + 1]!);
  ctx.rotate(d[at + 2]!);
  // Letters are set at a hundred units an inch: browsers place type of a fraction of a pixel badly.
  ctx.scale(0.01, -0.01);
  ctx.fillStyle = ink;
  let x = align === 0 ? 0 : align === 1 ? -50 * d[at + 5]! : -100 * d[at + 5]!;
  const end = at + 8 + 4 * d[at + 7]!;
  for (let k = at + 8; k < end; k += 4) {
    const face = s.words[d[k]!] as FaceName;
    ctx.font = `${FACES[face].weight} ${d[k + 1]! * 100}px '${FACES[face].family}', sans-serif`;
    ctx.fillText(s.words[d[k + 2]!]!, x, 0);
    x += 100 * d[k + 3]!;
  }
  ctx.restore();
}

/** Paints the window, or within it only the rectangles of the paper that are given. */
export function paint(ctx: Context, s: PackedSheet, look: Look, only?: readonly Box[]): void {
  const { camera: c, size } = look;
  const [w, h] = [size.w / 2 / c.zoom, size.h / 2 / c.zoom];
  const window: Box = [c.x - w, c.y - h, c.x + w, c.y + h];
  if (!only) {
    within(ctx, s, look, window);
    return;
  }
  for (const b of only) {
    const part: Box = [
      Math.max(b[0], window[0]),
      Math.max(b[1], window[1]),
      Math.min(b[2], window[2]),
      Math.min(b[3], window[3]),
    ];
    if (part[0] < part[2] && part[1] < part[3]) within(ctx, s, look, part);
  }
}

/** Whole device pixels round a rectangle of the paper, so that no seam shows where it ends. */
function pixels({ camera: c, size, dpr }: Look, b: Box): Box {
  const k = c.zoom * dpr;
  const [x, y] = [(size.w / 2) * dpr, (size.h / 2) * dpr];
  return [
    Math.floor(x + (b[0] - c.x) * k),
    Math.floor(y - (b[3] - c.y) * k),
    Math.ceil(x + (b[2] - c.x) * k),
    Math.ceil(y - (b[1] - c.y) * k),
  ];
}

function within(ctx: Context, s: PackedSheet, look: Look, part: Box): void {
  const { camera: c, size, dpr, ink } = look;
  const k = c.zoom * dpr;
  const [left, top, right, bottom] = pixels(look, part);
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.beginPath();
  ctx.rect(left, top, right - left, bottom - top);
  ctx.clip();
  ctx.clearRect(left, top, right - left, bottom - top);
  ctx.setTransform(k, 0, 0, -k, (size.w / 2) * dpr - c.x * k, (size.h / 2) * dpr + c.y * k);
  ctx.fillStyle = ink.paper;
  ctx.fillRect(0, 0, s.w, s.h);
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  ctx.fontKerning = 'none';
  // Lines reach past the box of their points by half their width.
  const reach = MARGIN + 2 / c.zoom;
  const [x0, y0, x1, y1] = [part[0] - reach, part[1] - reach, part[2] + reach, part[3] + reach];
  const count = s.head.length / HEAD;
  const thinnest = 0.7 / c.zoom;
  const tooSmall = 2.2 / c.zoom;
  let pen = -2;
  const flush = (): void => {
    if (pen >= 0) ctx.stroke();
    pen = -2;
  };
  for (let i = 0; i < count; i++) {
    const b = 4 * i;
    if (s.boxes[b]! > x1 || s.boxes[b + 2]! < x0 || s.boxes[b + 1]! > y1 || s.boxes[b + 3]! < y0) continue;
    const h = i * HEAD;
    if (s.head[h] === KIND.text) {
      flush();
      const at = s.head[h + 6]!;
      // Lettering too small to read is a grey line, as on a print held at arm's length.
      if (s.data[at + 3]! < tooSmall) {
        ctx.globalAlpha = 0.35;
        ctx.fillStyle = ink.text.solid!;
        ctx.fillRect(
          s.boxes[b]!,
          s.boxes[b + 1]! + 0.3 * (s.boxes[b + 3]! - s.boxes[b + 1]!),
          s.boxes[b + 2]! - s.boxes[b]!,
          0.4 * (s.boxes[b + 3]! - s.boxes[b + 1]!),
        );
        ctx.globalAlpha = 1;
      } else text(ctx, s, i, ink.text[s.words[s.head[h + 2]!]!]!);
      continue;
    }
    const fill = s.head[h + 2]!;
    const own = s.head[h + 1]!;
    if (fill >= 0) {
      flush();
      ctx.beginPath();
      trace(ctx, s, i);
      ctx.fillStyle = ink.fill[s.words[fill]!]!;
      ctx.fill('evenodd');
    }
    if (own < 0) continue;
    if (own !== pen || fill >= 0) {
      flush();
      const name = s.words[own]!;
      ctx.strokeStyle = ink.pen[name]!;
      ctx.lineWidth = Math.max(widths[name]!, thinnest);
      ctx.setLineDash(dashes[name] as number[]);
      ctx.beginPath();
      pen = own;
    }
    trace(ctx, s, i);
  }
  flush();
  ctx.setLineDash([]);
  if (look.picked !== undefined || look.role !== undefined) highlight(ctx, s, look);
  ctx.restore();
}

/** Draws what is picked once more, broader and in the accent, so that shape and not only colour tells it. */
function highlight(ctx: Context, s: PackedSheet, look: Look): void {
  const mark = s.words.indexOf(look.picked ?? '\u0000');
  const role = s.words.indexOf(look.role ?? '\u0000');
  if (mark < 0 && role < 0) return;
  ctx.strokeStyle = look.ink.accent;
  ctx.fillStyle = look.ink.accent;
  ctx.lineWidth = Math.max(0.03, 2.4 / look.camera.zoom);
  for (let i = 0; i < s.head.length / HEAD; i++) {
    const h = i * HEAD;
    if (!((mark >= 0 && s.head[h + 3] === mark) || (role >= 0 && s.head[h + 5] === role))) continue;
    if (s.head[h] === KIND.text) {
      const b = 4 * i;
      const lift = 1.5 / look.camera.zoom;
      ctx.strokeRect(
        s.boxes[b]! - lift,
        s.boxes[b + 1]! - lift,
        s.boxes[b + 2]! - s.boxes[b]! + 2 * lift,
        s.boxes[b + 3]! - s.boxes[b + 1]! + 2 * lift,
      );
    } else if (s.head[h + 1]! >= 0) {
      ctx.beginPath();
      trace(ctx, s, i);
      ctx.stroke();
    }
  }
}
