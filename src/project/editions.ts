/** Sets of code editions that belong together. The residential and building code of a year name the standards they use. */

import type { CodeBundle } from './model.js';
import { listing } from './nearest.js';

export const EDITION_KEYS = ['residential', 'building', 'loads', 'wood', 'concrete'] as const;
export type EditionKey = (typeof EDITION_KEYS)[number];
export type WrittenCodes = string | Readonly<Record<EditionKey, string>>;

/** Referenced standards of each code year (IBC 2018 and 2021, chapter 35), recalled from memory. */
export const BUNDLES: Readonly<Record<CodeBundle['id'], CodeBundle>> = {
  '2018': {
    id: '2018',
    residential: 'IRC 2018',
    building: 'IBC 2018',
    loads: '7-16',
    wood: 'NDS 2018',
    concrete: 'ACI 318-14',
  },
  '2021': {
    id: '2021',
    residential: 'IRC 2021',
    building: 'IBC 2021',
    loads: '7-16',
    wood: 'NDS 2018',
    concrete: 'ACI 318-19',
  },
};
const ALL = Object.values(BUNDLES);

/** What an edition is told by: `IRC 2018` and `2018` are one; so are `ASCE 7-16` and `7-16`, `ACI 318-14` and `318-14`. */
const core = (edition: string): string =>
  edition
    .toUpperCase()
    .replace(/^(?:IRC|IBC|ASCE(?:\/SEI)?|NDS|ACI)/, '')
    .replace(/\s+/g, '');

export interface EditionFault {
  readonly code: 'unsupported-edition' | 'mixed-editions';
  /** Key under `/basis/codes`, or none when the whole value is meant. */
  readonly key?: EditionKey;
  readonly message: string;
  readonly expected: string;
}

export type Editions =
  | { readonly ok: true; readonly bundle: CodeBundle }
  | { readonly ok: false; readonly faults: readonly EditionFault[] };

/** The bundle a file names; editions we do not carry, or that do not go together, are refused. */
export function bundleOf(written: WrittenCodes): Editions {
  if (typeof written === 'string') {
    const bundle = ALL.find((b) => b.id === written);
    if (bundle) return { ok: true, bundle };
    const message = `the ${written.slice(0, 40)} codes are not carried`;
    return {
      ok: false,
      faults: [
        {
          code: 'unsupported-edition',
          message,
          expected: listing(
            written,
            ALL.map((b) => b.id),
          ),
        },
      ],
    };
  }
  const unknown = EDITION_KEYS.filter((k) => !ALL.some((b) => core(b[k]) === core(written[k])));
  if (unknown.length > 0) {
    return {
      ok: false,
      faults: unknown.map((key) => ({
        code: 'unsupported-edition' as const,
        key,
        message: `the edition "${written[key].slice(0, 40)}" of "${key}" is not carried`,
        expected: listing(written[key], [...new Set(ALL.map((b) => b[key]))]),
      })),
    };
  }
  const agreement = (b: CodeBundle) => EDITION_KEYS.filter((k) => core(b[k]) === core(written[k]));
  const best = ALL.reduce((a, b) => (agreement(b).length > agreement(a).length ? b : a));
  const off = EDITION_KEYS.filter((k) => !agreement(best).includes(k));
  if (off.length === 0) return { ok: true, bundle: best };
  return {
    ok: false,
    faults: off.map((key) => ({
      code: 'mixed-editions' as const,
      key,
      message: `"${written[key]}" does not belong with the ${best.id} codes named beside it`,
      expected: `"${best[key]}" throughout, or "${best.id}" in place of the whole object`,
    })),
  };
}
