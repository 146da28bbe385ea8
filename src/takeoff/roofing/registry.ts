import { bySquare } from './by-square.js';
import type { RoofingSystem } from './contract.js';
import { metal, RIBBED, STANDING_SEAM } from './metal.js';
import { shingles } from './shingles.js';

/** How each covering of the catalogue is bought. */
const SYSTEMS: Readonly<Record<string, RoofingSystem>> = {
  'asphalt-shingle': shingles,
  'wood-shingle': bySquare({ cap: 'wood ridge and hip caps', dripEdge: true, unit: 'square' }),
  'standing-seam-metal': metal(STANDING_SEAM),
  'ribbed-metal': metal(RIBBED),
  'ribbed-metal-sealed': metal(RIBBED),
  'single-ply-membrane': bySquare({ cap: '', dripEdge: true, unit: 'square' }),
  'clay-tile': bySquare({ cap: 'ridge and hip tiles', dripEdge: true, unit: 'square' }),
  'concrete-tile': bySquare({ cap: 'ridge and hip tiles', dripEdge: true, unit: 'square' }),
};

/** A covering without a way of its own is bought by the square. */
export const systemOf = (covering: string): RoofingSystem =>
  SYSTEMS[covering] ?? bySquare({ cap: '', dripEdge: true, unit: 'square' });
