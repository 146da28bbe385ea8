import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { find, pointer, segments, toValue } from './node.js';
import { MAX_DEPTH, MAX_TEXT, parseText } from './parse.js';
import { placer } from './place.js';

const parsed = (text: string): unknown => {
  const { root, faults } = parseText(text);
  expect(faults).toEqual([]);
  return JSON.parse(JSON.stringify(toValue(root!)));
};

/** Code, line and column of every fault. */
const faultsOf = (text: string) => {
  const at = placer(text);
  return parseText(text).faults.map((f) => ({ code: f.code, ...at(f.at) }));
};

describe('reading', () => {
  it('agrees with JSON.parse on any JSON (property)', () => {
    fc.assert(
      fc.property(fc.json({ noUnicodeString: false }), (text) => {
        fc.pre(!text.includes('__proto__'));
        expect(parsed(text)).toEqual(JSON.parse(JSON.stringify(JSON.parse(text))));
      }),
    );
  });
  it('takes comments, trailing commas, a byte order mark and every line ending', () => {
    expect(parsed('\ufeff// a\r\n{ /* b\n c */ "a": [1, 2,], // d\r "b": "x // no comment", }')).toEqual({
      a: [1, 2],
      b: 'x // no comment',
    });
  });
  it('takes escapes', () => expect(parsed('"\\u00bd \\" \\\\ \\n"')).toBe('½ " \\ \n'));
  it('keeps the place of keys and values', () => {
    const text = '{\n  "a": { "b/c": [10, 20] }\n}';
    const { root } = parseText(text);
    const f = find(root!, ['a', 'b/c', 1]);
    expect(placer(text)(f.node.start)).toEqual({ line: 2, column: 22 });
    expect(placer(text)(find(root!, ['a', 'b/c']).keyStart!)).toEqual({ line: 2, column: 10 });
    expect(segments(pointer(['a', 'b/c', '~', 1]))).toEqual(['a', 'b/c', '~', '1']);
  });
  it('gives objects no prototype to reach', () => {
    const v = toValue(parseText('{ "constructor": 1, "toString": 2 }').root!) as Record<string, unknown>;
    expect(Object.getPrototypeOf(v)).toBeNull();
    expect(v.hasOwnProperty).toBeUndefined();
  });
});

describe('slips of syntax', () => {
  const CASES: readonly (readonly [string, string, readonly object[]])[] = [
    ['a missing comma', '{ "a": 1\n  "b": 2 }', [{ code: 'syntax', line: 2, column: 3 }]],
    [
      'two of them',
      '[1 2\n 3]',
      [
        { code: 'syntax', line: 1, column: 4 },
        { code: 'syntax', line: 2, column: 2 },
      ],
    ],
    ['a missing colon', '{ "a" 1 }', [{ code: 'syntax', line: 1, column: 7 }]],
    ['a key without quotes', '{ a: 1 }', [{ code: 'syntax', line: 1, column: 3 }]],
    ['single quotes', '{ "a": \'x\' }', [{ code: 'syntax', line: 1, column: 8 }]],
    [
      'a text not closed, and one more slip below',
      '{ "a": "x,\n "b": tru }',
      [
        { code: 'syntax', line: 1, column: 8 },
        { code: 'syntax', line: 2, column: 2 },
        { code: 'syntax', line: 2, column: 7 },
      ],
    ],
    ['an inch mark not escaped', '{ "a": "12\' 6"", "b": 1 }', [{ code: 'syntax', line: 1, column: 14 }]],
    ['a bare quantity', '{ "a": 12ft }', [{ code: 'syntax', line: 1, column: 8 }]],
    ['a missing value', '{ "a": , "b": 1 }', [{ code: 'syntax', line: 1, column: 8 }]],
    [
      'a bracket never closed',
      '{ "a": [1, 2',
      [
        { code: 'syntax', line: 1, column: 8 },
        { code: 'syntax', line: 1, column: 1 },
      ],
    ],
    ['a wrong bracket', '{ "a": [1, 2} }', [{ code: 'syntax', line: 1, column: 13 }]],
    ['text after the end', '{} {}', [{ code: 'syntax', line: 1, column: 4 }]],
    ['a comment never closed', '{ } /* x', [{ code: 'syntax', line: 1, column: 5 }]],
    ['a bad escape', '"\\x"', [{ code: 'syntax', line: 1, column: 2 }]],
    [
      'numbers JSON has not',
      '[NaN, 1e999, 01, .5]',
      [1, 2, 3, 4].map((n) => ({ code: 'syntax', line: 1, column: [2, 7, 14, 18][n - 1] })),
    ],
    ['a key twice', '{ "a": 1,\n "a": 2 }', [{ code: 'duplicate-key', line: 2, column: 2 }]],
    ['the prototype key', '{ "__proto__": { "x": 1 } }', [{ code: 'unknown-key', line: 1, column: 3 }]],
    ['nothing', ' \n ', [{ code: 'syntax', line: 2, column: 2 }]],
  ];
  for (const [name, text, faults] of CASES) it(name, () => expect(faultsOf(text)).toEqual(faults));

  it('too deep and too long are refused at once', () => {
    expect(faultsOf('['.repeat(100_000)).map((f) => f.code)).toEqual(['too-deep']);
    expect(faultsOf(`${'['.repeat(MAX_DEPTH)}${']'.repeat(MAX_DEPTH)}`)).toEqual([]);
    expect(faultsOf(' '.repeat(MAX_TEXT + 1)).map((f) => f.code)).toEqual(['too-large']);
  });
  it('stops after two dozen', () => expect(faultsOf(`[${'1 '.repeat(500)}]`).length).toBe(25));
  it('never throws and always ends (property)', () => {
    const piece = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      '"',
      "'",
      ',',
      ':',
      '1',
      '-',
      '\\',
      '\n',
      '//',
      '/*',
      '*/',
      'a',
      '"k":',
      'true',
      '½',
      '\u0000',
      '"x"',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (p) => void parseText(p.join(''))),
      { numRuns: 2000 },
    );
  });
});
