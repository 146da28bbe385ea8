import { describe, expect, it } from 'vitest';
import { flatten, type Primitive } from '../ir/index.js';
import { overlaps, textBoxes } from './layout.js';
import { placeNote, placeTags, type TagWish } from './place-tags.js';
import { styleFor } from './style.js';

const style = styleFor('ANSI B');
const wish = (text: string, x: number, y: number): TagWish => ({
  kind: 'joint',
  text,
  at: { x, y },
  off: { x: 0.4, y: 0.4 },
  layer: 'S-ANNO-SYMB',
  style,
});
const boxes = (items: readonly Primitive[], scale: number) =>
  textBoxes(
    flatten({
      id: 'S-102',
      title: '',
      discipline: 'S',
      size: 'ANSI B',
      scaleNote: '',
      items: [],
      viewports: [{ name: '', at: { x: 4, y: 4 }, from: { x: 0, y: 0 }, scale, items: [], over: items }],
    }),
  );

describe('tags on a plan', () => {
  it('stand where they wish when nothing is in the way', () => {
    const [one] = placeTags([wish('J1', 0, 0)], 1 / 96);
    expect(boxes([one!], 1 / 96)[0]).toMatchObject({ content: 'J1', angle: 0 });
    expect(boxes([one!], 1 / 96)[0]!.x).toBeCloseTo(4.4, 6);
  });

  it.each([1 / 24, 1 / 48, 1 / 96, 1 / 192])('never touch, twelve at one place at scale %s', (scale) => {
    const items = placeTags(
      Array.from({ length: 12 }, (_, i) => wish(`J${i + 1}`, 3 * (i % 3), i)),
      scale,
    );
    expect(boxes(items, scale)).toHaveLength(12);
    expect(overlaps(boxes(items, scale))).toEqual([]);
  });

  it('keep off lettering that stands there before them', () => {
    const note: Primitive = {
      kind: 'text',
      layer: 'S-ANNO-NOTE',
      at: { x: 0.4 * 48, y: 0.4 * 48 },
      content: 'nine frames at two feet',
      height: style.note,
      align: 'center',
      valign: 'middle',
    };
    const items = placeTags([wish('J1', 0, 0), wish('J2', 0, 0)], 1 / 48, [note]);
    expect(overlaps(boxes([note, ...items], 1 / 48))).toEqual([]);
  });
});

describe('a note with several ways to stand', () => {
  const at = (x: number): Primitive => ({
    kind: 'text',
    layer: 'S-ANNO-NOTE',
    at: { x, y: 0 },
    content: '1/12',
    height: style.note,
  });
  const taken: Primitive = { ...at(0), content: '10 RF2 at 1 ft 4 in' } as Primitive;

  it('takes the first that is free', () => {
    expect(placeNote([at(0), at(4 * 48), at(6 * 48)], 0.03, 1 / 48, [taken])).toMatchObject({ at: { x: 4 * 48 } });
  });

  it('takes the first when none is', () => {
    expect(placeNote([at(0), at(1)], 0.03, 1 / 48, [taken])).toMatchObject({ at: { x: 0 } });
  });
});
