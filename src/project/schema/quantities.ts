/** Leaves with units: text in the trade's notation, read by `base/quantity` and held to a plausible range. */
import {
  formatAngle,
  formatDensity,
  formatForce,
  formatLength,
  formatLineLoad,
  formatPercent,
  formatPitch,
  formatPsf,
  formatPsi,
  formatSlope,
  formatSoilGradient,
  formatSpeed,
  type Parsed,
  parseAreaLoad,
  parseBearing,
  parseDensity,
  parseForce,
  parseLength,
  parseLineLoad,
  parsePercent,
  parsePitch,
  parseSlope,
  parseSoilGradient,
  parseSpeed,
  parseStress,
} from '../../base/quantity/index.js';
import { type Leaf, refuse, value, wrongType } from './leaf.js';

type Maker = (description: string, example: string, min: number, max: number) => Leaf<number>;

/** Slack on range limits, so that a limit written in metres still counts as itself. */
const SLACK = 1e-6;

function quantity(noun: string, parse: (text: string) => Parsed<number>, print: (v: number) => string): Maker {
  return (description, example, min, max) => {
    const e = JSON.stringify(example);
    const range = `from ${print(min)} to ${print(max)}, e.g. ${e}`;
    return {
      example: e,
      json: {
        type: 'string',
        description: `${description} ${noun[0]!.toUpperCase()}${noun.slice(1)} ${range}.`,
        examples: [example],
      },
      read: (raw) => {
        if (typeof raw !== 'string') return wrongType(raw, `${noun} with its unit, in quotes,`, range);
        const p = parse(raw);
        if (!p.ok)
          return refuse(
            'bad-quantity',
            p.message,
            p.expected.includes(e) ? p.expected : `${p.expected}; here ${range}`,
          );
        if (!(p.value >= min - SLACK && p.value <= max + SLACK)) {
          return refuse('out-of-range', `${raw.trim().slice(0, 40)} is outside what is plausible here`, range);
        }
        return value(p.value);
      },
    };
  };
}

/** Length, inches. */
export const length = quantity('a length', parseLength, (v) => formatLength(v));
/** Roof pitch, radians; limits too. */
export const pitch = quantity('a pitch', parsePitch, formatPitch);
/** Rise over run. */
export const slope = quantity('a slope', parseSlope, (v) => formatSlope(v));
/** Wind speed, mph. */
export const speed = quantity('a wind speed', parseSpeed, (v) => formatSpeed(v));
/** Area load or soil pressure, psf. */
export const areaLoad = quantity('an area load', parseAreaLoad, (v) => formatPsf(v));
/** Lateral bearing, psf per foot. */
export const gradient = quantity('a pressure per depth', parseSoilGradient, (v) => formatSoilGradient(v));
/** Force, lb. */
export const force = quantity('a force', parseForce, (v) => formatForce(v));
/** Weight per volume, pcf. */
export const density = quantity('a density', parseDensity, (v) => formatDensity(v));
/** Fraction of one. */
export const percent = quantity('a percentage', parsePercent, (v) => formatPercent(v));
/** Load per length, lb/in. */
export const lineLoad = quantity('a load per length', parseLineLoad, (v) => formatLineLoad(v));
/** Stress, psi. */
export const stress = quantity('a stress', parseStress, (v) => formatPsi(v));

const FULL = 2 * Math.PI;
const anyBearing = quantity('a bearing', parseBearing, formatAngle);

/** Surveyor's bearing → azimuth, radians clockwise from north. */
export const bearing = (description: string, example: string): Leaf<number> => {
  const leaf = anyBearing(description, example, 0, FULL);
  return { ...leaf, json: { type: 'string', description, examples: [example] } };
};
