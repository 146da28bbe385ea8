/** The set: every needed sheet drawn, framed, numbered, stamped with its status, and listed on the cover. */
import { titleBlock } from '../annotate/index.js';
import type { Sheet, SheetSize } from '../ir/index.js';
import { explainOnce, setData, sheetContext } from './context.js';
import { type DrawingInput, idsOf, SHEET_IDS, type SheetBody, type SheetKind, type SheetKindId } from './contract.js';
import { SHEETS } from './registry.js';

export const SHEET_SIZE_NAMES = ['ARCH D', 'ARCH C', 'ANSI B', 'ANSI D'] as const satisfies readonly SheetSize[];

/** One kind of sheet in a set, with the id of its first sheet. */
export interface SetPart {
  readonly id: string;
  readonly kind: SheetKind;
}

/** The parts of the permit set, in order. */
export const PERMIT_SET: readonly SetPart[] = (Object.keys(SHEETS) as SheetKindId[]).map((k) => ({
  id: SHEET_IDS[k],
  kind: SHEETS[k],
}));

/** Draws the whole set at the project's sheet size, or at another one. Pure: the same input gives the same sheets. */
export const drawSet = (given: DrawingInput, size: SheetSize = given.project.job.sheetSize): Sheet[] =>
  drawParts(given, size, PERMIT_SET);

/**
 * Draws, frames and numbers the parts of a set that are needed; parts that list the set see all of it.
 * @param purpose what an issuable set is issued for
 */
export function drawParts(given: DrawingInput, size: SheetSize, parts: readonly SetPart[], purpose?: string): Sheet[] {
  const input = explainOnce(given);
  const blank = sheetContext(input, size);
  const needed = parts.filter((p) => p.kind.needed(input));
  const drawn = new Map<SetPart, readonly SheetBody[]>();
  for (const p of needed) if (!p.kind.lists) drawn.set(p, p.kind.draw(blank));
  const unlisted: SheetBody = { title: '', scaleNote: '', viewports: [], items: [] };
  // One object for one body, so that what is worked out for a sheet is worked out once.
  const made = new Map<SheetBody, Sheet>();
  const sheetOf = ({ kind }: SetPart, body: SheetBody, id: string): Sheet => {
    const known = made.get(body);
    const { discipline, file } = kind;
    const sheet = known?.id === id ? known : { ...body, id, discipline, size, ...(file && { file }) };
    if (body !== unlisted) made.set(body, sheet);
    return sheet;
  };
  const sheetsOf = (): Sheet[] => {
    const all = needed.flatMap((p) => (drawn.get(p) ?? [unlisted]).map((body) => ({ part: p, body })));
    const ids = idsOf(all.map((s) => s.part.id));
    return all.map(({ part, body }, i) => sheetOf(part, body, ids[i]!));
  };
  // A part that lists the set is drawn once to learn how many sheets it fills, then with the list.
  for (let turn = 0; turn < 2; turn++)
    for (const p of needed)
      if (p.kind.lists) {
        const sheets = sheetsOf();
        drawn.set(p, p.kind.draw({ ...blank, index: sheets.map(({ id, title }) => ({ id, title })), drawn: sheets }));
      }
  const set = setData(input, purpose);
  return sheetsOf().map((s, n, all) => ({
    ...s,
    items: [
      ...s.items,
      ...titleBlock(size, set, { id: s.id, title: s.title, scaleNote: s.scaleNote, number: n + 1, of: all.length }),
    ],
  }));
}
