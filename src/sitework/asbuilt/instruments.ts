import type { Instrument } from '../../project/model.js';

/**
 * Standard deviation of one careful reading of a few yards, inches. Common practice, no source; one page tells of a cheap
 * line laser that was 1/4 in off at 12 ft, which is two of these.
 */
export const INSTRUMENTS: Readonly<Record<Instrument, { readonly words: string; readonly sigma: number }>> = {
  tape: { words: 'pocket tape', sigma: 1 / 8 },
  'steel-tape': { words: 'long steel tape', sigma: 1 / 16 },
  'laser-distance': { words: 'laser distance meter', sigma: 1 / 16 },
  'line-laser': { words: 'line laser and rod', sigma: 1 / 8 },
  'water-level': { words: 'water level', sigma: 1 / 16 },
  'optical-level': { words: 'optical level and rod', sigma: 1 / 16 },
};

export const SIGMA_SOURCE = 'usual for the instrument: common practice, no source';
