/** Special Design Provisions for Wind and Seismic, 2015 and, where it reads the same table anew, 2021: wood-frame diaphragms. */
import type { ClauseRecord } from '../clause-record.js';

export * from './ch4-diaphragms.js';
export * from './table-4-2.js';

export const SDPWS_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'sdpws-table-4-2',
    clause: 'SDPWS 2015 Tables 4.2A, 4.2C',
    title: 'Nominal unit shear of wood structural panel diaphragms',
    provenance: 'mixed',
    note: 'halves of the earthquake columns read in a construction guide (form E30V, 2011, Table 38); wind columns and stiffness recalled',
  },
  { id: 'sdpws-4-2-3', clause: 'SDPWS 2015 4.2.3', title: 'Allowable unit shear', provenance: 'memory' },
  { id: 'sdpws-4-2-4', clause: 'SDPWS 2015 Table 4.2.4', title: 'Aspect ratios', provenance: 'memory' },
  {
    id: 'sdpws-4-2-5-2',
    clause: 'SDPWS 2015 4.2.5.2',
    title: 'Diaphragms held along one side',
    provenance: 'memory',
    note: 'the stricter of the recalled limits is used, for wind as well as earthquake',
  },
  {
    id: 'sdpws-4-2-2',
    clause: 'SDPWS 2015 4.2.2',
    title: 'Deflection',
    provenance: 'memory',
    note: 'form for one side held derived by statics',
  },
];
