/**
 * How a post may buckle in each of its two planes: held at its top by something outside the posts, standing as a cantilever
 * on a held foot, pinned below and kept upright by a knee brace, or leaning on the others. NDS 2018 Appendix G (recalled).
 */
import type { Recorder } from '../../base/trace.js';
import { distance } from '../../base/vec.js';
import type { Member } from '../../structure/model.js';
import { KE } from '../codes/nds-2018/index.js';
import type { CheckContext } from '../contract.js';

export interface Plane {
  readonly Ke: number;
  /** Length over which it buckles, inches. */
  readonly l: number;
  readonly words: string;
}

/** `one` is bending about the strong axis (in the plane of `up`), `two` about the other. */
export interface PostEnds {
  readonly one: Plane;
  readonly two: Plane;
}

interface Level {
  readonly x: number;
  readonly y: number;
}

/** A direction within about 0.6° of a house axis lies along it. */
const ALONG = 0.01;

/** Directions of the knee braces that stand on a post. */
function kneesOn(ctx: CheckContext, post: string): readonly Level[] {
  return ctx.structure.joints.flatMap((j) => {
    if (j.kind !== 'brace-to-post' || j.ties.at(-1)?.part !== post) return [];
    const brace = ctx.structure.members.find((m) => m.id === j.ties[0]!.part);
    if (!brace) return [];
    const run = Math.hypot(brace.end.x - brace.start.x, brace.end.y - brace.start.y);
    return [{ x: (brace.end.x - brace.start.x) / run, y: (brace.end.y - brace.start.y) / run }];
  });
}

function planeOf(ctx: CheckContext, m: Member, dir: Level, knees: readonly Level[]): Plane {
  const { lateral } = ctx.project.cover;
  const systems = (['x', 'y'] as const).filter((a) => Math.abs(dir[a]) > ALONG).map((a) => lateral[a]);
  const byPosts = systems.some((s) => s === 'knee-braces' || s === 'fixed-posts');
  const whole = distance(m.start, m.end);
  if (!byPosts) return { Ke: KE['pinned-pinned'], l: whole, words: 'held at both ends, free to turn' };
  if (m.foot !== undefined && m.foot.kind !== 'pinned')
    return { Ke: KE['fixed-free'], l: m.end.z - m.foot.at, words: 'held at its foot, free to sway at its top' };
  if (knees.some((k) => Math.abs(k.x * dir.x + k.y * dir.y) > Math.SQRT1_2))
    return {
      Ke: KE['pinned-guided'],
      l: whole,
      words: 'pinned at its foot, kept upright at its top by a knee brace and free to sway, over its whole height',
    };
  return { Ke: KE['pinned-pinned'], l: whole, words: 'leans on the posts that hold the roof' };
}

const made = new WeakMap<CheckContext, Map<string, PostEnds>>();

export function postEnds(ctx: CheckContext, m: Member): PostEnds {
  let known = made.get(ctx);
  if (!known) {
    known = new Map();
    made.set(ctx, known);
  }
  let ends = known.get(m.id);
  if (!ends) {
    const knees = kneesOn(ctx, m.id);
    const size = Math.hypot(m.up.x, m.up.y) || 1;
    const up = { x: m.up.x / size, y: m.up.y / size };
    ends = { one: planeOf(ctx, m, up, knees), two: planeOf(ctx, m, { x: -up.y, y: up.x }, knees) };
    known.set(m.id, ends);
  }
  return ends;
}

/** Prints Ke where it is not the plain 1. */
export function recordEnds({ one, two }: PostEnds, rec?: Recorder): void {
  for (const [plane, axis] of [
    [one, 'd'],
    [two, 'b'],
  ] as const) {
    if (plane.Ke === 1) continue;
    rec?.step({
      symbol: 'Ke',
      meaning: `buckling length coefficient in the plane of ${axis}: ${plane.words}`,
      formula: 'Table G1, design value',
      substituted: `l = ${plane.l.toFixed(1)} in`,
      value: plane.Ke,
      unit: '',
      clause: 'NDS 2018 App. G',
      note: 'value recalled from memory: confirm in the printed table',
    });
  }
}
