import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from './nearest.js';

describe('edit distance', () => {
  it('counts inserted, deleted, replaced and swapped letters', () => {
    // kitten → sitting is the textbook example: 3. A swap of neighbours counts one (optimal string alignment).
    expect([
      editDistance('kitten', 'sitting'),
      editDistance('', 'abc'),
      editDistance('spacign', 'spacing'),
      editDistance('a', 'a'),
    ]).toEqual([3, 3, 1, 0]);
  });
});

describe('nearest', () => {
  it('looks past case, blanks and dashes', () =>
    expect(nearest('Standing Seam Metal', ['ribbed-metal', 'standing-seam-metal'])).toBe('standing-seam-metal'));
  it('stays silent when nothing is near', () => expect(nearest('banana', ['x', 'rafter'])).toBeUndefined());
});
