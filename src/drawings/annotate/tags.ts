import type { Vec2 } from '../../base/vec.js';
import { type LayerName, type PaperSymbol, type Primitive, textWidth } from '../ir/index.js';
import { type Pencil, pencil } from './pencil.js';
import type { Style } from './style.js';

/**
 * Tags: a mark in a shape that tells its kind without reading it. Shapes are this program's own; the legend of the first
 * sheet shows them.
 */
export type TagKind = 'footing' | 'post' | 'beam' | 'truss' | 'rafter' | 'joint' | 'point' | 'note' | 'opening';

type Outline = (p: Pencil, halfText: number, h: number) => Primitive;

const box =
  (cut: number): Outline =>
  (p, w, h) => {
    const x = w + 0.62 * h;
    const y = 1.05 * h;
    const c = cut * y;
    if (cut === 0)
      return p.shape(
        [
          [-x, -y],
          [x, -y],
          [x, y],
          [-x, y],
        ],
        'symbol',
        'paper',
      );
    return p.shape(
      [
        [-x + c, -y],
        [x - c, -y],
        [x, -y + c],
        [x, y - c],
        [x - c, y],
        [-x + c, y],
        [-x, y - c],
        [-x, -y + c],
      ],
      'symbol',
      'paper',
    );
  };

const pointed: Outline = (p, w, h) => {
  const x = w + 0.3 * h;
  const y = 1.05 * h;
  return p.shape(
    [
      [-x - 0.75 * y, 0],
      [-x, -y],
      [x, -y],
      [x + 0.75 * y, 0],
      [x, y],
      [-x, y],
    ],
    'symbol',
    'paper',
  );
};

const rounded: Outline = (p, w, h) => {
  const y = 1.05 * h;
  const x = Math.max(0, w - 0.25 * h);
  const points: [number, number][] = [];
  for (let i = 0; i <= 12; i++)
    points.push([x + y * Math.cos(-Math.PI / 2 + (Math.PI * i) / 12), y * Math.sin(-Math.PI / 2 + (Math.PI * i) / 12)]);
  for (let i = 0; i <= 12; i++)
    points.push([-x + y * Math.cos(Math.PI / 2 + (Math.PI * i) / 12), y * Math.sin(Math.PI / 2 + (Math.PI * i) / 12)]);
  return p.shape(points, 'symbol', 'paper');
};

const round: Outline = (p, w, h) =>
  p.circle(0, 0, Math.max(1.25 * h, Math.hypot(w, h / 2) + 0.3 * h), 'symbol', 'paper');

const diamond: Outline = (p, w, h) => {
  const x = w + 1.35 * h;
  const y = 1.55 * h;
  return p.shape(
    [
      [-x, 0],
      [0, -y],
      [x, 0],
      [0, y],
    ],
    'symbol',
    'paper',
  );
};

/** Sides upright, top and bottom roofed. */
const roofed: Outline = (p, w, h) => {
  const x = w + 0.62 * h;
  const y = 0.8 * h;
  return p.shape(
    [
      [0, -1.5 * h],
      [x, -y],
      [x, y],
      [0, 1.5 * h],
      [-x, y],
      [-x, -y],
    ],
    'symbol',
    'paper',
  );
};

export const TAGS: Readonly<Record<TagKind, { readonly means: string; readonly outline: Outline }>> = {
  footing: { means: 'footing', outline: box(0) },
  post: { means: 'post', outline: round },
  beam: { means: 'beam', outline: rounded },
  truss: { means: 'truss', outline: pointed },
  rafter: { means: 'rafter or other framing', outline: pointed },
  joint: { means: 'joint or connector', outline: diamond },
  point: { means: 'layout point', outline: box(0.5) },
  note: { means: 'keyed note', outline: box(0.55) },
  opening: { means: 'window or door', outline: roofed },
};

export interface TagOptions {
  readonly kind: TagKind;
  readonly text: string;
  readonly at: Vec2;
  readonly layer: LayerName;
  readonly style: Style;
  /** Paper inches from `at` to the centre of the tag; a fine leader with a dot joins them when given. */
  readonly off?: Vec2;
  readonly path?: string;
  /** Mark of the part; the text by default. */
  readonly mark?: string;
}

export function tag(o: TagOptions): PaperSymbol {
  const { style, layer } = o;
  const h = style.note;
  const p = pencil(layer);
  const shape: readonly Primitive[] = [
    TAGS[o.kind].outline(p, textWidth(o.text, h, 'condensed-bold') / 2, h),
    p.text(0, 0, o.text, h, { face: 'condensed-bold', align: 'center', valign: 'middle' }),
  ];
  const base = {
    kind: 'symbol' as const,
    layer,
    at: o.at,
    mark: o.mark ?? o.text,
    ...(o.path !== undefined && { path: o.path }),
  };
  if (o.off === undefined) return { ...base, items: shape };
  return {
    ...base,
    items: [
      p.line(0, 0, o.off.x, o.off.y, 'leader'),
      { kind: 'circle', layer, center: { x: 0, y: 0 }, radius: 0.18 * h, fill: 'ink' },
      { kind: 'symbol', layer, at: o.off, items: shape },
    ],
  };
}

/** Paper half-extents of a tag, to keep things clear of it. */
export const tagSize = (kind: TagKind, text: string, style: Style): { readonly w: number; readonly h: number } => {
  const w = textWidth(text, style.note, 'condensed-bold') / 2;
  const slender = kind === 'joint' ? 1.35 : 1.1;
  return { w: w + slender * style.note, h: (kind === 'joint' || kind === 'opening' ? 1.55 : 1.25) * style.note };
};
