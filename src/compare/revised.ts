/** Touched sheets with clouds round what changed, each with the number of the revision in a triangle. */
import type { Vec2 } from '../base/vec.js';
import { cloudMargin, revisionCloud } from '../drawings/annotate/cloud.js';
import { overlaps, type TextBox, textBoxes } from '../drawings/annotate/layout.js';
import { revisionDelta } from '../drawings/annotate/marks.js';
import { type Style, styleFor } from '../drawings/annotate/style.js';
import { drawingArea } from '../drawings/annotate/title-block.js';
import type { Primitive, Rect, Sheet } from '../drawings/ir/index.js';
import type { SheetChange } from './sheets.js';

/** Round what changed, but not out of the drawing area. */
function grown(r: Rect, by: number, area: Rect): Rect {
  const x = Math.max(area.x, r.x - by);
  const y = Math.max(area.y, r.y - by);
  return {
    x,
    y,
    w: Math.max(2 * by, Math.min(area.x + area.w, r.x + r.w + by) - x),
    h: Math.max(2 * by, Math.min(area.y + area.h, r.y + r.h + by) - y),
  };
}

/** Where a triangle may stand beside a cloud, the best first; its own lettering needs two note heights each way. */
function placesRound(c: Rect, note: number): Vec2[] {
  return [2, 4, 7].flatMap((k) => {
    const h = k * note;
    const [left, right, low, high] = [c.x - h, c.x + c.w + h, c.y - h, c.y + c.h + h];
    const [mx, my] = [c.x + c.w / 2, c.y + c.h / 2];
    return [
      { x: right, y: high },
      { x: left, y: high },
      { x: right, y: my },
      { x: left, y: my },
      { x: right, y: low },
      { x: left, y: low },
      { x: mx, y: high },
      { x: mx, y: low },
    ];
  });
}

/** Paper that a triangle takes up. */
const boxOf = (at: Vec2, style: Style): TextBox => ({
  x: at.x,
  y: at.y + 0.28 * style.note,
  w: 2.6 * style.note,
  h: 2.3 * style.note,
  angle: 0,
  content: '',
  layer: 'G-ANNO-REVS',
});

/** Left ends of the rules on a sheet: where its columns of text begin. */
const columnsOf = (s: Sheet): readonly number[] =>
  s.items.flatMap((i) =>
    i.kind === 'line' && i.layer !== 'G-ANNO-TTLB' && i.a.y === i.b.y ? [Math.min(i.a.x, i.b.x)] : [],
  );

/** A bar beside the column for each new line of running text; bars of lines one below the other are one. */
function bars(lines: readonly Rect[], sheet: Sheet, style: Style): Primitive[] {
  const columns = columnsOf(sheet);
  const step = style.note * style.leading;
  const at = (r: Rect): number => Math.max(0, ...columns.filter((x) => x <= r.x + 0.01)) || r.x;
  const out: { x: number; low: number; high: number }[] = [];
  const spans = lines.map((r) => ({ x: at(r), low: r.y, high: r.y + r.h }));
  for (const r of spans.sort((a, b) => a.x - b.x || b.high - a.high)) {
    const last = out.at(-1);
    if (last && Math.abs(last.x - r.x) < 0.01 && last.low - r.high < step) last.low = Math.min(last.low, r.low);
    else out.push({ ...r });
  }
  return out.map(({ x, low, high }) => ({
    kind: 'line',
    layer: 'G-ANNO-REVS',
    pen: 'profile',
    a: { x: x - 0.6 * style.note, y: low },
    b: { x: x - 0.6 * style.note, y: high },
  }));
}

/** The sheets of `changes` that are in the set, clouded. */
export function revisedSheets(sheets: readonly Sheet[], changes: readonly SheetChange[], number: string): Sheet[] {
  return sheets.flatMap((s) => {
    const change = changes.find((c) => c.sheet === s.id && c.how !== 'removed');
    if (!change) return [];
    const style = styleFor(s.size);
    const area = drawingArea(s.size);
    const taken = [...textBoxes(s)];
    const extra: Primitive[] = [];
    for (const r of change.clouds) {
      const c = grown(r, cloudMargin(r, style), area);
      extra.push(...revisionCloud(c, style));
      const places = placesRound(c, style.note).filter(
        (p) => p.x > area.x && p.x < area.x + area.w && p.y > area.y && p.y < area.y + area.h,
      );
      const hits = (p: Vec2): number => overlaps([boxOf(p, style), ...taken]).length;
      const before = overlaps(taken).length;
      const at = places.find((p) => hits(p) === before) ?? places[0];
      if (at === undefined) continue;
      taken.push(boxOf(at, style));
      extra.push(revisionDelta({ at, number, layer: 'G-ANNO-REVS', style }));
    }
    extra.push(...bars(change.bars, s, style));
    return [{ ...s, items: [...s.items, ...extra] }];
  });
}
