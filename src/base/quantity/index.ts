/** Reading and printing of quantities: the only place where text meets units. */
export {
  formatAngle,
  formatBearing,
  formatPitch,
  formatSlope,
  parseAngle,
  parseBearing,
  parsePitch,
  parseSlope,
} from './angle.js';
export * from './constants.js';
export * from './kinds.js';
export { formatLength, formatMixed, type LengthFormat, type LengthStyle, parseLength } from './length.js';
export { type Parsed, parseNumber, type UnitSystem } from './number.js';
export { formatNumber, type NumberFormat, roundHalfUp } from './round.js';
