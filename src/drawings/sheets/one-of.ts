/** One sheet by itself, of the kinds handed in: nothing else of the set is loaded for it. */
import { titleBlock } from '../annotate/index.js';
import type { Sheet } from '../ir/index.js';
import { explainOnce, setData, sheetContext } from './context.js';
import { type DrawingInput, idAt, SHEET_IDS, type SheetContext, type SheetKind, type SheetKindId } from './contract.js';

/** What the title block and the cover say of the set round the sheet; taken from the last whole drawing of it. */
export interface SetPlace {
  readonly index: SheetContext['index'];
}

export type SheetKinds = Readonly<Partial<Record<SheetKindId, SheetKind>>>;

/**
 * The sheet with that id as `drawSet` would draw it, given the list of the set; undefined when none of the kinds draws one
 * with that id in this project. Kinds that list the set need all of it and are left out. Of a kind that fills several sheets
 * all are drawn, and the one asked for is returned.
 */
export function drawOneOf(kinds: SheetKinds, given: DrawingInput, id: string, { index }: SetPlace): Sheet | undefined {
  const input = explainOnce(given);
  const size = input.project.job.sheetSize;
  const ctx: SheetContext = { ...sheetContext(input, size), index };
  // Ids of one kind count up from its own: the kind is the one with the greatest id that is not past the one asked for.
  const near = (Object.keys(kinds) as SheetKindId[])
    .filter((k) => SHEET_IDS[k][0] === id[0] && SHEET_IDS[k] <= id && !kinds[k]!.lists && kinds[k]!.needed(input))
    .sort((a, b) => (SHEET_IDS[a] < SHEET_IDS[b] ? 1 : -1));
  for (const kind of near) {
    const bodies = kinds[kind]!.draw(ctx);
    const n = bodies.findIndex((_, i) => idAt(SHEET_IDS[kind], i) === id);
    const body = bodies[n];
    if (!body) continue;
    const number = index.findIndex((s) => s.id === id) + 1;
    const at = { id, title: body.title, scaleNote: body.scaleNote, number, of: index.length };
    return {
      id,
      title: body.title,
      scaleNote: body.scaleNote,
      discipline: kinds[kind]!.discipline,
      size,
      viewports: body.viewports,
      items: [...body.items, ...titleBlock(size, setData(input), at)],
    };
  }
  return undefined;
}
