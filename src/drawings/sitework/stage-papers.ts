/** Stage cards on letter pages: approvals, build order, then one card a page with boxes to tick. */
import type { InspectedItem, Project } from '../../project/model.js';
import { type ApprovalStep, type Change, INACTIVE_SOURCE, OFFICES } from '../../sitework/approvals/index.js';
import type { Sequence } from '../../sitework/sequence/index.js';
import type { StageCard } from '../../sitework/stages/index.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { Sheet } from '../ir/index.js';
import { PAPER_WIDTH, type Paper, papersOf } from '../papers/index.js';
import { BAR_KEY, barChart } from './bar-chart.js';
import { tickBlock, writeLines } from './forms.js';
import { paperData } from './stake-papers.js';

export interface StagesInput {
  readonly project: Project;
  readonly cards: readonly StageCard[];
  readonly sequence: Sequence;
  readonly approvals: readonly ApprovalStep[];
  /** Against what was approved, where an approved project is at hand. */
  readonly changes?: readonly Change[] | undefined;
  /** False marks every page as preliminary. */
  readonly issuable?: boolean | undefined;
}

const STATES: Readonly<Record<ApprovalStep['state'], string>> = {
  needed: 'needed',
  applied: 'applied for',
  granted: 'granted',
  refused: 'REFUSED',
  'not-listed': 'not in the log',
};

const clockWords = (s: ApprovalStep): string => {
  if (!s.clock) return '–';
  const { state, lapses, since, daysLeft } = s.clock;
  if (state === 'finished') return 'finished';
  const left =
    daysLeft === undefined ? '' : state === 'lapsed' ? `, LAPSED ${-daysLeft} days ago` : `, ${daysLeft} days left`;
  return `lapses ${lapses} without work or a passed inspection after ${since}${left}`;
};

function approvalsPaper(input: StagesInput): Paper {
  const { changes } = input;
  return {
    title: 'Approvals and the clock',
    sub: 'In the order to ask. Work starts when the permit is posted and the stamped set is on the site.',
    blocks: [
      {
        kind: 'table',
        columns: [
          { head: 'Office' },
          { head: 'State' },
          { head: 'Day' },
          { head: 'Waits for', max: 1.4 },
          { head: 'Clock', grow: true },
        ],
        rows: input.approvals.map(
          (s): TableRow => [
            s.applies === 'ask' ? `${s.title} (if it applies: ask)` : s.title,
            STATES[s.state],
            s.date || '–',
            s.waitsFor.join(', ') || '–',
            clockWords(s),
          ],
        ),
      },
      { kind: 'para', text: `Clock: ${INACTIVE_SOURCE}. The office’s own rule decides; enter it in the log.` },
      ...input.approvals.flatMap((s): Block[] => [
        { kind: 'heading', text: s.title },
        { kind: 'para', text: `${s.order} (${s.source})` },
        { kind: 'bullets', items: s.needs },
      ]),
      ...(changes === undefined ? [] : changesBlocks(changes)),
    ],
  };
}

function changesBlocks(changes: readonly Change[]): Block[] {
  const told = changes.filter((c) => c.reopens.length > 0);
  return [
    { kind: 'heading', text: 'Changed since the approved project' },
    told.length === 0
      ? { kind: 'para', text: 'Nothing that an office approved.' }
      : {
          kind: 'table',
          columns: [{ head: 'Where', max: 2.6 }, { head: 'Was' }, { head: 'Now' }, { head: 'Asks again', grow: true }],
          rows: told.map(
            (c): TableRow => [c.path, c.was, c.now, `${c.reopens.map((k) => OFFICES[k].title).join(', ')}: ${c.why}`],
          ),
        },
    {
      kind: 'para',
      text: 'A change is asked for before it is built: cloud it on the sheet, send it with a letter, wait for the answer.',
    },
  ];
}

function sequencePaper(s: Sequence): Paper {
  return {
    title: 'Build order',
    sub: `${s.days} days from the first call to the final, waits included, if nothing goes wrong.`,
    blocks: [
      barChart(s),
      { kind: 'para', text: BAR_KEY },
      {
        kind: 'table',
        title: 'Pieces that one person does not lift',
        columns: [
          { head: 'Piece' },
          { head: 'Marks' },
          { head: 'Count', align: 'right' },
          { head: 'Weight, heaviest', align: 'right' },
          { head: 'Lift', grow: true },
        ],
        rows: s.heavy.map(
          (h): TableRow => [
            h.what,
            h.marks.join(', ') || '–',
            h.count > 0 ? String(h.count) : '–',
            `${h.pounds} lb`,
            h.lift,
          ],
        ),
      },
      { kind: 'para', text: `${s.heavySource}. Weights from the sections’ own densities; trusses as ordered.` },
      { kind: 'heading', text: 'Cautions' },
      { kind: 'bullets', items: s.cautions },
      { kind: 'gap' },
      {
        kind: 'table',
        title: 'Tasks',
        columns: [
          { head: 'Task' },
          { head: 'Start', align: 'right' },
          { head: 'Days', align: 'right' },
          { head: 'May slip', align: 'right' },
          { head: 'Waits, and how long it takes by', grow: true },
        ],
        rows: s.bars.map(
          (b): TableRow => [
            b.title,
            `day ${b.start}`,
            String(b.days),
            b.critical ? 'no' : String(b.slack),
            [...b.after.filter((w) => w.days > 0).map((w) => `${w.days} days: ${w.why}`), b.basis].join('; '),
          ],
        ),
      },
    ],
  };
}

const itemWords = (i: InspectedItem): string =>
  [i.measured, i.note, i.photo && `picture ${i.photo}`].filter((t) => t !== '').join('; ');

/** Lines that the log has and this card has not: nothing that was written down is lost. */
function strangers(c: StageCard): Block[] {
  const known = new Set(c.items.map((i) => i.id));
  const rest = c.log.flatMap((l) => l.items).filter((i) => !known.has(i.item));
  return rest.map((i) =>
    tickBlock({ text: `Also in the log: ${i.item}`, done: i.done, written: itemWords(i) }, PAPER_WIDTH),
  );
}

function cardPaper(c: StageCard, number: number, of: number): Paper {
  const filled = new Map(c.log.flatMap((l) => l.items).map((i) => [i.item, i]));
  const visits: Block[] =
    c.log.length === 0
      ? []
      : [
          {
            kind: 'table',
            title: 'Visits',
            columns: [{ head: 'Day' }, { head: 'Result' }, { head: 'By' }, { head: 'Remark', grow: true }],
            rows: c.log.map((l): TableRow => [l.date || 'not called', l.result, l.by || '–', l.note || '–']),
          },
        ];
  const tables: Block[] = c.tables.map((t) => ({
    kind: 'table',
    title: t.title,
    columns: t.heads.map((head, i) => ({ head, ...(i === t.heads.length - 1 ? { grow: true } : { max: 2.2 }) })),
    rows: t.rows,
  }));
  return {
    title: `Stage ${number} of ${of}: ${c.title}`,
    sub: c.when,
    blocks: [
      ...c.cautions.map(
        (text, i): Block => ({ kind: 'para', face: 'bold', text: i === 0 ? `CAUTION  ${text}` : text }),
      ),
      ...tables,
      { kind: 'heading', text: 'Tick each before you call' },
      ...c.items.map((i) => {
        const f = filled.get(i.id);
        return tickBlock(
          { text: i.text, done: f?.done ?? false, measure: i.measure, written: f ? itemWords(f) : '' },
          PAPER_WIDTH,
        );
      }),
      ...strangers(c),
      { kind: 'para', text: `At hand: ${c.atHand.join('; ')}.` },
      { kind: 'heading', text: 'Usually failed for' },
      { kind: 'bullets', items: c.failures.map((f) => `${f.text} (${f.source})`) },
      ...visits,
      {
        kind: 'heading',
        text: c.looks === 'inspector' ? 'Inspector’s word' : 'Looked at by the owner; some offices want to see it',
      },
      writeLines([['Day', 'Result', 'Name or number'], ['Remark'], ['Pictures']]),
    ],
  };
}

/** Letter pages of the whole site file. */
export function stageSheets(input: StagesInput): Sheet[] {
  const papers = [
    approvalsPaper(input),
    sequencePaper(input.sequence),
    ...input.cards.map((c, i) => cardPaper(c, i + 1, input.cards.length)),
  ];
  return papersOf(papers, paperData(input.project, 'SITE', input.issuable));
}
