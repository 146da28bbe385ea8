/** Schedule, check list and cautions of the electrical plan. */
import type { CheckResult } from '../../../checks/contract.js';
import type { Device } from '../../../project/model.js';
import type { Block } from '../../annotate/index.js';
import type { SheetContext } from '../contract.js';
import { clearOfWires } from '../service-words.js';

const SOURCE = 'numbers of the national electrical code as trade pages state them; the adopted code decides';

const RULES = [
  'Every outdoor receptacle of 15 and 20 A has ground-fault protection (GFCI) and is of the weather-resistant type.',
  'A covered patio is at least a damp location: weatherproof covers there; in-use covers, closed with a plug in, where rain or spray reaches. The official decides which is which.',
  'One receptacle within the perimeter of the patio, not over 6’-6" above its floor. One at the front and one at the back of the house, not over 6’-6" above grade.',
  'A switched light at each exit with access to grade, worked from inside.',
  'A paddle fan hangs from a box rated for it and fastened to the framing; fans and lights are listed for the location they hang in.',
];

const cautions = (wires: string): string[] => [
  'Electrical work has its own permit and inspection, rough and final. Who may do it is set by law: a licensed electrician where the law asks for one.',
  'Turn the circuit off at the panel, lock it, and prove it dead before opening any box. Never work on a live circuit.',
  'Circuits, loads, cable kinds, burial depths, bonding and protection are designed by the electrician and are not part of this sheet.',
  `Call the utility locating service before trenching. Keep clear of ${wires} while lifting beams, trusses and ladders.`,
  'Boxes and cable are not fastened to truss plates; no truss, beam or post is bored or notched for them beyond what its maker or the details allow.',
];

const WORDS: Readonly<Record<CheckResult['status'], string>> = {
  pass: 'shown',
  fail: 'NOT MET',
  'not-applicable': 'does not arise',
  'not-evaluated': 'ASK THE INSPECTOR',
  'outside-scope': 'licensed professional',
};

export function electricalBlocks(ctx: SheetContext, devices: readonly Device[]): Block[] {
  const { len } = ctx;
  const h = ctx.style.note;
  const checks = ctx.input.results.filter((r) => r.check === 'patio-receptacle' || r.check === 'door-light');
  const none: Block[] =
    devices.length > 0
      ? []
      : [
          { kind: 'heading', text: 'No electrical work is proposed' },
          {
            kind: 'para',
            text: 'The new roof carries no receptacle, light, fan or wiring. Should any be added later, it needs its own permit and a new sheet. What follows is for whoever asks.',
          },
        ];
  return [
    ...none,
    {
      kind: 'table',
      whole: true,
      title: 'Devices',
      columns: [
        { head: 'Mark' },
        { head: 'What' },
        { head: 'Height' },
        { head: 'Circuit' },
        { head: 'Switch' },
        { head: 'Place and note', grow: true, max: 16 * h },
      ],
      rows: devices.map((d) => [
        { text: d.mark, mark: d.mark, path: d.path },
        `${d.kind}, ${d.state}`,
        len(d.height),
        d.circuit || 'open',
        d.switchedBy || '–',
        [d.place, d.note].filter(Boolean).join(', '),
      ]),
    },
    ...(devices.length > 0
      ? [
          {
            kind: 'table' as const,
            whole: true,
            title: 'What an inspector looks for',
            columns: [
              { head: 'Item' },
              { head: 'Where' },
              { head: 'Answer' },
              { head: 'How', grow: true, max: 22 * h },
            ],
            rows: checks.map((r) => [r.title, r.subject, WORDS[r.status], r.note || '–']),
          },
        ]
      : []),
    { kind: 'heading', text: 'Rules' },
    { kind: 'numbered', items: RULES },
    { kind: 'para', text: `Source: ${SOURCE}.` },
    { kind: 'heading', text: 'Cautions' },
    { kind: 'bullets', items: cautions(clearOfWires(ctx.input.project)) },
  ];
}
