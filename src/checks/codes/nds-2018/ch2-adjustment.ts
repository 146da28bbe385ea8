import type { Recorder } from '../../../base/trace.js';

/** Cumulative time at full load, as Table 2.3.2 names it. */
export type LoadDuration = 'permanent' | 'ten-years' | 'two-months' | 'seven-days' | 'ten-minutes' | 'impact';

/** NDS 2018 Table 2.3.2 (recalled; 0.9 to 1.6 also read in a public implementation). */
export const CD_TABLE: Readonly<Record<LoadDuration, number>> = {
  permanent: 0.9,
  'ten-years': 1.0,
  'two-months': 1.15,
  'seven-days': 1.25,
  'ten-minutes': 1.6,
  impact: 2.0,
};

/** Typical loads of each duration (Table 2.3.2): the shortest one in a combination decides CD. */
export const DURATION_OF_LOAD = {
  dead: 'permanent',
  live: 'ten-years',
  snow: 'two-months',
  roofLive: 'seven-days',
  construction: 'seven-days',
  wind: 'ten-minutes',
  seismic: 'ten-minutes',
} as const satisfies Record<string, LoadDuration>;

/**
 * Load duration factor. Does not apply to E, Emin or compression perpendicular to grain. The impact value is not for
 * connections nor for wood treated with water-borne preservatives. NDS 2018 2.3.2.
 */
export function CD(duration: LoadDuration, rec?: Recorder): number {
  const value = CD_TABLE[duration];
  rec?.step({
    symbol: 'CD',
    meaning: 'load duration factor',
    formula: 'Table 2.3.2',
    substituted: duration,
    value,
    unit: '',
    clause: 'NDS 2018 Table 2.3.2',
  });
  return value;
}

/** Reference design values that adjustment factors tell apart. */
export type DesignValue = 'Fb' | 'Ft' | 'Fv' | 'FcPerp' | 'Fc' | 'E' | 'Emin';

/**
 * Temperature factor for sustained exposure to `temperature` °F, in-service moisture wet or dry. Undefined above 150 °F:
 * outside the table. NDS 2018 Table 2.3.3.
 */
export function Ct(value: DesignValue, temperature: number, wet: boolean): number | undefined {
  if (temperature <= 100) return 1;
  if (temperature > 150) return undefined;
  if (value === 'Ft' || value === 'E' || value === 'Emin') return 0.9;
  if (temperature <= 125) return wet ? 0.7 : 0.8;
  return wet ? 0.5 : 0.7;
}
