/** Whatever is done to a file, reading it ends in issues or a project, never in an exception. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { STARTER_KINDS, starter } from './starter/index.js';

const TEXTS = STARTER_KINDS.map((k) => starter(k));
const PUT = [
  '',
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  '0',
  '-1',
  'null',
  '{}',
  '[]',
  '"unknown"',
  '"x"',
  '"-3 ft"',
  '"1e400 ft"',
  '"0 in"',
  '/*',
  '\\',
  '½',
  '"__proto__": 1,',
];

const finite = (v: unknown): boolean =>
  typeof v === 'number' ? Number.isFinite(v) : typeof v !== 'object' || v === null || Object.values(v).every(finite);

describe('damage', () => {
  it('to the text', () => {
    const cut = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      remove: fc.nat({ max: 80 }),
      put: fc.constantFrom(...PUT),
    });
    fc.assert(
      fc.property(fc.constantFrom(...TEXTS), fc.array(cut, { minLength: 1, maxLength: 4 }), (text, cuts) => {
        let t = text;
        for (const c of cuts) {
          const i = Math.floor(c.at * t.length);
          t = t.slice(0, i) + c.put + t.slice(i + c.remove);
        }
        const r = read(t);
        expect(r.value === undefined).toBe(r.issues.some((i) => i.severity === 'error'));
        expect(finite(r.value)).toBe(true);
        for (const i of r.issues) expect(i.line! >= 1 && i.column! >= 1).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('to single values', () => {
    // Every value and key of the text, comments blanked out: their quotes are not the file's.
    const tokens = TEXTS.map((t) => [
      ...t
        .replace(/^\s*\/\/.*$/gm, (m) => ' '.repeat(m.length))
        .matchAll(/"(?:[^"\\\n]|\\.)*"|-?\d+(?:\.\d+)?|true|false/g),
    ]);
    const put = fc.constantFrom(
      '"0 in"',
      '"-5 ft"',
      '"9999 ft"',
      '"0 psf"',
      '"12/12"',
      '"N 10° E"',
      '0',
      '-1',
      '1e300',
      '""',
      'null',
      '[]',
      '{}',
      '"2x4"',
      '"B1"',
      '"x"',
      '"rear"',
      '"unknown"',
      'true',
    );
    fc.assert(
      fc.property(
        fc.nat({ max: TEXTS.length - 1 }),
        fc.array(fc.tuple(fc.nat(), put), { minLength: 1, maxLength: 3 }),
        (n, edits) => {
          const list = tokens[n]!;
          const at = new Map(edits.map(([k, v]) => [list[k % list.length]!, v] as const));
          let t = TEXTS[n]!;
          for (const [m, v] of [...at].sort((a, b) => b[0].index - a[0].index))
            t = t.slice(0, m.index) + v + t.slice(m.index + m[0].length);
          const r = read(t);
          expect(r.value === undefined).toBe(r.issues.some((i) => i.severity === 'error'));
          expect(finite(r.value)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
