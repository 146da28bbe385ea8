import type { Vec2 } from '../../base/vec.js';
import { type DrawingScale, type LayerName, type Primitive, textWidth } from '../ir/index.js';
import { pencil } from './pencil.js';
import type { Style } from './style.js';

export interface ViewTitleOptions {
  /** Left end of the rule under the title, paper inches. */
  readonly at: Vec2;
  readonly number: string;
  readonly title: string;
  /** Scale in words, e.g. the label of a `DrawingScale` or `Not to scale`. */
  readonly scale: string;
  readonly style: Style;
  /** Length of the rule; long enough for the title by default. */
  readonly width?: number;
  readonly layer?: LayerName;
}

/** Title of a view: number in a ring on a heavy rule, title above the rule, scale below. `height` reaches from ring top to ring bottom. */
export function viewTitle(o: ViewTitleOptions): {
  readonly items: readonly Primitive[];
  readonly width: number;
  readonly height: number;
} {
  const { style, at } = o;
  const p = pencil(o.layer ?? 'G-ANNO-TITL');
  const h = style.viewTitle;
  const r = style.bubble * 1.05;
  const x = at.x + 2 * r + 0.55 * h;
  const width = o.width ?? 2 * r + 1.2 * h + textWidth(o.title, h, 'bold');
  return {
    width,
    height: 2 * r,
    items: [
      p.line(at.x + 2 * r, at.y, at.x + Math.max(width, 2 * r), at.y, 'rule-bold'),
      p.circle(at.x + r, at.y, r, 'profile', 'paper'),
      {
        ...p.text(at.x + r, at.y, o.number, h * 0.85, { face: 'bold', align: 'center', valign: 'middle' }),
        role: 'view-number',
      },
      p.text(x, at.y + 0.52 * h, o.title, h, { face: 'bold' }),
      p.text(x, at.y - 0.62 * style.note, o.scale, style.note, { valign: 'top' }),
    ],
  };
}

/** North arrow: a ring, a slim needle with one side inked, the letter beyond its tip. `angle` turns north from up, counter-clockwise. */
export function northArrow(o: {
  readonly at: Vec2;
  readonly angle: number;
  readonly style: Style;
  readonly layer?: LayerName;
  readonly path?: string;
}): Primitive {
  const layer = o.layer ?? 'G-ANNO-TITL';
  const p = pencil(layer);
  const r = o.style.bubble * 1.5;
  const h = o.style.note * 1.2;
  return {
    kind: 'symbol',
    layer,
    at: o.at,
    angle: o.angle,
    ...(o.path !== undefined && { path: o.path }),
    items: [
      p.circle(0, 0, r, 'symbol'),
      p.shape(
        [
          [0, r * 1.32],
          [r * 0.3, -r * 0.72],
          [0, -r * 0.45],
        ],
        undefined,
        'ink',
      ),
      p.shape(
        [
          [0, r * 1.32],
          [-r * 0.3, -r * 0.72],
          [0, -r * 0.45],
        ],
        'symbol',
        'paper',
      ),
      p.text(0, r * 1.32 + 0.4 * h, 'N', h, { face: 'bold', align: 'center' }),
    ],
  };
}

const FEET: Readonly<Record<DrawingScale['family'], readonly number[]>> = {
  architectural: [1 / 12, 0.25, 0.5, 1, 2, 4, 8],
  engineering: [5, 10, 20, 40, 50, 100],
};

/**
 * Graphic scale: survives printing at any size. Four equal parts of a round number of feet (inches for large details), the first
 * halved; alternate parts inked.
 */
export function scaleBar(o: {
  readonly at: Vec2;
  readonly scale: DrawingScale;
  readonly style: Style;
  readonly layer?: LayerName;
}): {
  readonly items: readonly Primitive[];
  readonly width: number;
  readonly height: number;
} {
  const { at, scale, style } = o;
  const p = pencil(o.layer ?? 'G-ANNO-TITL', 'symbol');
  const h = style.small;
  const inch = 12 * scale.ratio;
  const unit = FEET[scale.family].find((f) => f * inch >= 5 * style.note) ?? FEET[scale.family].at(-1)!;
  const w = unit * inch;
  const t = 0.5 * style.note;
  const label = (feet: number): string => (unit < 1 ? `${Math.round(feet * 12)}` : `${feet}`);
  const items: Primitive[] = [];
  const cells: readonly (readonly [number, number])[] = [
    [0, 0.5],
    [0.5, 1],
    [1, 2],
    [2, 3],
    [3, 4],
  ];
  cells.forEach(([a, b], i) => {
    const [x0, x1] = [at.x + a * w, at.x + b * w];
    items.push(
      p.shape(
        [
          [x0, at.y],
          [x1, at.y],
          [x1, at.y + t],
          [x0, at.y + t],
        ],
        'symbol',
        i % 2 === 0 ? 'ink' : 'paper',
      ),
    );
  });
  for (let i = 0; i <= 4; i++) {
    const text = i < 4 ? label(i * unit) : `${label(4 * unit)}${unit < 1 ? ' in' : ' ft'}`;
    // The unit hangs out to the right so that the figure itself stands over its division.
    const shift = i < 4 ? 0 : (textWidth(text, h) - textWidth(label(4 * unit), h)) / 2;
    const figure = p.text(at.x + i * w + shift, at.y + t + 0.5 * h, text, h, { align: 'center' });
    // One figure a bar is known by its role, so that bars can be counted against the scales printed.
    items.push(i < 4 ? figure : { ...figure, role: 'scale-bar' });
  }
  return { items, width: 4 * w, height: t + 1.5 * h };
}
