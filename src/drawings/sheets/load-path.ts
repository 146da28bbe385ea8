/** The way of every pound from the roof to the soil: the section with its links numbered, and demand over capacity of each. */
import type { Vec2 } from '../../base/vec.js';
import type { PathShare } from '../../report/path/model.js';
import { type PathRow, pathTable } from '../../report/path/table.js';
import {
  type Block,
  measure,
  pencil,
  splitColumns,
  type TableRow,
  tag,
  tagSize,
  textBlock,
} from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import { see } from '../views/camera.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { placeView, SECTION_SCALES, scaleFor } from './parts.js';
import { coverOnly, sectionPicture, soil } from './section-picture.js';

const figure = (x: number): string =>
  x >= 100 ? Math.round(x).toLocaleString('en-US') : String(Number(x.toPrecision(3)));

function shareCell(s: PathShare | undefined): string {
  if (!s) return '–';
  if (s.ratio === undefined) return s.demand > 0 ? `open\n${figure(s.demand)} ${s.unit}` : 'open';
  if (s.ratio === 0) return 'none';
  return `${s.ratio.toFixed(2)}\n${figure(s.demand)} / ${figure(s.capacity ?? 0)} ${s.unit}`;
}

const heldBy = (row: PathRow): string =>
  [...new Set(row.shares.filter((s) => s.demand > 0 || s.ratio === undefined).map((s) => s.by))].join('; ');

const tableRows = (rows: readonly PathRow[]): TableRow[] =>
  rows.map((r) => [
    { text: String(r.number), face: 'condensed-bold' as const },
    { text: r.joint === '' ? r.what : `${r.joint} ${r.what}`, ...(r.joint !== '' && { mark: r.joint }) },
    r.parts,
    ...(['down', 'up', 'side'] as const).map((w) => shareCell(r.shares.find((s) => s.way === w))),
    heldBy(r),
  ]);

/** Numbers of the links that lie in the picture, each once, beside the place where it acts, clear of each other. */
function bubbles(
  ctx: SheetContext,
  rows: readonly PathRow[],
  at: (r: PathRow) => Vec2 | undefined,
  ratio: number,
): Primitive[] {
  const { style } = ctx;
  const paper = 1 / ratio;
  const taken: Rect[] = [];
  const out: Primitive[] = [];
  for (const r of rows) {
    const place = at(r);
    if (!place) continue;
    const size = tagSize('note', String(r.number), style);
    for (let turn = 0; turn < 24; turn++) {
      const angle = Math.PI / 4 + (turn % 8) * (Math.PI / 4);
      const reach = style.note * (4 + 2.2 * Math.floor(turn / 8));
      const off = { x: Math.cos(angle) * reach, y: Math.sin(angle) * reach };
      const box = {
        x: place.x + (off.x - size.w) * paper,
        y: place.y + (off.y - size.h) * paper,
        w: 2 * size.w * paper,
        h: 2 * size.h * paper,
      };
      const clash = taken.some(
        (t) => box.x < t.x + t.w && t.x < box.x + box.w && box.y < t.y + t.h && t.y < box.y + box.h,
      );
      if (clash) continue;
      taken.push(box);
      out.push(
        tag({
          kind: 'note',
          text: String(r.number),
          at: place,
          off,
          layer: 'S-ANNO-SYMB',
          style,
          mark: r.joint || r.what,
        }),
      );
      break;
    }
  }
  return out;
}

const NOTE =
  'Numbers are demand over capacity of the worst link of each row: 1.00 is the limit, “open” blocks the set, “none” means that no combination asks for it. Down is the largest load toward the ground, up the largest net uplift with 0.6 of the dead load, sideways the larger of along and square to the house. Ask for the steps behind any number by its mark in the calculations.';

function draw(ctx: SheetContext): SheetBody[] {
  const { structure, results } = ctx.input;
  const { area, style } = ctx;
  const rows = pathTable(ctx.input, results);
  const columns = splitColumns(area, [0.52, 0.48], style.gutter);
  const [left, right] = columns as [Rect, Rect];
  const { cut, camera, pic } = sectionPicture(ctx, coverOnly(ctx));
  const as = structure.roofs.flatMap((r) => [
    see(camera, { x: r.min.x, y: r.min.y, z: 0 }).a,
    see(camera, { x: r.max.x, y: r.max.y, z: 0 }).a,
  ]);
  const low = Math.min(...structure.footings.map((f) => f.bottom), 0) - 14;
  const high = Math.max(...structure.roofs.map((r) => r.highestPoint)) + 20;
  const frame = { x: Math.min(...as) - 14, y: low, w: Math.max(...as) - Math.min(...as) + 28, h: high - low };
  const scale = scaleFor(ctx, frame, left, { x: style.note * 8, y: style.note * 6 }, SECTION_SCALES);
  const nearCut = (r: PathRow): Vec2 | undefined => {
    const seen = r.at
      .map((p) => see(camera, p))
      .sort((p, q) => Math.abs(p.depth - cut.cutAt) - Math.abs(q.depth - cut.cutAt));
    return seen[0] && { x: seen[0].a, y: seen[0].b };
  };
  const placed = placeView(ctx, {
    box: left,
    model: frame,
    scale,
    number: '1',
    title: 'Load path, roof to soil',
    items: [...soil(ctx, cut, frame), ...pic.items],
    over: [
      ...rows.flatMap((r) => {
        const at = nearCut(r);
        return at ? arrow(at, style.note / scale.ratio) : [];
      }),
      ...bubbles(ctx, rows, nearCut, scale.ratio),
    ],
  });
  const blocks: Block[] = [
    {
      kind: 'table',
      title: 'Links of the load path',
      columns: [
        { head: 'No.', align: 'right' },
        { head: 'Link', max: 17 * style.note },
        { head: 'Parts', max: 17 * style.note },
        { head: 'Down', align: 'right' },
        { head: 'Up', align: 'right' },
        { head: 'Sideways', align: 'right' },
        { head: 'Held by', grow: true, max: 30 * style.note },
      ],
      rows: tableRows(rows),
    },
    { kind: 'para', text: NOTE },
    { kind: 'para', text: sideText(ctx) },
  ];
  const text = textBlock(measure(blocks, right.w, style, 'G-ANNO-SCHD'), { x: right.x, y: right.y + right.h });
  return [
    {
      title: 'Load path',
      scaleNote: placed.scale.label,
      viewports: [
        { ...placed.viewport, window: { x: frame.x - 14, y: frame.y - 6, w: frame.w + 28, h: frame.h + 12 } },
      ],
      items: [...placed.items, ...text.items],
    },
  ];
}

const SIDE: Readonly<Record<string, string>> = {
  house: 'through the roof diaphragm into the house',
  'knee-braces': 'by knee braces into posts and footings',
  'fixed-posts': 'by posts fixed at their feet',
  none: 'by nothing: this must be mended',
  unknown: 'by a system not chosen yet',
};

const sideText = (ctx: SheetContext): string => {
  const { lateral } = ctx.input.project.cover;
  return `Side load along the house wall is held ${SIDE[lateral.x]}; square to it ${SIDE[lateral.y]}.`;
};

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
