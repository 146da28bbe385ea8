/** Specification for Structural Steel Buildings, AISC 360-16, allowable-strength side: the few clauses plates and bolts need. */
import type { ClauseRecord } from '../clause-record.js';

export * from './d2-tension.js';
export * from './j3-bolts.js';

/** Where every clause of this folder was read. */
export const AISC_360_16_RECORDS: readonly ClauseRecord[] = [
  { id: 'steel.tension', clause: 'AISC 360-16 D2, B4.3b', title: 'Flat steel in tension', provenance: 'memory' },
  { id: 'steel.bolt', clause: 'AISC 360-16 J3.6, Table J3.2', title: 'Bolts in tension', provenance: 'memory' },
];
