import type { Vec2 } from '../../base/vec.js';
import type {
  Arc,
  Circle,
  FaceName,
  FillName,
  HAlign,
  InkName,
  LayerName,
  Line,
  PenName,
  Polyline,
  Text,
  VAlign,
} from '../ir/index.js';

export interface LetterOptions {
  readonly face?: FaceName;
  readonly align?: HAlign;
  readonly valign?: VAlign;
  readonly angle?: number;
  readonly ink?: InkName;
  readonly mask?: boolean;
  readonly path?: string;
}

/** Short constructors of primitives on one layer, for code that draws much. */
export interface Pencil {
  line(x0: number, y0: number, x1: number, y1: number, pen?: PenName): Line;
  path(points: readonly (readonly [number, number])[], pen?: PenName): Polyline;
  shape(points: readonly (readonly [number, number])[], pen: PenName | undefined, fill?: FillName): Polyline;
  circle(x: number, y: number, radius: number, pen?: PenName, fill?: FillName): Circle;
  arc(x: number, y: number, radius: number, start: number, end: number, pen?: PenName): Arc;
  text(x: number, y: number, content: string, height: number, options?: LetterOptions): Text;
}

const point = ([x, y]: readonly [number, number]): Vec2 => ({ x, y });

export const pencil = (layer: LayerName, base: PenName = 'symbol'): Pencil => ({
  line: (x0, y0, x1, y1, pen = base) => ({ kind: 'line', layer, pen, a: { x: x0, y: y0 }, b: { x: x1, y: y1 } }),
  path: (points, pen = base) => ({ kind: 'polyline', layer, pen, points: points.map(point) }),
  shape: (points, pen, fill) => ({
    kind: 'polyline',
    layer,
    closed: true,
    points: points.map(point),
    ...(pen && { pen }),
    ...(fill && { fill }),
  }),
  circle: (x, y, radius, pen = base, fill) => ({
    kind: 'circle',
    layer,
    pen,
    center: { x, y },
    radius,
    ...(fill && { fill }),
  }),
  arc: (x, y, radius, start, end, pen = base) => ({ kind: 'arc', layer, pen, center: { x, y }, radius, start, end }),
  text: (x, y, content, height, options = {}) => ({ kind: 'text', layer, at: { x, y }, content, height, ...options }),
});
