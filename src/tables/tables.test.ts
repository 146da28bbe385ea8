import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvOf, parseCsv } from './index.js';

const columns = [
  { head: 'a', kind: 'text' },
  { head: 'b', kind: 'text' },
] as const;

describe('csv', () => {
  it('quotes what needs it and ends lines as the standard says', () => {
    expect(
      csvOf({
        columns,
        rows: [
          ['2x4, 8 ft', '5/8" bolt'],
          [1.5, undefined],
        ],
      }),
    ).toBe('a,b\r\n"2x4, 8 ft","5/8"" bolt"\r\n1.5,\r\n');
  });
  it.each(['=1+1', '+1', '-1', '@x', '\tx'])('%j is text, not a formula', (v) => {
    const text = csvOf({ columns, rows: [[v, '']] });
    expect(text.split('\r\n')[1]!.replace(/^"/, '').startsWith("'")).toBe(true);
    expect(parseCsv(text).value![1]![0]).toBe(v);
  });
  it('leaves numbers alone', () => {
    expect(csvOf({ columns, rows: [[-1, 2]] })).toContain('-1,2');
  });
  it('reads back any text', () => {
    // A text that itself begins with an apostrophe before a sign cannot be told from a guarded one.
    const word = fc.string().filter((s) => !/^'[=+\-@\t\r]/.test(s) && !s.includes('\r') && !s.startsWith('\uFEFF'));
    fc.assert(
      fc.property(fc.array(fc.tuple(word, word), { minLength: 1 }), (rows) => {
        const kept = rows.map(([a, b]): [string, string] => [`x${a}`, b]);
        expect(parseCsv(csvOf({ columns, rows: kept })).value!.slice(1)).toEqual(kept);
      }),
    );
  });
  it('says where a quote stays open', () => {
    const { value, issues } = parseCsv('a,b\r\n"x,1\r\n');
    expect(value).toBeUndefined();
    expect(issues[0]).toMatchObject({ code: 'csv-open-quote', path: '/line/2' });
  });
});
