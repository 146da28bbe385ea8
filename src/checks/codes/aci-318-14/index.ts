/** Structural plain concrete and cast-in anchors of ACI 318-14. */
import type { ClauseRecord } from '../clause-record.js';

export * from './ch14-pedestals.js';
export * from './ch14-plain-concrete.js';
export * from './ch17-anchors.js';
export * from './ch22-pier-bars.js';

/** Where every clause of this folder was read. */
export const ACI_318_14_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'foot.plain',
    clause: 'ACI 318-14 14.5',
    title: 'Plain concrete footings',
    provenance: 'mixed',
    note: 'flexure, one-way shear and the 2 in deduction read; two-way shear, bearing, φ, the 8 in minimum and least strength from memory',
  },
  {
    id: 'foot.pedestal',
    clause: 'ACI 318-14 14.3.3, 14.5.3, 14.5.4, 16.3.4',
    title: 'Plain concrete pedestals, least steel',
    provenance: 'memory',
  },
  {
    id: 'foot.pier-bars',
    clause: 'ACI 318-14 22.2 to 22.4, 25.4.3',
    title: 'Round pier with a ring of bars, hooks',
    provenance: 'memory',
  },
  {
    id: 'anchor.single',
    clause: 'ACI 318-14 17.3 to 17.6',
    title: 'One cast-in headed anchor bolt',
    provenance: 'mixed',
    note: 'form of Nb, ANco and the edge factor seen in a published worked example to the same provisions; factors φ, pullout, shear and the limit of 17.4.2.3 from memory',
  },
];
