/** What the sheets of a set have in common: what they say of the job, and what their kinds draw from. */
import { formatLength } from '../../base/quantity/index.js';
import { piecesOf } from '../../structure/pieces/index.js';
import { drawingArea, type SetData, styleFor } from '../annotate/index.js';
import type { SheetSize } from '../ir/index.js';
import type { DrawingInput, SheetContext } from './contract.js';

const CAUTION = 'Prepared with a program that certifies nothing. The authority having jurisdiction decides.';

/** What all sheets of a set say of the job. */
export function setData(input: DrawingInput, purpose = 'For permit'): SetData {
  const { job, log } = input.project;
  return {
    project: job.title,
    address: job.address.split(', '),
    owner: job.owner,
    parcel: job.parcel,
    preparedBy: [job.preparedBy],
    date: job.date,
    revisions: log.revisions.map((r) => ({ mark: r.number, date: r.date, text: r.note })),
    status: input.verdict.issuable ? { kind: 'issued', purpose } : { kind: 'preliminary' },
    cautions: [CAUTION],
  };
}

/** Several tables of a set print the steps of the same result: they are worked out once a set. */
export function explainOnce(input: DrawingInput): DrawingInput {
  const known = new Map<string, ReturnType<DrawingInput['explain']>>();
  const explain = (id: string): ReturnType<DrawingInput['explain']> => {
    const lines = known.get(id) ?? input.explain(id);
    known.set(id, lines);
    return lines;
  };
  return { ...input, explain };
}

/** What kinds draw from at one sheet size; index and sheets are empty until the set is known. */
export const sheetContext = (input: DrawingInput, size: SheetSize): SheetContext => ({
  input,
  size,
  style: styleFor(size),
  area: drawingArea(size),
  len: (inches: number) => formatLength(inches, { units: input.project.job.units, glyphs: true }),
  pieces: piecesOf(input.structure, input.project),
  index: [],
  drawn: [],
});
