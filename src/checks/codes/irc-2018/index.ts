/** Prescriptive clauses of the International Residential Code 2018. Roof live load is with the load provisions. */
import type { ClauseRecord } from '../clause-record.js';

export * from './appendix-h-patio-covers.js';
export * from './r303-light-and-air.js';
export * from './r310-r312-ways-out.js';
export * from './r401-grading.js';
export * from './r403-footings.js';

/** Where every clause of this folder was read. */
export const IRC_2018_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'foot.irc',
    clause: 'IRC 2018 R403.1.1, R403.1.4, R403.1.4.1',
    title: 'Footing minimums and frost',
    provenance: 'mixed',
    note: 'read in the 2024 text; that 2018 says the same is from memory',
  },
  {
    id: 'foot.irc.anchor',
    clause: 'IRC 2018 R403.1.6, R403.1.3.5.1',
    title: 'Sill anchors and bar cover',
    provenance: 'mixed',
    note: 'read in the 2024 text; that 2018 says the same is from memory',
  },
  {
    id: 'room.light',
    clause: 'IRC 2018 R303.1',
    title: 'Glass 8 percent, openings 4 percent of the floor; patio covers more than 40 percent open',
    provenance: 'mixed',
    note: 'read as a city’s amendment quotes and changes it, and as owners quote 8 and 4 percent; the 2018 text itself from memory',
  },
  { id: 'room.porch', clause: 'IRC 2018 R303.9', title: 'Required glass facing a roofed porch', provenance: 'memory' },
  {
    id: 'room.escape',
    clause: 'IRC 2018 R310.1, R310.2.4',
    title: 'Escape openings under porches',
    provenance: 'memory',
  },
  {
    id: 'door.landing',
    clause: 'IRC 2018 R311.3',
    title: 'Landings at exterior doors',
    provenance: 'mixed',
    note: 'width, depth and slope read as quoted from the 2024 text, 7-3/4 in read in a city’s answers; that 2018 says the same is from memory',
  },
  { id: 'slab.guard', clause: 'IRC 2018 R312.1.1', title: 'Guards over 30 in', provenance: 'memory' },
  { id: 'foot.soil.irc', clause: 'IRC 2018 Table R401.4.1', title: 'Default bearing 1500 psf', provenance: 'memory' },
  {
    id: 'drain.grade',
    clause: 'IRC 2018 R401.3',
    title: 'Site grading and slabs',
    provenance: 'mixed',
    note: 'read in the 2024 text; that 2018 says the same is from memory',
  },
  {
    id: 'app.def',
    clause: 'IRC 2018 Appendix H AH101 to AH103',
    title: 'Definition of a patio cover',
    provenance: 'read',
    note: 'read in a state code that reprints the 2006 text; applies only where adopted by name',
  },
  { id: 'app.footing', clause: 'IRC 2018 Appendix H AH105.2', title: 'Posts on a slab', provenance: 'read' },
];
