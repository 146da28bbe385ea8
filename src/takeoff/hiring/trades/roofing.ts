import type { ScopeInput, ScopeLine, Trade } from '../model.js';

function lines({ takeoff, structure }: ScopeInput): Omit<ScopeLine, 'id'>[] {
  const own = takeoff.lines.filter((l) => l.phase === 'roofing');
  if (own.length === 0) return [];
  const walls = structure.roofs.some((r) => r.attached);
  return [
    { text: 'Cover only sheathing that has passed its nailing inspection.', quantity: '' },
    ...own.map((l) => ({
      text: `${l.item[0]!.toUpperCase()}${l.item.slice(1)}: supply and lay.${l.note.includes('layers') ? ` ${l.note}` : ''}`,
      quantity: `${l.net.toFixed(l.net < 20 ? 1 : 0)} ${l.unit} net`,
    })),
    {
      text: 'Order of layers: drip edge at eaves, underlayment, drip edge at rakes, covering, caps; each over the one below.',
      quantity: '',
    },
    ...(walls
      ? [
          {
            text: 'At the house: flashing goes behind the cladding and its water barrier, turned out past the cladding at the foot of each run. Not caulk alone.',
            quantity: '',
          },
        ]
      : []),
    {
      text: 'Fasten as the covering’s maker asks for this wind speed; leave one wrapper and the instructions with the owner.',
      quantity: '',
    },
    { text: 'Sweep the ground for nails with a magnet; take waste away.', quantity: '' },
  ];
}

export const roofing: Trade = {
  title: 'Roofing and flashing',
  letter: 'R',
  phases: ['roofing'],
  lines,
  questions: [
    'Which maker, line of product and color, and what does its warranty ask of the slope and the ventilation?',
    'How is the joint with the house made, drawn or in words, layer by layer?',
    'Who mends the cladding that is opened for flashing?',
  ],
  payments: [
    {
      when: 'On signing',
      percent: 10,
      proof: 'contract signed, insurance and license seen; no more than your state allows',
    },
    {
      when: 'Roof on',
      percent: 70,
      proof:
        'flashing seen by the owner before it is covered; roofing inspection passed where there is one; conditional releases',
    },
    { when: 'Final', percent: 20, proof: 'final inspection passed; no leak at the house; final releases' },
  ],
};
