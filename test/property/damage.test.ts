/** Damaged project files end in issues or results: never an exception, a NaN or a hang. The seed is printed on failure. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkJson, derive } from '../../src/index.js';

const root = resolve(import.meta.dirname, '../..');
const texts = readdirSync(join(root, 'examples'))
  .sort()
  .map((n) => readFileSync(join(root, 'examples', n, 'project.json'), 'utf8'));

/** No NaN, no Infinity anywhere in what is printed. JSON would write them as null, so numbers are looked at first. */
function assertFinite(value: unknown, path = ''): void {
  if (typeof value === 'number') expect(Number.isFinite(value), `${path} is ${value}`).toBe(true);
  else if (Array.isArray(value)) for (const [i, v] of value.entries()) assertFinite(v, `${path}/${i}`);
  else if (value && typeof value === 'object')
    for (const [k, v] of Object.entries(value)) assertFinite(v, `${path}/${k}`);
}

const TOKENS = [
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  '0',
  '-',
  '1e999',
  'null',
  'true',
  '"unknown"',
  '"-3 ft"',
  '"0 in"',
  '"9999 ft"',
  '/*',
  '//',
  '\\',
  'NaN',
  '\u0000',
  '½',
];

describe('damaged files', () => {
  it('500 damaged copies of the examples end in issues or results', () => {
    const damage = fc.record({
      which: fc.nat({ max: texts.length - 1 }),
      cuts: fc.array(
        fc.record({
          at: fc.double({ min: 0, max: 1, noNaN: true }),
          remove: fc.nat({ max: 60 }),
          put: fc.constantFrom('', ...TOKENS),
        }),
        { minLength: 1, maxLength: 4 },
      ),
    });
    fc.assert(
      fc.property(damage, ({ which, cuts }) => {
        let text = texts[which]!;
        for (const c of cuts) {
          const i = Math.floor(c.at * text.length);
          text = text.slice(0, i) + c.put + text.slice(i + c.remove);
        }
        const d = derive(text);
        const json = checkJson(d);
        assertFinite(json);
        expect(d.issues.length + d.results.length).toBeGreaterThan(0);
      }),
      { numRuns: 250 },
    );
  });

  it('values replaced by other values of the same shape end in issues or results', () => {
    const docs = texts.map((t) => JSON.parse(t.replace(/^\s*\/\/.*$/gm, '')) as unknown);
    const leaves = docs.map((d) => {
      const out: string[][] = [];
      const walk = (v: unknown, at: string[]): void => {
        if (v && typeof v === 'object') for (const [k, w] of Object.entries(v)) walk(w, [...at, k]);
        else out.push(at);
      };
      walk(d, []);
      return out;
    });
    const values = fc.constantFrom<unknown>(
      '0 in',
      '-5 ft',
      '1000 ft',
      '0.001 in',
      '0 psf',
      '500 psf',
      '1/12',
      '0/12',
      '24/12',
      'N 10°00\'00" E',
      0,
      -1,
      1e9,
      '',
      'unknown',
      null,
      [],
      {},
      '2x4',
      '12x12',
      'x',
      'y',
      '1 mph',
      '400 mph',
      '100 %',
      'B1',
      'P1',
    );
    fc.assert(
      fc.property(
        fc.nat({ max: docs.length - 1 }),
        fc.array(fc.tuple(fc.nat(), values), { minLength: 1, maxLength: 3 }),
        (which, edits) => {
          const doc = structuredClone(docs[which]!);
          for (const [n, v] of edits) {
            const path = leaves[which]![n % leaves[which]!.length]!;
            let at = doc as Record<string, unknown>;
            let ok = true;
            for (const k of path.slice(0, -1)) {
              const next = at[k];
              if (next === null || typeof next !== 'object') {
                ok = false;
                break;
              }
              at = next as Record<string, unknown>;
            }
            if (ok) at[path.at(-1)!] = v;
          }
          const json = checkJson(derive(JSON.stringify(doc)));
          assertFinite(json);
        },
      ),
      { numRuns: 250 },
    );
  });
});
