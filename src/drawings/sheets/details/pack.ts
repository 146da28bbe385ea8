/** Details on as few sheets as they need, in columns, at the largest scales that fit. */

import { splitColumns } from '../../annotate/index.js';
import type { Rect } from '../../ir/index.js';
import type { SheetBody, SheetContext } from '../contract.js';
import type { Detail } from './contract.js';
import { drawDetail, type Measured, measureAt, measureDetail } from './place.js';

/** A detail's place: running number of the sheet, from 0, and its number there. */
export interface Spot {
  readonly sheet: number;
  readonly number: string;
}

interface Arrangement {
  readonly columns: readonly (readonly Measured[])[];
  readonly boxes: readonly Rect[];
  /** Sum over details of the logarithm of scale: larger drawings are better. */
  readonly worth: number;
}

/** Shares of a column's height that one detail may take, tried from the largest down. */
const CAPS = [1, 0.66, 0.5, 0.4, 0.33, 0.25] as const;

/** Splits a list, order kept, into at most `n` columns of a height; undefined when it does not fit. Columns are as even as they can be. */
function columnsOf(list: readonly Measured[], n: number, height: number, gap: number): Measured[][] | undefined {
  const fill = (limit: number): Measured[][] | undefined => {
    const out: Measured[][] = [[]];
    let used = 0;
    for (const m of list) {
      if (m.height > limit) return undefined;
      const column = out.at(-1)!;
      const need = used + (column.length > 0 ? gap : 0) + m.height;
      if (need <= limit) {
        column.push(m);
        used = need;
      } else {
        out.push([m]);
        used = m.height;
      }
    }
    return out.length <= n ? out : undefined;
  };
  if (!fill(height)) return undefined;
  let [lo, hi] = [0, height];
  for (let k = 0; k < 12; k++) {
    const mid = (lo + hi) / 2;
    if (fill(mid)) hi = mid;
    else lo = mid;
  }
  return fill(hi);
}

/** Details of one sort at one scale, the smallest any of them needs. */
function alike(
  ctx: SheetContext,
  details: readonly Detail[],
  width: number,
  most: number,
): readonly (Measured | undefined)[] {
  const sort = (d: Detail): string => d.id.split(' ')[0]!;
  const first = details.map((d) => measureDetail(ctx, d, width, most));
  const least = new Map<string, Measured>();
  for (const m of first) {
    const known = m && least.get(sort(m.detail));
    if (m && (!known || m.scale.ratio < known.scale.ratio)) least.set(sort(m.detail), m);
  }
  return first.map((m) => m && (measureAt(ctx, m.detail, width, least.get(sort(m.detail))!.scale) ?? m));
}

/** The best way to put these details on one sheet; undefined when they do not fit. */
function arrange(ctx: SheetContext, details: readonly Detail[]): Arrangement | undefined {
  const { area, style } = ctx;
  const most = area.w > 24 ? 3 : 2;
  let best: Arrangement | undefined;
  for (let n = 1; n <= Math.min(most, details.length); n++) {
    const boxes = splitColumns(
      area,
      Array.from({ length: n }, () => 1),
      style.gutter,
    );
    for (const cap of CAPS) {
      const list = alike(ctx, details, boxes[0]!.w, cap * area.h);
      if (list.some((m) => m === undefined)) continue;
      const columns = columnsOf(list as Measured[], n, area.h, style.gutter);
      if (!columns) continue;
      const worth = (list as Measured[]).reduce((sum, m) => sum + Math.log(m.scale.ratio), 0);
      if (!best || worth > best.worth + 1e-9) best = { columns, boxes, worth };
      break;
    }
  }
  return best;
}

/** Details of each sheet: the fewest sheets, and on each of them no more than its share. */
function sheetsOf(ctx: SheetContext, details: readonly Detail[]): Detail[][] {
  const out: Detail[][] = [];
  let rest = [...details];
  while (rest.length > 0) {
    let n = rest.length;
    while (n > 1 && !arrange(ctx, rest.slice(0, n))) n--;
    out.push(rest.slice(0, n));
    rest = rest.slice(n);
  }
  // An almost empty last sheet takes from the one before it.
  for (let i = out.length - 1; i > 0; i--) {
    const [before, last] = [out[i - 1]!, out[i]!];
    while (before.length - last.length > 1) {
      const moved = before[before.length - 1]!;
      if (!arrange(ctx, [moved, ...last])) break;
      before.pop();
      last.unshift(moved);
    }
  }
  return out;
}

export interface Packed {
  readonly bodies: readonly SheetBody[];
  readonly spots: ReadonlyMap<string, Spot>;
}

/** Draws details on sheets of one title. A detail too large for any sheet is drawn at its smallest scale all the same. */
export function packDetails(ctx: SheetContext, title: string, details: readonly Detail[]): Packed {
  const { area, style } = ctx;
  const spots = new Map<string, Spot>();
  const bodies = sheetsOf(ctx, details).map((mine, sheet): SheetBody => {
    const found: Pick<Arrangement, 'columns' | 'boxes'> = arrange(ctx, mine) ?? {
      columns: [mine.flatMap((d) => measureDetail(ctx, d, area.w, area.h) ?? [])],
      boxes: [area],
    };
    let number = 0;
    const drawn = found.columns.flatMap((column, c) => {
      const box = found.boxes[c]!;
      const used = column.reduce((sum, m) => sum + m.height, 0);
      // What is left over parts the details of a column evenly, up to a limit.
      const spare = Math.min((box.h - used) / Math.max(1, column.length - 1), style.gutter * 4);
      let y = box.y + box.h;
      return column.map((m) => {
        number++;
        spots.set(m.detail.id, { sheet, number: String(number) });
        const d = drawDetail(ctx, m, { x: box.x, y }, String(number));
        y -= m.height + Math.max(style.gutter, spare);
        return d;
      });
    });
    const labels = new Set(found.columns.flat().map((m) => m.scale.label));
    return {
      title: sheet === 0 ? title : `${title}, continued`,
      scaleNote: labels.size === 1 ? [...labels][0]! : 'As noted',
      viewports: drawn.flatMap((d) => d.viewports),
      items: drawn.flatMap((d) => d.items),
    };
  });
  return { bodies, spots };
}
