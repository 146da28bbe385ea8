/** Paper: a printed scale has its bar, and a sheet is used. */
import { type Flat, flatten, type Rect } from '../../drawings/ir/index.js';
import type { SheetCheck } from './contract.js';

/** `1/4" = 1'-0"`, `1" = 20'-0"`: what a scale bar must stand beside, since prints are enlarged and reduced. */
const SCALE = /" = \d+'/;

export const scaleBars: SheetCheck = {
  title: 'Every view with a scale has a scale bar',
  run: ({ sheets }) =>
    sheets.flatMap((s) => {
      const flats = flatten(s);
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
  run: ({ sheets, area }) =>
    sheets.flatMap((s, i) => {
      // Text that runs over several sheets must end somewhere.
      const ends =
        s.viewports.length === 0 && sheets[i - 1]?.discipline === s.discipline && s.title.endsWith('continued');
      if (ends) return [];
      const share = usedShare(
        flatten(s).filter((f) => f.layer !== 'G-ANNO-TTLB'),
        area,
      );
      return share < LEAST ? [{ sheet: s.id, what: `${Math.round(100 * share)} % used` }] : [];
    }),
};
