import {
  KILOGRAMS_PER_POUND,
  METRES_PER_FOOT,
  METRES_PER_INCH,
  METRES_PER_MILE,
  NEWTONS_PER_POUND,
} from './constants.js';
import type { Parsed, UnitSystem } from './number.js';
import { formatScalar, parseScalar, type ScalarKind, type UnitRow, unitTable } from './scalar.js';

const N = NEWTONS_PER_POUND;
const IN = METRES_PER_INCH;
const FT = METRES_PER_FOOT;

const kind = (
  noun: string,
  expected: string,
  us: ScalarKind['print']['us'],
  metric: ScalarKind['print']['metric'],
  ...units: readonly UnitRow[]
): ScalarKind => ({ noun, expected, units: unitTable(...units), print: { us, metric } });

const AREA = kind(
  'an area',
  'a number and a unit, e.g. "120 sq ft" or "11 m2"',
  { unit: 'sq ft', decimals: 1, trim: true },
  { unit: 'm²', decimals: 2 },
  ['sq in,sqin,in2,square inches', 1],
  ['sq ft,sqft,sf,ft2,square feet,square foot', 144],
  ['sq yd,yd2', 1296],
  ['acre,acres', 43560 * 144],
  ['mm2,sq mm', 1e-6, IN * IN],
  ['cm2,sq cm', 1e-4, IN * IN],
  ['m2,sq m,square metres,square meters', 1, IN * IN],
);
const AREA_LOAD = kind(
  'an area load',
  'a number and a unit, e.g. "25 psf" or "1.2 kPa"',
  { unit: 'psf', decimals: 1, trim: true },
  { unit: 'kPa', decimals: 2 },
  ['psf,lb/sq ft,lb/ft2', 1],
  ['ksf', 1000],
  ['Pa,N/m2', FT * FT, N],
  ['kPa,kN/m2', 1000 * FT * FT, N],
);
const STRESS = kind(
  'a stress',
  'a number and a unit, e.g. "900 psi" or "6.2 MPa"',
  { unit: 'psi', decimals: 0 },
  { unit: 'MPa', decimals: 2 },
  ['psi,lb/sq in,lb/in2', 1],
  ['ksi', 1000],
  ['kPa', 1e3 * IN * IN, N],
  ['MPa,N/mm2', 1e6 * IN * IN, N],
  ['GPa', 1e9 * IN * IN, N],
);
const SPEED = kind(
  'a speed',
  'a number and a unit, e.g. "105 mph" or "47 m/s"',
  { unit: 'mph', decimals: 0 },
  { unit: 'm/s', decimals: 1 },
  ['mph,mi/h,miles/hour', 1],
  ['ft/s,fps', 3600, 5280],
  ['m/s', 3600, METRES_PER_MILE],
  ['km/h,kph', 1000, METRES_PER_MILE],
);
const FORCE = kind(
  'a force',
  'a number and a unit, e.g. "1800 lb", "1.8 kip" or "8 kN"',
  { unit: 'lb', decimals: 0 },
  { unit: 'kN', decimals: 2 },
  ['lb,lbs,lbf,pound,pounds,#', 1],
  ['kip,kips', 1000],
  ['N', 1, N],
  ['kN', 1000, N],
);
const LINE_LOAD = kind(
  'a line load',
  'a number and a unit, e.g. "150 plf" or "2.2 kN/m"',
  { unit: 'plf', decimals: 0 },
  { unit: 'kN/m', decimals: 2 },
  ['plf,lb/ft', 1, 12],
  ['pli,lb/in', 1],
  ['klf,kip/ft', 1000, 12],
  ['N/m', IN, N],
  ['kN/m', 1000 * IN, N],
);
const MOMENT = kind(
  'a moment',
  'a number and a unit, e.g. "1500 lb-ft" or "2 kN·m"',
  { unit: 'lb-ft', decimals: 0 },
  { unit: 'kN·m', decimals: 2 },
  ['lb-in,in-lb', 1],
  ['lb-ft,ft-lb', 12],
  ['kip-ft,ft-kip', 12000],
  ['kip-in,in-kip', 1000],
  ['N-m', 1, N * IN],
  ['kN-m', 1000, N * IN],
);
const DENSITY = kind(
  'a density',
  'a number and a unit, e.g. "110 pcf" or "1760 kg/m3"',
  { unit: 'pcf', decimals: 1, trim: true },
  { unit: 'kN/m³', decimals: 2 },
  ['pcf,lb/ft3,lb/cu ft', 1],
  ['kg/m3', FT ** 3, KILOGRAMS_PER_POUND],
  ['kN/m3', 1000 * FT ** 3, N],
);
const SOIL_GRADIENT = kind(
  'a lateral soil pressure per depth',
  'a number and a unit, e.g. "100 psf/ft" or "15.7 kPa/m"',
  { unit: 'psf/ft', decimals: 0 },
  { unit: 'kPa/m', decimals: 2 },
  ['psf/ft,pcf,psf/foot', 1],
  ['kPa/m,kN/m3', 1000 * FT ** 3, N],
);
const PERCENT = kind(
  'a percentage',
  'a number and the sign, e.g. "40 %"',
  { unit: '%', decimals: 1, trim: true },
  { unit: '%', decimals: 1, trim: true },
  ['%,percent,pct', 1, 100],
);

type Reader = (text: string) => Parsed;
type Printer = (value: number, units?: UnitSystem, decimals?: number) => string;
const reader =
  (k: ScalarKind): Reader =>
  (text) =>
    parseScalar(text, k);
const printer =
  (k: ScalarKind): Printer =>
  (value, units, decimals) =>
    formatScalar(value, k, units, decimals);

/** Area → square inches. */
export const parseArea = reader(AREA);
/** Area load or soil pressure → psf. */
export const parseAreaLoad = reader(AREA_LOAD);
/** Stress or modulus → psi. */
export const parseStress = reader(STRESS);
/** Wind speed → mph. */
export const parseSpeed = reader(SPEED);
/** Force → lb. */
export const parseForce = reader(FORCE);
/** Load per length → lb/in. */
export const parseLineLoad = reader(LINE_LOAD);
/** Moment → lb·in. */
export const parseMoment = reader(MOMENT);
/** Weight per volume → pcf; a mass density in kg/m³ is taken at standard gravity. */
export const parseDensity = reader(DENSITY);
/** Lateral bearing per foot of depth → psf/ft. */
export const parseSoilGradient = reader(SOIL_GRADIENT);
/** Percentage → fraction of one. */
export const parsePercent = reader(PERCENT);

/** Square inches → `120 sq ft` / `11.15 m²`. */
export const formatArea = printer(AREA);
/** psf → `25 psf` / `1.20 kPa`. */
export const formatPsf = printer(AREA_LOAD);
/** psi → `900 psi` / `6.21 MPa`. */
export const formatPsi = printer(STRESS);
/** mph → `105 mph` / `46.9 m/s`. */
export const formatSpeed = printer(SPEED);
/** lb → `1,800 lb` / `8.01 kN`. */
export const formatForce = printer(FORCE);
/** lb/in → `150 plf` / `2.19 kN/m`. */
export const formatLineLoad = printer(LINE_LOAD);
/** lb·in → `1,500 lb-ft` / `2.03 kN·m`. */
export const formatMoment = printer(MOMENT);
/** pcf → `110 pcf` / `17.28 kN/m³`. */
export const formatDensity = printer(DENSITY);
/** psf/ft → `100 psf/ft` / `15.71 kPa/m`. */
export const formatSoilGradient = printer(SOIL_GRADIENT);
/** Fraction of one → `40 %`. */
export const formatPercent = printer(PERCENT);
