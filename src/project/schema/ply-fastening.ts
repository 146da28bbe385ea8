import { BOLTS, NAILS } from '../../catalog/index.js';
import { given, part } from './leaf.js';
import { choice, number } from './plain.js';
import { length } from './quantities.js';

/** Fasteners that join plies by a rule the program can follow. */
const IDS = [...NAILS, ...BOLTS].map((f) => f.id);

export const plyFastening = part(
  'Fasteners between the plies, counted at each face where two plies meet. The words under "fastening" stay what the schedule prints.',
  {
    fastener: given(choice('Nail or bolt.', IDS, 'common-16d')),
    rows: given(number('Rows along the member.', 2, 1, 6, true)),
    spacing: given(length('Spacing along each row.', '12 in', 0.5, 48)),
    edge: given(length('From the nearest row to the edge of the ply.', '2 in', 0.25, 12)),
    end: given(length('From the end of the member to the first fastener.', '3 in', 0.25, 48)),
  },
);
