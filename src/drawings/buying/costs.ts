import { type Buy, PHASE_NAMES } from '../../takeoff/index.js';
import type { Block } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';
import { money } from './words.js';

export function costPaper(b: Buy): Paper {
  const { costs } = b;
  const bold = (text: string) => ({ text, face: 'condensed-bold' as const });
  const gaps: Block[] =
    costs.unpriced.length + costs.unknownWork.length === 0
      ? []
      : [
          {
            kind: 'para',
            text: `The total is too low by what is not known: ${costs.unpriced.length} lines have no price${costs.unknownWork.length > 0 ? `, and work let out has none in ${costs.unknownWork.map((p) => PHASE_NAMES[p].toLowerCase()).join(', ')}` : ''}.`,
          },
        ];
  const compared: Block[] =
    b.compared.length < 2
      ? []
      : [
          { kind: 'heading', text: 'Choices compared' },
          {
            kind: 'para',
            keep: true,
            text: 'Each choice is placed, loaded, checked, taken off and priced as the project is. Sizes of a choice are a start, not a design: where checks fail it is no choice yet.',
          },
          {
            kind: 'table',
            columns: [
              { head: 'Choice', width: 1.55 },
              { head: 'What changes', width: 1.85 },
              { head: 'Total', align: 'right', width: 0.9 },
              { head: 'Against', align: 'right', width: 0.9 },
              { head: 'Checks', grow: true },
            ],
            rows: b.compared.map((c) => [
              c.title,
              c.words,
              c.refused ? '' : money(c.total),
              c.refused || c.id === 'as-drawn' ? '' : `${c.difference >= 0 ? '+' : ''}${money(c.difference)}`,
              c.refused
                ? `not placed: ${c.refused}`
                : `${c.failing.length === 0 ? 'none fails' : `${c.failing.length} fail: ${c.failing.slice(0, 2).join('; ')}`}${c.open > 0 ? `; ${c.open} still open` : ''}${c.unpriced > 0 ? `; ${c.unpriced} lines without price` : ''}`,
            ]),
          },
        ];
  return {
    title: 'Cost',
    sub: 'Material by phase, and the work by who does it',
    blocks: [
      ...(b.pricesAre ? [{ kind: 'para' as const, text: b.pricesAre, face: 'bold' as const }] : []),
      {
        kind: 'table',
        columns: [
          { head: 'Phase', grow: true },
          { head: 'Work by' },
          { head: 'Material', align: 'right', width: 1.1 },
          { head: 'No price', align: 'right', width: 0.9 },
          { head: 'Work', align: 'right', width: 1.1 },
          { head: 'Sum', align: 'right', width: 1.1 },
        ],
        rows: [
          ...costs.phases.map((p) => [
            PHASE_NAMES[p.phase],
            p.by === 'own' ? 'own work' : `subcontract${p.from ? `, ${p.from}` : ''}`,
            money(p.material),
            p.unpriced > 0 ? String(p.unpriced) : '',
            p.work === undefined ? 'not known' : money(p.work),
            money(p.material + (p.work ?? 0)),
          ]),
          [bold('Total'), '', bold(money(costs.material)), '', bold(money(costs.work)), bold(money(costs.total))],
        ],
      },
      ...gaps,
      ...compared,
    ],
  };
}
