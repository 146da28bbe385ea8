import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { metricsOf, runs } from '../../../scripts/font-metrics.js';
import { FACE_NAMES, FACES } from './faces.js';
import { METRICS } from './metrics.generated.js';
import { emSize, faceRuns, missingGlyphs, textWidth, wrapText } from './text.js';

/** What sheets letter: ASCII, fractions, exponents, indices, and the signs of calculation. */
const DRAFTING = `${Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).join('')}½¼¾⅛⅜⅝⅞⅓⅔⁄⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉°±×÷−Ø≤≥≈≠√ΣΔφγθλμσψω→′″·–—’‘“”•§`;

describe('text metrics', () => {
  it.each(FACE_NAMES)('table of %s equals the font file', (name) => {
    const file = new URL(`../../../assets/fonts/${FACES[name].file}`, import.meta.url).pathname;
    const m = metricsOf(file);
    expect(METRICS[name].runs).toEqual(runs(m.widths));
    expect({ ...METRICS[name], runs: [] }).toEqual({ ...m, widths: undefined, runs: [] });
    expect(readFileSync(file).length).toBeGreaterThan(50_000);
  });

  it.each(FACE_NAMES)('%s draws every character that sheets use', (name) => {
    expect(missingGlyphs(DRAFTING, name)).toEqual([]);
  });

  it('reports what no face draws, once each', () => {
    expect(missingGlyphs('a☐b☐漢', 'condensed')).toEqual(['☐', '漢']);
  });

  it('height is the height of a capital', () => {
    // 698/1000 em is the cap height in the font's OS/2 table, asserted against the file above.
    expect(emSize(0.125)).toBeCloseTo(0.125 / 0.698, 12);
  });

  it('width is the sum of the advances, a fallback face included', () => {
    expect(textWidth('00', 0.698)).toBeCloseTo(1.2, 12);
    expect(textWidth('Δ', 1, 'condensed')).toBeCloseTo(textWidth('Δ', 1, 'regular'), 12);
    expect(faceRuns('a Δ b', 'condensed')).toEqual([
      { face: 'condensed', text: 'a ' },
      { face: 'regular', text: 'Δ' },
      { face: 'condensed', text: ' b' },
    ]);
  });
});

describe('wrapText', () => {
  it('keeps every line within the measure and loses no word', () => {
    const text = 'Bottoms of footings bear on undisturbed soil; no loose earth, water or frost. 2-1/2" x 11-7/8"';
    const lines = wrapText(text, 1.6, 0.125);
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) expect(textWidth(line, 0.125)).toBeLessThanOrEqual(1.6);
    expect(lines.join(' ')).toBe(text);
  });
  it('breaks at line feeds, keeps empty lines, cuts a word that is too long', () => {
    expect(wrapText('a\n\nb', 9, 0.125)).toEqual(['a', '', 'b']);
    expect(wrapText('', 9, 0.125)).toEqual(['']);
    const cut = wrapText('ledger-to-studfastener', 0.9, 0.125);
    expect(cut[0]).toBe('ledger-to-');
    expect(cut.join('')).toBe('ledger-to-studfastener');
  });
});
