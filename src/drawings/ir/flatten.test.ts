import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipArea, clipPath, clipSegment } from './clip.js';
import { type FlatArc, type FlatPath, type FlatText, flattenItems, place } from './flatten.js';
import type { Primitive } from './primitive.js';
import { centeredViewport, toModel, toPaper, type Viewport } from './sheet.js';

const view = (items: readonly Primitive[], more: Partial<Viewport> = {}): Viewport => ({
  name: 'v',
  at: { x: 10, y: 5 },
  from: { x: 24, y: 12 },
  scale: 1 / 48,
  items,
  ...more,
});

describe('place', () => {
  it('scales geometry and leaves lettering at paper size', () => {
    const [line, text] = place(
      view([
        { kind: 'line', layer: 'S-BEAM', pen: 'new', a: { x: 24, y: 12 }, b: { x: 72, y: 12 } },
        { kind: 'text', layer: 'S-ANNO-NOTE', at: { x: 24, y: 60 }, content: 'B1', height: 0.125 },
      ]),
    ) as [FlatPath, FlatText];
    expect(line.strokes).toEqual([[10, 5, 11, 5]]);
    expect([text.x, text.y, text.height]).toEqual([10, 6, 0.125]);
  });

  it('keeps symbols in paper inches and hands them the mark', () => {
    const [c] = place(
      view([
        {
          kind: 'symbol',
          layer: 'S-ANNO-SYMB',
          at: { x: 24, y: 12 },
          angle: Math.PI / 2,
          mark: 'F1',
          items: [{ kind: 'circle', layer: 'S-ANNO-SYMB', center: { x: 1, y: 0 }, radius: 0.2, pen: 'symbol' }],
        },
      ]),
    ) as [FlatArc];
    expect(c.x).toBeCloseTo(10, 12);
    expect(c.y).toBeCloseTo(6, 12);
    expect(c.r).toBe(0.2);
    expect(c.mark).toBe('F1');
  });

  it('clips items to the window, never what lies over', () => {
    const long: Primitive = { kind: 'line', layer: 'A-ROOF', pen: 'new', a: { x: -100, y: 12 }, b: { x: 200, y: 12 } };
    const out = place(view([long], { window: { x: 0, y: 0, w: 96, h: 48 }, over: [long] })) as FlatPath[];
    expect(out[0]!.strokes[0]).toEqual([9.5, 5, 11.5, 5]);
    expect(out[1]!.strokes[0]![0]).toBeLessThan(9);
  });

  it('draws masked lettering after every line of its viewport', () => {
    const out = place(
      view([
        { kind: 'text', layer: 'A-ANNO-NOTE', at: { x: 0, y: 0 }, content: 'over', height: 0.1, mask: true },
        { kind: 'line', layer: 'A-ROOF', pen: 'new', a: { x: 0, y: 0 }, b: { x: 9, y: 9 } },
      ]),
    );
    expect(out.map((f) => f.kind)).toEqual(['path', 'path', 'text']);
    expect((out[1] as FlatPath).fill).toBe('paper');
  });

  it('toModel undoes toPaper', () => {
    const v = centeredViewport({
      name: 'x',
      box: { x: 1, y: 2, w: 8, h: 6 },
      model: { x: -30, y: 0, w: 300, h: 120 },
      scale: 1 / 48,
      items: [],
    });
    expect(toPaper(v, { x: 120, y: 60 })).toEqual({ x: 5, y: 5 });
    const back = toModel(v, toPaper(v, { x: 17, y: -3 }));
    expect(back.x).toBeCloseTo(17, 9);
    expect(back.y).toBeCloseTo(-3, 9);
  });

  it('middle and top lettering hang from their point by the cap height', () => {
    const y = (valign: 'baseline' | 'middle' | 'top') =>
      (
        flattenItems([
          { kind: 'text', layer: 'G-ANNO-NOTE', at: { x: 0, y: 1 }, content: 'A', height: 0.2, valign },
        ])[0] as FlatText
      ).y;
    expect([y('baseline'), y('middle'), y('top')]).toEqual([1, 0.9, 0.8]);
  });
});

describe('clipping', () => {
  const r = { x: 0, y: 0, w: 10, h: 5 };
  it('a segment in, out, across, and touching nothing', () => {
    expect(clipSegment(1, 1, 2, 2, r)).toEqual([1, 1, 2, 2]);
    expect(clipSegment(-5, 2, 15, 2, r)).toEqual([0, 2, 10, 2]);
    expect(clipSegment(-5, 6, 15, 6, r)).toBeUndefined();
  });
  it('an open path comes back in pieces', () => {
    expect(clipPath([-1, 1, 5, 1, 5, 7, 6, 7, 6, 1], r)).toEqual([
      [0, 1, 5, 1, 5, 5],
      [6, 5, 6, 1],
    ]);
  });
  it('clipped areas and paths never leave the window', () => {
    const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 9 }), (points) => {
        const path = points.flat();
        for (const s of [clipArea(path, r), ...clipPath(path, r)]) {
          for (let i = 0; i < s.length; i += 2) {
            expect(s[i]! >= -1e-9 && s[i]! <= 10 + 1e-9 && s[i + 1]! >= -1e-9 && s[i + 1]! <= 5 + 1e-9).toBe(true);
          }
        }
      }),
    );
  });
});
