import type { ScopeInput, ScopeLine, Trade } from '../model.js';

const lines = ({ takeoff }: ScopeInput): Omit<ScopeLine, 'id'>[] =>
  takeoff.lines
    .filter((l) => l.phase === 'finish')
    .map((l) => ({
      text: `${l.item[0]!.toUpperCase()}${l.item.slice(1)}. ${l.note}`.trim(),
      quantity: `${l.net.toFixed(l.net < 20 ? 1 : 0)} ${l.unit} net`,
    }));

export const finish: Trade = {
  title: 'Gutter, ceiling and paint',
  letter: 'G',
  phases: ['finish'],
  lines,
  questions: [
    'Where does each downspout let its water go, and is that allowed at the lot line?',
    'How dry must treated wood be before it is coated, and who measures it?',
  ],
  payments: [
    { when: 'Work done', percent: 80, proof: 'as the scope says; conditional release' },
    { when: 'Final', percent: 20, proof: 'final inspection passed; final releases' },
  ],
};
