/** Hatches: boundary loops with a solid grey or a pattern written out as line families, so that no pattern file is needed. */
import type { Vec2 } from '../../../base/vec.js';
import { type LineFamily, PATTERNS, type Pattern, type PatternName, penOf } from '../../ir/index.js';
import { type Entity, greyTags, type Head, lineWeight, vertices } from './entity.js';
import { degrees, point, point2, type Tag } from './tags.js';

/** One family as the format states it: direction, a point, the step to the next line, dashes (gaps negative). Drawing units. */
export interface PatternLine {
  readonly angle: number;
  readonly base: Vec2;
  readonly along: number;
  readonly spacing: number;
  readonly dashes: readonly number[];
}

const D60 = Math.PI / 3;
const D45 = Math.PI / 4;

type Stand = readonly (readonly [
  angle: number,
  base: readonly [number, number],
  along: number,
  spacing: number,
  dashes: readonly number[],
])[];

/** Small triangles on a triangular lattice of period `p`: each side is a family of its own. */
const triangles = (p: number, side: number, x: number, y: number): Stand => [
  [0, [x, y], p / 2, (p * Math.sqrt(3)) / 2, [side, side - p]],
  [D60, [x, y], p / 2, (p * Math.sqrt(3)) / 2, [side, side - p]],
  [2 * D60, [x + side, y], p / 2, (p * Math.sqrt(3)) / 2, [side, side - p]],
];

/** Hexagons on the same lattice, for pebbles. */
const hexagons = (p: number, r: number): Stand =>
  [0, 1, 2, 3, 4, 5].map((i) => {
    const a = i * D60;
    // From corner i the side runs at a + 120°: its direction is a lattice direction for every corner.
    return [a + 2 * D60, [r * Math.cos(a), r * Math.sin(a)], p / 2, (p * Math.sqrt(3)) / 2, [r, r - p]] as const;
  });

/** Strewn dots: a few families at angles with no common measure. */
const dots = (step: number, ...angles: readonly number[]): Stand =>
  angles.map((a, i) => [a, [step * 0.37 * i, step * 0.61 * i], step * 0.43, step * (1 + 0.17 * i), [0, -step]]);

/** Threes of short strokes, leaning one way and the other in turn, about the points of two interlaced square lattices. */
const furrows = (p: number): Stand =>
  [D45, -D45].flatMap((a, other) =>
    [-1, 0, 1].map((n) => {
      const [c, s] = [Math.cos(a), Math.sin(a)];
      const center = other * p * Math.SQRT1_2;
      const [back, aside] = [-0.225 * p, n * 0.15 * p];
      return [a, [center + c * back - s * aside, center + s * back + c * aside], p, p, [0.45 * p, -1.55 * p]] as const;
    }),
  );

/**
 * Strewn marks cannot be ruled: these stand for them, paper inches, made for this program to read alike. Patterns in neither list
 * (diagonals of a cut member aside) are written stroke by stroke.
 */
const STAND_INS: Readonly<Partial<Record<PatternName, Stand>>> = {
  concrete: [...dots(0.17, 0.65, 2.05), ...triangles(0.46, 0.05, 0.1, 0.06)],
  gravel: hexagons(0.1, 0.036),
  sand: dots(0.075, 0.3, 1.2, 2.5),
  earth: furrows(0.3),
  fill: [[-D45, [0, 0], 0.11, 0.16, [0.12, -0.06]], ...dots(0.2, 0.5, 1.7)],
};

/** A family of the sheets' own patterns: gaps negative, and an empty first dash becomes a later start. */
function ruled(f: LineFamily, k: number, turn: number): PatternLine {
  const angle = f.angle + turn;
  const dash = (f.dash ?? []).map((d) => d * k);
  let late = 0;
  if (dash.length > 2 && dash[0] === 0) {
    const [, gap] = dash.splice(0, 2);
    late = gap!;
    dash[dash.length - 1]! += gap!;
  }
  const period = dash.reduce((a, b) => a + b, 0);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    angle,
    base: { x: c * late - s * f.offset * k, y: s * late + c * f.offset * k },
    // Scattered dashes: each line starts elsewhere.
    along: f.loose ? period * 0.382 : 0,
    spacing: f.spacing * k,
    dashes: dash.map((d, i) => (i % 2 === 0 ? d : -d)),
  };
}

const stand = ([angle, [x, y], along, spacing, dashes]: Stand[number], k: number): PatternLine => ({
  angle,
  base: { x: x * k, y: y * k },
  along: along * k,
  spacing: spacing * k,
  dashes: dashes.map((d) => d * k),
});

/**
 * Pattern lines of a ruled or strewn pattern, about the paper's origin.
 * @param k drawing units per paper inch times the hatch's own spacing
 */
export function patternLines(name: PatternName, k: number, angle: number): PatternLine[] | undefined {
  const pattern: Pattern = PATTERNS[name];
  if (pattern.families) return pattern.families.map((f) => ruled(f, k, angle));
  return STAND_INS[name]?.map((row) => stand(row, k));
}

/** The crossed diagonals of a cut member as pattern lines so far apart that just one of each meets the member. */
export function diagonalLines(loop: readonly Vec2[], count: 1 | 2): PatternLine[] {
  const [a, b, c, d] = loop;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return [];
  const size = Math.hypot(c.x - a.x, c.y - a.y) + Math.hypot(d.x - b.x, d.y - b.y);
  const one = (p: Vec2, q: Vec2): PatternLine => ({
    angle: Math.atan2(q.y - p.y, q.x - p.x),
    base: p,
    along: 0,
    spacing: 2 * size,
    dashes: [],
  });
  return count === 2 ? [one(a, c), one(b, d)] : [one(a, c)];
}

/** A loop as a flat list of coordinates; with `round`, two half circles. */
export interface Boundary {
  readonly path: readonly number[];
  readonly round?: boolean;
}

function boundaryTags(loops: readonly Boundary[]): Tag[] {
  const out: Tag[] = [[91, loops.length]];
  loops.forEach(({ path, round }, i) => {
    out.push([92, i === 0 ? 3 : 2], [72, round ? 1 : 0], [73, 1], [93, path.length / 2]);
    if (round) for (let j = 0; j < path.length; j += 2) out.push(...point2(10, path[j]!, path[j + 1]!), [42, 1]);
    else out.push(...vertices(path));
    out.push([97, 0]);
  });
  return out;
}

const start = (name: string, solid: boolean): Tag[] => [
  [100, 'AcDbHatch'],
  ...point(10, 0, 0),
  [210, 0],
  [220, 0],
  [230, 1],
  [2, name],
  [70, solid ? 1 : 0],
  [71, 0],
];

export const solidEntity = (h: Head, grey: number, loops: readonly Boundary[]): Entity => ({
  type: 'HATCH',
  layer: h.layer,
  mark: h.mark,
  look: greyTags(grey),
  body: [...start('SOLID', true), ...boundaryTags(loops), [75, 0], [76, 1], [98, 0]],
});

export function patternEntity(
  h: Head,
  name: PatternName,
  loops: readonly Boundary[],
  lines: readonly PatternLine[],
  scale: number,
): Entity {
  const body: Tag[] = [
    ...start(`EW-${name.toUpperCase()}`, false),
    ...boundaryTags(loops),
    [75, 0],
    [76, 2],
    [52, 0],
    [41, scale],
    [77, 0],
    [78, lines.length],
  ];
  for (const l of lines) {
    const [c, s] = [Math.cos(l.angle), Math.sin(l.angle)];
    body.push(
      [53, degrees(l.angle)],
      [43, l.base.x],
      [44, l.base.y],
      [45, c * l.along - s * l.spacing],
      [46, s * l.along + c * l.spacing],
      [79, l.dashes.length],
      ...l.dashes.map((d): Tag => [49, d]),
    );
  }
  body.push([98, 0]);
  const weight = lineWeight(penOf(PATTERNS[name].pen).width_mm);
  return { type: 'HATCH', layer: h.layer, mark: h.mark, look: [...greyTags(0), [370, weight]], body };
}
