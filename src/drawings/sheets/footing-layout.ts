/** What the footing plan lays out by: offsets from the house, diagonals that must agree, and its tables and notes. */
import type { Block, TableRow } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import { besideBlocks } from './beside-house-words.js';
import type { SheetContext } from './contract.js';
import { unique } from './parts.js';
import { houseCorners } from './plan-base.js';

export interface FootingLayout {
  /** Footing centers along and out from the house, each once. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Where offsets along the house are measured from, and whether that is a corner of it. */
  readonly home: number;
  readonly atCorner: boolean;
  /** The footings fill a rectangle: diagonals must agree. */
  readonly square: boolean;
  readonly diagonals: readonly Primitive[];
  readonly rows: readonly TableRow[];
}

export function footingLayout(ctx: SheetContext): FootingLayout {
  const { structure } = ctx.input;
  const { len } = ctx;
  const xs = unique(structure.footings.map((f) => f.at.x));
  const ys = unique(structure.footings.map((f) => f.at.y));
  const corners = houseCorners(structure).map((c) => c.x);
  const lefts = corners.filter((c) => c <= xs[0]! + 1e-6);
  const home = lefts.length > 0 ? Math.max(...lefts) : xs[0]!;
  const diagonals: Primitive[] = [];
  const rowsOf = (y: number) =>
    structure.footings.filter((f) => Math.abs(f.at.y - y) < 1e-6).sort((a, b) => a.at.x - b.at.x);
  const first = rowsOf(ys[0]!);
  const last = rowsOf(ys.at(-1)!);
  const diagonalRows: TableRow[] = [];
  const corner = corners.filter((c) => c >= xs.at(-1)! - 1e-6);
  const far = corner.length > 0 ? Math.min(...corner) : Math.max(...corners, xs.at(-1)!);
  // Footings that fill no rectangle have no diagonals that must agree: each is fixed from two points of the house instead.
  const square =
    ys.length === 1 || [0, -1].every((i) => Math.abs((first.at(i)?.at.x ?? 0) - (last.at(i)?.at.x ?? 0)) < 1 / 16);
  if (!square) {
    for (const f of structure.footings)
      diagonalRows.push([f.mark, len(Math.hypot(f.at.x - home, f.at.y)), len(Math.hypot(f.at.x - far, f.at.y))]);
  } else if (ys.length > 1 && first.length > 1 && last.length > 1) {
    for (const [p, q] of [
      [first[0]!, last.at(-1)!],
      [first.at(-1)!, last[0]!],
    ] as const) {
      diagonals.push({ kind: 'line', layer: 'S-GRID', pen: 'hidden', a: p.at, b: q.at });
      diagonalRows.push([`${p.mark} to ${q.mark}`, len(Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y))]);
    }
  } else {
    // One line of footings: square it against the house with the diagonals of the base rectangle.
    for (const [fx, gx] of [
      [xs[0]!, xs.at(-1)!],
      [xs.at(-1)!, xs[0]!],
    ] as const) {
      diagonals.push({ kind: 'line', layer: 'S-GRID', pen: 'hidden', a: { x: fx, y: 0 }, b: { x: gx, y: ys[0]! } });
      diagonalRows.push([
        `house line at ${fx === xs[0] ? 'left' : 'right'} footing to ${(gx === xs[0] ? last[0]! : last.at(-1)!).mark}`,
        len(Math.hypot(fx - gx, ys[0]!)),
      ]);
    }
  }
  return { xs, ys, home, atCorner: lefts.length > 0, square, diagonals, rows: diagonalRows };
}

export function footingBlocks(
  ctx: SheetContext,
  { home, atCorner, square, rows: diagonalRows }: FootingLayout,
): Block[] {
  const { structure } = ctx.input;
  const { len } = ctx;
  const held = structure.footings.some((f) => f.slabHolds);
  // Where all lie below the floor, as they nearly always do, the heading says so once.
  const allBelow = structure.footings.every((f) => f.top < 0 && f.bottom < 0);
  const surface = (z: number): string =>
    allBelow ? len(-z) : z < 0 ? `${len(-z)} below floor` : `${len(z)} above floor`;
  const below = allBelow ? ', below floor' : '';
  const layout: TableRow[] = structure.footings.map((f) => [
    { text: f.mark, mark: f.mark, path: f.path },
    len(f.at.x - home),
    len(f.at.y),
    f.round ? `${len(f.size)} dia.` : `${len(f.size)} sq.`,
    surface(f.top),
    surface(f.bottom),
  ]);
  return [
    {
      kind: 'table',
      title: 'Footing centers',
      columns: [
        { head: 'Mark' },
        { head: 'Along house', align: 'right' },
        { head: 'Out from wall', align: 'right' },
        { head: 'Size', align: 'right' },
        { head: `Top of concrete${below}`, align: 'right', max: 12 * ctx.style.note },
        { head: `Bottom${below}`, align: 'right', max: 12 * ctx.style.note, grow: true },
      ],
      rows: layout,
    },
    {
      kind: 'para',
      text: `Along house: measured to the right, seen looking out of the house, from ${atCorner ? 'the left house corner' : 'the first footing'}. Out: from the face of the existing wall line, not from the slab edge. Floor: top of the finished house floor.`,
    },
    square
      ? {
          kind: 'table',
          title: 'Diagonals, center to center',
          columns: [{ head: 'From – to' }, { head: 'Length', align: 'right', grow: true }],
          rows: diagonalRows,
        }
      : {
          kind: 'table',
          title: 'Check lengths, corners of the house wall to center',
          columns: [
            { head: 'Footing' },
            { head: 'From left corner', align: 'right' },
            { head: 'From right corner', align: 'right', grow: true },
          ],
          rows: diagonalRows,
        },
    ...besideBlocks(ctx),
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        square
          ? 'Opposite sides and both diagonals must agree before a hole is dug. Measure every center from one home base.'
          : 'Every center must agree with both its check lengths before a hole is dug. Measure every center from one home base.',
        'Call the utility locating service first; hand dig within 24 in of a mark (common practice, no source). Private lines are not marked.',
        'Footing bottoms on undisturbed soil, clean and dry, at or below the frost depth given on the cover. Do not pour before the footing inspection.',
        ...(structure.slabs.some((p) => p.state === 'existing')
          ? [
              `Footings cut through the kept slab: saw the slab square round each pad, pour the pad full against undisturbed soil, backfill in layers round the pier, and patch the slab ${held ? 'tight against the pier, without filler: it holds the pier at the surface' : 'with a joint round the pier'}.`,
            ]
          : [
              held
                ? 'Pour the slab tight against piers and posts, without filler: it holds them at the surface.'
                : 'Pour piers before the slab, with a joint between pier and slab.',
            ]),
        ...(structure.footings.some((f) => f.embedded)
          ? [
              'Posts set in the ground: brace them plumb in their holes before the backfill goes in; concrete cast against undisturbed soil, or sand or soil in layers of at most 8 in, each tamped.',
            ]
          : []),
        'Sizes, concrete and reinforcement: footing schedule. Deep or caving holes need shoring or sloping; keep people out of them.',
      ],
    },
  ];
}
