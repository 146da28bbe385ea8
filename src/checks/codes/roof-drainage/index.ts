/** Rules for gutters and leaders. */
import type { ClauseRecord } from '../clause-record.js';

export * from './roof-drainage.js';

/** Where every rule of this folder was read. */
export const ROOF_DRAINAGE_RECORDS: readonly ClauseRecord[] = [
  { id: 'drain.flow', clause: 'plumbing code basis', title: 'Roof runoff', provenance: 'read' },
  { id: 'drain.leader', clause: 'NSPC 2006 Table 13.6.1', title: 'Vertical leaders', provenance: 'read' },
  {
    id: 'drain.gutter',
    clause: 'engineering handbook gutter table',
    title: 'Semicircular gutters',
    provenance: 'read',
    note: 'not a code table: the adopted plumbing code governs',
  },
];
