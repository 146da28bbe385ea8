/** Bubbles that name a detail's number and sheet, beside the places they show, on plans and sections. */
import type { Vec2, Vec3 } from '../../../base/vec.js';
import { detailMark, noteBoard } from '../../annotate/index.js';
import type { LayerName, Primitive } from '../../ir/index.js';
import { type Camera, see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { type DetailCall, detailCalls } from './sheets.js';

/** Directions tried for a bubble, from up and right round. */
const TURNS = 16;

interface Marked {
  readonly call: DetailCall;
  readonly at: Vec2;
  readonly radius: number;
}

/** Bubbles set one after the other where they touch no lettering and cover few lines. */
function marks(
  ctx: SheetContext,
  all: readonly Marked[],
  scale: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
  layer: LayerName,
): Primitive[] {
  const placed: Primitive[] = [];
  const board = noteBoard(scale, over, lines);
  const circled = new Set<string>();
  for (const { call, at, radius } of all) {
    const ways = [1, 1.8, 2.8].flatMap((reach) =>
      Array.from({ length: TURNS }, (_, i) => {
        const turn = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * ((2 * Math.PI) / TURNS);
        return detailMark({
          at,
          radius,
          number: call.number,
          sheet: call.sheet,
          angle: Math.PI / 4 + turn,
          reach: reach * 2 * ctx.style.note,
          scale,
          layer,
          style: ctx.style,
        });
      }),
    );
    const bubbles = ways.map((w) => w[1]!) as [Primitive, ...Primitive[]];
    const best = board.place(bubbles, 1.8 * ctx.style.note);
    // Details of one place share its circle.
    const place = `${at.x.toFixed(3)} ${at.y.toFixed(3)} ${radius}`;
    if (!circled.has(place)) placed.push(ways[bubbles.indexOf(best)]![0]!);
    circled.add(place);
    placed.push(best);
  }
  return placed;
}

/** On a plan: every detail at its place. */
export const callsOnPlan = (
  ctx: SheetContext,
  scale: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): readonly Primitive[] =>
  marks(
    ctx,
    detailCalls(ctx).map((call) => ({
      call,
      at: { x: call.at.x, y: call.at.y },
      // On a plan only the place is meant, not how much of it the detail shows.
      radius: ctx.style.note / scale,
    })),
    scale,
    over,
    lines,
    'S-ANNO-SYMB',
  );

/** How far behind the cut a place may lie to be shown by a section, and before it: half a post and its metal. Inches. */
const IN_SECTION = 40;
const BEFORE = 8;

/** In a section: the details whose places lie near its plane, inside the window. */
export function callsInSection(
  ctx: SheetContext,
  o: {
    readonly camera: Camera;
    readonly cutAt: number;
    readonly scale: number;
    readonly shown: (p: Vec2) => boolean;
    readonly over: readonly Primitive[];
    readonly lines: readonly Primitive[];
  },
): readonly Primitive[] {
  const spot = (p: Vec3): Vec2 & { readonly depth: number } => {
    const s = see(o.camera, p);
    return { x: s.a, y: s.b, depth: s.depth };
  };
  const near = detailCalls(ctx).flatMap((call): Marked[] => {
    const { right } = o.camera;
    if (call.runs && Math.abs(call.runs.x * right.x + call.runs.y * right.y) < 0.7) return [];
    const places = [call.at, ...(call.alike ?? [])]
      .map(spot)
      .filter((at) => at.depth > o.cutAt - IN_SECTION && at.depth < o.cutAt + BEFORE && o.shown(at))
      .sort((p, q) => Math.abs(p.depth - o.cutAt) - Math.abs(q.depth - o.cutAt) || q.x - p.x);
    const at = places[0];
    return at ? [{ call, at, radius: call.radius }] : [];
  });
  return marks(ctx, near, o.scale, o.over, o.lines, 'A-ANNO-SYMB');
}
