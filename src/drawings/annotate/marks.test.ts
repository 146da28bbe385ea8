import { describe, expect, it } from 'vitest';
import { type FlatPath, flattenItems, SCALES, textWidth } from '../ir/index.js';
import { overlaps, textBoxes } from './layout.js';
import { gridLine, levelMark, sectionMark, slopeArrow, spread } from './marks.js';
import { styleFor } from './style.js';
import { TAGS, type TagKind, tag, tagSize } from './tags.js';
import { northArrow, scaleBar, viewTitle } from './view-title.js';

const style = styleFor('ARCH D');
const layer = 'A-ANNO-SYMB';

describe('marks', () => {
  it.each(Object.keys(TAGS) as TagKind[])('the shape of a %s tag holds its text', (kind) => {
    const flats = flattenItems([tag({ kind, text: 'T12', at: { x: 0, y: 0 }, layer, style })]);
    const half = textWidth('T12', style.note, 'condensed-bold') / 2;
    const size = tagSize(kind, 'T12', style);
    expect(size.w).toBeGreaterThan(half);
    expect(flats[0]).toMatchObject({ fill: 'paper', mark: 'T12' });
  });

  it('a scale bar is true to its scale', () => {
    // 3/8 in to the foot: parts of 2 ft are 3/4 in long, four of them 3 in.
    const bar = scaleBar({ at: { x: 0, y: 0 }, scale: SCALES['3/8'], style });
    expect(bar.width).toBeCloseTo(3, 9);
    expect(textBoxes(flattenItems(bar.items)).map((b) => b.content)).toEqual(['0', '2', '4', '6', '8 ft']);
    for (const s of Object.values(SCALES))
      expect(overlaps(textBoxes(flattenItems(scaleBar({ at: { x: 0, y: 0 }, scale: s, style }).items)))).toEqual([]);
  });

  it('the flag of a section mark lies on the side looked at', () => {
    const flags = (look: 1 | -1) =>
      (
        flattenItems(
          sectionMark({ a: { x: 0, y: 0 }, b: { x: 5, y: 0 }, look, number: 'A', sheet: 'A-301', layer, style }),
        ) as FlatPath[]
      )
        .filter((f) => f.fill === 'ink')
        .map((f) => Math.sign(f.strokes[0]!.filter((_, i) => i % 2 === 1).reduce((a, b) => a + b, 0)));
    expect(flags(1)).toEqual([1, 1]);
    expect(flags(-1)).toEqual([-1, -1]);
  });

  it('the bubble of a grid line lies beyond its end', () => {
    const circle = flattenItems(
      gridLine({ a: { x: 0, y: 0 }, b: { x: 0, y: 4 }, label: '3', layer: 'S-GRID', style }),
    ).find((f) => f.kind === 'arc')!;
    expect(circle.kind === 'arc' && circle.y - circle.r).toBeCloseTo(4, 9);
  });

  it('north turns counter-clockwise from up', () => {
    const n = textBoxes(flattenItems([northArrow({ at: { x: 0, y: 0 }, angle: Math.PI / 2, style })]))[0]!;
    expect(n.x).toBeLessThan(-0.2);
    expect(Math.abs(n.y)).toBeLessThan(1e-9);
  });

  it('no mark is upside down or overlaps itself', () => {
    for (const angle of [0, 1, 2, 3, -1, -2, -Math.PI / 2]) {
      const text = textBoxes(
        flattenItems([slopeArrow({ at: { x: 0, y: 0 }, angle, text: '1/4" per ft', layer, style })]),
      )[0]!;
      expect(Math.cos(text.angle)).toBeGreaterThan(-1e-6);
      const s = textBoxes(
        flattenItems(
          spread({ a: { x: 0, y: 0 }, b: { x: 5 * Math.cos(angle), y: 5 * Math.sin(angle) }, text: 'x', layer, style }),
        ),
      )[0]!;
      expect(Math.cos(s.angle)).toBeGreaterThan(-1e-6);
    }
    const level = levelMark({
      at: { x: 0, y: 0 },
      side: 'left',
      name: 'Top of plate',
      value: `+8'-1 1/8"`,
      layer,
      style,
    });
    expect(overlaps(textBoxes(flattenItems([level])))).toEqual([]);
    const title = viewTitle({ at: { x: 0, y: 0 }, number: '12', title: 'Section', scale: `1/4" = 1'-0"`, style });
    expect(overlaps(textBoxes(flattenItems(title.items)))).toEqual([]);
  });
});
