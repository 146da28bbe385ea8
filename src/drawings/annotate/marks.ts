import type { Vec2 } from '../../base/vec.js';
import { type LayerName, type PaperSymbol, type Primitive, textWidth } from '../ir/index.js';
import { pencil } from './pencil.js';
import type { Style } from './style.js';

interface MarkBase {
  readonly layer: LayerName;
  readonly style: Style;
}

const symbol = (layer: LayerName, at: Vec2, items: readonly Primitive[], angle?: number): PaperSymbol => ({
  kind: 'symbol',
  layer,
  at,
  items,
  ...(angle !== undefined && { angle }),
});

/** Lettering that fits a bubble: smaller when the text is long. */
const fitted = (text: string, width: number, h: number): number =>
  Math.min(h, (h * width) / Math.max(1e-9, textWidth(text, h, 'condensed-bold')));

/** Circle halved by a line: number above, sheet below. */
function addressBubble(number: string, sheet: string, o: MarkBase): Primitive[] {
  const p = pencil(o.layer);
  const r = o.style.bubble * 1.2;
  const h = o.style.note;
  return [
    p.circle(0, 0, r, 'symbol', 'paper'),
    p.line(-r, 0, r, 0),
    {
      ...p.text(0, 0.28 * r, number, fitted(number, 1.1 * r, h * 1.05), { face: 'condensed-bold', align: 'center' }),
      role: 'mark-number',
    },
    {
      ...p.text(0, -0.18 * r, sheet, fitted(sheet, 1.72 * r, h), { face: 'condensed', align: 'center', valign: 'top' }),
      role: 'mark-sheet',
    },
  ];
}

/** Structural grid line with a bubble beyond one end or both, in the coordinates of its list. */
export function gridLine(
  o: MarkBase & {
    readonly a: Vec2;
    readonly b: Vec2;
    readonly label: string;
    readonly ends?: 'a' | 'b' | 'both';
    readonly path?: string;
  },
): Primitive[] {
  const { a, b, label, layer, style } = o;
  const p = pencil(layer, 'grid');
  const r = style.bubble;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const u = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const bubble = (at: Vec2, sign: number): PaperSymbol => ({
    ...symbol(layer, at, [
      p.circle(u.x * r * sign, u.y * r * sign, r, 'symbol', 'paper'),
      p.text(u.x * r * sign, u.y * r * sign, label, fitted(label, 1.5 * r, style.note * 1.25), {
        face: 'condensed-bold',
        align: 'center',
        valign: 'middle',
      }),
    ]),
    ...(o.path !== undefined && { path: o.path }),
  });
  const ends = o.ends ?? 'b';
  return [
    { kind: 'line', layer, pen: 'grid', a, b },
    ...(ends !== 'b' ? [bubble(a, -1)] : []),
    ...(ends !== 'a' ? [bubble(b, 1)] : []),
  ];
}

/**
 * Section mark on a plan: the trace of the cutting plane from `a` to `b`, and at each end a bubble with a flag that points the
 * way one looks (`look`: 1 to the left of a→b, −1 to the right).
 */
export function sectionMark(
  o: MarkBase & {
    readonly a: Vec2;
    readonly b: Vec2;
    readonly look: 1 | -1;
    readonly number: string;
    readonly sheet: string;
    readonly ends?: 'both' | 'a' | 'b';
  },
): Primitive[] {
  const { a, b, layer, style } = o;
  const p = pencil(layer);
  const r = style.bubble * 1.2;
  const angle = Math.atan2(b.y - a.y, b.x - a.x);
  const end = (at: Vec2, sign: number): PaperSymbol => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const center = { x: sign * r * c, y: sign * r * s };
    const turn = (u: number, v: number): readonly [number, number] => [
      center.x + c * u - s * v,
      center.y + s * u + c * v,
    ];
    const k = o.look * r;
    return symbol(layer, at, [
      p.shape([turn(-r * 1.02, 0), turn(0, k * 1.62), turn(r * 1.02, 0)], undefined, 'ink'),
      { kind: 'symbol', layer, at: center, items: addressBubble(o.number, o.sheet, o) },
    ]);
  };
  const which = o.ends ?? 'both';
  return [
    { kind: 'line', layer, pen: 'section', a, b },
    ...(which !== 'b' ? [end(a, -1)] : []),
    ...(which !== 'a' ? [end(b, 1)] : []),
  ];
}

/** Elevation mark: a bubble with a flag that points toward the face seen (`angle` radians, paper). */
export function elevationMark(
  o: MarkBase & { readonly at: Vec2; readonly angle: number; readonly number: string; readonly sheet: string },
): PaperSymbol {
  const p = pencil(o.layer);
  const r = o.style.bubble * 1.2;
  const turn = (u: number, v: number): readonly [number, number] => [
    Math.cos(o.angle) * u - Math.sin(o.angle) * v,
    Math.sin(o.angle) * u + Math.cos(o.angle) * v,
  ];
  return symbol(o.layer, o.at, [
    p.shape([turn(0, -r * 1.02), turn(r * 1.62, 0), turn(0, r * 1.02)], undefined, 'ink'),
    ...addressBubble(o.number, o.sheet, o),
  ]);
}

/** Detail mark: a dashed circle around the place (model radius) and an address bubble, joined by a short line. */
export function detailMark(
  o: MarkBase & {
    readonly at: Vec2;
    readonly radius: number;
    readonly number: string;
    readonly sheet: string;
    readonly angle?: number;
    /** Paper inches from the circle to the bubble. */
    readonly reach?: number;
    readonly scale: number;
  },
): Primitive[] {
  const angle = o.angle ?? Math.PI / 4;
  const p = pencil(o.layer);
  const r = o.style.bubble * 1.2;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const edge = o.radius * o.scale;
  const far = edge + (o.reach ?? o.style.note * 2);
  return [
    { kind: 'circle', layer: o.layer, center: o.at, radius: o.radius, pen: 'hidden' },
    symbol(o.layer, o.at, [
      p.line(c * edge, s * edge, c * far, s * far, 'symbol'),
      {
        kind: 'symbol',
        layer: o.layer,
        at: { x: c * (far + r), y: s * (far + r) },
        items: addressBubble(o.number, o.sheet, o),
      },
    ]),
  ];
}

/** Level mark of an elevation or section: a short line at the height, a target, the name and the height above it. */
export function levelMark(
  o: MarkBase & {
    readonly at: Vec2;
    readonly side: 'left' | 'right';
    readonly name: string;
    readonly value: string;
    readonly path?: string;
  },
): PaperSymbol {
  const h = o.style.note;
  const p = pencil(o.layer, 'dimension');
  const k = o.side === 'right' ? 1 : -1;
  const width = Math.max(textWidth(o.name, h), textWidth(o.value, h, 'bold')) + 1.6 * h;
  const r = 0.62 * h;
  const align = k > 0 ? 'left' : 'right';
  return {
    ...symbol(o.layer, o.at, [
      p.line(0, 0, k * (width + 1.9 * h), 0, 'dimension'),
      p.circle(k * r * 1.9, 0, r, 'symbol', 'paper'),
      p.shape(
        [
          [k * r * 1.9, 0],
          [k * r * 1.9 + r, 0],
          [k * r * 1.9 + r * Math.SQRT1_2, r * Math.SQRT1_2],
          [k * r * 1.9, r],
        ],
        undefined,
        'ink',
      ),
      p.shape(
        [
          [k * r * 1.9, 0],
          [k * r * 1.9 - r, 0],
          [k * r * 1.9 - r * Math.SQRT1_2, -r * Math.SQRT1_2],
          [k * r * 1.9, -r],
        ],
        undefined,
        'ink',
      ),
      p.text(k * 2.5 * h, 0.45 * h, o.name, h, { align }),
      p.text(k * 2.5 * h, -0.45 * h, o.value, h, { align, valign: 'top', face: 'bold' }),
    ]),
    ...(o.path !== undefined && { path: o.path }),
  };
}

/** Roof slope: a right triangle with its run of 12 level and the rise upright; `up` is the side to which the roof climbs. */
export function slopeTriangle(
  o: MarkBase & {
    readonly at: Vec2;
    readonly rise: string;
    readonly ratio: number;
    readonly up: 'left' | 'right';
    readonly path?: string;
  },
): PaperSymbol {
  const h = o.style.note;
  const p = pencil(o.layer, 'symbol');
  const k = o.up === 'right' ? 1 : -1;
  const run = 3.6 * h;
  const rise = Math.max(0.35 * h, run * o.ratio);
  return {
    ...symbol(o.layer, o.at, [
      p.shape(
        [
          [0, 0],
          [k * run, rise],
          [0, rise],
        ],
        'symbol',
      ),
      p.text((k * run) / 2, rise + 0.45 * h, '12', h, { align: 'center' }),
      p.text(-k * 0.45 * h, rise / 2, o.rise, h, {
        align: k > 0 ? 'right' : 'left',
        valign: 'middle',
        ...(o.path !== undefined && { path: o.path }),
      }),
    ]),
  };
}

/** Break line between two points: a thin line with one zigzag. */
export function breakLine(o: MarkBase & { readonly a: Vec2; readonly b: Vec2 }): Primitive[] {
  const h = o.style.note;
  const p = pencil(o.layer, 'new-fine');
  const mid = { x: (o.a.x + o.b.x) / 2, y: (o.a.y + o.b.y) / 2 };
  const angle = Math.atan2(o.b.y - o.a.y, o.b.x - o.a.x);
  return [
    { kind: 'line', layer: o.layer, pen: 'new-fine', a: o.a, b: o.b },
    symbol(
      o.layer,
      mid,
      [
        p.shape(
          [
            [-0.5 * h, -0.1 * h],
            [0.5 * h, -0.1 * h],
            [0.5 * h, 0.1 * h],
            [-0.5 * h, 0.1 * h],
          ],
          undefined,
          'paper',
        ),
        p.path([
          [-0.5 * h, 0],
          [-0.25 * h, 0.95 * h],
          [0.25 * h, -0.95 * h],
          [0.5 * h, 0],
        ]),
      ],
      angle,
    ),
  ];
}

/** Extent of repeated framing: a line with half arrowheads, a dot on the member shown, the callout over it. */
export function spread(
  o: MarkBase & {
    readonly a: Vec2;
    readonly b: Vec2;
    readonly text: string;
    readonly dot?: Vec2;
    readonly mark?: string;
    readonly path?: string;
  },
): Primitive[] {
  const h = o.style.note;
  const p = pencil(o.layer, 'dimension');
  let angle = Math.atan2(o.b.y - o.a.y, o.b.x - o.a.x);
  const half = (flip: 1 | -1): Primitive[] => [
    p.shape(
      [
        [0, 0],
        [flip * 1.5 * h, 0],
        [flip * 1.5 * h, 0.42 * h],
      ],
      undefined,
      'ink',
    ),
  ];
  const tagged = { ...(o.mark !== undefined && { mark: o.mark }), ...(o.path !== undefined && { path: o.path }) };
  const items: Primitive[] = [
    { kind: 'line', layer: o.layer, pen: 'dimension', a: o.a, b: o.b, ...tagged },
    symbol(o.layer, o.a, half(1), angle),
    symbol(o.layer, o.b, half(-1), angle),
  ];
  if (o.dot !== undefined) {
    items.push(
      symbol(o.layer, o.dot, [
        { kind: 'circle', layer: o.layer, center: { x: 0, y: 0 }, radius: 0.28 * h, fill: 'ink' },
      ]),
    );
  }
  if (angle > Math.PI / 2 + 1e-9) angle -= Math.PI;
  else if (angle <= -Math.PI / 2 + 1e-9) angle += Math.PI;
  const mid = { x: (o.a.x + o.b.x) / 2, y: (o.a.y + o.b.y) / 2 };
  items.push({
    ...symbol(o.layer, mid, [p.text(0, 0.5 * h, o.text, h, { align: 'center', mask: true })], angle),
    ...tagged,
  });
  return items;
}

/** Fall of a surface: arrow downhill with its slope, e.g. `1/4" per ft`. */
export function slopeArrow(
  o: MarkBase & { readonly at: Vec2; readonly angle: number; readonly text: string; readonly path?: string },
): PaperSymbol {
  const h = o.style.note;
  const p = pencil(o.layer, 'dimension');
  const length = textWidth(o.text, h) + 2 * h;
  // Never read from the left of the sheet: an arrow straight down carries its text turned.
  const down = Math.abs(Math.cos(o.angle)) < 1e-9 && Math.sin(o.angle) < 0;
  const flip = Math.cos(o.angle) < -1e-9 || down;
  return {
    ...symbol(
      o.layer,
      o.at,
      [
        p.line(-length / 2, 0, length / 2, 0),
        p.shape(
          [
            [length / 2, 0],
            [length / 2 - h, 0.2 * h],
            [length / 2 - h, -0.2 * h],
          ],
          undefined,
          'ink',
        ),
        p.text(-0.4 * h, flip ? -0.45 * h : 0.45 * h, o.text, h, {
          align: 'center',
          angle: flip ? Math.PI : 0,
          mask: true,
        }),
      ],
      o.angle,
    ),
    ...(o.path !== undefined && { path: o.path }),
  };
}

/** Numbered triangle beside a change. */
export const revisionDelta = (o: MarkBase & { readonly at: Vec2; readonly number: string }): PaperSymbol => {
  const h = o.style.note;
  const p = pencil(o.layer);
  return symbol(o.layer, o.at, [
    p.shape(
      [
        [-1.25 * h, -0.8 * h],
        [1.25 * h, -0.8 * h],
        [0, 1.35 * h],
      ],
      'symbol',
      'paper',
    ),
    p.text(0, -0.5 * h, o.number, h * 0.9, { face: 'condensed-bold', align: 'center' }),
  ]);
};
