/**
 * The site plan as a booklet of letter-size sheets, as offices ask for a file of its own: the lot at an engineer's scale, the new
 * roof enlarged, and the tables. Lettering keeps its least height; nothing points at a sheet outside the booklet.
 */
import { drawingArea, titleBlock } from '../../annotate/index.js';
import type { Sheet, SheetSize } from '../../ir/index.js';
import { setData, sheetContext } from '../context.js';
import { type DrawingInput, idAt, SHEET_IDS, type SheetBody, type SheetContext } from '../contract.js';
import { flowSheets, northOnPlan, placeView } from '../parts.js';
import type { PlanView } from '../plans/plan-sheet.js';
import { lotContent, lotView, lotWindow } from './content.js';
import { enlargedContent, enlargedView } from './enlarged.js';
import { lotBlocks } from './tables.js';

/** Letter size lying and upright: the one that draws the lot larger, lying where both do alike. */
const LETTER = ['ANSI A', 'Letter'] as const satisfies readonly SheetSize[];

function page<V extends PlanView>(
  ctx: SheetContext,
  title: string,
  number: string,
  v: V,
  content: (ctx: SheetContext, v: V) => Pick<Parameters<typeof placeView>[1], 'items' | 'over'>,
): SheetBody {
  const view = placeView(ctx, {
    box: ctx.area,
    model: v.model,
    scale: v.scale,
    number,
    title,
    north: northOnPlan(ctx.input.lot.north),
    plan: true,
    ...content(ctx, v),
  });
  return {
    title,
    scaleNote: view.scale.label,
    viewports: [{ ...view.viewport, window: lotWindow(v) }],
    items: view.items,
  };
}

/** Sheets of the booklet, numbered among themselves. Pure: the same input gives the same sheets. */
export function drawSiteBooklet(input: DrawingInput): Sheet[] {
  // A lying letter sheet has no height to spare for the stamp space of the permit set.
  const ctx = LETTER.map((s) => ({ ...sheetContext(input, s), area: drawingArea(s, false) })).reduce((a, b) =>
    lotView(b, b.area).scale.ratio > lotView(a, a.area).scale.ratio + 1e-9 ? b : a,
  );
  const bodies = [
    page(ctx, 'Lot plan', '1', lotView(ctx, ctx.area), lotContent),
    page(ctx, 'New roof, enlarged', '2', enlargedView(ctx, ctx.area), enlargedContent),
    ...flowSheets(ctx, { title: 'Yards, coverage, notes', blocks: lotBlocks(ctx), columns: ctx.area.w > 6 ? 2 : 1 }),
  ];
  const set = { ...setData(input), stamp: false };
  return bodies.map((body, i) => {
    const id = idAt(SHEET_IDS['lot-plan'], i);
    const data = { id, title: body.title, scaleNote: body.scaleNote, number: i + 1, of: bodies.length };
    return {
      id,
      title: body.title,
      discipline: 'C',
      size: ctx.size,
      viewports: body.viewports,
      scaleNote: body.scaleNote,
      items: [...body.items, ...titleBlock(ctx.size, set, data)],
    };
  });
}
