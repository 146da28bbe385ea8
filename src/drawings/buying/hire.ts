/** Papers for hiring: a scope and bid form a trade, bids side by side, payments, and what to have in hand. */
import { type Buy, CHECKLIST, DEPOSITS, LAW, type Scope, SOURCES, strayBids } from '../../takeoff/index.js';
import type { Block } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';
import { money, percent } from './words.js';

function scopePaper(b: Buy, s: Scope): Paper {
  return {
    title: `Scope of work: ${s.title}`,
    sub: `${b.project.job.title}. Attach the stamped drawings and the take-off. One scope for every bidder`,
    blocks: [
      {
        kind: 'para',
        text: 'Answer every line: included, excluded, or what you offer in its place, with its price. Where drawings and this scope differ, ask; the stamped drawings govern. Nothing here lets anyone leave out what the code or the inspector asks for.',
      },
      {
        kind: 'table',
        columns: [
          { head: 'Line', face: 'condensed-bold', width: 0.5 },
          { head: 'Work', grow: true },
          { head: 'Quantity', width: 1.3 },
          { head: 'Incl.', width: 0.5 },
          { head: 'Excl.', width: 0.52 },
          { head: 'Price', width: 0.85 },
        ],
        rows: s.lines.map((l) => [l.id, l.text, l.quantity, '', '', '']),
      },
      { kind: 'heading', text: 'Questions to every bidder' },
      { kind: 'numbered', items: s.questions },
      { kind: 'heading', text: 'Bid' },
      {
        kind: 'pairs',
        rows: [
          'Bidder and license number',
          'Sum of the bid',
          'Asked before work begins',
          'Begins, and days of work',
          'Bid holds until',
          'Signed, date',
        ].map((name) => ({ name, value: ' ' })),
      },
      ...paymentBlocks(b, s),
    ],
  };
}

function paymentBlocks(b: Buy, s: Scope): Block[] {
  const bids = b.bids.find((c) => c.trade === s.trade)?.standings.filter((x) => x.whole) ?? [];
  const [least] = [...bids].sort((x, y) => x.bid.total - y.bid.total);
  return [
    {
      kind: 'table',
      title: 'Payments, each tied to what has been passed',
      columns: [
        { head: 'When', width: 1.7 },
        { head: 'Share', align: 'right', width: 0.65 },
        ...(least ? [{ head: `Of ${money(least.bid.total)}`, align: 'right' as const, width: 1.05 }] : []),
        { head: 'Only with', grow: true },
      ],
      rows: s.payments.map((p) => [
        p.when,
        `${p.percent} %`,
        ...(least ? [money((p.percent * least.bid.total) / 100)] : []),
        p.proof,
      ]),
    },
  ];
}

/** The first words of a line: the scope holds the rest. */
const shortened = (text: string): string =>
  text.length <= 70 ? text : `${text.slice(0, 68).replace(/[\s,;.:]+\S*$/, '')} …`;

function bidsPaper(b: Buy): Paper | undefined {
  const answered = b.bids.filter((c) => c.standings.length > 0);
  const strays = strayBids(b.scopes, b.buying.bids);
  if (answered.length + strays.length === 0) return undefined;
  const odd = [
    ...strays.map((x) => `${x.bidder} bids on "${x.trade}", for which there is no scope`),
    ...answered.flatMap((c) =>
      c.standings
        .filter((s) => s.stray.length > 0)
        .map((s) => `${s.bid.bidder} answers ${s.stray.join(', ')}, which the scope does not have`),
    ),
  ];
  return {
    title: 'Bids compared',
    sub: 'Line by line on one scope',
    blocks: [
      ...(odd.length > 0 ? [{ kind: 'para' as const, text: `${odd.join('; ')}. Was it an older scope?` }] : []),
      ...answered.flatMap((c): Block[] => {
        const scope = b.scopes.find((s) => s.trade === c.trade)!;
        return [
          { kind: 'heading', text: scope.title },
          { kind: 'para', text: c.finding, keep: true },
          {
            kind: 'table',
            columns: [
              { head: 'Line', width: 0.5 },
              { head: 'Work', grow: true },
              ...c.standings.map((s) => ({ head: s.bid.bidder, width: Math.min(1.5, 3.9 / c.standings.length) })),
            ],
            rows: [
              ...scope.lines.map((l) => [
                l.id,
                shortened(l.text),
                ...c.standings.map((s) => {
                  const said = s.bid.lines.find((x) => x.line === l.id);
                  if (!said) return { text: 'says nothing', face: 'condensed-bold' as const };
                  const price = said.price === undefined ? '' : ` ${money(said.price)}`;
                  if (said.says === 'included') return `included${price}`;
                  return {
                    text: `${said.says.toUpperCase()}${price}${said.note ? `: ${said.note}` : ''}`,
                    face: 'condensed-bold' as const,
                  };
                }),
              ]),
              [
                '',
                'Sum of the bid',
                ...c.standings.map((s) => ({ text: money(s.bid.total), face: 'condensed-bold' as const })),
              ],
              [
                '',
                'Asked before work begins',
                ...c.standings.map((s) => `${money(s.bid.deposit)}, ${percent(s.deposit)}`),
              ],
              [
                '',
                'Missing or different lines',
                ...c.standings.map((s) => String(s.excluded.length + s.silent.length + s.different.length)),
              ],
            ],
          },
        ];
      }),
    ],
  };
}

function checklistPaper(): Paper {
  return {
    title: 'Hiring: what to have in hand',
    sub: 'License, insurance, releases, payments',
    blocks: [
      { kind: 'para', text: LAW, face: 'bold' },
      { kind: 'heading', text: 'Deposits' },
      { kind: 'bullets', items: DEPOSITS },
      ...CHECKLIST.flatMap((c): Block[] => [
        { kind: 'heading', text: c.title },
        {
          kind: 'table',
          columns: [
            { head: 'Done', width: 0.55 },
            { head: 'What', grow: true },
            { head: 'Date, by', width: 1.3 },
          ],
          rows: c.items.map((i) => ['', i, '']),
        },
      ]),
      { kind: 'para', text: SOURCES },
    ],
  };
}

export function hirePapers(b: Buy): Paper[] {
  const bids = bidsPaper(b);
  return [...b.scopes.map((s) => scopePaper(b, s)), ...(bids ? [bids] : []), checklistPaper()];
}
