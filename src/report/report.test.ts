/** The examples from file to explanation. Their sizes are the examples' affair: nothing here asks that a member pass. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../derive.js';
import { checkJson, rounded } from './check-json.js';
import { explain } from './explain.js';
import { why, whyText } from './why.js';

const root = resolve(import.meta.dirname, '../../examples');
/** The broken example is another test's matter; it stops at reading. */
const texts = readdirSync(root)
  .filter((name) => !name.includes('broken'))
  .sort()
  .map((name) => [name, readFileSync(join(root, name, 'project.json'), 'utf8')] as const);

function assertFinite(value: unknown, path = ''): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (Array.isArray(value))
    value.forEach((v, i) => {
      assertFinite(v, `${path}/${i}`);
    });
  else if (value && typeof value === 'object')
    for (const [k, v] of Object.entries(value)) assertFinite(v, `${path}/${k}`);
}

describe.each(texts)('%s', (name, text) => {
  const d = derive(text);

  it('runs through without an error', () => {
    expect(d.issues.filter((i) => i.severity === 'error')).toEqual([]);
    expect(d.results.length).toBeGreaterThan(40);
  });

  it('is issuable exactly when no mandatory check is open and none fails', () => {
    const blocking = d.results.filter(
      (r) => r.status === 'fail' || r.status === 'outside-scope' || (r.status === 'not-evaluated' && r.mandatory),
    );
    expect(d.verdict.issuable).toBe(blocking.length === 0);
    // Only the set broken on purpose is not complete.
    if (!/^03-/.test(name)) expect(blocking.map((r) => r.id)).toEqual([]);
    const advisory = d.results.filter((r) => r.status === 'not-evaluated' && !r.mandatory);
    expect(advisory.map((r) => r.id)).toEqual([]);
  });

  it('explains every result with the very ratio it stores', () => {
    for (const r of d.results) {
      const lines = explain(d, r.id);
      assertFinite(lines, r.id);
      if ((r.status !== 'pass' && r.status !== 'fail') || r.capacity <= 0) continue;
      const last = lines.at(-1);
      expect(last, r.id).toMatchObject({ kind: 'step', symbol: 'ratio' });
      expect(last?.kind === 'step' ? last.value : Number.NaN, r.id).toBe(r.ratio);
    }
  });

  it('does the same twice', () => {
    expect(JSON.stringify(checkJson(derive(text)))).toBe(JSON.stringify(checkJson(d)));
  });

  it('gives scripts plain finite data', () => {
    const json = checkJson(d);
    assertFinite(json);
    expect(Object.keys(json)).toEqual(['issues', 'results', 'balance', 'issuable', 'summary']);
    expect(Object.values(json.summary.counts).reduce((a, b) => a + b, 0)).toBe(json.results.length);
    expect(json.balance.length).toBe(d.effects!.cases.length);
  });

  it('tells why for every mark, with its paths and forces', () => {
    const { members, joints, footings, roofs } = d.structure!;
    for (const { mark } of [...members, ...joints, ...footings, ...roofs]) {
      const w = why(d, mark)!;
      expect(w.mark, mark).toBe(mark);
      expect(w.paths.length, mark).toBeGreaterThan(0);
      assertFinite(w, mark);
      expect(whyText(w)).toContain(mark);
    }
    const beam = why(d, 'B1')!;
    expect(beam.results.map((r) => r.result.check)).toContain('beam-bending');
    expect(beam.forces.map((f) => f.combination)).toEqual(d.loads!.combinations.map((c) => c.id));
    expect(why(d, 'nothing')).toBeUndefined();
  });

  it('hands the sheets everything', () => {
    const input = drawingInput(d)!;
    expect(input.explain(d.results.find((r) => r.check === 'beam-bending')!.id).length).toBeGreaterThan(3);
  });
});

describe('what cannot be worked out', () => {
  it('ends in issues, without results', () => {
    for (const text of ['', '{', '{}', '[]', 'null', '{"eavewright": 1}']) {
      const d = derive(text);
      expect(
        d.issues.some((i) => i.severity === 'error'),
        text,
      ).toBe(true);
      expect(d.results).toEqual([]);
      expect(d.verdict.issuable).toBe(false);
      expect(d.verdict.reasons.length).toBeGreaterThan(0);
      expect(explain(d, 'beam-bending:B1')).toEqual([]);
      expect(why(d, 'B1')).toBeUndefined();
      expect(drawingInput(d)).toBeUndefined();
      assertFinite(checkJson(d));
    }
  });

  it('keeps no results for a project that could not be placed', () => {
    const text = texts[0]![1].replaceAll('"pitch": "4/12"', '"pitch": "0/12"');
    const d = derive(text);
    expect(d.verdict.issuable).toBe(false);
    expect(d.issues.some((i) => i.severity === 'error')).toBe(true);
  });
});

describe('rounding', () => {
  it('keeps five figures and drops noise', () => {
    expect(rounded(1234.5678)).toBe(1234.6);
    expect(rounded(0.000123456)).toBe(0.00012346);
    expect(rounded(-1e-17)).toBe(0);
    expect(rounded(Number.NaN)).toBe(0);
  });
});
