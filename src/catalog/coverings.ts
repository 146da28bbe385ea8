import type { Provenance, Sourced } from './model.js';

/** Layers of underlayment by slope: one, two below the slope given, or none because the system brings its own. */
export type UnderlaymentRule =
  | { readonly kind: 'single' }
  | { readonly kind: 'double-below'; readonly slope: number }
  | { readonly kind: 'none' };

export interface RoofCovering extends Sourced {
  readonly id: string;
  readonly name: string;
  /** Weight on the slope, psf, without sheathing. */
  readonly weight: number;
  /** Least slope, inches of rise in 12 of run. */
  readonly minSlope: number;
  /** Counts as an unobstructed slippery surface for roof snow (ASCE/SEI 7-16 7.4). */
  readonly slippery: boolean;
  /** Needs solid sheathing below it. */
  readonly sheathed: boolean;
  readonly underlayment: UnderlaymentRule;
}

const IRC = 'IRC chapter 9 (slope, underlayment)';
const C3 = 'ASCE/SEI 7 commentary Table C3.1-1a (weight)';
const TRADE = 'common practice, no source (weight)';
const single: UnderlaymentRule = { kind: 'single' };
const none: UnderlaymentRule = { kind: 'none' };

/** Roof coverings sold for covers. Weights are of one layer as laid. */
export const ROOF_COVERINGS: readonly RoofCovering[] = (
  [
    {
      id: 'asphalt-shingle',
      name: 'Asphalt shingles',
      weight: 2,
      minSlope: 2,
      slippery: false,
      sheathed: true,
      underlayment: { kind: 'double-below', slope: 4 },
      source: `${C3}; IRC R905.2.2 (slope and underlayment, read in a city handout)`,
      note: 'a roofing trade body advises 3:12 and steeper; heavy laminated shingles weigh about 3 psf',
    },
    {
      id: 'wood-shingle',
      name: 'Wood shingles',
      weight: 3,
      minSlope: 3,
      slippery: false,
      sheathed: true,
      underlayment: single,
      source: `${C3}; ${IRC}`,
    },
    {
      id: 'standing-seam-metal',
      name: 'Standing-seam metal panels',
      weight: 1.5,
      minSlope: 0.25,
      slippery: true,
      sheathed: true,
      underlayment: single,
      source: `${TRADE}; ${IRC}`,
    },
    {
      id: 'ribbed-metal',
      name: 'Ribbed metal panels, lapped without sealant',
      weight: 1,
      minSlope: 3,
      slippery: true,
      sheathed: true,
      underlayment: single,
      source: `${TRADE}; ${IRC}`,
    },
    {
      id: 'ribbed-metal-sealed',
      name: 'Ribbed metal panels, laps sealed',
      weight: 1,
      minSlope: 0.5,
      slippery: true,
      sheathed: true,
      underlayment: single,
      source: `${TRADE}; ${IRC}`,
    },
    {
      id: 'single-ply-membrane',
      name: 'Single-ply membrane',
      weight: 0.7,
      minSlope: 0.25,
      slippery: true,
      sheathed: true,
      underlayment: none,
      source: `${C3}; ${IRC}`,
    },
    {
      id: 'clay-tile',
      name: 'Clay tile',
      weight: 19,
      minSlope: 2.5,
      slippery: false,
      sheathed: true,
      underlayment: { kind: 'double-below', slope: 4 },
      source: `${C3}; ${IRC}`,
      note: 'weight of the heaviest listed profile; lighter profiles are 10 to 12 psf',
    },
    {
      id: 'concrete-tile',
      name: 'Concrete tile',
      weight: 16,
      minSlope: 2.5,
      slippery: false,
      sheathed: true,
      underlayment: { kind: 'double-below', slope: 4 },
      source: `${C3}; ${IRC}`,
    },
  ] as const
).map((c) => Object.freeze({ edition: '7-16, IRC 2018', provenance: 'memory' as const, ...c }));

export const findCovering = (id: string): RoofCovering | undefined => ROOF_COVERINGS.find((c) => c.id === id);

/** Layers of underlayment a covering needs at a slope (inches in 12). */
export const underlaymentLayers = (c: RoofCovering, slope: number): 0 | 1 | 2 =>
  c.underlayment.kind === 'none' ? 0 : c.underlayment.kind === 'double-below' && slope < c.underlayment.slope ? 2 : 1;

/** A finish or layer that adds weight: ceilings, soffits, insulation, underlayment. */
export interface Finish extends Sourced {
  readonly id: string;
  readonly name: string;
  /** psf of its own surface. */
  readonly weight: number;
}

const finish = (
  id: string,
  name: string,
  weight: number,
  source: string,
  edition = '7-16',
  provenance: Provenance = 'memory',
): Finish => Object.freeze({ id, name, weight, source, edition, provenance });

export const FINISHES: readonly Finish[] = [
  finish('underlayment-15', 'Underlayment, 15 lb felt, one layer', 0.25, 'common practice, no source', '-'),
  finish('gypsum-1-2', 'Gypsum board 1/2 in.', 2.2, `${C3}, 0.55 psf per 1/8 in.`),
  finish('gypsum-5-8', 'Gypsum board 5/8 in.', 2.75, `${C3}, 0.55 psf per 1/8 in.`),
  finish('plywood-3-8', 'Plywood soffit 3/8 in.', 1.2, `${C3}, 0.4 psf per 1/8 in.`),
  finish('plywood-1-2', 'Plywood soffit 1/2 in.', 1.6, `${C3}, 0.4 psf per 1/8 in.`),
  finish('boards-1x', 'Tongue-and-groove boards, 3/4 in.', 2.25, `${C3}, 3 psf per inch of wood sheathing`),
  finish('fiber-cement-5-16', 'Fiber-cement soffit 5/16 in.', 2.4, 'common practice, no source', '-'),
  finish('cement-plaster', 'Cement plaster on lath, 7/8 in.', 10, 'common practice, no source', '-'),
  finish(
    'batt-insulation',
    'Batt insulation',
    1.4,
    'ceiling insulation item of a public permit calculation',
    '2014',
    'read',
  ),
];

export const findFinish = (id: string): Finish | undefined => FINISHES.find((f) => f.id === id);
