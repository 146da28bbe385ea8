import type { Radians } from '../units.js';
import { formatMixed } from './length.js';
import { bad, good, normalise, type Parsed, parseNumber, quoted, scanSign, signed, type UnitSystem } from './number.js';
import { formatNumber, roundHalfUp } from './round.js';
import { parseScalar, type ScalarKind, unitTable } from './scalar.js';

const DEGREE = Math.PI / 180;

const ANGLE_EXPECTED = `degrees, e.g. "30°", "30 deg" or 30°15'00"`;
const DECIMAL_DEGREES = /^(\d+(?:\.\d+)?|\.\d+) ?(?:°|deg(?:rees?)?\.?)$/i;
const BARE_DEGREES = /^(\d+(?:\.\d+)?)$/;
const SEXAGESIMAL = /^(\d+)(?: ?(?:°|deg\.?|-) ?| )(\d+(?:\.\d+)?)(?:(?: ?['-] ?| )(\d+(?:\.\d+)?) ?"?| ?')?$/i;

/** Unsigned degrees of `89°12'30"`, `89-12-30`, `45.5°`; `bareOk` lets `45` stand alone. */
function degrees(s: string, bareOk: boolean): { readonly value: number } | { readonly fault: string } {
  const plain = DECIMAL_DEGREES.exec(s) ?? (bareOk ? BARE_DEGREES.exec(s) : null);
  if (plain) return { value: Number(plain[1]) };
  const m = bareOk || /°|deg/i.test(s) ? SEXAGESIMAL.exec(s) : null;
  if (!m) return { fault: BARE_DEGREES.test(s) ? 'the angle has no unit' : 'this is not an angle' };
  const minutes = Number(m[2]);
  const seconds = Number(m[3] ?? 0);
  if (m[3] !== undefined && m[2]!.includes('.')) return { fault: 'minutes must be whole when seconds follow' };
  if (minutes >= 60 || seconds >= 60) return { fault: 'minutes and seconds run from 0 to less than 60' };
  return { value: Number(m[1]) + (minutes * 60 + seconds) / 3600 };
}

/** Angle → radians, of either sign. */
export function parseAngle(text: string): Parsed<Radians> {
  const s = normalise(text);
  const { sign, at } = scanSign(s);
  const body = s.slice(at);
  const radians = /^(.*\d) ?rad(?:ians?)?$/i.exec(body);
  if (radians && /^[\d.]/.test(radians[1]!)) {
    const n = parseNumber(radians[1]!);
    return n.ok ? good(signed(sign, n.value)) : bad(n.message, ANGLE_EXPECTED);
  }
  const d = degrees(body, false);
  if ('fault' in d) return bad(`${quoted(text)}: ${d.fault}`, ANGLE_EXPECTED);
  if (!Number.isFinite(d.value)) return bad(`${quoted(text)}: the number is too large`, ANGLE_EXPECTED);
  return good(signed(sign, d.value * DEGREE));
}

/** Radians → `30°`, `30.3°`. */
export const formatAngle = (angle: Radians, decimals = 1): string =>
  `${formatNumber(angle / DEGREE, decimals, { trim: true })}°`;

const PITCH_EXPECTED = 'rise over 12, e.g. "7/12" or "3.5/12", or an angle, e.g. "30°"';

/** Roof pitch `7/12`, `7:12`, `3 1/2/12`, `7 in 12` or an angle → radians above level, from 0 to less than 90°. */
export function parsePitch(text: string): Parsed<Radians> {
  const s = normalise(text);
  const m = /^(.+?)(?: ?[:/] ?| in )(\d+)$/.exec(s);
  if (!m) {
    const angle = parseAngle(text);
    if (!angle.ok) return bad(`${quoted(text)} is not a pitch`, PITCH_EXPECTED);
    return angle.value >= 0 && angle.value < Math.PI / 2 - 1e-9
      ? angle
      : bad(`${quoted(text)}: a pitch runs from level to less than 90°`, PITCH_EXPECTED);
  }
  if (m[2] !== '12') return bad(`${quoted(text)}: a pitch is written as rise over 12`, PITCH_EXPECTED);
  const rise = parseNumber(m[1]!);
  if (!rise.ok) return bad(`${quoted(text)}: the rise ${quoted(m[1]!)} is not a number`, PITCH_EXPECTED);
  if (rise.value < 0) return bad(`${quoted(text)}: the rise of a pitch is not negative`, PITCH_EXPECTED);
  return good(Math.atan(rise.value / 12));
}

/** Radians above level → `7/12`, `3.5/12`, rise to hundredths of an inch. */
export const formatPitch = (pitch: Radians): string => `${formatNumber(12 * Math.tan(pitch), 2, { trim: true })}/12`;

const SLOPE: ScalarKind = {
  noun: 'a slope',
  expected: 'rise per foot, e.g. "1/4 in/ft", or a percentage, e.g. "2 %"',
  units: unitTable(['in/ft,"/ft,in/foot,"/foot', 1, 12], ['%,percent', 1, 100], ['mm/m', 1, 1000]),
  print: { us: { unit: 'in/ft', decimals: 2, trim: true }, metric: { unit: '%', decimals: 2, trim: true } },
};

/** Drainage slope `1/4 in/ft`, `2 %`, `20 mm/m` → rise over run, a pure number. */
export const parseSlope = (text: string): Parsed => parseScalar(text, SLOPE);

/** Rise over run → `1/4 in/ft` (hundredths where no sixteenth fits) / `2.08 %`. */
export function formatSlope(slope: number, units: UnitSystem = 'us'): string {
  if (units === 'metric') return `${formatNumber(slope * 100, 2, { trim: true })} %`;
  const perFoot = slope * 12;
  const sixteenths = roundHalfUp(perFoot * 16);
  if (Math.abs(sixteenths / 16 - perFoot) > 1e-6) return `${formatNumber(perFoot, 2, { trim: true })} in/ft`;
  const all = Math.abs(sixteenths);
  return `${sixteenths < 0 ? '-' : ''}${formatMixed(Math.floor(all / 16), all % 16, 16)} in/ft`;
}

const BEARING_EXPECTED = `a quadrant bearing, e.g. N 89°12'30" E, or "due north"`;
const CARDINAL = /^(?:due )?(n(?:orth)?|e(?:ast)?|s(?:outh)?|w(?:est)?)$/i;
const QUADRANT = /^(north|south|n|s) ?(.+?) ?(east|west|e|w)$/i;
const FULL_CIRCLE = 2 * Math.PI;

/** Surveyor's bearing → azimuth in radians clockwise from north, from 0 to less than 2π. */
export function parseBearing(text: string): Parsed<Radians> {
  const s = normalise(text);
  const cardinal = CARDINAL.exec(s);
  if (cardinal) return good(('nesw'.indexOf(cardinal[1]![0]!.toLowerCase()) * Math.PI) / 2);
  const m = QUADRANT.exec(s);
  if (!m) return bad(`${quoted(text)} is not a bearing`, BEARING_EXPECTED);
  const d = degrees(m[2]!, true);
  if ('fault' in d) return bad(`${quoted(text)}: ${d.fault}`, BEARING_EXPECTED);
  if (d.value > 90) return bad(`${quoted(text)}: a quadrant bearing runs from 0° to 90°`, BEARING_EXPECTED);
  const north = m[1]![0]!.toLowerCase() === 'n';
  const east = m[3]![0]!.toLowerCase() === 'e';
  const turn = north === east ? d.value : -d.value;
  return good((((north ? 0 : 180) + turn + 360) % 360) * DEGREE);
}

/** Azimuth in radians clockwise from north → `N 89°12'30" E` to the second; `due north` and the like on the axes. */
export function formatBearing(azimuth: Radians): string {
  const right = 90 * 3600;
  const turns = azimuth / FULL_CIRCLE;
  const t = roundHalfUp((turns - Math.floor(turns)) * 4 * right) % (4 * right);
  if (t % right === 0) return `due ${['north', 'east', 'south', 'west'][t / right]}`;
  const east = t < 2 * right;
  const north = t < right || t > 3 * right;
  const fromMeridian = north ? Math.min(t, 4 * right - t) : Math.abs(2 * right - t);
  const two = (n: number) => String(n).padStart(2, '0');
  const d = Math.floor(fromMeridian / 3600);
  const minutes = Math.floor(fromMeridian / 60) % 60;
  return `${north ? 'N' : 'S'} ${d}°${two(minutes)}'${two(fromMeridian % 60)}" ${east ? 'E' : 'W'}`;
}
