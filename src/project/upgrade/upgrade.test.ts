import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { locate, read } from '../read.js';
import { placeOf } from '../testing.js';
import { CURRENT_VERSION, STEPS } from './index.js';

const old = readFileSync(join(import.meta.dirname, 'files/0000.txt'), 'utf8');

describe('upgrades', () => {
  it('step n takes version n, and together they reach the present one', () => {
    expect(STEPS.map((s) => s.from)).toEqual(STEPS.map((_, i) => i));
    expect(CURRENT_VERSION).toBe(1);
  });

  it('a stored file of format 0 reads, with a note of what changed', () => {
    const r = read(old);
    expect(r.issues.filter((i) => i.code !== 'no-source')).toMatchObject([
      { code: 'upgraded', severity: 'note', path: '/eavewright', ...placeOf(old, '0,\n  "job"') },
    ]);
    expect(r.value!.basis.codes.id).toBe('2018');
    expect(r.value!.cover.roofs[0]!.finish).toEqual({
      covering: 'standing-seam-metal',
      underlayment: 'self-adhering',
      sheathing: 'osb-19/32',
      ceiling: '',
      allowance: 1,
      fascia: '2x8',
      gutter: true,
    });
    expect(r.value!.version).toBe(1);
  });

  it('a slip in an old file is shown where it was written, under its present path', () => {
    const text = old
      .replace('"covering": "standing-seam-metal"', '"covering": "tin"')
      .replace('"edition": "2018"', '"edition": "2012"');
    const [codes, covering] = read(text).issues.filter((i) => i.severity === 'error');
    expect(codes).toMatchObject({ code: 'unsupported-edition', path: '/basis/codes', ...placeOf(text, '"2012"') });
    expect(covering).toMatchObject({
      code: 'not-one-of',
      path: '/cover/roofs/0/finish/covering',
      ...placeOf(text, '"tin"'),
    });
    const [later] = locate(old, [
      { code: 'x', severity: 'warning', path: '/cover/roofs/0/finish/sheathing', message: '' },
    ]);
    expect(later).toMatchObject(placeOf(old, '"osb-19/32"'));
  });

  it('a file that has both the old and the new key is not guessed at', () => {
    const text = old.replace('"edition": "2018"', '"edition": "2018", "codes": "2018"');
    expect(read(text).issues.find((i) => i.code === 'unknown-key')).toMatchObject({ path: '/basis/edition' });
  });
});
