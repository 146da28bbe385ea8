import { describe, expect, it } from 'vitest';
import { derive, editText, starter, treeOf } from '../../../src/index.js';
import { notedEdits, typedFault } from './noted.js';
import type { Noted } from './work-api.js';

const written = (text: string, n: Noted): string => {
  expect(typedFault(n)).toBeUndefined();
  const { value, issues } = editText(text, notedEdits(treeOf(text), n));
  expect(issues).toEqual([]);
  return value!;
};
const all = (text: string, ...notes: Noted[]): string => notes.reduce(written, text);
const log = (text: string) => derive(text).project!.log;
const today = '2026-05-01';
const item = (set: object): Noted => ({ what: 'item', stage: 'footing', item: 'depth', today, set });
const visit = (set: object): Noted => ({ what: 'visit', stage: 'footing', today, set });
const reading = (nth: number, typed: string): Noted => ({
  what: 'reading',
  kind: 'along',
  from: undefined,
  to: 'F1',
  nth,
  typed,
  today,
  instrument: 'steel-tape',
});
const start = starter('gable-free');

describe('a line of a card', () => {
  it('begins a visit, and the next note goes to the same one', () => {
    const seen = log(all(start, item({ done: true }), item({ measured: '3 ft 1 in' }))).inspections!;
    expect(seen).toHaveLength(1);
    expect(seen[0]).toMatchObject({ stage: 'footing', date: today, result: 'pending' });
    expect(seen[0]!.items).toMatchObject([{ item: 'depth', done: true, measured: '3 ft 1 in' }]);
  });

  it('after a failed visit begins a new one that keeps what was filled in', () => {
    const text = all(start, item({ done: true, measured: '3 ft' }), visit({ result: 'failed' }), item({ done: false }));
    const seen = log(text).inspections!;
    expect(seen.map((v) => v.result)).toEqual(['failed', 'pending']);
    expect(seen[0]!.items).toMatchObject([{ done: true, measured: '3 ft' }]);
    expect(seen[1]!.items).toMatchObject([{ item: 'depth', done: false, measured: '3 ft' }]);
  });

  it('emptied is taken out of the file', () => {
    const text = all(start, item({ done: true, note: 'rock' }), item({ note: '' }));
    expect(JSON.stringify(treeOf(text))).not.toContain('rock');
    expect(log(text).inspections![0]!.items[0]!.done).toBe(true);
  });
});

describe('a verdict', () => {
  it('is corrected on the visit it was given at', () => {
    const seen = log(all(start, visit({ result: 'failed', by: 'inspector 14' }), visit({ result: 'passed' })))
      .inspections!;
    expect(seen).toMatchObject([{ result: 'passed', by: 'inspector 14' }]);
  });
});

describe('a verdict of a later day', () => {
  it('leaves the failed visit in the log', () => {
    const later: Noted = { what: 'visit', stage: 'footing', today: '2026-05-09', set: { result: 'passed' } };
    const seen = log(all(start, visit({ result: 'failed', note: 'clean F3' }), later)).inspections!;
    expect(seen.map((v) => [v.date, v.result, v.note])).toEqual([
      [today, 'failed', 'clean F3'],
      ['2026-05-09', 'passed', ''],
    ]);
  });
});

describe('a reading', () => {
  it('is written, changed, taken twice, and taken out', () => {
    const text = all(start, reading(0, '4 ft'), reading(1, '4 ft 1/8 in'), reading(0, '4 ft 1/16 in'));
    expect(log(text).asBuilt!.readings.map((r) => r.value)).toEqual([48.0625, 48.125]);
    expect(log(all(text, reading(0, ''))).asBuilt!.readings.map((r) => r.value)).toEqual([48.125]);
  });

  it('that is no length is refused with what would be right', () => {
    expect(typedFault(reading(0, 'about four'))?.expected).toBeTruthy();
  });
});

describe('a price', () => {
  const price = (typed: string): Noted => ({ what: 'price', item: '6x6x12', unit: 'each', typed });
  it('is written, changed, and taken out', () => {
    const text = all(start, price('20'), price('21.5'));
    expect(derive(text).project!.prices).toEqual([{ item: '6x6x12', unit: 'each', price: 21.5 }]);
    expect(derive(all(text, price(''))).project!.prices).toEqual([]);
  });

  it('that is no number is refused', () => {
    expect(typedFault(price('1e9x'))).toBeDefined();
    expect(typedFault(price('-2'))).toBeDefined();
  });
});
