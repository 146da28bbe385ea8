/**
 * Truss papers: the page that the plant's sealed sheets go behind. What was ordered beside what the sealed sheets say, what is
 * deferred and by whose leave, what to compare on arrival, and the space for the note of conformity.
 */
import { trussOrders } from '../../report/truss-order.js';
import { type Block, columnsFlow, heightOf, measure, pencil, splitColumns } from '../annotate/index.js';
import type { Primitive, Rect } from '../ir/index.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { evened, flowOn } from './parts.js';
import { comparedRows } from './truss-compared.js';
import { deferredBy, paperState, papersComplete } from './truss-words.js';

/** An empty frame with its words, to write in by hand. */
function space(ctx: SheetContext, lines: readonly string[], height: number): Block {
  const h = ctx.style.note;
  return {
    kind: 'drawing',
    height,
    draw: (at, width) => {
      const p = pencil('G-ANNO-NOTE', 'symbol');
      const step = height / (lines.length + 0.5);
      return [
        p.shape(
          [
            [at.x, at.y],
            [at.x + width, at.y],
            [at.x + width, at.y - height],
            [at.x, at.y - height],
          ],
          'symbol',
        ),
        ...lines.flatMap((t, i) => {
          const y = at.y - (i + 1) * step;
          return [
            p.text(at.x + h, y, t, h),
            p.line(at.x + width * 0.34, y - 0.3 * h, at.x + width - h, y - 0.3 * h, 'rule'),
          ];
        }),
      ];
    },
  };
}

function draw(ctx: SheetContext): SheetBody[] {
  const { input, area, style } = ctx;
  const papers = input.project.cover.trussPapers ?? [];
  const by = deferredBy(input);
  const done = papersComplete(input);
  const blocks: Block[] = [
    {
      kind: 'heading',
      text: done ? 'Sealed truss sheets belong behind this page' : 'Sealed truss sheets to come stand behind this page',
    },
    {
      kind: 'para',
      text: `State: ${paperState(input)}.`,
    },
    {
      kind: 'bullets',
      items: [
        'Deferred or here, the trusses are designed and sealed by the plant’s engineer; profile and webs in this set are for the order and for our own analysis.',
        ...(done
          ? []
          : [
              by
                ? `Leave to defer: ${by}. It is named on the cover; spacing, slopes, bearings and loads are on the framing plan, sheet ${SHEET_IDS['framing-plan']}, and below.`
                : 'Ask the office before submittal whether truss papers may be deferred: without its word the set is not complete.',
            ]),
        'No truss is set before its sealed sheet is approved and on site. Labels on the trusses must be those of the approved layout.',
        'A seal covers the truss, not whether its loads fit this building: whoever prepared this set compares them and signs below.',
      ],
    },
    ...trussOrders(input).flatMap((o): Block[] => [
      {
        kind: 'table',
        title: `${o.mark}${o.gableEnd ? ', gable end' : ''}: ordered and sealed`,
        columns: [
          { head: 'What', max: 18 * style.note },
          { head: 'Ordered by this set', max: 24 * style.note },
          { head: 'Sealed sheet says', grow: true },
          { head: 'Agrees', max: 13 * style.note },
        ],
        rows: comparedRows(
          ctx,
          o,
          papers.find((p) => p.mark === o.mark),
        ),
      },
    ]),
    { kind: 'heading', text: 'Compare when the papers, and when the trusses, arrive' },
    {
      kind: 'numbered',
      items: [
        'Job, address, code and seal on every sheet; layout of the plant shows the same marks, spacing and direction as the framing plan.',
        'Loads by chord, wind and load durations are not less than ordered; open below said in words.',
        'Each reaction with its direction against the joint plan’s loads; a larger one is worked through to beam, post and footing before work goes on.',
        'Bearings: places and widths; heel and overhang; same top plane as the rest of the roof.',
        'Plies and the fasteners between them; connectors the sheet names.',
        `Lasting bracing of webs, bottom chords and gable ends: drawn in the bracing detail, sheet ${SHEET_IDS['joint-details']} on.`,
        'Damage on delivery: no repair without the plant’s written one, handed to the office.',
      ],
    },
    { kind: 'heading', text: 'Note of conformity' },
    {
      kind: 'para',
      text: 'The truss papers named here were reviewed and conform with the loads, layout and bearings of this set, except as written here:',
      keep: true,
    },
    space(ctx, ['Papers, date', 'Exceptions', 'Reviewed by, date', 'Approved by the office, date'], 15 * style.note),
  ];
  const marks = trussOrders(input).map((o) => o.mark);
  const layer = 'G-ANNO-NOTE';
  const columns = splitColumns(area, area.w > 24 ? [1, 1, 1] : [1, 1], style.gutter);
  const slugs = measure(blocks, columns[0]!.w, style, layer);
  const boxes = spaces(area, columns[0]!);
  // Letter-size sheets fit beside the words of a large page.
  if (boxes.length >= marks.length && heightOf(slugs) <= area.h)
    return [
      {
        title: TITLE,
        scaleNote: 'No scale',
        viewports: [],
        items: [...columnsFlow(slugs, [columns[0]!]).items, ...marks.flatMap((m, i) => frame(ctx, boxes[i]!, m, done))],
      },
    ];
  return flowOn(slugs, evened(slugs, columns), `${TITLE}, continued`).map((b, i) =>
    i === 0 ? { ...b, title: TITLE } : b,
  );
}

const TITLE = 'Truss papers';
/** A sealed sheet as plants print it, upright letter, inches. */
const LETTER = { w: 8.5, h: 11 } as const;

/** Places for sealed sheets to the right of the words. */
function spaces(area: Rect, words: Rect): Rect[] {
  const left = words.x + words.w;
  const across = Math.floor((area.x + area.w - left) / (LETTER.w + 0.5));
  const down = Math.floor(area.h / (LETTER.h + 0.25));
  if (across < 1 || down < 1) return [];
  const gap = (area.x + area.w - left - across * LETTER.w) / across;
  return Array.from({ length: across * down }, (_, i) => ({
    x: left + gap + (i % across) * (LETTER.w + gap),
    y: area.y + area.h - LETTER.h - Math.floor(i / across) * (LETTER.h + 0.25),
    ...LETTER,
  }));
}

function frame({ style }: SheetContext, r: Rect, mark: string, done: boolean): Primitive[] {
  const p = pencil('G-ANNO-NOTE', 'hidden');
  return [
    p.shape(
      [
        [r.x, r.y],
        [r.x + r.w, r.y],
        [r.x + r.w, r.y + r.h],
        [r.x, r.y + r.h],
      ],
      'hidden',
    ),
    p.text(r.x + r.w / 2, r.y + r.h / 2, `Place of the sealed sheet of ${mark}, letter size`, style.heading, {
      align: 'center',
      face: 'bold',
    }),
    p.text(
      r.x + r.w / 2,
      r.y + r.h / 2 - 2.4 * style.note,
      done ? 'attach a copy here or behind this page' : 'to be attached before trusses are set',
      style.note,
      { align: 'center' },
    ),
  ];
}

export const trussPapers: SheetKind = {
  title: 'Truss papers',
  discipline: 'S',
  needed: (i) => i.structure.members.some((m) => m.truss),
  draw,
};
