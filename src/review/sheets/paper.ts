/** Paper: one size, room for the stamp, a bar beside each scale, and sheets neither empty nor crowded. */
import { clipPath, type Flat, type Rect } from '../../drawings/ir/index.js';
import type { SheetCheck } from './contract.js';
import { boxesOf, flatOf } from './flat.js';

/** `1/4" = 1'-0"`, `1" = 20'-0"`: what a scale bar must stand beside, since prints are enlarged and reduced. */
const SCALE = /" = \d+'/;

export const scaleBars: SheetCheck = {
  title: 'Every view with a scale has a scale bar',
  run: ({ sheets }) =>
    sheets.flatMap((s) => {
      const flats = flatOf(s);
      const scales = flats.filter(
        (f) => f.kind === 'text' && f.layer === 'G-ANNO-TITL' && SCALE.test(f.content),
      ).length;
      // A bar is one role; its last label tells how many bars there are.
      const bars = flats.filter((f) => f.kind === 'text' && f.role === 'scale-bar').length;
      return scales === bars ? [] : [{ sheet: s.id, what: `${scales} scales, ${bars} scale bars` }];
    }),
};

/** Cells into which the drawing area is divided along its longer side. */
const CELLS = 24;
/** Least share of a sheet that its contents may take up. */
const LEAST = 0.25;

function boundsOf(f: Flat): Rect {
  if (f.kind === 'arc') return { x: f.x - f.r, y: f.y - f.r, w: 2 * f.r, h: 2 * f.r };
  if (f.kind === 'text') {
    const left = f.align === 'left' ? 0 : f.align === 'center' ? f.width / 2 : f.width;
    return Math.abs(f.angle) < 0.1
      ? { x: f.x - left, y: f.y, w: f.width, h: f.height }
      : { x: f.x - f.height, y: f.y - left, w: f.height, h: f.width };
  }
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const stroke of f.strokes) {
    for (let i = 0; i + 1 < stroke.length; i += 2) {
      x0 = Math.min(x0, stroke[i]!);
      x1 = Math.max(x1, stroke[i]!);
      y0 = Math.min(y0, stroke[i + 1]!);
      y1 = Math.max(y1, stroke[i + 1]!);
    }
  }
  return { x: x0, y: y0, w: x1 - x0, h: y1 - y0 };
}

/** Share of the drawing area within a cell of any ink: the white inside a drawing belongs to it. */
export function usedShare(flats: readonly Flat[], area: Rect): number {
  const size = Math.max(area.w, area.h) / CELLS;
  const [nx, ny] = [Math.ceil(area.w / size), Math.ceil(area.h / size)];
  const used = new Uint8Array(nx * ny);
  for (const f of flats) {
    const b = boundsOf(f);
    const column = (x: number): number => Math.floor((x - area.x) / size);
    const row = (y: number): number => Math.floor((y - area.y) / size);
    for (let i = Math.max(0, column(b.x)); i <= Math.min(nx - 1, column(b.x + b.w)); i++)
      for (let j = Math.max(0, row(b.y)); j <= Math.min(ny - 1, row(b.y + b.h)); j++) used[j * nx + i] = 1;
  }
  return used.reduce((sum, u) => sum + u, 0) / used.length;
}

export const used: SheetCheck = {
  title: 'No sheet is emptier than a quarter, the end of running text aside',
  advice: true,
  run: ({ sheets, area }) =>
    sheets.flatMap((s, i) => {
      // Text that runs over several sheets must end somewhere.
      const ends =
        s.viewports.length === 0 && sheets[i - 1]?.discipline === s.discipline && s.title.endsWith('continued');
      if (ends) return [];
      const flats = flatOf(s).filter((f) => f.layer !== 'G-ANNO-TTLB' && f.layer !== 'G-ANNO-STMP');
      const share = usedShare(flats, area);
      return share < LEAST ? [{ sheet: s.id, what: `${Math.round(100 * share)} % used` }] : [];
    }),
};

/** Most of the drawing area that lettering may cover: an even page of notes covers about a third. Common practice, no source. */
const MOST = 0.45;

export const legible: SheetCheck = {
  title: 'No sheet is crowded with more lettering than it can bear',
  run: ({ sheets, area }) =>
    sheets.flatMap((s) => {
      const inked = boxesOf(s)
        .filter((b) => b.x < area.x + area.w)
        .reduce((sum, b) => sum + b.w * b.h, 0);
      const share = inked / (area.w * area.h);
      return share > MOST ? [{ sheet: s.id, what: `${Math.round(100 * share)} % covered with lettering` }] : [];
    }),
};

export const oneSize: SheetCheck = {
  title: 'All sheets are of one size and lie the same way',
  run: ({ sheets }) =>
    sheets
      .filter((s) => s.size !== sheets[0]!.size)
      .map((s) => ({ sheet: s.id, what: `${s.size} in a set of ${sheets[0]!.size}` })),
};

export const stampClear: SheetCheck = {
  title: 'The space for the stamp is clear',
  run: ({ sheets, stamp }) =>
    sheets.flatMap((s) => {
      const slack = 0.005;
      const hit = flatOf(s).find((f) => {
        // The border is drawn round the sheet, not through the space.
        const strokes = f.kind === 'path' ? f.strokes : undefined;
        if (strokes?.every((t) => !clipsInto(t, f.kind === 'path' && f.closed, stamp, slack))) return false;
        const b = boundsOf(f);
        return (
          b.x < stamp.x + stamp.w - slack &&
          b.x + b.w > stamp.x + slack &&
          b.y < stamp.y + stamp.h - slack &&
          b.y + b.h > stamp.y + slack
        );
      });
      return hit ? [{ sheet: s.id, what: hit.kind === 'text' ? hit.content : `lines on ${hit.layer}` }] : [];
    }),
};

/** Some stroke of a path runs through a rectangle made smaller by `slack` on all sides. */
function clipsInto(path: readonly number[], closed: boolean, r: Rect, slack: number): boolean {
  const inner = { x: r.x + slack, y: r.y + slack, w: r.w - 2 * slack, h: r.h - 2 * slack };
  return clipPath(closed ? [...path, path[0]!, path[1]!] : [...path], inner).length > 0;
}
