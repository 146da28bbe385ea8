/** At the house: a picture of each kind of place where the cover meets it, and what was verified there and by whom. */
import { type FactState, houseFacts } from '../../checks/house/facts.js';
import { type HousePlace, housePlaces } from '../../checks/house/places.js';
import { type Block, columnsFlow, heightOf, measure, noteColumn, type TableRow } from '../annotate/index.js';
import { type DrawingScale, type Primitive, type Rect, SCALES, type ScaleName, toPaper } from '../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { edgesOf, isMetal } from './details/wall-edges.js';
import { housePicture } from './house-pictures.js';
import { DETAIL_SCALES, flowSheets, placeView, scaleFor, titleBand } from './parts.js';

/** Order of work where the wall is opened. Common practice, no source, where no section is named. */
const flashingOrder = (atWalls: string): string[] => [
  'Find the framing first: open the wall or look from inside. Stop when it is not what this sheet says.',
  'Cut the cladding away, not the sheathing; find wires, pipes and ducts before cutting.',
  'Fasten ledger, post or connector; fill no gap that should drain.',
  'Self-adhering flashing on the sheathing, then metal over the new part, its upper leg under the water barrier: each layer laps over the one below (IRC 2018 R703.4, recalled).',
  `${atWalls} Sealant is no flashing.`,
  'Leave all of it open until the inspector has seen it; then close the cladding with a gap above the roof.',
];

/** How the roof's edges at walls are flashed, in the words of the edge details; step flashing where no edge is placed. */
function atWalls(ctx: SheetContext): string {
  const edges = edgesOf(ctx);
  const covering = (mark: string): string =>
    ctx.input.project.cover.roofs.find((r) => r.mark === mark)?.finish.covering ?? '';
  const sloping = edges.filter((e) => e.sloping);
  const metal = sloping.filter((e) => isMetal(covering(e.roof.mark)));
  return [
    ...(edges.some((e) => !e.sloping)
      ? ['Apron flashing in one run along level edges, its ends turned up as dams.']
      : []),
    ...(metal.length > 0
      ? ['Sidewall flashing of the panel maker in one run along sloping edges, kick-out at the low end.']
      : []),
    ...(metal.length < sloping.length || edges.length === 0
      ? ['Step flashing along sloping edges, kick-out at the low end.']
      : []),
  ].join(' ');
}

const CAUTIONS = [
  'Cutting a wall can bring down what stands on it: shore the floor or roof above before a stud, plate or header is cut or loaded.',
  'Electric cables, gas and water run in walls: turn them off and test before cutting; own permit for work on them.',
  'Support every beam end and the ledger until its fasteners are in. Old paint and stucco may hold lead or asbestos: have it tested.',
  'Never fasten to brick or stone veneer, a fascia, a cantilevered floor or a bay.',
];

const STATE: Readonly<Record<FactState, string>> = {
  verified: 'verified',
  'worked-out': 'worked out',
  open: 'TO VERIFY before permit',
  'on-site': 'to be seen on site',
  refused: 'MAY NOT BE DONE',
  outside: 'LICENSED PROFESSIONAL',
};

/** The first place of each kind; the others are built alike, their forces stand in the table. */
const typical = (places: readonly HousePlace[]): readonly HousePlace[] =>
  places.filter((p, i) => places.findIndex((q) => q.kind === p.kind) === i);

const SCALES_AT_HOUSE: readonly ScaleName[] = ['3', ...DETAIL_SCALES];

/** Pictures share a sheet only down to this scale, 1" = 1'-0". */
const LEAST = SCALES['1'].ratio;

const clearOf = (ctx: SheetContext): number => ctx.style.note * 2;

/** One picture with its notes to the right of it, in a box. */
function cell(ctx: SheetContext, place: HousePlace, number: number, box: Rect, at?: DrawingScale) {
  const { style } = ctx;
  const width = Math.min(box.w * 0.4, 74 * style.note);
  const view: Rect = { ...box, w: box.w - width - style.gutter };
  const pic = housePicture(ctx, place);
  const margin = { x: clearOf(ctx), y: clearOf(ctx) };
  const scale = at ?? scaleFor(ctx, pic.frame, view, margin, SCALES_AT_HOUSE);
  const placed = placeView(ctx, {
    box: view,
    model: pic.frame,
    scale,
    number: String(number),
    title: pic.title,
    items: pic.items,
    snug: margin.y,
  });
  const column = noteColumn({
    notes: pic.notes.map((n) => ({ target: toPaper(placed.viewport, n.at), text: n.text, mark: n.mark })),
    x: view.x + view.w + style.gutter,
    side: 'right',
    top: box.y + box.h,
    bottom: box.y,
    width,
    layer: 'S-ANNO-NOTE',
    style,
  });
  return {
    viewport: { ...placed.viewport, window: pic.frame },
    items: [...placed.items, ...column.items],
    label: placed.scale.label,
    bottom: Math.min(column.bottom, box.y + box.h - pic.frame.h * scale.ratio - 2 * clearOf(ctx) - titleBand(ctx)),
    crowded: column.overflow > 0 || pic.frame.w * scale.ratio > view.w,
  };
}

type Cell = ReturnType<typeof cell>;

/** Pictures one above the other from the top of a sheet at the largest scale at which they leave `below` free; undefined when none does. */
function stacked(ctx: SheetContext, places: readonly HousePlace[], first: number, below: number): Cell[] | undefined {
  const { area, style } = ctx;
  const frames = places.map((p) => housePicture(ctx, p).frame);
  for (const name of SCALES_AT_HOUSE) {
    const scale = SCALES[name];
    if (scale.ratio < LEAST - 1e-9) return undefined;
    const heights = frames.map((f) => f.h * scale.ratio + 2 * clearOf(ctx) + titleBand(ctx));
    const need = heights.reduce((sum, h) => sum + h, style.gutter * (places.length - 1));
    if (need > area.h - below) continue;
    let y = area.y + area.h;
    const cells = places.map((p, i) => {
      y -= heights[i]! + (i > 0 ? style.gutter : 0);
      return cell(ctx, p, first + i, { x: area.x, y, w: area.w, h: heights[i]! }, scale);
    });
    if (!cells.some((c) => c.crowded)) return cells;
  }
  return undefined;
}

function body(cells: readonly Cell[], more: readonly Primitive[]): SheetBody {
  const label = cells[0]?.label ?? 'No scale';
  return {
    title: 'At the house',
    scaleNote: cells.every((c) => c.label === label) ? label : 'As noted',
    viewports: cells.map((c) => c.viewport),
    items: [...cells.flatMap((c) => c.items), ...more],
  };
}

function words(ctx: SheetContext): Block[] {
  const rows: TableRow[] = houseFacts(ctx.input).map((f) => [
    { text: f.place, path: f.path },
    f.what,
    f.takes || '–',
    STATE[f.state],
    f.note || '–',
  ]);
  const w = ctx.area.w;
  return [
    {
      kind: 'table',
      title: 'At the house: verified and to verify',
      columns: [
        { head: 'Place' },
        { head: 'What', max: w * 0.3 },
        { head: 'Must take', max: w * 0.2 },
        { head: 'State', max: w * 0.14 },
        { head: 'Who, or what to do', grow: true },
      ],
      rows,
    },
    {
      kind: 'para',
      text: 'Forces are allowable-stress level, the largest on one fastener place, beam end or post, side load held by the house with them; they do not all act at once. “Verified” repeats what the owner stated: the program has seen nothing.',
    },
    { kind: 'gap' },
    { kind: 'heading', text: 'Order of work at the wall' },
    { kind: 'numbered', items: flashingOrder(atWalls(ctx)) },
    { kind: 'heading', text: 'Cautions' },
    { kind: 'bullets', items: CAUTIONS },
  ];
}

/** A large sheet holds the pictures in a row over the table; a small one as many above each other as fit, the table after them. */
function draw(ctx: SheetContext): SheetBody[] {
  const { area, style } = ctx;
  const places = typical(housePlaces(ctx.input));
  const blocks = words(ctx);
  const slugs = measure(blocks, area.w, style, 'G-ANNO-NOTE');
  const text = heightOf(slugs) + 2 * style.gutter;
  /** The words right under the pictures. */
  const table = (cells: readonly Cell[]) => {
    const top = Math.min(...cells.map((c) => c.bottom)) - style.gutter;
    return columnsFlow(slugs, [{ ...area, h: top - area.y }]).items;
  };
  if (area.w > 24 && text < area.h * 0.6) {
    const w = area.w / places.length;
    const cells = places.map((p, i) =>
      cell(ctx, p, i + 1, { x: area.x + i * w, y: area.y + text, w: w - style.gutter, h: area.h - text }),
    );
    return [body(cells, table(cells))];
  }
  const bodies: SheetBody[] = [];
  for (let i = 0; i < places.length; ) {
    const rest = places.slice(i);
    const last = stacked(ctx, rest, i + 1, text);
    if (last) return [...bodies, body(last, table(last))];
    let cells: Cell[] | undefined;
    for (let n = rest.length; n > 1 && !cells; n--) cells = stacked(ctx, rest.slice(0, n), i + 1, 0);
    cells ??= [cell(ctx, rest[0]!, i + 1, area)];
    bodies.push(body(cells, []));
    i += cells.length;
  }
  return [
    ...bodies,
    ...flowSheets(ctx, { title: 'At the house, verified and to verify', blocks, columns: 1, layer: 'G-ANNO-NOTE' }),
  ];
}

export const atHouse: SheetKind = {
  title: 'At the house',
  discipline: 'S',
  needed: (i) => housePlaces(i).length > 0,
  draw,
};
