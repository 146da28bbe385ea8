/** The tie-in sheet: plan of the roof over the old roof, section along its ridge, valley and fill rafter, cuts and flashing. */
import type { OverlayPlaced } from '../../structure/model.js';
import { columnsFlow, heightOf, measure, textBlock } from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import { idAt, SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { flowOn, type PlacedView } from './parts.js';
import { fillDetail, valleyDetail } from './tie-in-details.js';
import { planHeight, tieInPlan } from './tie-in-plan.js';
import { tieInSection } from './tie-in-section.js';
import { cutTable, flashingTable, tieInBlocks } from './tie-in-words.js';

const TITLE = 'Tie-in to the house roof';

function body(title: string, views: readonly PlacedView[], more: readonly Primitive[]): SheetBody {
  const label = views[0]?.scale.label ?? 'No scale';
  return {
    title,
    scaleNote: views.every((v) => v.scale.label === label) ? label : 'As noted',
    viewports: views.map((v) => v.viewport),
    items: [...views.flatMap((v) => v.items), ...more],
  };
}

/** A large sheet: plan and details over the section, tables at the right. */
function large(ctx: SheetContext, o: OverlayPlaced, before: number): SheetBody[] {
  const { area, style } = ctx;
  const g = style.gutter;
  const sideW = Math.min(area.w * 0.31, 78 * style.note);
  const side: Rect = { x: area.x + area.w - sideW, y: area.y, w: sideW, h: area.h };
  const main: Rect = { ...area, w: area.w - sideW - g };
  const lowH = main.h * 0.45;
  const top: Rect = { x: main.x, y: main.y + lowH + g, w: main.w, h: main.h - lowH - g };
  const planW = top.w * 0.59;
  const detail: Rect = { x: top.x + planW + g, y: top.y, w: top.w - planW - g, h: top.h };
  const mark = { number: '2', sheet: idAt(SHEET_IDS['tie-in'], before) };
  const plan = tieInPlan(ctx, o, { ...top, w: planW }, '1', mark);
  const section = tieInSection(ctx, o, { ...main, h: lowH }, '2');
  const half = (detail.h - g) / 2;
  const valley = valleyDetail(ctx, o, { ...detail, y: detail.y + half + g, h: half }, '3');
  const fill = fillDetail(ctx, o, { ...detail, h: half }, '4');
  const slugs = measure(
    [...cutTable(ctx, o), { kind: 'gap' }, ...flashingTable(ctx), ...tieInBlocks(ctx, o)],
    side.w,
    style,
  );
  const views = [plan, section.view, valley.view, ...(fill ? [fill.view] : [])];
  const notes = [...section.notes, ...valley.notes, ...(fill?.notes ?? [])];
  if (heightOf(slugs) <= side.h)
    return [body(TITLE, views, [...notes, ...textBlock(slugs, { x: side.x, y: side.y + side.h }).items])];
  const [first, ...rest] = flowOn(slugs, [side], `${TITLE}, continued`);
  return [body(TITLE, views, [...notes, ...(first?.items ?? [])]), ...rest];
}

/** Small sheets: the plan with the cut table, section and details, then the words. `before`: sheets of this kind drawn already. */
function small(ctx: SheetContext, o: OverlayPlaced, before: number): SheetBody[] {
  const { area, style } = ctx;
  const g = style.gutter;
  const sideW = area.w * 0.4;
  const side: Rect = { ...area, x: area.x + area.w - sideW, w: sideW };
  const mark = { number: '2', sheet: idAt(SHEET_IDS['tie-in'], before + 1) };
  const plan = tieInPlan(ctx, o, { ...area, w: area.w - sideW - g }, '1', mark);
  const blocks = [...cutTable(ctx, o), { kind: 'gap' } as const, ...flashingTable(ctx), ...tieInBlocks(ctx, o)];
  // What is left of them goes on under the plan.
  const free = area.h - planHeight(ctx, o, plan) - g;
  const under = free > 12 * style.note ? [{ ...area, w: sideW, h: free }] : [];
  const cuts = columnsFlow(measure(blocks, side.w, style), [side, ...under]);
  const lowH = (area.h - g) * 0.44;
  const section = tieInSection(ctx, o, { ...area, y: area.y + lowH + g, h: area.h - lowH - g }, '2');
  const w = (area.w - g) / 2;
  const valley = valleyDetail(ctx, o, { ...area, w, h: lowH }, '3');
  const fill = fillDetail(ctx, o, { ...area, x: area.x + w + g, w, h: lowH }, '4');
  const words = flowOn(
    cuts.rest,
    [
      { ...area, w: sideW },
      { ...area, x: area.x + sideW + g, w: sideW },
    ],
    `${TITLE}, continued`,
  );
  return [
    body(TITLE, [plan], cuts.items),
    body(
      `${TITLE}, section and details`,
      [section.view, valley.view, ...(fill ? [fill.view] : [])],
      [...section.notes, ...valley.notes, ...(fill?.notes ?? [])],
    ),
    ...words,
  ];
}

export const tieIn: SheetKind = {
  title: TITLE,
  discipline: 'S',
  needed: (i) => (i.structure.overlays?.length ?? 0) > 0,
  draw(ctx) {
    const bodies: SheetBody[] = [];
    for (const o of ctx.input.structure.overlays ?? [])
      bodies.push(...(ctx.area.w > 24 ? large : small)(ctx, o, bodies.length));
    return bodies;
  },
};
