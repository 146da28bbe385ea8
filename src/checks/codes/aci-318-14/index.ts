/** Structural plain concrete of ACI 318-14. */
import type { ClauseRecord } from '../clause-record.js';

export * from './ch14-plain-concrete.js';

/** Where every clause of this folder was read. */
export const ACI_318_14_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'foot.plain',
    clause: 'ACI 318-14 14.5',
    title: 'Plain concrete footings',
    provenance: 'mixed',
    note: 'flexure, one-way shear and the 2 in deduction read; two-way shear, bearing, φ, the 8 in minimum and least strength from memory',
  },
];
