import { describe, expect, it } from 'vitest';
import { editText, read, starter, treeOf } from '../../../src/index.js';
import { boxEdits, boxOf } from './lot-box.js';

describe('a lot from four distances', () => {
  const text = starter('gable-free');
  const tree = treeOf(text);
  it('reads the starter’s lot', () => {
    expect(boxOf(tree)).toEqual({ width: 1200, depth: 1800, rear: 900, left: 336 });
  });
  it('writes what it then reads, and the lot closes', () => {
    const want = { width: 1080, depth: 1500, rear: 612, left: 240 };
    const next = editText(text, boxEdits(tree, want, 'us')).value!;
    expect(boxOf(treeOf(next))).toEqual(want);
    expect(read(next).issues.filter((i) => i.severity === 'error')).toEqual([]);
  });
  it('leaves a surveyed lot alone', () => {
    const odd = editText(text, [{ path: '/lot/courses/0/bearing', value: 'N 88°00\'00" E' }]).value!;
    expect(boxOf(treeOf(odd))).toBeUndefined();
  });
});
