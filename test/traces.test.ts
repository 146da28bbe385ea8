/** Printed steps of every example: no raw number, and every sum of load cases adds up to the value beside it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../src/index.js';
import { root } from './golden/golden.js';

/** More figures than anyone can use, or a stand-in for no limit. */
const RAW = /\.0*[1-9]\d{5,}|(?<!\.)\b\d{8,}/;
const TERM = /(-?[\d.]+)·(-?[\d.]+(?:e-?\d+)?) \([^()]*\)/g;
const SUM = /^(?:(?:^| \+ )-?[\d.]+·-?[\d.]+(?:e-?\d+)? \([^()]*\))+$/;

for (const name of readdirSync(join(root, 'examples')).sort()) {
  const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
  if (!input) continue;
  const steps = input.results.flatMap((r) =>
    input.explain(r.id).flatMap((l) => (l.kind === 'step' ? [{ ...l, of: `${r.id} ${l.symbol}` }] : [])),
  );

  describe(name, () => {
    it('prints no raw number', () => {
      const raw = steps.filter((s) => RAW.test(`${s.meaning} ${s.formula} ${s.substituted} ${s.note ?? ''}`));
      expect(raw.map((s) => `${s.of}: ${s.substituted}`)).toEqual([]);
    });

    it('adds up every sum of load cases', () => {
      const sums = steps.filter((s) => SUM.test(s.substituted));
      expect(sums.length).toBeGreaterThan(10);
      const wrong = sums.filter((s) => {
        const terms = [...s.substituted.matchAll(TERM)].map((m) => Number(m[1]) * Number(m[2]));
        const sum = terms.reduce((a, b) => a + b, 0);
        const size = terms.reduce((a, b) => a + Math.abs(b), 0);
        // Four figures a term, and a whole pound above a thousand.
        return Math.abs(Math.abs(sum) - Math.abs(s.value)) > 1e-3 * size + 1e-6;
      });
      expect(wrong.map((s) => `${s.of}: ${s.substituted} = ${s.value}`)).toEqual([]);
    });
  });
}
