/** The way of every pound from the roof to the soil: the section with its links numbered, and demand over capacity of each. */
import type { Vec2 } from '../../base/vec.js';
import type { PathShare } from '../../report/path/model.js';
import { type PathRow, pathTable } from '../../report/path/table.js';
import {
  type Block,
  columnsFlow,
  measure,
  pencil,
  placeTags,
  splitColumns,
  type TableRow,
  type TagWish,
  textBlock,
} from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import { see } from '../views/camera.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { flowOn, placeView, SECTION_SCALES, scaleFor, titleBand } from './parts.js';
import { coverOnly, sectionPicture, soil } from './section-picture.js';
import { sideWords } from './side-words.js';

const figure = (x: number): string =>
  x >= 100 ? Math.round(x).toLocaleString('en-US') : String(Number(x.toPrecision(3)));

function shareCell(s: PathShare | undefined, sideLeaves: boolean): string {
  if (!s) return '–';
  if (s.ratio === undefined) return s.demand > 0 ? `open\n${figure(s.demand)} ${s.unit}` : 'open';
  if (s.ratio === 0) return s.way === 'side' && sideLeaves ? 'leaves at\nthe roof' : 'none';
  if (s.capacity === undefined) return `together\n${figure(s.demand)} ${s.unit}`;
  return `${s.ratio.toFixed(2)}\n${figure(s.demand)} / ${figure(s.capacity)} ${s.unit}`;
}

const WAY: Readonly<Record<PathShare['way'], string>> = { down: 'down', up: 'up', side: 'sideways' };

/**
 * What holds each way, named once: `wood bearing; screws`. The check's own name in brackets and reasons for an open way are
 * in the calculations and the joint schedule; here an open way is only counted.
 */
function heldBy(row: PathRow): string {
  const shut = row.shares.filter((s) => s.ratio !== undefined && s.demand > 0);
  const open = row.shares.filter((s) => s.ratio === undefined);
  const names = [...new Set(shut.map((s) => s.by.replace(/ \([^()]*\)$/, '')))];
  return [...names, ...(open.length > 0 ? [`open ${open.map((s) => WAY[s.way]).join(', ')}`] : [])].join('; ');
}

const tableRows = (rows: readonly PathRow[], sideLeaves: boolean): TableRow[] =>
  rows.map((r) => [
    { text: String(r.number), face: 'condensed-bold' as const },
    { text: r.joint === '' ? r.what : `${r.joint} ${r.what}`, ...(r.joint !== '' && { mark: r.joint }) },
    r.parts,
    ...(['down', 'up', 'side'] as const).map((w) =>
      shareCell(
        r.shares.find((s) => s.way === w),
        sideLeaves,
      ),
    ),
    r.together === undefined ? '–' : r.together.toFixed(2),
    heldBy(r),
  ]);

/** Numbers of the links that lie in the picture, each once, beside the place where it acts. */
const bubbles = (ctx: SheetContext, rows: readonly PathRow[], at: (r: PathRow) => Vec2 | undefined): TagWish[] =>
  rows.flatMap((r) => {
    const place = at(r);
    const reach = 3 * ctx.style.note;
    return place
      ? [
          {
            kind: 'note' as const,
            text: String(r.number),
            at: place,
            off: { x: reach, y: reach },
            layer: 'S-ANNO-SYMB' as const,
            style: ctx.style,
            mark: r.joint || r.what,
          },
        ]
      : [];
  });

const NOTE =
  'Numbers are demand over capacity of the worst link of each row: 1.00 is the limit, “open” blocks the set, “none” means that no combination asks for it, “leaves at the roof” that the side load goes through the roof into the house above this link. Down is the largest load toward the ground, up the largest net uplift with 0.6 of the dead load, sideways the larger of along and square to the house. The steps of joints stand in the calculations mark by mark; of equal parts those of the one nearest its limit. “Together” is the ratio of all ways acting at once at the worst joint of the mark, as the calculations print it; a connection worked out for the force as it comes has only this one. Each rating is taken at the load duration of its own combination.';

/** Shares of the picture beside the table, the first that earns the largest scale. */
const SHARES = [0.62, 0.66, 0.7] as const;

/** Sheets wider than this, inches of drawing area, hold picture and table side by side; narrower ones one above the other. */
const WIDE = 24;

function draw(ctx: SheetContext): SheetBody[] {
  const { structure, results, project } = ctx.input;
  const { area, style } = ctx;
  const rows = pathTable(ctx.input, results);
  const wide = area.w > WIDE;
  const { cut, camera, pic } = sectionPicture(ctx, coverOnly(ctx));
  const as = structure.roofs.flatMap((r) => [
    see(camera, { x: r.min.x, y: r.min.y, z: 0 }).a,
    see(camera, { x: r.max.x, y: r.max.y, z: 0 }).a,
  ]);
  const low = Math.min(...structure.footings.map((f) => f.bottom), 0) - 14;
  const high = Math.max(...structure.roofs.map((r) => r.highestPoint)) + 20;
  const frame = { x: Math.min(...as) - 14, y: low, w: Math.max(...as) - Math.min(...as) + 28, h: high - low };
  const margin = { x: style.note * 4, y: style.note * 2 };
  const ratioIn = (share: number): number =>
    scaleFor(ctx, frame, splitColumns(area, [share, 1 - share], style.gutter)[0]!, margin, SECTION_SCALES).ratio;
  const share = SHARES.reduce<number>((best, s) => (ratioIn(s) > ratioIn(best) + 1e-9 ? s : best), SHARES[0]);
  const [left, right] = splitColumns(area, [share, 1 - share], style.gutter) as [Rect, Rect];
  // One above the other the picture may take somewhat more than half, so that rows are left for the first sheet.
  const room = wide ? left : { ...area, y: area.y + 0.4 * area.h, h: 0.6 * area.h, w: 0.55 * area.w };
  const scale = scaleFor(ctx, frame, room, margin, SECTION_SCALES);
  const nearCut = (r: PathRow): Vec2 | undefined => {
    const seen = r.at
      .map((p) => see(camera, p))
      .sort((p, q) => Math.abs(p.depth - cut.cutAt) - Math.abs(q.depth - cut.cutAt));
    return seen[0] && { x: seen[0].a, y: seen[0].b };
  };
  const arrows = rows.flatMap((r) => {
    const at = nearCut(r);
    return at ? arrow(at, style.note / scale.ratio) : [];
  });
  const placed = placeView(ctx, {
    box: room,
    model: frame,
    scale,
    number: '1',
    title: 'Load path, roof to soil',
    items: [...soil(ctx, cut, frame), ...pic.items],
    over: [...arrows, ...placeTags(bubbles(ctx, rows, nearCut), scale.ratio, [], [...arrows, ...pic.items])],
    snug: margin.y,
  });
  const viewHeight = frame.h * scale.ratio + 2 * margin.y + titleBand(ctx);
  // Ground and house run on a little to both sides, as far as the margin goes.
  const side = Math.min(14, margin.x / scale.ratio);
  const { lateral } = project.cover;
  const table: Block = {
    kind: 'table',
    title: 'Links of the load path',
    columns: [
      { head: 'No.', align: 'right' },
      { head: 'Link', max: 20 * style.note },
      { head: 'Parts', max: 20 * style.note },
      { head: 'Down', align: 'right' },
      { head: 'Up', align: 'right' },
      { head: 'Sideways', align: 'right' },
      { head: 'Together', align: 'right' },
      { head: 'Held by', grow: true, max: 34 * style.note },
    ],
    rows: tableRows(rows, lateral.x === 'house' && lateral.y === 'house'),
  };
  const notes: Block[] = [
    { kind: 'heading', text: 'How to read this sheet' },
    { kind: 'para', text: NOTE },
    { kind: 'para', text: sideWords(ctx) },
  ];
  const beside = { ...area, x: area.x + room.w + style.gutter, w: area.w - room.w - style.gutter };
  const below = { ...area, h: area.h - viewHeight - style.gutter };
  const layer = 'G-ANNO-SCHD';
  const text = wide
    ? columnsFlow(measure([table, ...notes], right.w, style, layer), [right])
    : columnsFlow(measure([table], area.w, style, layer), [below]);
  const words = wide
    ? []
    : textBlock(measure(notes, beside.w, style, layer), { x: beside.x, y: area.y + area.h }).items;
  return [
    {
      title: 'Load path',
      scaleNote: placed.scale.label,
      viewports: [
        { ...placed.viewport, window: { x: frame.x - side, y: frame.y - 6, w: frame.w + 2 * side, h: frame.h + 12 } },
      ],
      items: [...placed.items, ...words, ...text.items],
    },
    ...flowOn(text.rest, wide ? splitColumns(area, [1, 1], style.gutter) : [area], 'Load path, continued'),
  ];
}

/** A heavy arrow down through each place where the load is handed on. */
function arrow(at: Vec2, h: number): Primitive[] {
  const p = pencil('S-ANNO-SYMB', 'profile');
  const { x, y } = at;
  return [
    p.line(x, y + 1.6 * h, x, y - 1.6 * h),
    p.shape(
      [
        [x - 0.55 * h, y - 0.9 * h],
        [x + 0.55 * h, y - 0.9 * h],
        [x, y - 2.2 * h],
      ],
      undefined,
      'ink',
    ),
  ];
}

export const loadPathSheet: SheetKind = {
  title: 'Load path',
  discipline: 'S',
  needed: () => true,
  draw,
};
