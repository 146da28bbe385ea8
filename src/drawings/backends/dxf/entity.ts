/** Entities as data: a type, a layer, how the line looks, and the groups of the type. Handles and owners come with the file. */
import type { Vec2 } from '../../../base/vec.js';
import {
  descent,
  type FaceName,
  FILLS,
  type FillName,
  INKS,
  type InkName,
  type PenName,
  penOf,
} from '../../ir/index.js';
import { chunks, paragraphText, plainText, STYLES, widthFactor } from './lettering.js';
import { point, point2, type Tag, turn } from './tags.js';

export interface Entity {
  readonly type: string;
  readonly layer: string;
  /** Colour, linetype, line weight: groups of the common part. */
  readonly look: readonly Tag[];
  /** From the first subclass marker of the type on. */
  readonly body: readonly Tag[];
  /** Mark of the part drawn, carried as extended data. */
  readonly mark: string | undefined;
  /** Extended data of the format's own, e.g. overrides of a dimension style. */
  readonly extended?: readonly Tag[];
}

/** What every entity made from one primitive shares. */
export interface Head {
  readonly layer: string;
  readonly mark: string | undefined;
  /** Scale of dashes on top of the file's own: the format does not grow them with a block. */
  readonly dash: number;
}

/** Black on white and white on black: colour 7. */
const BLACK = 7;
const TRUE_GREY = (g: number): number => Math.round(g * 255) * 0x010101;
/** The colour index's own greys, for readers that know no true colour. */
const INDEX_GREYS: readonly (readonly [index: number, grey: number])[] = [
  [250, 0.2],
  [251, 0.36],
  [252, 0.52],
  [253, 0.68],
  [254, 0.84],
  [255, 1],
];

export function greyTags(g: number): Tag[] {
  if (g === 0) return [[62, BLACK]];
  const [index] = INDEX_GREYS.reduce((a, b) => (Math.abs(b[1] - g) < Math.abs(a[1] - g) ? b : a));
  return [
    [62, index],
    [420, TRUE_GREY(g)],
  ];
}

export const linetypeOf = (pen: PenName): string => (penOf(pen).dash ? `EW-${pen.toUpperCase()}` : 'Continuous');

/** Line weights are named in hundredths of a millimetre, and only the steps of the pen makers exist. */
export const lineWeight = (mm: number): number => Math.round(mm * 100);

function penTags(pen: PenName, dash: number): Tag[] {
  const p = penOf(pen);
  const [colour, ...trueColour] = greyTags(p.grey ?? 0);
  return [
    [6, linetypeOf(pen)],
    colour!,
    ...(p.dash && Math.abs(dash - 1) > 1e-9 ? [[48, dash] as const] : []),
    [370, lineWeight(p.width_mm)],
    ...trueColour,
  ];
}

const stroke = (type: string, h: Head, pen: PenName, body: readonly Tag[]): Entity => ({
  type,
  layer: h.layer,
  mark: h.mark,
  look: penTags(pen, h.dash),
  body,
});

export const lineEntity = (h: Head, pen: PenName, a: Vec2, b: Vec2): Entity =>
  stroke('LINE', h, pen, [[100, 'AcDbLine'], ...point(10, a.x, a.y), ...point(11, b.x, b.y)]);

/** Vertices as a flat list; dashes run through the corners, as the pens draw them. */
export const polylineEntity = (h: Head, pen: PenName, path: readonly number[], closed: boolean): Entity =>
  stroke('LWPOLYLINE', h, pen, [
    [100, 'AcDbPolyline'],
    [90, path.length / 2],
    [70, (closed ? 1 : 0) + (penOf(pen).dash ? 128 : 0)],
    [43, 0],
    ...vertices(path),
  ]);

export const vertices = (path: readonly number[]): Tag[] => {
  const out: Tag[] = [];
  for (let i = 0; i < path.length; i += 2) out.push(...point2(10, path[i]!, path[i + 1]!));
  return out;
};

export const circleEntity = (h: Head, pen: PenName, c: Vec2, r: number): Entity =>
  stroke('CIRCLE', h, pen, [[100, 'AcDbCircle'], ...point(10, c.x, c.y), [40, r]]);

/** Counter-clockwise from start to end, radians in, degrees out. */
export const arcEntity = (h: Head, pen: PenName, c: Vec2, r: number, start: number, end: number): Entity =>
  stroke('ARC', h, pen, [
    [100, 'AcDbCircle'],
    ...point(10, c.x, c.y),
    [40, r],
    [100, 'AcDbArc'],
    [50, turn(start)],
    [51, turn(end)],
  ]);

export interface Lettering {
  /** Left end, middle or right end of the baseline. */
  readonly at: Vec2;
  readonly content: string;
  /** Drawing units. */
  readonly height: number;
  readonly face: FaceName;
  readonly align: 'left' | 'center' | 'right';
  readonly angle: number;
  readonly ink: InkName;
  /** Width on the sheet, drawing units. */
  readonly width: number;
}

const ALIGN = { left: 0, center: 1, right: 2 } as const;

export function textEntity(h: Head, t: Lettering): Entity {
  const back = t.align === 'left' ? 0 : t.align === 'center' ? t.width / 2 : t.width;
  return {
    type: 'TEXT',
    layer: h.layer,
    mark: h.mark,
    look: greyTags(INKS[t.ink]),
    body: [
      [100, 'AcDbText'],
      ...point(10, t.at.x - Math.cos(t.angle) * back, t.at.y - Math.sin(t.angle) * back),
      [40, t.height],
      [1, plainText(t.content)],
      [50, turn(t.angle)],
      [41, widthFactor(t.content, t.height, t.face)],
      [7, STYLES[t.face].name],
      [72, ALIGN[t.align]],
      ...(t.align === 'left' ? [] : point(11, t.at.x, t.at.y)),
      [100, 'AcDbText'],
    ],
  };
}

/** Paragraph text, for what is too long for a one-line text. */
export function paragraphEntity(h: Head, t: Lettering): Entity {
  const pieces = chunks(paragraphText(t.content));
  // Attached at half the height of the capitals, which every reader finds alike; the bottom edge they do not.
  const up = t.height / 2;
  return {
    type: 'MTEXT',
    layer: h.layer,
    mark: h.mark,
    look: greyTags(INKS[t.ink]),
    body: [
      [100, 'AcDbMText'],
      ...point(10, t.at.x - Math.sin(t.angle) * up, t.at.y + Math.cos(t.angle) * up),
      [40, t.height],
      [41, 0],
      [71, 4 + ALIGN[t.align]],
      [72, 1],
      ...pieces.map((p, i): Tag => [i < pieces.length - 1 ? 3 : 1, p]),
      [7, STYLES[t.face].name],
      ...point(11, Math.cos(t.angle), Math.sin(t.angle)),
      [73, 1],
      [44, 1],
    ],
  };
}

/** Clears the ground behind a line of lettering: a wipeout, which readers honor that know no masked text. */
export function maskEntity(h: Head, t: Lettering): Entity | undefined {
  const pad = 0.3 * t.height;
  const left = (t.align === 'left' ? 0 : t.align === 'center' ? -t.width / 2 : -t.width) - pad;
  const right = left + t.width + 2 * pad;
  const low = -Math.min(pad, descent(t.height, t.face));
  const high = t.height + pad;
  const [c, s] = [Math.cos(t.angle), Math.sin(t.angle)];
  const corner = (u: number, v: number): [number, number] => [t.at.x + c * u - s * v, t.at.y + s * u + c * v];
  return wipeoutEntity(h, [...corner(left, low), ...corner(right, low), ...corner(right, high), ...corner(left, high)]);
}

export const insertEntity = (h: Head, block: string, at: Vec2, scale: number, angle: number): Entity => ({
  type: 'INSERT',
  layer: h.layer,
  mark: h.mark,
  look: [],
  body: [
    [100, 'AcDbBlockReference'],
    [2, block],
    ...point(10, at.x, at.y),
    [41, scale],
    [42, scale],
    [43, scale],
    [50, turn(angle)],
  ],
});

/** Clears what lies below, in the colour of the ground, whatever that is on the reader's screen. */
export function wipeoutEntity(h: Head, path: readonly number[]): Entity | undefined {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < path.length; i += 2) {
    x0 = Math.min(x0, path[i]!);
    x1 = Math.max(x1, path[i]!);
    y0 = Math.min(y0, path[i + 1]!);
    y1 = Math.max(y1, path[i + 1]!);
  }
  const [w, d] = [x1 - x0, y1 - y0];
  if (!(w > 1e-6 && d > 1e-6)) return undefined;
  // The clip is given in the frame of an image of one pixel whose rows run downward.
  const ring: Tag[] = [];
  const loop = [...path, path[0]!, path[1]!];
  for (let i = 0; i < loop.length; i += 2) {
    ring.push(...point2(14, (loop[i]! - x0) / w - 0.5, 0.5 - (loop[i + 1]! - y0) / d));
  }
  return {
    type: 'WIPEOUT',
    layer: h.layer,
    mark: h.mark,
    look: [],
    body: [
      [100, 'AcDbWipeout'],
      [90, 0],
      ...point(10, x0, y0),
      ...point(11, w, 0),
      ...point(12, 0, d),
      ...point2(13, 1, 1),
      [340, '0'],
      [70, 7],
      [280, 1],
      [281, 50],
      [282, 50],
      [283, 0],
      [360, '0'],
      [71, 2],
      [91, loop.length / 2],
      ...ring,
    ],
  };
}

/** Grey of a fill, or nothing for the ground's own colour. */
export const fillGrey = (fill: FillName): number | undefined => (fill === 'paper' ? undefined : FILLS[fill]);
