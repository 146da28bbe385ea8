/** Setting and bracing of trusses: published tolerances and what has brought roofs down. */
import type { TrussShape } from '../../structure/model.js';

const CARDS = 'industry training cards on setting trusses';

export interface SettingLimit {
  readonly what: string;
  readonly most: string;
  readonly source: string;
}

/** Out-of-plumb by height: 1-1/2 in for 6 ft, a fiftieth of the height; bow by length: 1-1/2 in for 25 ft, a two-hundredth. */
export const PLUMB_DIVISOR = 50;
export const BOW_DIVISOR = 200;
/** Upper end of both, recalled and not read. */
export const MOST = 2;
export const PLACE = 1 / 4;

const down = (v: number): number => Math.floor(v * 8) / 8;

export function settingOf(trusses: readonly TrussShape[], len: (inches: number) => string): readonly SettingLimit[] {
  const height = Math.min(...trusses.map((t) => t.height));
  const span = Math.min(...trusses.map((t) => t.span));
  return [
    { what: 'Place along the beams', most: `${len(PLACE)} of plan`, source: CARDS },
    {
      what: `Out of plumb, ${len(height)} high`,
      most: len(Math.min(MOST, down(height / PLUMB_DIVISOR))),
      source: `${CARDS}: height/${PLUMB_DIVISOR}; never over 2 in (recalled)`,
    },
    {
      what: `Bow of a chord, ${len(span)} long`,
      most: len(Math.min(MOST, down(span / BOW_DIVISOR))),
      source: `${CARDS}: length/${BOW_DIVISOR}; never over 2 in (recalled)`,
    },
  ];
}

export const BRACING: readonly string[] = [
  'Trusses fall like cards: most collapses come from missing temporary bracing (wood truss associations). The first truss is braced to the ground in line with the rows of top-chord bracing, before the next is set.',
  'Brace lumber 2x4 or larger, lapped over two trusses, two 16d nails at each crossing. Diagonals no farther apart than 20 ft along the top chords; rows of bottom-chord bracing within 15 ft while setting, 10 ft to stay (training cards; the plant’s sheet decides).',
  'Short spacers between trusses are no bracing. Do not take a brace out to shift a spacing.',
  'Lift at panel points with two pick points up to 30 ft of span, never by a web or flat. Ropes to steady it; nobody beneath. Store flat on blocks 8 to 10 ft apart.',
  'No bundles of sheathing or shingles and no people on trusses that are not fully braced.',
];
