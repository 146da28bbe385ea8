/** Which sheet each section stands on, where, and at what scale: sections that fit share a sheet, so that they can be compared. */
import type { Structure } from '../../structure/model.js';
import type { DrawingScale, Rect } from '../ir/index.js';
import { SCALES } from '../ir/index.js';
import { CAMERAS, see } from '../views/camera.js';
import type { SheetContext } from './contract.js';
import { SECTION_SCALES, scaleFor, titleBand } from './parts.js';
import { standsOff } from './plan-base.js';
import { type Cutting, cuttingOf } from './section-picture.js';
import { sectionPlanes } from './section-plane.js';

export interface SectionSpot {
  /** Running number of the sheet, from 0. */
  readonly sheet: number;
  readonly box: Rect;
  readonly frame: Rect;
  readonly scale: DrawingScale;
}

/** Model inches kept over the highest roof: enough to see what the house does there, or just its lettering. */
const HEADS = [30, 10] as const;

/** Sections share a sheet only down to this scale, 1/4" = 1'-0": below it their timbers close up. */
const LEAST = SCALES['1/4'].ratio;

/** Paper round a section for its levels and strings: at its sides, over it, and under it where a string runs. */
export const sectionMargin = (
  ctx: SheetContext,
): { readonly x: number; readonly top: number; readonly under: number } => ({
  x: 26 * ctx.style.note,
  top: ctx.style.note,
  under: 5 * ctx.style.note,
});

function frameOf(structure: Structure, cut: Cutting, head: number): Rect {
  const c = CAMERAS[cut.name];
  const as = structure.roofs.flatMap((r) => [
    see(c, { x: r.min.x, y: r.min.y, z: 0 }).a,
    see(c, { x: r.max.x, y: r.max.y, z: 0 }).a,
  ]);
  const behind =
    cut.name === 'right' && structure.walls.length > 0 && !standsOff(structure)
      ? [see(c, { x: 0, y: -40, z: 0 }).a]
      : [];
  const x0 = Math.min(...as, ...behind) - 14;
  const x1 = Math.max(...as, ...behind) + 14;
  const low = Math.min(...structure.footings.map((f) => f.bottom)) - 4;
  const high = Math.max(...structure.roofs.map((r) => r.highestPoint)) + head;
  return { x: x0, y: low, w: x1 - x0, h: high - low };
}

/** Boxes one above the other or side by side from the top of the sheet; undefined when they do not fit. */
function boxesFor(ctx: SheetContext, frames: readonly Rect[], scale: number): Rect[] | undefined {
  const { area, style } = ctx;
  const margin = sectionMargin(ctx);
  const sizes = frames.map((f) => ({
    w: f.w * scale + 2 * margin.x,
    h: f.h * scale + margin.top + margin.under + titleBand(ctx),
  }));
  // A title band already parts a view from the one below it.
  const gap = style.gutter / 2;
  const sum = (key: 'w' | 'h'): number => sizes.reduce((all, s) => all + s[key], gap * (frames.length - 1));
  const most = (key: 'w' | 'h'): number => Math.max(...sizes.map((s) => s[key]));
  const top = area.y + area.h;
  if (sum('w') <= area.w && most('h') <= area.h) {
    // What is left over goes to each alike, so that the views stand apart.
    const more = (area.w - sum('w')) / frames.length;
    let x = area.x;
    return sizes.map((s) => {
      const box = { x, y: area.y, w: s.w + more, h: area.h };
      x += box.w + gap;
      return box;
    });
  }
  if (sum('h') > area.h || most('w') > area.w) return undefined;
  let y = top;
  return sizes.map((s) => {
    y -= s.h;
    const box = { x: area.x, y, w: area.w, h: s.h };
    y -= gap;
    return box;
  });
}

function together(ctx: SheetContext, cuts: readonly Cutting[], sheet: number): SectionSpot[] | undefined {
  for (const name of SECTION_SCALES) {
    const scale = SCALES[name];
    if (scale.ratio < LEAST - 1e-9) return undefined;
    for (const head of HEADS) {
      const frames = cuts.map((c) => frameOf(ctx.input.structure, c, head));
      const boxes = boxesFor(ctx, frames, scale.ratio);
      if (boxes) return frames.map((frame, i) => ({ sheet, box: boxes[i]!, frame, scale }));
    }
  }
  return undefined;
}

const known = new WeakMap<SheetContext, readonly SectionSpot[]>();

/** A place for every section of `sectionPlanes`, in their order. */
export function sectionLayout(ctx: SheetContext): readonly SectionSpot[] {
  const before = known.get(ctx);
  if (before) return before;
  const { structure } = ctx.input;
  const cuts = sectionPlanes(structure).map(cuttingOf);
  const spots: SectionSpot[] = [];
  for (let sheet = 0; spots.length < cuts.length; sheet++) {
    const rest = cuts.slice(spots.length);
    let placed: SectionSpot[] | undefined;
    for (let n = rest.length; n > 1 && !placed; n--) placed = together(ctx, rest.slice(0, n), sheet);
    if (!placed) {
      const frame = frameOf(structure, rest[0]!, HEADS[0]);
      const { x, top, under } = sectionMargin(ctx);
      const scale = scaleFor(ctx, frame, ctx.area, { x, y: (top + under) / 2 }, SECTION_SCALES);
      placed = [{ sheet, box: ctx.area, frame, scale }];
    }
    spots.push(...placed);
  }
  known.set(ctx, spots);
  return spots;
}
