/** The take-off by phase: net, waste, what to buy, for what; then how every line is counted. */
import { type Buy, type Line, PHASE_NAMES, PHASES } from '../../takeoff/index.js';
import type { Block } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';
import { number, percent, ranges, sold } from './words.js';

const waste = (l: Line): string => (l.waste.fraction < 5e-4 ? '–' : percent(l.waste.fraction));

function phaseBlocks(b: Buy): Block[] {
  return PHASES.flatMap((phase): Block[] => {
    const lines = b.takeoff.lines.filter((l) => l.phase === phase);
    if (lines.length === 0) return [];
    return [
      {
        kind: 'table',
        title: PHASE_NAMES[phase],
        columns: [
          { head: 'Item', grow: true },
          { head: 'Net', align: 'right', width: 0.95 },
          { head: 'Waste', align: 'right', width: 0.72 },
          { head: 'Buy', align: 'right', face: 'condensed-bold', width: 1.12 },
          { head: 'For', width: 1.25 },
        ],
        rows: lines.map((l) => [
          l.item,
          `${number(l.net)} ${l.unit === 'each' ? '' : l.unit}`.trim(),
          waste(l),
          sold(l.buy.quantity, l.buy.unit),
          ranges(l.serves),
        ]),
      },
    ];
  });
}

const sentence = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}.`;

/** Lines with the same rule, waste and note stand together. */
function ruleBlocks(b: Buy): Block[] {
  const groups = new Map<string, { items: string[]; line: Line }>();
  for (const l of b.takeoff.lines) {
    const rule = l.buy.rule.replace(/^(board|piece|bar|tube)s of [\d.]+ ft/, '$1s');
    const key = [rule, l.waste.rule, l.waste.source, l.note].join('|');
    const g = groups.get(key) ?? { items: [], line: { ...l, buy: { ...l.buy, rule } } };
    if (!g.items.includes(l.item)) g.items.push(l.item);
    groups.set(key, g);
  }
  return [
    { kind: 'heading', text: 'How each line is counted' },
    {
      kind: 'table',
      columns: [
        { head: 'Item', width: 2.3 },
        { head: 'Sold; waste and its source; note', grow: true },
      ],
      rows: [...groups.values()].map(({ items, line: l }) => [
        items.length > 3 ? `${items.slice(0, 2).join('; ')}; and ${items.length - 2} more` : items.join('; '),
        `${sentence(l.buy.rule)} Waste: ${l.waste.rule}${l.waste.fraction > 0 ? ` (${l.waste.source})` : ''}. ${l.note}`.trim(),
      ]),
    },
  ];
}

export function takeOffPaper(b: Buy): Paper {
  const open: Block[] =
    b.takeoff.open.length === 0
      ? []
      : [
          { kind: 'heading', text: 'Not counted: decide these first' },
          { kind: 'bullets', items: b.takeoff.open.map((o) => o.what) },
        ];
  return {
    title: 'Take-off',
    sub: 'What the model holds and what to buy for it, in the order of building',
    blocks: [
      {
        kind: 'para',
        text: 'Net is what the placed structure holds. Waste is shown line by line: an allowance where it is one, and what is really left over where boards and panels were laid out. Marks are those of the drawings.',
      },
      ...open,
      ...phaseBlocks(b),
      ...ruleBlocks(b),
    ],
  };
}
