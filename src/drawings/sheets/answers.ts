/** The answer letter as sheets, handed in beside the set: every comment of the reviewers with the sheet and place where it was met. */
import { answersOf, whereText } from '../../report/answers.js';
import type { Sheet, SheetSize } from '../ir/index.js';
import type { DrawingInput, SheetBody, SheetContext } from './contract.js';
import { flowSheets } from './parts.js';
import { drawParts } from './set.js';

type Known = readonly { readonly id: string; readonly title: string }[];

function draw(ctx: SheetContext, set: Known): SheetBody[] {
  const { style } = ctx;
  const answers = answersOf(ctx.input.project.submittal?.comments ?? [], set);
  return flowSheets(ctx, {
    title: 'Answer to review comments',
    columns: 1,
    layer: 'G-ANNO-SCHD',
    blocks: [
      { kind: 'heading', text: 'Answer to review comments' },
      {
        kind: 'para',
        text: 'Each comment is answered below with the sheet and place that shows it now. Changes on the sheets are clouded and carry the number of their revision.',
      },
      {
        kind: 'table',
        columns: [
          { head: 'No.' },
          { head: 'From', max: style.note * 22 },
          { head: 'Comment', grow: true },
          { head: 'Answer', max: ctx.area.w * 0.34 },
          { head: 'Sheet and place', max: ctx.area.w * 0.22 },
        ],
        rows: answers.map((a) => [
          a.comment.number,
          [a.comment.from, a.comment.date].filter(Boolean).join(', ') || '–',
          a.comment.text,
          a.comment.answer || 'none yet',
          `${whereText(a, set)}${a.open ? ` – STILL OPEN: ${a.open}` : ''}`,
        ]),
      },
    ],
  });
}

/** The letter to a set of sheets, 11 by 17 in unless asked otherwise; none when nothing was commented. */
export const drawAnswers = (input: DrawingInput, set: Known, size: SheetSize = 'ANSI B'): Sheet[] =>
  drawParts(
    input,
    size,
    [
      {
        id: 'G-901',
        kind: {
          title: 'Answer to review comments',
          discipline: 'G',
          needed: ({ project }) => (project.submittal?.comments.length ?? 0) > 0,
          draw: (ctx) => draw(ctx, set),
        },
      },
    ],
    'Answer to review',
  );
