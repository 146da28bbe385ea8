/** Foundation clauses of the International Building Code 2018, chapter 18. */
import type { ClauseRecord } from '../clause-record.js';

export * from './ch18-embedded-posts.js';
export * from './ch18-embedment.js';
export * from './ch18-footings.js';
export * from './ch18-soil.js';

/** Where every clause of this folder was read. */
export const IBC_2018_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'soil.1806.3',
    clause: 'IBC 2018 1806.3',
    title: 'Lateral and sliding values',
    provenance: 'mixed',
    note: 'isolated-pole doubling read; the cap of 15 times and the half-dead-load limit on cohesion from memory',
  },
  {
    id: 'embed.nonconstrained',
    clause: 'IBC 2018 1807.3.2.1',
    title: 'Embedded post, free at grade',
    provenance: 'read',
  },
  {
    id: 'embed.constrained',
    clause: 'IBC 2018 1807.3.2.2',
    title: 'Embedded post, restrained at grade',
    provenance: 'read',
  },
  {
    id: 'embed.moment',
    clause: 'IBC 2018 Eq. 18-1, 18-3',
    title: 'Embedded post under shear and moment at grade',
    provenance: 'read',
  },
  {
    id: 'embed.limits',
    clause: 'IBC 2018 1807.3.1, 1807.3.3',
    title: 'Limits and backfill of embedded posts',
    provenance: 'memory',
  },
  {
    id: 'foot.ibc',
    clause: 'IBC 2018 1809.3 to 1809.5',
    title: 'Shallow footing minimums',
    provenance: 'mixed',
    note: 'minimums read in a 2021-based state code; the area and height limits of the frost exemption from memory',
  },
  { id: 'foot.skin', clause: 'IBC 2018 1810.3.3.1.4', title: 'Presumptive skin friction', provenance: 'memory' },
];
