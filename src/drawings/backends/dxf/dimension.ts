/** Linear dimensions: a true entity with its measurement, and the anonymous block that readers draw it from. */
import type { Vec2 } from '../../../base/vec.js';
import { DIMENSION_FORM, type Dimension, explodeDimension, type Primitive, readingAngle } from '../../ir/index.js';
import type { Entity, Head } from './entity.js';
import { plainText } from './lettering.js';
import { point, type Tag, turn } from './tags.js';

/** Dimension style of a text height at a drawing scale. */
export interface DimStyle {
  readonly name: string;
  /** Paper inches. */
  readonly height: number;
  /** Drawing units per paper inch. */
  readonly k: number;
}

const trim = (v: number): string => String(Math.round(v * 1e5) / 1e5).replace('.', '_');

export const dimStyle = (height: number, k: number): DimStyle => ({
  name: `EW-${trim(k)}-${trim(height)}`,
  height,
  k,
});

/** A dimension whose paper lengths are drawing units: what `explodeDimension` wants, at full scale. */
const grown = (d: Dimension, k: number): Dimension => ({
  ...d,
  offset: d.offset * k,
  height: d.height * k,
  ...(d.shift && { shift: { x: d.shift.x * k, y: d.shift.y * k } }),
});

/** Strokes and text of the dimension's block, in drawing units. */
export const dimensionParts = (d: Dimension, k: number): Primitive[] => explodeDimension(grown(d, k));

/** Groups of the entity; `move` takes a point of the view to the drawing. */
export function dimensionEntity(
  h: Head,
  d: Dimension,
  k: number,
  names: { readonly block: string; readonly style: string },
  move: (p: Vec2) => Vec2,
): Entity {
  const parts = dimensionParts(d, k);
  const text = parts.find((p) => p.kind === 'text')!;
  const n = { x: -Math.sin(d.angle), y: Math.cos(d.angle) };
  const level = d.base.x * n.x + d.base.y * n.y + d.offset * k;
  const lift = level - (d.b.x * n.x + d.b.y * n.y);
  const on = move({ x: d.b.x + n.x * lift, y: d.b.y + n.y * lift });
  const read = readingAngle(d.angle);
  const half = (d.height * k) / 2;
  const middle = move({ x: text.at.x - Math.sin(read) * half, y: text.at.y + Math.cos(read) * half });
  const moved = d.shift !== undefined && (d.shift.x !== 0 || d.shift.y !== 0);
  const a = move(d.a);
  const b = move(d.b);
  // Which extension lines a neighbour draws instead is an override of the style on this one dimension.
  const hidden: Tag[] = [
    ...(d.noExtensionA
      ? ([
          [1070, 75],
          [1070, 1],
        ] as const)
      : []),
    ...(d.noExtensionB
      ? ([
          [1070, 76],
          [1070, 1],
        ] as const)
      : []),
  ];
  return {
    type: 'DIMENSION',
    layer: h.layer,
    mark: h.mark,
    look: [],
    body: [
      [100, 'AcDbDimension'],
      [2, names.block],
      ...point(10, on.x, on.y),
      ...point(11, middle.x, middle.y),
      [70, 32 + (moved ? 128 : 0)],
      [1, plainText(d.text)],
      [71, 5],
      [42, d.value],
      [3, names.style],
      [100, 'AcDbAlignedDimension'],
      ...point(13, a.x, a.y),
      ...point(14, b.x, b.y),
      [50, turn(d.angle)],
      [100, 'AcDbRotatedDimension'],
    ],
    ...(hidden.length > 0 && {
      extended: [[1001, 'ACAD'], [1000, 'DSTYLE'], [1002, '{'], ...hidden, [1002, '}']] as const,
    }),
  };
}

/** Record of the DIMSTYLE table after its name: the form of the sheets' dimensions, scaled as a whole. */
export function dimStyleTags(s: DimStyle, textStyleHandle: string): Tag[] {
  const h = s.height;
  return [
    [40, s.k],
    [41, h],
    [42, DIMENSION_FORM.gap * h],
    [43, DIMENSION_FORM.row * h],
    [44, DIMENSION_FORM.beyond * h],
    [45, 0],
    [46, 0.35 * h],
    [47, 0],
    [48, 0],
    [140, h],
    [141, 0],
    [142, (DIMENSION_FORM.tick * h) / Math.SQRT2],
    [143, 25.4],
    [144, 1],
    [145, 0],
    [146, 1],
    [147, DIMENSION_FORM.clear * h],
    [148, 0],
    [69, 1],
    [70, 0],
    [71, 0],
    [72, 0],
    [73, 0],
    [74, 0],
    [75, 0],
    [76, 0],
    [77, 1],
    [78, 3],
    [79, 0],
    [170, 0],
    [171, 2],
    [172, 1],
    [173, 0],
    [174, 0],
    [175, 0],
    [176, 7],
    [177, 7],
    [178, 7],
    [179, 0],
    [271, 4],
    [272, 4],
    [273, 2],
    [274, 2],
    [275, 0],
    [276, 2],
    [277, 4],
    [278, 46],
    [279, 1],
    [280, 0],
    [281, 0],
    [282, 0],
    [283, 1],
    [284, 0],
    [285, 0],
    [286, 0],
    [288, 0],
    [289, 3],
    [340, textStyleHandle],
    [371, 18],
    [372, 18],
  ];
}
