/** Orders by delivery: what to ask for, when, and what each line is for. */
import { type Buy, PHASE_NAMES, PHASES, type PricedLine } from '../../takeoff/index.js';
import type { Block } from '../annotate/index.js';
import type { Paper } from '../papers/index.js';
import { money, number, ranges } from './words.js';

/** What must have been passed before a delivery is of use. Practice; the office's list of inspections governs. */
const BEFORE: Readonly<Record<string, string>> = {
  footings: 'Order when the permit is in hand and lines in the ground are marked.',
  slab: 'After footings are poured and passed.',
  'posts-and-beams': 'After the concrete has cured as the sheets say; pier tops and spacing measured first.',
  framing:
    'Trusses 2 to 8 weeks ahead. On the site when posts and beams stand, plumb and braced; store flat on blocks.',
  sheathing: 'With the framing, kept dry and off the ground.',
  roofing: 'After the sheathing-nailing inspection.',
  finish: 'When the roof is tight.',
};

const row = ({ line, price, total }: PricedLine) => [
  number(line.buy.quantity),
  line.buy.unit === 'each' ? 'ea' : line.buy.unit,
  line.item,
  ranges(line.serves),
  price === undefined ? '' : money(price),
  total === undefined ? '' : money(total),
];

export function ordersPaper(b: Buy): Paper {
  return {
    title: 'Orders by delivery',
    sub: 'Quantities as sold, waste included',
    blocks: [
      ...(b.pricesAre ? [{ kind: 'para' as const, text: b.pricesAre, face: 'bold' as const }] : []),
      ...PHASES.flatMap((phase, i): Block[] => {
        const lines = b.costs.lines.filter((l) => l.line.phase === phase);
        if (lines.length === 0) return [];
        const sum = lines.reduce((s, l) => s + (l.total ?? 0), 0);
        const missing = lines.filter((l) => l.total === undefined).length;
        return [
          { kind: 'heading', text: `${i + 1}. ${PHASE_NAMES[phase]}` },
          { kind: 'para', text: BEFORE[phase] ?? '', keep: true },
          {
            kind: 'table',
            columns: [
              { head: 'Qty', align: 'right', face: 'condensed-bold', width: 0.6 },
              { head: 'Unit', width: 0.82 },
              { head: 'Item', grow: true },
              { head: 'For', width: 1.05 },
              { head: 'Price', align: 'right', width: 0.75 },
              { head: 'Total', align: 'right', width: 0.88 },
            ],
            rows: [
              ...lines.map(row),
              [
                '',
                '',
                {
                  text: missing === 0 ? 'Sum' : `Sum; ${missing} of ${lines.length} lines have no price`,
                  face: 'condensed-bold' as const,
                },
                '',
                '',
                { text: money(sum), face: 'condensed-bold' as const },
              ],
            ],
          },
        ];
      }),
      {
        kind: 'para',
        text: 'Check every delivery against this list before the driver leaves: count, size, grade stamp, treatment tag, truss marks. Note what is short on the ticket.',
      },
    ],
  };
}

export function concretePaper(b: Buy): Paper | undefined {
  if (b.pours.length === 0) return undefined;
  return {
    title: 'Concrete order',
    sub: 'One sheet for the plant, and the bags in its place',
    blocks: b.pours.flatMap((p): Block[] => [
      { kind: 'heading', text: `Pour: ${p.what}` },
      {
        kind: 'pairs',
        rows: [
          { name: 'Order, ready-mix', value: `${p.yards} cu yd` },
          { name: 'Net, by the drawings', value: `${p.net.toFixed(2)} cu ft = ${(p.net / 27).toFixed(2)} cu yd` },
          { name: 'Waste', value: p.waste },
          { name: 'Strength', value: p.strength },
          { name: 'Load', value: p.load },
          { name: 'Site', value: b.project.job.address },
          {
            name: 'Access',
            value: b.buying.delivery.access || 'not given: say how near the truck comes, and where it washes out',
          },
          { name: 'Wanted', value: b.buying.delivery.date || 'after the footing inspection has passed' },
        ],
      },
      {
        kind: 'table',
        title: 'Or in bags, whole pour',
        columns: [
          { head: 'Bag' },
          { head: 'Yields', align: 'right' },
          { head: 'Bags', align: 'right', face: 'condensed-bold' },
          { head: 'Weight to carry', align: 'right', grow: true },
        ],
        rows: p.bags.map((x) => [
          `${x.weight} lb`,
          `${x.holds} cu ft`,
          String(x.bags),
          `${(x.bags * x.weight).toLocaleString('en-US')} lb`,
        ]),
      },
      {
        kind: 'table',
        title: 'Part by part, net',
        columns: [
          { head: 'Part' },
          { head: 'Volume', align: 'right' },
          { head: 'Bags of 80 lb, net', align: 'right', grow: true },
        ],
        rows: p.parts.map((x) => [x.mark, `${x.volume.toFixed(2)} cu ft`, (x.volume / 0.6).toFixed(1)]),
      },
      {
        kind: 'para',
        text: 'No concrete before the footing inspection has passed. A pour that stops leaves a cold joint: have all bags, water and hands there before the first is mixed. Wet concrete burns skin: gloves, boots, eye protection.',
      },
    ]),
  };
}
