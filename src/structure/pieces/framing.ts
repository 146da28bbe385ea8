/** Rafters with plumb ends and seats, and the preliminary picture of a truss. */
import { clipHalfPlane } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import { type TrussBar, type WebLayout, webLayout } from '../framing/webs.js';
import type { Joint, Member, Piece, TrussShape } from '../model.js';
import { memberPiece } from './supports.js';
import { plate, rectangle, type Upright } from './upright.js';

/** The member's own upright plane; distances run from its start. */
function planeOf(m: Member): { on: Upright; run: number; rise: number } {
  const dx = m.end.x - m.start.x;
  const dy = m.end.y - m.start.y;
  const run = Math.hypot(dx, dy);
  return { on: { origin: m.start, dir: { x: dx / run, y: dy / run } }, run, rise: m.end.z - m.start.z };
}

/** Bearings cut into or met by a member: distance from its start in plan, level, and length. */
interface Seat {
  readonly from: number;
  readonly to: number;
  readonly z: number;
}

function seatsOf(m: Member, joints: readonly Joint[]): Seat[] {
  const { on } = planeOf(m);
  return joints
    .filter((j) => j.contact.length > 0)
    .map((j) => {
      const s = (j.at.x - m.start.x) * on.dir.x + (j.at.y - m.start.y) * on.dir.y;
      return { from: s - j.contact.length / 2, to: s + j.contact.length / 2, z: j.at.z };
    })
    .sort((a, b) => a.from - b.from);
}

/** Plumb ends; over each seat the underside is level. Split at the seats' faces so that every piece is convex. */
export function rafterPieces(m: Member, joints: readonly Joint[]): Piece[] {
  const { on, run, rise } = planeOf(m);
  const tan = rise / run;
  const half = (m.section.depth * Math.hypot(1, tan)) / 2;
  const axis = (s: number): number => m.start.z + s * tan;
  const seats = seatsOf(m, joints);
  const cuts = [0, ...seats.flatMap((s) => [s.from, s.to]).filter((s) => s > 0 && s < run), run];
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [s, t] = [cuts[i]!, cuts[i + 1]!];
    const seat = seats.find((k) => k.from <= s + 1e-9 && k.to >= t - 1e-9);
    const profile: Vec2[] = [
      { x: s, y: seat?.z ?? axis(s) - half },
      { x: t, y: seat?.z ?? axis(t) - half },
      { x: t, y: axis(t) + half },
      { x: s, y: axis(s) + half },
    ];
    for (const solid of plate(on, profile, -m.section.width / 2, m.section.width / 2))
      pieces.push(memberPiece(m, solid));
  }
  return pieces;
}

/** Straight edge y = y0 + k·(x − x0). */
interface Edge {
  readonly x0: number;
  readonly y0: number;
  readonly k: number;
}
const edgeAt = (e: Edge, x: number): number => e.y0 + e.k * (x - e.x0);
const under = (p: readonly Vec2[], e: Edge): Vec2[] => clipHalfPlane(p, (q) => edgeAt(e, q.x) - q.y);
const over = (p: readonly Vec2[], e: Edge): Vec2[] => clipHalfPlane(p, (q) => q.y - edgeAt(e, q.x));

/** One half of a truss, from its bearing towards the middle; x runs from the tail inward, heights from the bearing. */
interface Half {
  readonly top: Vec2[];
  readonly bottoms: Vec2[][];
  /** Underside of the top chord and upper side of the bottom chord: webs stand between. */
  readonly topUnder: Edge;
  readonly bottomOver: Edge;
  readonly middle: number;
}

function halfOf(t: TrussShape, overhang: number, bearing: number): Half {
  const tan = Math.tan(t.topPitch);
  const plumb = t.chordDepth / Math.cos(t.topPitch);
  const k = Math.tan(t.bottomPitch);
  const bottomPlumb = t.chordDepth / Math.cos(t.bottomPitch);
  const middle = overhang + t.span / 2;
  const inner = overhang + bearing;
  const upper = (x: number): number => t.heel + (x - overhang) * tan;
  const topUnder: Edge = { x0: 0, y0: upper(0) - plumb, k: tan };
  const bottomOver: Edge = { x0: inner, y0: bottomPlumb, k };
  const chord: Vec2[] = [
    { x: inner, y: 0 },
    { x: middle, y: (middle - inner) * k },
    { x: middle, y: edgeAt(bottomOver, middle) },
    { x: inner, y: bottomPlumb },
  ];
  return {
    top: [
      { x: 0, y: upper(0) - plumb },
      { x: middle, y: upper(middle) - plumb },
      { x: middle, y: upper(middle) },
      { x: 0, y: upper(0) },
    ],
    bottoms: [under(rectangle(overhang, 0, inner, bottomPlumb), topUnder), under(chord, topUnder)],
    topUnder,
    bottomOver,
    middle,
  };
}

/** Strip of the chord's depth along a line, run on past both ends and kept between the chords. */
function web(h: Half, a: Vec2, b: Vec2, depth: number): Vec2[] {
  const l = Math.hypot(b.x - a.x, b.y - a.y);
  const d = { x: ((b.x - a.x) / l) * depth, y: ((b.y - a.y) / l) * depth };
  const at = (p: Vec2, along: number, across: number): Vec2 => ({
    x: p.x + d.x * along - d.y * across,
    y: p.y + d.y * along + d.x * across,
  });
  const strip = [at(a, -1, -0.5), at(b, 1, -0.5), at(b, 1, 0.5), at(a, -1, 0.5)];
  return clipHalfPlane(over(under(strip, h.topUnder), h.bottomOver), (q) => h.middle - q.x);
}

/**
 * Webs of the preliminary layout, in the half's own frame. A gable end shows its uprights; the webs behind them are left
 * out of the picture, where both would lie in one plane.
 */
function websOf(h: Half, t: TrussShape, overhang: number, layout: WebLayout, gableEnd: boolean): Vec2[][] {
  const d = t.chordDepth;
  const out: Vec2[][] = [];
  const place = (joint: number): Vec2 => ({ x: layout.joints[joint]!.x + overhang, y: layout.joints[joint]!.z });
  for (const bar of layout.bars) {
    if (bar.role !== 'web' && bar.role !== 'stud') continue;
    const a = place(bar.from);
    const b = place(bar.to);
    // The other half draws its own; both draw their side of an upright at the middle.
    if (Math.max(a.x, b.x) > h.middle + 1e-6) continue;
    const upright = Math.abs(a.x - b.x) < 1e-6;
    if (gableEnd && !upright) continue;
    const shape = web(h, a, b, d);
    // A brace that meets the king post ends at its side.
    const meets = !upright && layout.bars.some((k) => k.role === 'web' && isKing(layout, k)) && touches(h, a, b);
    out.push(meets ? clipHalfPlane(shape, (q) => h.middle - d / 2 - q.x) : shape);
  }
  return out;
}

const isKing = (layout: WebLayout, bar: TrussBar): boolean =>
  (bar.from === layout.apex || bar.to === layout.apex) &&
  Math.abs(layout.joints[bar.from]!.x - layout.joints[bar.to]!.x) < 1e-6;
const touches = (h: Half, a: Vec2, b: Vec2): boolean => Math.max(a.x, b.x) > h.middle - 1e-6;

export function trussPieces(m: Member, t: TrussShape, joints: readonly Joint[]): Piece[] {
  const { on, run } = planeOf(m);
  const seats = seatsOf(m, joints);
  const pieces: Piece[] = [];
  const gableEnd = m.role === 'gable-truss';
  const layout = webLayout(t, gableEnd);
  for (const side of [0, 1] as const) {
    const bearing = seats[side === 0 ? 0 : seats.length - 1];
    const half = halfOf(t, t.overhang[side], bearing ? bearing.to - bearing.from : t.chordDepth);
    const shapes = [half.top, ...half.bottoms, ...websOf(half, t, t.overhang[side], layout, gableEnd)];
    for (const shape of shapes) {
      const profile = shape.map((p) => ({ x: side === 0 ? p.x : run - p.x, y: m.start.z + p.y }));
      for (const solid of plate(on, profile, -m.section.b / 2, m.section.b / 2)) pieces.push(memberPiece(m, solid));
    }
  }
  return pieces;
}
