import { describe, expect, it } from 'vitest';
import { chunks, paragraphText, plainText, spelled, widthFactor } from './lettering.js';

describe('letters', () => {
  it.each([
    [`12'-6 ½"`, `12'-6 1/2"`],
    [`8 ⁷⁄₁₆"`, `8 7/16"`],
    ['3½/12', '3 1/2/12'],
    ['¹¹⁄₃₂"', '11/32"'],
    ['5⁵⁄₁₆', '5 5/16'],
    ['533.9 in⁴', '533.9 in^4'],
    ['10⁻³ of 12²', '10⁻³ of 12²'],
  ])('spells the fractions and high powers of %s', (from, to) => {
    expect(spelled(from)).toBe(to);
  });

  it('keeps other letters as they are: the file is UTF-8', () => {
    expect(plainText('plant’s “α” – 4 × 6 ≤ √2 · 30°')).toBe('plant’s “α” – 4 × 6 ≤ √2 · 30°');
  });

  it('lets nothing in a text start a code or a tag of its own', () => {
    expect(plainText('a\r\n  0\r\nEOF')).toBe('a   0 EOF');
    expect(plainText('x^2 and 5 %%d')).toBe('x^ 2 and 5 %%%%%%d');
    expect(plainText('C:\\U+0041')).toBe('C:/U+0041');
    expect(paragraphText('{a\\P}')).toBe('\\{a\\\\P\\}');
  });

  it('cuts long texts without losing a letter or halving one', () => {
    const long = '𝜋 and more. '.repeat(60);
    const parts = chunks(long);
    expect(parts.join('')).toBe(long);
    for (const p of parts) expect(Buffer.byteLength(p, 'utf8')).toBeLessThanOrEqual(250);
    expect(parts.filter((p) => /^[\udc00-\udfff]|[\ud800-\udbff]$/.test(p))).toEqual([]);
  });

  it('squeezes a condensed face more than a regular one, and never beyond reading', () => {
    const words = 'Footing centers along the house';
    expect(widthFactor(words, 0.1, 'condensed')).toBeLessThan(widthFactor(words, 0.1, 'regular'));
    for (const face of ['regular', 'bold', 'condensed', 'condensed-bold'] as const) {
      expect(widthFactor(words, 0.1, face)).toBeGreaterThan(0.7);
      expect(widthFactor(words, 0.1, face)).toBeLessThan(1.2);
    }
    expect(widthFactor(words, 0.1, 'regular')).toBe(widthFactor(words, 4.8, 'regular'));
  });
});
