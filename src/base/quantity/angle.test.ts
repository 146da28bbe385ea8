import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatAngle, formatBearing, formatPitch, type Parsed, parseAngle, parseBearing, parsePitch } from './index.js';

const value = (r: Parsed): number => {
  if (!r.ok) throw new Error(r.message);
  return r.value;
};
const deg = Math.PI / 180;

describe('pitch', () => {
  it.each([
    ['7/12', 7],
    ['7:12', 7],
    ['7 : 12', 7],
    ['7 in 12', 7],
    ['3.5/12', 3.5],
    ['3 1/2/12', 3.5],
    ['3½/12', 3.5],
    ['1/2:12', 0.5],
    ['0/12', 0],
    ['30°', 12 * Math.tan(30 * deg)],
    ['30 deg', 12 * Math.tan(30 * deg)],
  ])('reads %s', (text, rise) => expect(12 * Math.tan(value(parsePitch(text)))).toBeCloseTo(rise, 12));

  it.each(['7', '7/10', '1/4', '7-12', '7/12 pitch', '-3/12', '-5°', '90°', 'steep', '', '1/4 in/ft', 'x/12'])(
    'refuses %s',
    (text) => expect(parsePitch(text)).toMatchObject({ ok: false, expected: expect.stringContaining('7/12') }),
  );

  it('prints the rise over 12', () => {
    expect(formatPitch(Math.atan(7 / 12))).toBe('7/12');
    expect(formatPitch(value(parsePitch('3 1/2/12')))).toBe('3.5/12');
    expect(formatPitch(0)).toBe('0/12');
  });

  it('reads back within half a hundredth of an inch', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (rise) => {
        const back = 12 * Math.tan(value(parsePitch(formatPitch(Math.atan(rise / 12)))));
        expect(Math.abs(back - rise)).toBeLessThanOrEqual(0.005 + 1e-9);
      }),
    );
  });
});

describe('angle', () => {
  it.each([
    ['30 deg', 30],
    ['30°', 30],
    ['-30.5 degrees', -30.5],
    [`30°15'36"`, 30.26],
    [`30° 15.5'`, 30 + 15.5 / 60],
    ['.5 rad', 0.5 / deg],
  ])('reads %s', (text, d) => expect(value(parseAngle(text)) / deg).toBeCloseTo(d, 10));
  it.each(['30', '30 15', `30°60'`, `30°15.5'10"`, `30°123"x`, '30° up', 'rad', '1/0 rad'])('refuses %s', (text) =>
    expect(parseAngle(text)).toMatchObject({ ok: false }),
  );
  it('prints', () => {
    expect(formatAngle(30 * deg)).toBe('30°');
    expect(formatAngle(-30.26 * deg)).toBe('-30.3°');
  });
});

describe('bearing', () => {
  it.each([
    [`N 89°12'30" E`, 89 + 12.5 / 60],
    ['N 89°12′30″ E', 89 + 12.5 / 60],
    ['n89-12-30e', 89 + 12.5 / 60],
    ['N 89 12 30 E', 89 + 12.5 / 60],
    ['N 45 E', 45],
    ['North 45.5° West', 314.5],
    [`S 0°30' E`, 179.5],
    ['S 10 W', 190],
    ['N 0 W', 0],
    ['N 90 E', 90],
    ['due north', 0],
    ['Due East', 90],
    ['SOUTH', 180],
    ['due w', 270],
  ])('reads %s', (text, d) => expect(value(parseBearing(text)) / deg).toBeCloseTo(d, 10));

  it.each([
    '45',
    'N 91 E',
    'E 45 N',
    'N E',
    `N 45°60' E`,
    `N 45°10'60" E`,
    'N 45 E of here',
    'due up',
    '',
    'N -5 E',
    `N 89°123" E`,
  ])('refuses %s', (text) =>
    expect(parseBearing(text)).toMatchObject({ ok: false, expected: expect.stringContaining('N 89°12') }),
  );

  it('prints with seconds carried', () => {
    expect(formatBearing((89 + 12.5 / 60) * deg)).toBe(`N 89°12'30" E`);
    expect(formatBearing(185.0875 * deg)).toBe(`S 5°05'15" W`);
    expect(formatBearing((45 - 0.1 / 3600) * deg)).toBe(`N 45°00'00" E`);
    expect(formatBearing((90 - 0.1 / 3600) * deg)).toBe('due east');
    expect(formatBearing(-0.1 * (deg / 3600))).toBe('due north');
    expect(formatBearing(-45 * deg)).toBe(`N 45°00'00" W`);
  });

  it('reads back within half a second of arc', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, maxExcluded: true, noNaN: true }), (d) => {
        const text = formatBearing(d * deg);
        expect(text).not.toMatch(/60['"]/);
        const gap = Math.abs(value(parseBearing(text)) / deg - d);
        expect(Math.min(gap, 360 - gap)).toBeLessThanOrEqual((0.5 + 1e-6) / 3600);
      }),
    );
  });
});
