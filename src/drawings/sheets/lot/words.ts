/** Lettering of the lot plan: lengths as surveyors write them, texts along lines, places clear of what is drawn. */
import { formatNumber } from '../../../base/quantity/index.js';
import type { Vec2 } from '../../../base/vec.js';
import { leader, letteringOf, placeNote, type Style, touchesText } from '../../annotate/index.js';
import { type FaceName, type LayerName, type Primitive, type Rect, textWidth } from '../../ir/index.js';

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
  /** A sign at a place, under what is lettered after it. */
  sign(at: Vec2, ...signs: readonly Primitive[]): void;
  /** The word in the first of the ways that is free; led out from `at`, farther and farther, where none is. */
  set(w: Word, at: Vec2, ways: readonly Primitive[]): void;
  /** In or beside a box. */
  box(w: Word, b: Rect): void;
  /** Along a line, at one of these shares of it, on it or beside it by one of these paper distances. */
  along(w: Word, a: Vec2, b: Vec2, shares?: readonly number[], beside?: readonly number[]): void;
}

/** Directions and reaches, in note heights, in which a word that finds no place of its own is led out. */
const OUT = [3, 5, 7, 10, 13, 17].flatMap((far) =>
  [35, 145, -35, -145, 70, 110, -70, -110].map((degrees) => {
    const a = (degrees * Math.PI) / 180;
    return { x: far * Math.cos(a), y: far * Math.sin(a) };
  }),
);

/** `bounds`: rectangle of the model that lettering must not leave, where it can help it. */
export function lettering(
  style: Style,
  ratio: number,
  over: Primitive[],
  lines: readonly Primitive[],
  bounds: Rect,
): Lettering {
  const h = style.note;
  const inside = (note: Primitive): boolean =>
    letteringOf(note, ratio).every(
      (b) =>
        b.x >= bounds.x * ratio &&
        b.y >= bounds.y * ratio &&
        b.x + b.w <= (bounds.x + bounds.w) * ratio &&
        b.y + b.h <= (bounds.y + bounds.h) * ratio,
    );
  const place = (ways: readonly Primitive[]): Primitive => {
    const kept = ways.filter(inside);
    const open = (kept.length > 0 ? kept : ways) as readonly [Primitive, ...Primitive[]];
    return placeNote(open, 0.35 * h, ratio, over, lines);
  };
  const self: Lettering = {
    over,
    sign: (_at, ...signs) => {
      over.push(...signs);
    },
    box: (w, b) => self.set(w, { x: b.x + 0.5 * b.w, y: b.y + 0.5 * b.h }, roundBox(w, b, style, ratio)),
    along(w, a, b, shares = ALONG, beside = [0]) {
      const size = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      const n = { x: -(b.y - a.y) / size, y: (b.x - a.x) / size };
      const ways = beside.flatMap((d) => shares.map((t) => word(w, between(a, b, t), h, d * n.x, d * n.y)));
      self.set(w, between(a, b, shares[0]!), ways);
    },
    set(w, at, ways) {
      const first = ways.length > 0 ? place(ways) : undefined;
      if (first && inside(first) && !touchesText(first, ratio, over)) {
        over.push(first);
        return;
      }
      const led = OUT.map((o) => onLeader(w, at, o.x * h, o.y * h, style));
      over.push(place([...(first ? [first] : []), ...led]));
    },
  };
  return self;
}

/** A word on a leader. */
function onLeader(
  { content, layer, angle: _angle, face, ...tags }: Word,
  at: Vec2,
  dx: number,
  dy: number,
  style: Style,
) {
  const width = Math.max(...content.split('\n').map((t) => textWidth(t, style.note, face)));
  return leader({
    at,
    dx,
    dy,
    text: content.replaceAll('\n', ', '),
    // A short word stays on one line.
    width: content.length < 28 ? Infinity : 1.02 * width + style.note,
    layer: layer ?? 'C-ANNO-NOTE',
    style,
    mask: true,
    ...tags,
  });
}

/** Places along a line, the middle first. */
export const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88] as const;

/** Ways to set a word inside or beside a box; one that has no room inside stands off it on a leader. */
function roundBox(w: Word, b: Rect, style: Style, ratio: number): Primitive[] {
  const h = style.note;
  const lines = w.content.split('\n');
  const width = Math.max(...lines.map((t) => textWidth(t, h, w.face)));
  const at = (u: number, v: number): Vec2 => ({ x: b.x + u * b.w, y: b.y + v * b.h });
  const inside = [0.5, 0.32, 0.68, 0.18, 0.82].flatMap((v) => [0.5, 0.3, 0.7].map((u) => word(w, at(u, v), h)));
  const roomy = width < 0.98 * b.w * ratio && lines.length * 1.7 * h < b.h * ratio;
  const [rx, ry] = [0.5 * b.w * ratio, 0.5 * b.h * ratio];
  const led = [1, 2].flatMap((far) =>
    [
      [1, 1],
      [-1, 1],
      [1, -1],
      [-1, -1],
    ].map(([sx, sy]) =>
      onLeader(
        w,
        at(0.5 + 0.3 * sx!, 0.5 + 0.3 * sy!),
        sx! * (0.2 * rx + 1.6 * far * h),
        sy! * (0.2 * ry + 2.2 * far * h),
        style,
      ),
    ),
  );
  return roomy ? [...inside, ...led] : [...led, ...inside];
}

export const within = (r: Rect, p: Vec2): boolean =>
  p.x >= r.x - 1 && p.x <= r.x + r.w + 1 && p.y >= r.y - 1 && p.y <= r.y + r.h + 1;

/** The same lettering, deaf to what lies outside a rectangle of the model: nothing is drawn there that a word could name. */
export function lettersWithin(l: Lettering, r: Rect): Lettering {
  const middleOf = (b: Rect): Vec2 => ({ x: b.x + b.w / 2, y: b.y + b.h / 2 });
  return {
    over: l.over,
    sign: (at, ...signs) => {
      if (within(r, at)) l.sign(at, ...signs);
    },
    set: (w, at, ways) => {
      if (within(r, at)) l.set(w, at, ways);
    },
    box: (w, b) => {
      if (within(r, middleOf(b))) l.box(w, b);
    },
    along: (w, a, b, shares, beside) => {
      if (within(r, between(a, b, 0.5))) l.along(w, a, b, shares, beside);
    },
  };
}
