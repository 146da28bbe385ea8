/** Words of the file that the catalogue or the model fixes, in one place for schema, checks and starter. */
import { FINISHES, ROOF_COVERINGS, SHEATHING, SPECIES } from '../../catalog/index.js';
import type { ConnectionWay, FastenerAxis } from '../connections.js';
import type { SiteItemKind, UtilityKind, Yard } from '../model.js';

export const YARDS = ['front', 'rear', 'left', 'right', 'street-side'] as const satisfies readonly Yard[];
export const SITE_ITEMS = [
  'septic-tank',
  'leach-field',
  'reserve-field',
  'well',
  'meter',
  'gas-meter',
  'water-meter',
  'service-drop',
  'pole',
  'tank',
  'tree',
  'air-conditioner',
  'window-well',
  'cleanout',
] as const satisfies readonly SiteItemKind[];
export const UTILITIES = [
  'electric',
  'gas',
  'water',
  'sewer',
  'septic',
  'storm',
  'communication',
  'irrigation',
] as const satisfies readonly UtilityKind[];
export const COVERINGS: readonly string[] = ROOF_COVERINGS.map((c) => c.id);
/** Panels by kind and trade thickness, `osb-7/16`; the kinds weigh and span alike in the catalogue. */
export const SHEATHING_IDS: readonly string[] = SHEATHING.flatMap((p) => [`osb-${p.name}`, `plywood-${p.name}`]);
/** Underlayments by the trade's names; empty when the covering brings its own. */
export const UNDERLAYMENTS: readonly string[] = ['felt-15', 'felt-30', 'self-adhering', 'synthetic'];
export const CEILINGS: readonly string[] = FINISHES.map((f) => f.id).filter((id) => !id.startsWith('underlayment'));
export const SPECIES_NAMES: readonly string[] = SPECIES.map((s) => s.name);
export const CONNECTION_WAYS = [
  'down',
  'up',
  'lengthwise',
  'crosswise',
  'push',
  'pull',
] as const satisfies readonly ConnectionWay[];
export const FASTENER_AXES = ['lengthwise', 'crosswise', 'plumb'] as const satisfies readonly FastenerAxis[];
/** Joints that carry, by what they tie. `structure` makes them; a test of the joint checks holds the two lists together. */
export const JOINT_KINDS = [
  'rafter-to-ledger',
  'rafter-to-beam',
  'truss-to-beam',
  'beam-to-post',
  'beam-splice',
  'post-to-footing',
  'strut-to-post',
  'brace-to-beam',
  'brace-to-post',
  'rafter-to-ridge',
  'outlooker-to-frame',
  'jack-to-hip',
  'hip-to-beam',
  'hip-to-ridge',
  'ledger-to-house',
  'beam-to-wall-post',
  'beam-to-wall',
  'post-to-house',
] as const;
