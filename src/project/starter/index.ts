/** Starter projects: a whole commented file to change into one's own. The place is invented, the office yet unasked. */
import { gableAttached, gableFree, shedAttached, shedFree } from './covers.js';
import { basis, house, job, lot, type StarterOptions } from './site.js';

export type { StarterOptions } from './site.js';
export const STARTER_KINDS = ['gable-attached', 'gable-free', 'shed-attached', 'shed-free'] as const;
export type StarterKind = (typeof STARTER_KINDS)[number];

interface Starter {
  readonly title: string;
  readonly scope: string;
  readonly house: string;
  readonly parts: readonly string[];
}

const oneStorey = (ridge: 'x' | 'y', note: string) => house({ stories: 1, plate: '8 ft 1 in', ridge, note });

const STARTERS: Readonly<Record<StarterKind, Starter>> = {
  'gable-attached': {
    title: 'Gabled patio roof',
    scope: 'New gabled roof on four posts over a new patio slab, butting the gable-end wall of the house.',
    house: oneStorey('y', 'This ridge runs toward the patio, so the new roof meets a gable-end wall and no eave.'),
    parts: gableAttached,
  },
  'gable-free': {
    title: 'Free-standing gabled patio roof',
    scope: 'New free-standing gabled roof on six posts over a new patio slab in the rear yard.',
    house: oneStorey('x', 'The house roof counts for snow that slides or drifts onto a lower roof near it.'),
    parts: gableFree,
  },
  'shed-attached': {
    title: 'Shed patio roof',
    scope: 'New shed roof on a ledger and three posts over a new patio slab at the rear door.',
    house: house({
      stories: 2,
      plate: '18 ft 2 in',
      ridge: 'x',
      note: 'Two storeys, so that the ledger meets the floor band between them.',
    }),
    parts: shedAttached,
  },
  'shed-free': {
    title: 'Free-standing shed patio roof',
    scope: 'New free-standing shed roof on six posts over a new patio slab in the rear yard.',
    house: oneStorey('x', 'The house roof counts for snow that slides or drifts onto a lower roof near it.'),
    parts: shedFree,
  },
};

const HEAD = `{
  // A roof over a patio, in one file. Lengths are text with units: "12 ft 6 in", "9 ft 11-1/4 in", "3.81 m".
  // Change the numbers to yours, then run:  eavewright check <this file>
  "eavewright": 1,
`;

const TAIL = `  // Prices where you buy:  { "item": "…", "unit": "each", "price": 21.50 }
  "prices": [],
  "log": {
    "revisions": [],
    "approvals": [
      { "body": "Zoning clearance", "state": "needed", "date": "", "note": "ask before paying for drawings" },
      { "body": "Building permit", "state": "needed", "date": "", "note": "" }
    ]
  }
}
`;

/** Commented text of a starter project. It reads without errors; its open answers keep the set preliminary. */
export function starter(kind: StarterKind, options: StarterOptions = {}): string {
  const s = STARTERS[kind];
  const parts = [job(options, s.title, s.scope), basis, lot, s.house, ...s.parts];
  return `${HEAD}${parts.join(',\n')},\n${TAIL}`;
}
