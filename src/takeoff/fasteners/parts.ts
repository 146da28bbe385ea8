/** How many fasteners one calculated connection takes at one joint, kind by kind. */
import { findFastener } from '../../catalog/index.js';
import type {
  ConnectionPart,
  ConnectionPartKind,
  ConnectionPlates,
  FastenerPattern,
} from '../../project/connections.js';
import { inches } from '../../structure/text.js';
import { named } from './names.js';

export interface AtJoint {
  /** Width of the two members across the fasteners, inches: from the sections of what is joined. */
  readonly upper: number;
  readonly lower: number;
}
export interface PartCount {
  readonly item: string;
  readonly count: number;
  readonly perPound?: number;
  readonly note?: string;
}

type Counter<K extends ConnectionPartKind> = (p: Extract<ConnectionPart, { kind: K }>, at: AtJoint) => PartCount[];

const inPattern = (p: FastenerPattern): number => p.alongGrain * p.acrossGrain;

/** Plates lie across both members, which then each have fasteners of their own. */
const placesOf = (p: {
  plates: ConnectionPlates | undefined;
  upper: FastenerPattern;
  lower: FastenerPattern;
}): number => (p.plates ? inPattern(p.upper) + inPattern(p.lower) : inPattern(p.upper));

function plateCount(plates: ConnectionPlates | undefined): PartCount[] {
  if (!plates) return [];
  if (!('thickness' in plates))
    return [
      {
        item: `side piece of section "${plates.section}"`,
        count: plates.count,
        note: 'Length by the joint’s detail; cut from the section’s offcuts where they reach.',
      },
    ];
  return [
    {
      item: `steel plate ${inches(plates.thickness)} x ${inches(plates.width)}, drilled`,
      count: plates.count,
      note: 'Length and holes by the joint’s detail.',
    },
  ];
}

/** Nut, washer and a little thread past the grip, up to the next half inch. Common practice, no source. */
const boltLength = (grip: number, D: number): number => Math.ceil((grip + 1.5 * D + 0.125) * 2) / 2;

const bolts: Counter<'bolts'> = (p, at) => {
  const D = findFastener(p.size)?.D ?? 0.5;
  const n = placesOf(p);
  const steel = p.plates && 'thickness' in p.plates ? p.plates.count * p.plates.thickness : 0;
  const grip = p.plates ? Math.max(at.upper, at.lower) + steel : at.upper + at.lower;
  const washers = steel > 0 ? (p.plates!.count === 2 ? 0 : n) : 2 * n;
  return [
    {
      item: named(p.size, boltLength(grip, D)).item,
      count: n,
      note: 'Length for the grip and nut: compare with the detail before ordering.',
    },
    { item: `nut for ${inches(D)} bolt`, count: n },
    ...(washers > 0 ? [{ item: `washer for ${inches(D)} bolt`, count: washers }] : []),
    ...plateCount(p.plates),
  ];
};

type Driven = Extract<ConnectionPart, { kind: 'lag-screws' | 'wood-screws' | 'nails' }>;
const driven = (p: Driven): PartCount[] => {
  const sides = p.plates?.count ?? 1;
  const { item, perPound } = named(p.size, p.length);
  return [
    { item, count: placesOf(p) * sides, ...(perPound === undefined ? {} : { perPound }) },
    ...plateCount(p.plates),
  ];
};

const COUNTERS: { readonly [K in ConnectionPartKind]: Counter<K> } = {
  bolts,
  'lag-screws': driven,
  'wood-screws': driven,
  nails: driven,
  'toe-nails': (p) => {
    const { item, perPound } = named(p.size);
    return [{ item, count: p.count, ...(perPound === undefined ? {} : { perPound }) }];
  },
  bearing: () => [],
};

export const countPart = (p: ConnectionPart, at: AtJoint): PartCount[] =>
  (COUNTERS[p.kind] as (p: ConnectionPart, at: AtJoint) => PartCount[])(p, at);
