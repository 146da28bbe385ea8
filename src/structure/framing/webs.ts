/**
 * A preliminary layout of what is inside a truss: joints on the chords' centre lines and the bars between them, pure
 * geometry. Pictures, analysis and sheets read the same layout. The truss plant's engineer decides the real one.
 * Which pattern a span gets is common practice, no source.
 */
import type { TrussShape } from '../model.js';

export type WebPattern = 'king-post' | 'fink' | 'howe' | 'scissor';

/** Inches; `x` from the outer face of the left beam towards the right one, `z` above the bearing. */
export interface PanelPoint {
  readonly name: string;
  readonly x: number;
  readonly z: number;
}

/**
 * `top` and `bottom` are chords; `heel` stands over a bearing between the two chords, or runs beside the top chord from
 * the bearing to the first panel point, where a plated wedge joins the chords; `stud` is an upright of a gable end that
 * backs the siding and carries no share of the roof's load.
 */
export type BarRole = 'top' | 'bottom' | 'web' | 'heel' | 'stud';

export interface TrussBar {
  readonly role: BarRole;
  /** Index into `joints`. */
  readonly from: number;
  readonly to: number;
}

export interface WebLayout {
  readonly pattern: WebPattern;
  readonly joints: readonly PanelPoint[];
  /** Chord bars run from left to right and in order; a pin stands wherever two chords meet at an angle. */
  readonly bars: readonly TrussBar[];
  /** Joints over the two bearings. */
  readonly bearings: readonly [number, number];
  readonly apex: number;
}

/** Longest spans of the patterns of common trusses, inches (common practice, no source). */
const KING_POST_SPAN = 12 * 12;
const FINK_SPAN = 30 * 12;
/** Spacing of the uprights of a gable-end truss, inches. Common practice, no source. */
export const UPRIGHTS = 24;

/** Panel points of one half as shares of the way from the bearing to the middle, and the webs between them. */
interface Pattern {
  readonly top: readonly number[];
  readonly bottom: readonly number[];
  /** Whether a bottom joint and an upright stand at the middle. */
  readonly king: boolean;
  /** `t0` first top joint, `b0` first bottom joint, `apex`, `foot`. */
  readonly webs: readonly (readonly [string, string])[];
}

const PATTERNS: Readonly<Record<WebPattern, Pattern>> = {
  'king-post': { top: [], bottom: [], king: true, webs: [] },
  fink: {
    top: [0.5],
    bottom: [2 / 3],
    king: false,
    webs: [
      ['t0', 'b0'],
      ['b0', 'apex'],
    ],
  },
  howe: {
    top: [1 / 3, 2 / 3],
    bottom: [1 / 3, 2 / 3],
    king: true,
    webs: [
      ['t0', 'b0'],
      ['t0', 'b1'],
      ['t1', 'b1'],
      ['t1', 'foot'],
    ],
  },
  scissor: {
    top: [0.62],
    bottom: [0.36],
    king: true,
    webs: [
      ['b0', 't0'],
      ['t0', 'foot'],
    ],
  },
};

export function patternOf(t: TrussShape): WebPattern {
  if (t.bottomPitch > 0) return 'scissor';
  return t.span <= KING_POST_SPAN ? 'king-post' : t.span <= FINK_SPAN ? 'fink' : 'howe';
}

/** Heights of the chords' centre lines over `x` inches from the outer face of the nearer beam. */
export function chordAxes(t: TrussShape): { top(x: number): number; bottom(x: number): number } {
  const half = t.chordDepth / 2;
  const kt = Math.tan(t.topPitch);
  const kb = Math.tan(t.bottomPitch);
  const top = t.heel - half / Math.cos(t.topPitch);
  const bottom = half / Math.cos(t.bottomPitch);
  return { top: (x) => top + x * kt, bottom: (x) => bottom + Math.max(0, x - t.bearing) * kb };
}

export function webLayout(t: TrussShape, gableEnd: boolean): WebLayout {
  const pattern = patternOf(t);
  const shape = PATTERNS[pattern];
  const axes = chordAxes(t);
  const middle = t.span / 2;
  const seat = t.bearing / 2;
  const joints: PanelPoint[] = [];
  const bars: TrussBar[] = [];
  const add = (name: string, x: number, z: number): number => joints.push({ name, x, z }) - 1;
  const at = (share: number): number => seat + share * (middle - seat);
  const bar = (role: BarRole, from: number, to: number): void => {
    bars.push({ role, from, to });
  };

  const apex = add('apex', middle, axes.top(middle));
  // A fink's bottom chord runs through the middle without a joint; a gable end has its middle upright there.
  const foot = shape.king || gableEnd ? add('foot', middle, axes.bottom(middle)) : undefined;
  const bearings: number[] = [];
  const tops: number[][] = [];
  const bottoms: number[][] = [];
  for (const side of ['L', 'R'] as const) {
    const place = (x: number): number => (side === 'L' ? x : t.span - x);
    const over = side === 'L' ? t.overhang[0] : t.overhang[1];
    const names = new Map<string, number>([['apex', apex]]);
    if (foot !== undefined) names.set('foot', foot);
    const bearing = add(`${side}`, place(seat), axes.bottom(seat));
    const heel = add(`${side}h`, place(seat), axes.top(seat));
    const tail = add(`${side}t`, place(-over), axes.top(-over));
    const upper = shape.top.map((s, i) => {
      const j = add(`${side}t${i + 1}`, place(at(s)), axes.top(at(s)));
      names.set(`t${i}`, j);
      return j;
    });
    const lower = shape.bottom.map((s, i) => {
      const j = add(`${side}b${i + 1}`, place(at(s)), axes.bottom(at(s)));
      names.set(`b${i}`, j);
      return j;
    });
    bearings.push(bearing);
    tops.push([tail, heel, ...upper, apex]);
    bottoms.push([bearing, ...lower, ...(foot === undefined ? [] : [foot])]);
    bar('heel', bearing, heel);
    bar('heel', bearing, upper[0] ?? apex);
    for (const [a, b] of shape.webs) bar('web', names.get(a)!, names.get(b)!);
    if (gableEnd) {
      const first = middle - UPRIGHTS;
      for (let x = first; x > UPRIGHTS / 2; x -= UPRIGHTS) {
        const k = Math.round((first - x) / UPRIGHTS) + 1;
        bar('stud', add(`${side}s${k}b`, place(x), axes.bottom(x)), add(`${side}s${k}t`, place(x), axes.top(x)));
      }
    }
  }
  if (foot !== undefined) bar('web', foot, apex);
  const run = (role: 'top' | 'bottom', left: readonly number[], right: readonly number[]): void => {
    const line = [...left, ...[...right].reverse()].filter((j, i, all) => j !== all[i - 1]);
    for (let i = 0; i + 1 < line.length; i++) bar(role, line[i]!, line[i + 1]!);
  };
  run('top', tops[0]!, tops[1]!);
  run('bottom', bottoms[0]!, bottoms[1]!);
  return { pattern, joints, bars, bearings: [bearings[0]!, bearings[1]!], apex };
}
