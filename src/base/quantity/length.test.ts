import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, parseLength } from './index.js';

const inches = (text: string): number => {
  const r = parseLength(text);
  if (!r.ok) throw new Error(r.message);
  return r.value;
};

describe('parseLength', () => {
  it.each([
    [`12'-6 1/2"`, 150.5],
    [`12' 6-1/2"`, 150.5],
    [`12'6.5"`, 150.5],
    [`12' - 6 1/2"`, 150.5],
    [`12'`, 144],
    [`12'-0"`, 144],
    [`12'-1/2"`, 144.5],
    ['12’ 6½”', 150.5],
    ['12′ 6″', 150],
    ['12′-6 ½″', 150.5],
    [`6 ⁵⁄₁₆"`, 6.3125],
    [`6⁵⁄₁₆"`, 6.3125],
    [`¼"`, 0.25],
    [`6-⅛"`, 6.125],
    [`6 1/2"`, 6.5],
    [`6 1/2''`, 6.5],
    ['6-1/2 in', 6.5],
    ['6 in.', 6],
    ['150 1/2 in', 150.5],
    ['12.5 ft', 150],
    ['12 1/2 ft', 150],
    ['12 ft 6 in', 150],
    ['12ft6in', 150],
    ['12 ft.-6 in.', 150],
    ['12 FEET 6 INCHES', 150],
    ['1,200 ft', 14400],
    ['3.81 m', 150],
    ['381 cm', 150],
    ['3810 mm', 150],
    ['3,810 mm', 150],
    [`-2'-3"`, -27],
    ['−2′-3″', -27],
    ['-6 1/2"', -6.5],
    [`-0"`, 0],
  ])('reads %s as %d in exactly', (text, value) => expect(inches(text)).toBe(value));

  it.each([
    ['12', 'has no unit'],
    ['12 1/2', 'has no unit'],
    ['', 'missing'],
    ['  ', 'missing'],
    ['wide', 'does not start with a number'],
    ['12 furlongs', 'not a unit'],
    ['12 constructor', 'not a unit'],
    [`12'-6" wide`, 'not an inch mark'],
    [`12'-6`, 'no inch mark'],
    [`12'-12"`, 'less than 12'],
    [`12.5' 6"`, 'whole'],
    [`.5' 6"`, 'whole'],
    [`12' wide`, 'does not start'],
    [`12'-`, 'missing'],
    [`6 3/2"`, 'less than one'],
    [`1/0"`, 'zero'],
    ['3,81 m', 'commas'],
    ['1,2345 m', 'commas'],
    ['--5 in', 'does not start'],
    ['1e3 in', 'not a unit'],
    [`${'9'.repeat(400)} ft`, 'too large'],
    [`1${'0'.repeat(308)} m`, 'too large'],
    ['Infinity ft', 'does not start'],
    ['NaN', 'does not start'],
  ])('refuses %s', (text, why) => {
    const r = parseLength(text);
    expect(r.ok).toBe(false);
    if (r.ok) return;
    expect(r.message).toContain(why);
    expect(r.expected).toContain(`12'-6 1/2"`);
  });
});

describe('formatLength', () => {
  it.each([
    [150.5, `12'-6 1/2"`],
    [144, `12'-0"`],
    [144.5, `12'-0 1/2"`],
    [11.99, `1'-0"`],
    [143.97, `12'-0"`],
    [6.5, `6 1/2"`],
    [0.5, `1/2"`],
    [0, `0"`],
    [-0.01, `0"`],
    [-27, `-2'-3"`],
    [1 / 32, `1/16"`],
    [-1 / 32, `-1/16"`],
  ])('prints %d as %s', (value, text) => expect(formatLength(value)).toBe(text));

  it('has true fractions for drawings', () => {
    expect(formatLength(150.5, { glyphs: true })).toBe(`12'-6 ½"`);
    expect(formatLength(5 / 16, { glyphs: true })).toBe('⁵⁄₁₆"');
    expect(formatLength(11 / 32, { glyphs: true, denominator: 32 })).toBe('¹¹⁄₃₂"');
  });

  it('prints sizes in inches, survey distances in decimal feet, and metric', () => {
    expect(formatLength(150.5, { style: 'inches' })).toBe(`150 1/2"`);
    expect(formatLength(750, { style: 'survey' })).toBe(`62.50'`);
    expect(formatLength(150, { units: 'metric' })).toBe('3810 mm');
    expect(formatLength(150, { units: 'metric', style: 'survey' })).toBe('3.810 m');
  });

  it('refuses what is not a number: a fault of ours', () => {
    expect(() => formatLength(Number.NaN)).toThrow(RangeError);
  });

  const length = fc.double({ min: -50_000, max: 50_000, noNaN: true });
  const style = fc.constantFrom('building' as const, 'inches' as const, 'survey' as const);

  it('reads back within half a step', () => {
    fc.assert(
      fc.property(length, style, fc.constantFrom(1, 2, 4, 8, 16, 32, 64), fc.boolean(), (x, s, denominator, glyphs) => {
        const step = s === 'survey' ? 0.12 : 1 / denominator;
        expect(Math.abs(inches(formatLength(x, { style: s, denominator, glyphs })) - x)).toBeLessThanOrEqual(
          step / 2 + 1e-8,
        );
        const metric = inches(formatLength(x, { style: s, units: 'metric' }));
        expect(Math.abs(metric - x)).toBeLessThanOrEqual(0.5 / 25.4 + 1e-8);
      }),
    );
  });

  it('never prints twelve inches after feet, nor feet of nothing, and is symmetric', () => {
    fc.assert(
      fc.property(length, fc.constantFrom(1, 4, 16), (x, denominator) => {
        const text = formatLength(x, { denominator });
        expect(text).not.toMatch(/'-1[2-9]/);
        expect(text).not.toMatch(/^-?0'/);
        const bare = text.replace(/^-/, '');
        expect(formatLength(-x, { denominator })).toBe(text === bare && bare !== '0"' ? `-${bare}` : bare);
      }),
    );
  });

  it('prints marks on the sixteenth grid exactly', () => {
    fc.assert(fc.property(fc.integer({ min: -99_999, max: 99_999 }), (n) => inches(formatLength(n / 16)) === n / 16));
  });
});
