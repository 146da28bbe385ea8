/**
 * How a post may buckle in each of its two planes: held at its top by something outside the posts, swaying with the roof it
 * holds (on a held foot, or pinned below and kept upright by a knee brace), or leaning on the others. NDS 2018 3.7.1.2,
 * Appendix G (recalled).
 */
import type { Recorder } from '../../base/trace.js';
import { distance } from '../../base/vec.js';
import type { Member } from '../../structure/model.js';
import { KE } from '../codes/nds-2018/index.js';
import type { CheckContext } from '../contract.js';
import { bracedPosts, heightOf, heldPosts, isHeld } from '../lateral/holding.js';
import { type SwayLength, swayLength } from '../lateral/sway-length.js';
import type { Axis } from '../lateral/system.js';

export interface Plane {
  readonly Ke: number;
  /** Length over which it buckles, inches. */
  readonly l: number;
  readonly words: string;
  /** How Ke follows from the stiffness of the frame. */
  readonly sway?: SwayLength;
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

interface Holding {
  readonly braced: ReadonlySet<string>;
  readonly all: ReadonlySet<string>;
}
const holdings = new WeakMap<CheckContext, Map<Axis, Holding>>();

function holdingOf(ctx: CheckContext, axis: Axis): Holding {
  let known = holdings.get(ctx);
  if (!known) {
    known = new Map();
    holdings.set(ctx, known);
  }
  let own = known.get(axis);
  if (!own) {
    const braced = bracedPosts(ctx, axis);
    own = { braced, all: new Set([...braced, ...heldPosts(ctx)]) };
    known.set(axis, own);
  }
  return own;
}

/** One plane of a post in one direction of the house. */
function planeAlong(ctx: CheckContext, m: Member, axis: Axis): Plane {
  const system = ctx.project.cover.lateral[axis];
  const whole = distance(m.start, m.end);
  if (system !== 'knee-braces' && system !== 'fixed-posts')
    return { Ke: KE['pinned-pinned'], l: whole, words: 'held at both ends, free to turn' };
  const { braced, all } = holdingOf(ctx, axis);
  if (!all.has(m.id)) return { Ke: KE['pinned-pinned'], l: whole, words: 'leans on the posts that hold the roof' };
  const knee = braced.has(m.id);
  const l = heightOf(m);
  const words = isHeld(m)
    ? 'held at its foot, free to sway at its top'
    : 'pinned at its foot, kept upright by a knee brace and free to sway, over its whole height';
  const sway = swayLength(ctx, axis, all, knee ? 'braced' : 'held', l);
  // Without a frame the figures of Appendix G, over the whole height.
  if (!sway) return { Ke: knee ? KE['pinned-guided'] : KE['fixed-free'], l, words };
  return { Ke: Math.max(sway.Ke, KE['pinned-pinned']), l, words, sway };
}

function planeOf(ctx: CheckContext, m: Member, dir: Level): Plane {
  const planes = (['x', 'y'] as const).filter((a) => Math.abs(dir[a]) > ALONG).map((a) => planeAlong(ctx, m, a));
  return planes.reduce((worst, p) => (p.Ke * p.l > worst.Ke * worst.l ? p : worst));
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
    const size = Math.hypot(m.up.x, m.up.y) || 1;
    const up = { x: m.up.x / size, y: m.up.y / size };
    ends = { one: planeOf(ctx, m, up), two: planeOf(ctx, m, { x: -up.y, y: up.x }) };
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
    const { sway } = plane;
    const meaning = `buckling length coefficient in the plane of ${axis}: ${plane.words}`;
    rec?.step(
      sway
        ? {
            symbol: 'Ke',
            meaning,
            formula: "raise·√(12·ΣE'I·(Δ/H)·(ΣP/ΣPholding) / (L·h²)), at least 1",
            substituted: `${sway.raise}·√(12·${sway.EI.toExponential(3)}·${sway.flexibility.toExponential(3)}·${sway.leaning.toFixed(3)} / (${sway.lean.toFixed(1)}·${sway.height.toFixed(1)}²))`,
            value: plane.Ke,
            unit: '',
            clause: 'NDS 2018 3.7.1.2',
            note: `from the sway stiffness of the frame: it buckles at (π²/12)·L·H/Δ, L from foot to knee brace or top; raised by ${sway.raise} as Appendix G raises theory (recalled)`,
          }
        : {
            symbol: 'Ke',
            meaning,
            formula: 'Table G1, design value',
            substituted: `l = ${plane.l.toFixed(1)} in`,
            value: plane.Ke,
            unit: '',
            clause: 'NDS 2018 App. G',
            note: 'value recalled from memory: confirm in the printed table',
          },
    );
  }
}
