/** The set: every needed sheet drawn, framed, numbered, stamped with its status, and listed on the cover. */
import { formatLength } from '../../base/quantity/index.js';
import { piecesOf } from '../../structure/pieces/index.js';
import { drawingArea, type SetData, styleFor, titleBlock } from '../annotate/index.js';
import type { Sheet, SheetSize } from '../ir/index.js';
import { type DrawingInput, idAt, SHEET_IDS, type SheetBody, type SheetContext, type SheetKindId } from './contract.js';
import { SHEETS } from './registry.js';

export const SHEET_SIZE_NAMES = ['ARCH D', 'ARCH C', 'ANSI B', 'ANSI D'] as const satisfies readonly SheetSize[];

const CAUTION = 'Prepared with a program that certifies nothing. The authority having jurisdiction decides.';

/** What all sheets of a set say of the job. */
export function setData(input: DrawingInput): SetData {
  const { job, log } = input.project;
  return {
    project: job.title,
    address: job.address.split(', '),
    owner: job.owner,
    parcel: job.parcel,
    preparedBy: [job.preparedBy],
    date: job.date,
    revisions: log.revisions.map((r) => ({ mark: r.number, date: r.date, text: r.note })),
    status: input.verdict.issuable ? { kind: 'issued', purpose: 'For permit' } : { kind: 'preliminary' },
    cautions: [CAUTION],
  };
}

/** Several tables of a set print the steps of the same result: they are worked out once a set. */
function explainOnce(input: DrawingInput): DrawingInput {
  const known = new Map<string, ReturnType<DrawingInput['explain']>>();
  const explain = (id: string): ReturnType<DrawingInput['explain']> => {
    const lines = known.get(id) ?? input.explain(id);
    known.set(id, lines);
    return lines;
  };
  return { ...input, explain };
}

/** What kinds draw from at one sheet size; the index is empty until the set is known. */
export const sheetContext = (input: DrawingInput, size: SheetSize): SheetContext => ({
  input,
  size,
  style: styleFor(size),
  area: drawingArea(size),
  len: (inches: number) => formatLength(inches, { units: input.project.job.units, glyphs: true }),
  pieces: piecesOf(input.structure, input.project),
  index: [],
});

/** Draws the whole set at the project's sheet size, or at another one. Pure: the same input gives the same sheets. */
export function drawSet(given: DrawingInput, size: SheetSize = given.project.job.sheetSize): Sheet[] {
  const input = explainOnce(given);
  const blank = sheetContext(input, size);
  const drawn = new Map<SheetKindId, readonly SheetBody[]>();
  const kinds = (Object.keys(SHEETS) as SheetKindId[]).filter((k) => SHEETS[k].needed(input));
  for (const k of kinds) if (k !== 'cover') drawn.set(k, SHEETS[k].draw(blank));
  // The cover lists the set, itself included; it is drawn once to learn how many sheets it fills, then with the list.
  const listing = (covers: readonly SheetBody[]) =>
    kinds.flatMap((k) =>
      (k === 'cover' ? covers : drawn.get(k)!).map((b, i) => ({ id: idAt(SHEET_IDS[k], i), title: b.title })),
    );
  let covers: readonly SheetBody[] = [{ title: 'Cover', scaleNote: '', viewports: [], items: [] }];
  for (let turn = 0; turn < 2; turn++) covers = SHEETS.cover.draw({ ...blank, index: listing(covers) });
  drawn.set('cover', covers);
  const set = setData(input);
  const all = kinds.flatMap((k) => drawn.get(k)!.map((body, i) => ({ kind: k, body, id: idAt(SHEET_IDS[k], i) })));
  return all.map(({ kind, body, id }, n) => ({
    id,
    title: body.title,
    discipline: SHEETS[kind].discipline,
    size,
    viewports: body.viewports,
    scaleNote: body.scaleNote,
    items: [
      ...body.items,
      ...titleBlock(size, set, { id, title: body.title, scaleNote: body.scaleNote, number: n + 1, of: all.length }),
    ],
  }));
}
