import { expect, it } from 'vitest';
import { answerLetter, answersOf } from './answers.js';

const comment = (number: string, change: Partial<Parameters<typeof answersOf>[0][number]> = {}) => ({
  number,
  from: 'plan review',
  date: '2026-04-01',
  text: 'Show the *uplift* connector.',
  answer: 'Tie J1 added.',
  sheet: 'S-601',
  place: 'row J1',
  path: '',
  ...change,
});
const sheets = [{ id: 'S-601', title: 'Schedules' }];

it('takes an answer that names a sheet of the set, and reports every other', () => {
  const all = [
    comment('1'),
    comment('2', { sheet: '' }),
    comment('3', { sheet: 'S-999' }),
    comment('4', { answer: '' }),
  ];
  expect(answersOf(all, sheets).map((a) => a.open)).toEqual([
    '',
    'names no sheet',
    'S-999 is not in the set',
    'not answered',
  ]);
});

it('writes number, comment, answer, sheet and place, and keeps marks of the writer from being read as layout', () => {
  const head = { title: 'Roof', address: '1 Road', parcel: '7', date: '2026-05-01', preparedBy: 'the owner' };
  const letter = answerLetter(head, answersOf([comment('1'), comment('2', { sheet: '' })], sheets), sheets);
  expect(letter).toContain('## 1 (plan review, 2026-04-01)');
  expect(letter).toContain('> Show the \\*uplift\\* connector.');
  expect(letter).toContain('Where: S-601 Schedules: row J1\n');
  expect(letter).toContain('2 comments, 1 still open');
  expect(letter).toContain('STILL OPEN: names no sheet');
});
