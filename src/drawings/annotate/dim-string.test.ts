import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenItems, place } from '../ir/index.js';
import { alignedDimension, chainOf, dimString } from './dim-string.js';
import { feetInches, roundTo } from './feet-inches.js';
import { overlaps, textBoxes } from './layout.js';
import { styleFor } from './style.js';

const style = styleFor('ARCH D');
const station = fc.double({ min: -500, max: 500, noNaN: true });

describe('feetInches', () => {
  it.each([
    [147.5, `12'-3 1/2"`],
    [168, `14'-0"`],
    [7.25, '7 1/4"'],
    [0.0625, '1/16"'],
    [0, '0"'],
    [11.99, `1'-0"`],
    [-3.5, '-3 1/2"'],
    [-0.001, '0"'],
    [12.375, `1'-0 3/8"`],
  ])('%f in is %s', (value, text) => expect(feetInches(value)).toBe(text));

  it('reads back to the value rounded to 1/16', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), (v) => {
        const [, feet = '0', whole = '0', top, bottom] =
          /^(?:(\d+)'-)?(?:(\d+)(?= |"))? ?(?:(\d+)\/(\d+))?"$/.exec(feetInches(v)) ?? [];
        const read = Number(feet) * 12 + Number(whole) + (top === undefined ? 0 : Number(top) / Number(bottom));
        expect(read).toBeCloseTo(roundTo(v), 9);
      }),
    );
  });
});

describe('dimension chains', () => {
  it('add up exactly, whatever the stations, and every value is within 1/16 of the truth', () => {
    fc.assert(
      fc.property(fc.array(station, { minLength: 2, maxLength: 20 }), (stations) => {
        const chain = chainOf(stations, Math.min(...stations));
        expect(chain.values.reduce((a, b) => a + b, 0)).toBe(chain.overall);
        for (let i = 0; i < chain.values.length; i++) {
          expect(Math.abs(chain.values[i]! - (chain.at[i + 1]! - chain.at[i]!))).toBeLessThanOrEqual(1 / 16 + 1e-9);
          expect(chain.values[i]).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('rounding each length alone would not close: thirds of 100 inches', () => {
    const chain = chainOf([0, 100 / 3, 200 / 3, 100], 0);
    expect(chain.values).toEqual([33.3125, 33.375, 33.3125]);
    expect(chain.overall).toBe(100);
    expect(3 * roundTo(100 / 3)).not.toBe(100);
  });

  it('inner tiers add up to the overall tier', () => {
    fc.assert(
      fc.property(fc.array(station, { minLength: 3, maxLength: 12 }), (stations) => {
        const [lo, hi] = [Math.min(...stations), Math.max(...stations)];
        if (hi - lo < 1) return;
        const d = dimString({
          side: 'below',
          datum: 0,
          tiers: [{ stations }, { stations: [lo, hi] }],
          scale: 1 / 48,
          layer: 'S-ANNO-DIMS',
          style,
        });
        expect(d.chains[0]!.values.reduce((a, b) => a + b, 0)).toBe(d.chains[1]!.overall);
      }),
    );
  });
});

describe('dimString', () => {
  const sides = ['above', 'below', 'left', 'right'] as const;
  it.each(sides)('%s: texts never overlap, however short the segments', (side) => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1, max: 60, noNaN: true }), { minLength: 1, maxLength: 14 }), (gaps) => {
        const stations = [0];
        for (const g of gaps) stations.push(stations.at(-1)! + g);
        const d = dimString({
          side,
          datum: 0,
          tiers: [{ stations }, { stations: [0, stations.at(-1)!] }],
          scale: 1 / 48,
          layer: 'S-ANNO-DIMS',
          style,
        });
        const flats = place({ name: '', at: { x: 5, y: 5 }, from: { x: 0, y: 0 }, scale: 1 / 48, items: d.items });
        expect(overlaps(textBoxes(flats))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('stands outside the datum on its side, within its depth', () => {
    for (const side of sides) {
      const d = dimString({
        side,
        datum: 48,
        tiers: [{ stations: [0, 6, 12, 96] }, { stations: [0, 96] }],
        scale: 1 / 48,
        layer: 'S-ANNO-DIMS',
        style,
      });
      const boxes = textBoxes(
        place({ name: '', at: { x: 0, y: 0 }, from: { x: 0, y: 0 }, scale: 1 / 48, items: d.items }),
      );
      const out = side === 'above' || side === 'right' ? 1 : -1;
      for (const b of boxes) {
        const across = side === 'above' || side === 'below' ? b.y : b.x;
        expect((across - 1) * out).toBeGreaterThan(0);
        expect((across - 1) * out).toBeLessThan(d.depth + 1e-9);
      }
    }
  });

  it('carries value and pointer, and takes a label in place of the text', () => {
    const d = dimString({
      side: 'above',
      datum: 0,
      tiers: [{ stations: [0, 120], labels: ['verify'], paths: ['/patio/width'] }],
      scale: 1 / 48,
      layer: 'A-ANNO-DIMS',
      style,
    });
    expect(d.items[0]).toMatchObject({ value: 120, text: 'verify', path: '/patio/width' });
  });

  it('a tier without two stations draws nothing', () => {
    const d = dimString({
      side: 'above',
      datum: 0,
      tiers: [{ stations: [5, 5.001] }],
      scale: 1,
      layer: 'A-ANNO-DIMS',
      style,
    });
    expect([d.items.length, d.depth]).toEqual([0, 0]);
  });

  it('lettering reads from the bottom or the right, whichever way a line runs', () => {
    for (let k = 0; k < 16; k++) {
      const a = (k * Math.PI) / 8;
      const d = alignedDimension({
        a: { x: 0, y: 0 },
        b: { x: 9 * Math.cos(a), y: 9 * Math.sin(a) },
        offset: 1,
        layer: 'C-ANNO-DIMS',
        style,
        scale: 1,
      });
      const text = flattenItems([d]).find((f) => f.kind === 'text')!;
      expect(text.kind === 'text' && text.angle > -Math.PI / 2 + 1e-9 && text.angle <= Math.PI / 2 + 1e-6).toBe(true);
    }
  });
});
