/**
 * What the files hold. A sheet's file has the sheet as its layout: frame, title block, tables and notes on paper in paper inches,
 * and for each view a window into model space, where the view stands at full scale. So an office measures and reuses the views as
 * they will be built, and plots the sheet as it was issued; either would be lost if all stood in one space.
 */
import {
  LAYERS,
  type LayerName,
  place,
  type Rect,
  SHEET_SIZES,
  type Sheet,
  toModel,
  type Viewport,
} from '../../ir/index.js';
import { convert, ON_PAPER, type Place } from './convert.js';
import type { Entity } from './entity.js';
import { dxfText, type PaperView } from './file.js';
import { library } from './library.js';

/** Paper rectangle that a view's drawing fills, its lettering included. */
function reach(v: Viewport): Rect {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  const see = (x: number, y: number, r = 0): void => {
    x0 = Math.min(x0, x - r);
    x1 = Math.max(x1, x + r);
    y0 = Math.min(y0, y - r);
    y1 = Math.max(y1, y + r);
  };
  for (const f of place(v)) {
    if (f.kind === 'arc') see(f.x, f.y, f.r);
    else if (f.kind === 'path') {
      for (const s of f.strokes) for (let i = 0; i < s.length; i += 2) see(s[i]!, s[i + 1]!);
    } else {
      const back = f.align === 'left' ? 0 : f.align === 'center' ? f.width / 2 : f.width;
      const [c, s] = [Math.cos(f.angle), Math.sin(f.angle)];
      for (const u of [-back, f.width - back])
        for (const w of [-0.3 * f.height, f.height]) see(f.x + c * u - s * w, f.y + s * u + c * w);
    }
  }
  return x1 < x0 ? { x: v.at.x, y: v.at.y, w: 0, h: 0 } : { x: x0, y: y0, w: x1 - x0, h: y1 - y0 };
}

/** Room round a view's drawing, paper inches: pens have width. */
const MARGIN = 0.06;
/** Edges of windows fall on sixteenths: exact decimals, so that a reader finds the scale exact too. */
const STEP = 1 / 16;
const roomy = (r: Rect): Rect => {
  const down = (v: number): number => Math.floor((v - MARGIN) / STEP) * STEP;
  const up = (v: number): number => Math.ceil((v + MARGIN) / STEP) * STEP;
  const [x, y] = [down(r.x), down(r.y)];
  return { x, y, w: up(r.x + r.w) - x, h: up(r.y + r.h) - y };
};
/** Ground kept free between views in model space. */
const GAP = 60;

const within = (r: Rect, by: Rect): Rect => {
  const x = Math.max(r.x, by.x);
  const y = Math.max(r.y, by.y);
  return { x, y, w: Math.min(r.x + r.w, by.x + by.w) - x, h: Math.min(r.y + r.h, by.y + by.h) - y };
};

const around = (a: Rect | undefined, b: Rect): Rect => {
  if (!a) return b;
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
};

const placeOf = (v: Viewport, dashes: number, dx = 0): Place => ({
  k: 1 / v.scale,
  dash: 1 / v.scale / dashes,
  shift: { x: dx, y: 0 },
  origin: toModel(v, { x: 0, y: 0 }),
});

/**
 * One sheet as a DXF file of release 2007, UTF-8 text with CR LF line ends. The first view keeps its own coordinates (a plan: house
 * axes); the others stand beside it, moved along x only, so that heights in elevations and sections stay heights.
 */
export function dxfOf(sheet: Sheet): string {
  const { w, h } = SHEET_SIZES[sheet.size];
  const paper: Rect = { x: 0, y: 0, w, h };
  const lib = library();
  const modelEntities: Entity[] = [];
  const views: PaperView[] = [];
  const dashes = 1 / (sheet.viewports[0]?.scale ?? 1);
  let model: Rect | undefined;
  for (const v of sheet.viewports) {
    const own = reach(v);
    const rect = within(roomy(own), paper);
    const k = 1 / v.scale;
    const low = toModel(v, rect);
    // Whole feet, so that a moved view is easily moved back.
    const dx = model ? Math.ceil((model.x + model.w + GAP - low.x) / 12) * 12 : 0;
    const ground: Rect = { x: low.x + dx, y: low.y, w: rect.w * k, h: rect.h * k };
    const at = placeOf(v, dashes, dx);
    modelEntities.push(...convert(v.items, { ...at, clip: v.window }, lib), ...convert(v.over ?? [], at, lib));
    views.push({ rect, k, center: { x: ground.x + ground.w / 2, y: ground.y + ground.h / 2 } });
    model = around(model, ground);
  }
  return dxfText({
    layout: sheet.id,
    paper,
    model: model ?? paper,
    onModel: false,
    dashes,
    modelEntities,
    paperEntities: convert(sheet.items, { ...ON_PAPER, dash: 1 / dashes }, lib),
    views,
    library: lib,
  });
}

/** What stands twice on the same layer with the same pen, because two plans show it, is kept once. */
function once(entities: readonly Entity[]): Entity[] {
  const seen = new Set<string>();
  return entities.filter((e) => {
    const key = JSON.stringify([e.type, e.layer, e.look, e.body]);
    return seen.has(key) ? false : seen.add(key) !== undefined;
  });
}

/**
 * Layer for the lettering of one plan among several: `S-ANNO-DIMS` of sheet S-101 becomes `S-ANNO-DIMS-S101`. A minor group
 * has four characters: AD101 gives D101, and no discipline of a set is D alone.
 */
const layerOf =
  (sheet: Sheet) =>
  (name: string): string =>
    `${name}-${sheet.id.replace('-', '').slice(-4)}`;

/**
 * The plans of a set laid over one another in house axes at full scale: one file to draw over or to take into another drawing. No
 * paper. What is built stands on its own layers. Dimensions, tags and notes of each plan stand on layers that end in its sheet
 * number, as four-character minor groups of the national CAD standard; all but those of the first structural plan are switched
 * off, for they were placed for sheets of their own and would overprint. Undefined when the set has no plan.
 */
export function dxfModelPlan(sheets: readonly Sheet[]): string | undefined {
  const plans = sheets.flatMap((sheet) => sheet.viewports.filter((v) => v.plan).map((view) => ({ sheet, view })));
  if (plans.length === 0) return undefined;
  const shown = plans.find((p) => p.sheet.discipline === 'S') ?? plans[0]!;
  const dashes = 1 / shown.view.scale;
  const lib = library();
  const built: Entity[] = [];
  const lettered: Entity[] = [];
  const off = new Set<string>();
  let model: Rect | undefined;
  for (const { sheet, view } of plans) {
    const at = placeOf(view, dashes);
    const layer = layerOf(sheet);
    built.push(...convert(view.items, { ...at, clip: view.window }, lib));
    lettered.push(...convert(view.over ?? [], { ...at, layer }, lib));
    if (sheet !== shown.sheet) for (const name of Object.keys(LAYERS) as LayerName[]) off.add(layer(name));
    const own = reach(view);
    model = around(model, { ...toModel(view, own), w: own.w / view.scale, h: own.h / view.scale });
  }
  return dxfText({
    layout: 'Layout1',
    paper: { x: 0, y: 0, ...SHEET_SIZES[shown.sheet.size] },
    model: model!,
    onModel: true,
    dashes,
    modelEntities: [...once(built), ...lettered],
    paperEntities: [],
    views: [],
    library: lib,
    off: [...off],
  });
}
