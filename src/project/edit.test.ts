import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editText, treeOf } from './edit.js';
import { read } from './read.js';
import { starter } from './starter/index.js';

const BASE = '{\n  "eavewright": 1,\n  // keep me\n  "a": { "b": [1, 2, 3], "c": "x" }, // and me\n  "d": {}\n}\n';
const edit = (path: string, value?: unknown, text = BASE) =>
  editText(text, [value === undefined ? { path } : { path, value }]).value;

describe('editText', () => {
  it('rewrites one value and leaves comments and order alone', () => {
    expect(edit('/a/c', 'y "q"')).toBe(BASE.replace('"x"', '"y \\"q\\""'));
  });
  it('adds a key, an item and a key in an empty object', () => {
    expect(edit('/a/e', true)).toContain('"c": "x", "e": true }');
    expect(edit('/a/b/-', 4)).toContain('[1, 2, 3, 4]');
    expect(edit('/d/x', 1)).toContain('"d": { "x": 1 }');
  });
  it('makes objects and lists on the way', () => {
    expect(treeOf(edit('/d/list/-', 1)!)).toMatchObject({ d: { list: [1] } });
    expect(treeOf(edit('/d/x/y', 1)!)).toMatchObject({ d: { x: { y: 1 } } });
  });
  it('takes out a key and an item with their commas', () => {
    expect(edit('/a/c')).toContain('"a": { "b": [1, 2, 3] }');
    expect(edit('/a/b/0')).toContain('[ 2, 3]');
    expect(edit('/a/zz')).toBe(BASE);
  });
  it('refuses places that cannot be', () => {
    expect(editText(BASE, [{ path: '/a/c/deep', value: 1 }]).issues[0]?.code).toBe('unknown-place');
    expect(editText(BASE, [{ path: '/a/b/9', value: 1 }]).issues[0]?.code).toBe('unknown-place');
    expect(editText('{', [{ path: '/a', value: 1 }]).issues[0]?.code).toBe('syntax');
  });
  it('changes a starter and the reader sees the new value', () => {
    const text = editText(starter('shed-free'), [
      { path: '/basis/wind/speed', value: { value: '115 mph', from: 'county sheet' } },
      { path: '/cover/beams/0/posts/1/at', value: '9 ft' },
    ]).value!;
    const p = read(text).value!;
    expect(p.basis.wind.speed).toMatchObject({ value: 115, state: 'given', from: 'county sheet' });
    expect(p.cover.beams[0]!.posts[1]!.at).toBe(108);
    expect(text).toContain('// Year-month-day');
  });
  it('any JSON value put in is read back (property)', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('/a/c', '/a/new', '/a/b/1', '/a/b/-'), (v, path) => {
        fc.pre(!JSON.stringify(v).includes('__proto__'));
        const out = edit(path, v)!;
        const at = path.replace('/-', '/3').split('/').slice(1);
        const got = at.reduce<unknown>((o, k) => (o as Record<string, unknown>)[k], treeOf(out));
        expect(JSON.stringify(got)).toBe(JSON.stringify(v));
      }),
    );
  });
});

describe('an older file', () => {
  it('is written in the present format first', () => {
    const text = editText(readFileSync(join(import.meta.dirname, 'upgrade/files/0000.txt'), 'utf8'), [
      { path: '/job/title', value: 'New name' },
    ]).value!;
    expect(read(text).value?.job.title).toBe('New name');
  });
});
