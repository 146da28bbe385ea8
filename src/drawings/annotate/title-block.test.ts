import { describe, expect, it } from 'vitest';
import { flattenItems, SHEET_SIZES, type SheetSize } from '../ir/index.js';
import { outside, overlaps, textBoxes } from './layout.js';
import { drawingArea, type SetData, sheetFrame, stampSpace, titleBlock } from './title-block.js';

const set: SetData = {
  project: 'A covered patio with a name long enough to need a second line',
  address: ['1 Sample Street', 'Sampletown'],
  owner: 'The owner',
  parcel: '00-00-00',
  jurisdiction: 'Building department',
  preparedBy: ['The owner'],
  date: '2026-01-02',
  revisions: [{ mark: '1', date: '2026-01-01', text: 'First change, described in more words than there is room for' }],
  status: { kind: 'preliminary' },
  cautions: ['Dimensions govern. The authority having jurisdiction decides.'],
};
const sheet = { id: 'S-101', title: 'Footing and framing plan', scaleNote: 'As noted', number: 5, of: 14 };

describe('titleBlock', () => {
  const sizes = (Object.keys(SHEET_SIZES) as SheetSize[]).filter((s) => SHEET_SIZES[s].h >= 11 && s !== 'Letter');
  it.each(sizes)('%s: everything inside the border, clear of the drawing area, nothing overlapping', (size) => {
    for (const stamp of [false, true]) {
      const boxes = textBoxes(flattenItems(titleBlock(size, { ...set, stamp }, sheet)));
      expect(outside(boxes, sheetFrame(size))).toEqual([]);
      expect(overlaps(boxes)).toEqual([]);
      const room = drawingArea(size, stamp);
      for (const b of boxes) expect(b.x - b.w / 2).toBeGreaterThan(room.x + room.w);
      // An upright letter sheet gives the strip more of its width than the lying ones.
      expect(room.w / SHEET_SIZES[size].w).toBeGreaterThan(SHEET_SIZES[size].w < 9 ? 0.55 : 0.6);
    }
  });

  it('prints a long revision on two lines, and the newest where there are too many', () => {
    const rows = Array.from({ length: 6 }, (_, i) => ({
      mark: `${i + 1}`,
      date: '2026-01-01',
      text: `change ${i + 1}`,
    }));
    const words = (revisions: SetData['revisions']) =>
      textBoxes(flattenItems(titleBlock('ANSI B', { ...set, revisions }, sheet))).map((b) => b.content);
    expect(words(set.revisions).join(' ')).toMatch(/First change,.* words/);
    const many = words(rows);
    expect(many).toContain('change 6');
    expect(many).not.toContain('change 1');
  });

  it('prints PRELIMINARY – NOT FOR PERMIT exactly when the set may not be handed in', () => {
    const words = (s: SetData) => textBoxes(flattenItems(titleBlock('ARCH D', s, sheet))).map((b) => b.content);
    expect(words(set)).toEqual(expect.arrayContaining(['PRELIMINARY', 'NOT FOR PERMIT', 'S-101', '5 of 14']));
    const issued = words({ ...set, status: { kind: 'issued', purpose: 'Permit application' } });
    expect(issued).not.toContain('PRELIMINARY');
    expect(issued).toContain('Permit application');
  });

  it('keeps 3 3/4 by 5 3/4 in clear for the stamp on a large sheet', () => {
    const boxes = textBoxes(flattenItems(titleBlock('ARCH D', { ...set, stamp: true }, sheet)));
    const clear = stampSpace('ARCH D');
    expect([clear.w, clear.h]).toEqual([3.75, 5.75]);
    const inside = boxes.filter((b) => b.y + b.h / 2 > clear.y && b.x + b.w / 2 > clear.x);
    expect(inside).toEqual([]);
  });
});
