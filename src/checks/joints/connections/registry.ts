/** Every means of holding a joint that the program can calculate. */
import type { ConnectionPart, ConnectionPartKind } from '../../../project/connections.js';
import type { PartKind } from './contract.js';
import { dowels } from './dowels.js';
import { toeNails } from './toe-nails.js';
import { woodBearing } from './wood-bearing.js';

const KINDS: { readonly [K in ConnectionPartKind]: PartKind<Extract<ConnectionPart, { kind: K }>> } = {
  bolts: dowels,
  'lag-screws': dowels,
  'wood-screws': dowels,
  nails: dowels,
  'toe-nails': toeNails,
  bearing: woodBearing,
};

/** The kind's own answers, for a part whose kind is known only when it runs. */
export const kindOf = (part: ConnectionPart): PartKind<ConnectionPart> => KINDS[part.kind] as PartKind<ConnectionPart>;
