/**
 * Which sheets are touched, and where: what is drawn in a view is compared in the view's own model coordinates, lettering beside
 * views by its words. A sheet laid out anew is thereby not changed, and a post that moved is, wherever it is drawn.
 */
import { type TextBox, textBoxes } from '../drawings/annotate/layout.js';
import { type Flat, flatten, type Primitive, type Rect, type Sheet, type Viewport } from '../drawings/ir/index.js';

export interface SheetChange {
  readonly sheet: string;
  readonly title: string;
  readonly how: 'added' | 'removed' | 'changed';
  /** Places on the new sheet, paper inches; neighbors joined. */
  readonly clouds: readonly Rect[];
  /** Lines of running text that are new, paper inches: marked by a bar beside them, since a cloud would strike them out. */
  readonly bars: readonly Rect[];
  /** Marks of parts drawn differently. */
  readonly marks: readonly string[];
}

/** Not the sheet's own matter: its title strip and what is drawn round views. */
const FORM = new Set(['G-ANNO-TTLB', 'G-ANNO-STMP', 'G-ANNO-REVS']);

const keyOf = (p: Primitive): string =>
  JSON.stringify(p, (_, x) => (typeof x === 'number' ? Math.round(x * 100) / 100 : x));

/** Those of `now` that are not among `old`, each copy counted. */
function newcomers<T>(now: readonly T[], old: readonly T[], key: (t: T) => string): T[] {
  const left = new Map<string, number>();
  for (const t of old) left.set(key(t), (left.get(key(t)) ?? 0) + 1);
  return now.filter((t) => {
    const n = left.get(key(t)) ?? 0;
    left.set(key(t), n - 1);
    return n <= 0;
  });
}

/** Tags, arrows and notes are set where there is room for them: a new place for the same words is no change. */
const isLettering = (p: Primitive): boolean => p.kind === 'text' || p.kind === 'symbol';

const wordsIn = (p: Primitive): string =>
  p.kind === 'text' ? p.content : p.kind === 'symbol' ? p.items.map(wordsIn).join('|') : p.kind;

const viewKey = (p: Primitive): string => (isLettering(p) ? wordsIn(p) : keyOf(p));

function boundsOf(flats: readonly Flat[]): Rect | undefined {
  let [x0, y0, x1, y1] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  const grow = (x: number, y: number): void => {
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  };
  for (const f of flats) {
    if (f.kind === 'path') for (const s of f.strokes) for (let i = 0; i + 1 < s.length; i += 2) grow(s[i]!, s[i + 1]!);
    if (f.kind === 'arc') {
      grow(f.x - f.r, f.y - f.r);
      grow(f.x + f.r, f.y + f.r);
    }
  }
  for (const b of textBoxes(flats)) {
    grow(b.x - b.w / 2, b.y - b.h / 2);
    grow(b.x + b.w / 2, b.y + b.h / 2);
  }
  return x1 >= x0 ? { x: x0, y: y0, w: x1 - x0, h: y1 - y0 } : undefined;
}

/** Ink of some primitives of a view, alone. */
const inkOf = (s: Sheet, view: Viewport, over: readonly Primitive[]): Rect | undefined =>
  boundsOf(flatten({ ...s, items: [], viewports: [{ ...view, items: over, over: [] }] }));

const all = (v: Viewport): readonly Primitive[] => [...v.items, ...(v.over ?? [])];

const GAP = 0.3;

const near = (a: Rect, b: Rect): boolean =>
  a.x - GAP < b.x + b.w && b.x - GAP < a.x + a.w && a.y - GAP < b.y + b.h && b.y - GAP < a.y + a.h;

const join = (a: Rect, b: Rect): Rect => {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
};

/** Rectangles joined until none is near another. */
export function clustered(rects: readonly Rect[]): Rect[] {
  const out: Rect[] = [];
  for (const r of rects) {
    let grown = r;
    for (let k = out.findIndex((o) => near(o, grown)); k >= 0; k = out.findIndex((o) => near(o, grown)))
      grown = join(grown, out.splice(k, 1)[0]!);
    out.push(grown);
  }
  return out;
}

function compared(old: Sheet, now: Sheet): { readonly rects: Rect[]; readonly marks: Set<string> } {
  const rects: Rect[] = [];
  const marks = new Set<string>();
  for (const view of now.viewports) {
    const before = old.viewports.find((v) => v.name === view.name);
    const mine = all(view);
    const theirs = before ? all(before) : [];
    // What is gone is clouded where it was, in the view as it is now.
    for (const p of [...newcomers(mine, theirs, viewKey), ...newcomers(theirs, mine, viewKey)]) {
      const r = inkOf(now, view, [p]);
      if (r) rects.push(r);
      if (p.mark !== undefined) marks.add(p.mark);
    }
  }
  for (const b of newcomers(textsOf(now), textsOf(old), (t) => t.content)) rects.push(rectOf(b));
  return { rects, marks };
}

/** Lettering that stands on paper, not in a view. */
const textsOf = (s: Sheet): readonly TextBox[] =>
  textBoxes(flatten({ ...s, viewports: [] })).filter((b) => !FORM.has(b.layer));

const rectOf = (b: TextBox): Rect => ({ x: b.x - b.w / 2, y: b.y - b.h / 2, w: b.w, h: b.h });

/** Running text flows on from sheet to sheet: only lines that no old sheet of it has are new. */
const runsOn = (s: Sheet): boolean => s.file === 'calculations';

function newLines(before: readonly Sheet[], after: readonly Sheet[]): Map<string, Rect[]> {
  const lines = (sheets: readonly Sheet[]) =>
    sheets.filter(runsOn).flatMap((s) => textsOf(s).map((b) => ({ id: s.id, b })));
  const out = new Map<string, Rect[]>();
  for (const { id, b } of newcomers(lines(after), lines(before), (l) => l.b.content))
    out.set(id, [...(out.get(id) ?? []), rectOf(b)]);
  return out;
}

/** Sheets of the new set that show something else than before, those added, and those no longer in it. */
export function changedSheets(before: readonly Sheet[], after: readonly Sheet[]): SheetChange[] {
  const out: SheetChange[] = [];
  const lines = newLines(before, after);
  const none = { clouds: [], bars: [], marks: [] };
  for (const now of after) {
    const old = before.find((s) => s.id === now.id);
    const { id: sheet, title } = now;
    const bars = lines.get(sheet) ?? [];
    const { rects, marks } = old && !runsOn(now) ? compared(old, now) : { rects: [], marks: new Set<string>() };
    if (!old) out.push({ sheet, title, how: 'added', ...none, bars });
    else if (rects.length + bars.length > 0)
      out.push({ sheet, title, how: 'changed', clouds: clustered(rects), bars, marks: [...marks].sort() });
  }
  for (const old of before)
    if (!after.some((s) => s.id === old.id)) out.push({ sheet: old.id, title: old.title, how: 'removed', ...none });
  return out;
}
