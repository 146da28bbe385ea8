import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Parsed, UnitSystem } from './index.js';
import * as q from './index.js';

const value = (r: Parsed): number => {
  if (!r.ok) throw new Error(r.message);
  return r.value;
};

// Conversion factors on the right: NIST SP 811 (2008), appendix B.8, to the digits it prints (from memory).
describe('scalar kinds', () => {
  it.each([
    [q.parseArea, '120 sq ft', 120 * 144],
    [q.parseArea, '120 sq. ft.', 120 * 144],
    [q.parseArea, '11 m2', 11 * 1550.003],
    [q.parseArea, '11 m²', 11 * 1550.003],
    [q.parseArea, '1/4 acre', 10890 * 144],
    [q.parseAreaLoad, '25 psf', 25],
    [q.parseAreaLoad, '25 PSF', 25],
    [q.parseAreaLoad, '1.2 kPa', 1200 / 47.88026],
    [q.parseAreaLoad, '1,500 lb/ft^2', 1500],
    [q.parseStress, '900 psi', 900],
    [q.parseStress, '6.2 MPa', 6.2e6 / 6894.757],
    [q.parseStress, '1,600 ksi', 1.6e6],
    [q.parseSpeed, '105 mph', 105],
    [q.parseSpeed, '47 m/s', 47 / 0.44704],
    [q.parseForce, '1800 lb', 1800],
    [q.parseForce, '1.8 kip', 1800],
    [q.parseForce, '8 kN', 8000 / 4.448222],
    [q.parseForce, '-350 lbs', -350],
    [q.parseMoment, '1,500 ft-lb', 18000],
    [q.parseMoment, '1,500 lb·ft', 18000],
    [q.parseMoment, '2 kN·m', 2000 / 0.1129848],
    [q.parseLineLoad, '150 plf', 12.5],
    [q.parseLineLoad, '2.2 kN/m', 2200 / 175.1268],
    [q.parseDensity, '110 pcf', 110],
    [q.parseDensity, '1760 kg/m3', 1760 / 16.01846],
    [q.parseSoilGradient, '100 psf/ft', 100],
    [q.parseSoilGradient, '100 psf per ft', 100],
    [q.parseSoilGradient, '15.7 kPa/m', (15.7 * 1000 * 0.3048) / 47.88026],
    [q.parsePercent, '40 %', 0.4],
    [q.parsePercent, '40%', 0.4],
    [q.parseNumber, '0.8', 0.8],
    [q.parseNumber, '-1,200', -1200],
    [q.parseSlope, '1/4 in/ft', 1 / 48],
    [q.parseSlope, '1/4" per ft', 1 / 48],
    [q.parseSlope, '2 %', 0.02],
  ] as const)('%o reads %s', (parse, text, expected) => {
    expect(Math.abs(value(parse(text)) / expected - 1)).toBeLessThan(5e-7);
  });

  it.each([
    [q.parseForce, '1800', 'no unit'],
    [q.parseForce, '1800 psf', 'not a unit of force'],
    [q.parseStress, '6 mPa', 'not a unit of stress'],
    [q.parseAreaLoad, '25 psf or so', 'not a unit'],
    [q.parseAreaLoad, 'lots', 'does not start'],
    [q.parseNumber, '5 ft', 'not expected'],
    [q.parseNumber, 'x', 'does not start'],
    [q.parsePercent, '40', 'no unit'],
    [q.parseSpeed, '', 'missing'],
    [q.parseForce, `${'9'.repeat(308)} kip`, 'too large'],
  ] as const)('%o refuses %s', (parse, text, why) => {
    const r = parse(text);
    expect(r.ok).toBe(false);
    if (!r.ok) {
      expect(r.message).toContain(why);
      expect(r.expected).toMatch(/e\.g\./);
    }
  });

  it('prints in both systems', () => {
    expect(q.formatForce(1800)).toBe('1,800 lb');
    expect(q.formatForce(1800, 'metric')).toBe('8.01 kN');
    expect(q.formatForce(-0.4)).toBe('0 lb');
    expect(q.formatForce(-1234567.5)).toBe('-1,234,568 lb');
    expect(q.formatPsf(25)).toBe('25 psf');
    expect(q.formatPsf(12.55)).toBe('12.6 psf');
    expect(q.formatPsf(25, 'metric')).toBe('1.20 kPa');
    expect(q.formatPsi(900)).toBe('900 psi');
    expect(q.formatPsi(900, 'metric')).toBe('6.21 MPa');
    expect(q.formatArea(17280)).toBe('120 sq ft');
    expect(q.formatArea(17280, 'metric')).toBe('11.15 m²');
    expect(q.formatMoment(18000)).toBe('1,500 lb-ft');
    expect(q.formatMoment(18000, 'metric')).toBe('2.03 kN·m');
    expect(q.formatSlope(1 / 48)).toBe('1/4 in/ft');
    expect(q.formatSlope(0.02)).toBe('0.24 in/ft');
    expect(q.formatSlope(1 / 48, 'metric')).toBe('2.08 %');
    expect(q.formatPercent(0.4)).toBe('40 %');
    expect(q.formatForce(1800, 'us', 1)).toBe('1,800.0 lb');
  });

  it('rounds halves away from zero, also those bent by a conversion', () => {
    expect(q.formatNumber(2.5)).toBe('3');
    expect(q.formatNumber(-2.5)).toBe('-3');
    expect(q.formatNumber(1.005, 2)).toBe('1.01');
    expect(q.formatNumber(0.045, 2)).toBe('0.05');
    expect(q.formatNumber(1e21)).toBe('1,000,000,000,000,000,000,000');
  });

  const pairs: readonly [
    (t: string) => Parsed,
    (v: number, u?: UnitSystem, d?: number) => string,
    us: number,
    si: number,
  ][] = [
    [q.parseForce, q.formatForce, 1, 1000 / 4.448222],
    [q.parseAreaLoad, q.formatPsf, 1, 1000 / 47.88026],
    [q.parseStress, q.formatPsi, 1, 1e6 / 6894.757],
    [q.parseArea, q.formatArea, 144, 1550.003],
    [q.parseMoment, q.formatMoment, 12, 1000 / 0.1129848],
    [q.parseLineLoad, q.formatLineLoad, 1 / 12, 1000 / 175.1268],
    [q.parseSpeed, q.formatSpeed, 1, 1 / 0.44704],
    [q.parseDensity, q.formatDensity, 1, 1000 / 157.0875],
    [q.parseSoilGradient, q.formatSoilGradient, 1, 1000 / 157.0875],
    [q.parsePercent, q.formatPercent, 0.01, 0.01],
  ];
  it('reads back what it printed, within half a step, in both systems', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        ([parse, format, us, si], x, d) => {
          expect(Math.abs(value(parse(format(x, 'us', d))) - x)).toBeLessThanOrEqual(us * (0.5 * 10 ** -d + 1e-7));
          expect(Math.abs(value(parse(format(x, 'metric', d))) - x)).toBeLessThanOrEqual(si * (0.5 * 10 ** -d + 1e-7));
        },
      ),
    );
  });

  it('answers any text without throwing, and never with a number that is not finite', () => {
    const parsers = [
      q.parseLength,
      q.parseForce,
      q.parseArea,
      q.parseAngle,
      q.parsePitch,
      q.parseBearing,
      q.parseNumber,
    ];
    const mess = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc
        .array(
          fc.constantFrom('1', '9', '0', '/', '-', ' ', "'", '"', '.', ',', '½', '°', 'N', 'E', 'ft', 'in', 'm', '12'),
        )
        .map((a) => a.join('')),
    );
    fc.assert(
      fc.property(mess, fc.constantFrom(...parsers), (text, parse) => {
        const r = parse(text);
        expect(r.ok ? Number.isFinite(r.value) : r.message.length > 0 && r.expected.length > 0).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
