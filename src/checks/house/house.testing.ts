/** A shed on a bolted ledger over openings with headers, worked out: for tests of what meets the house. */
import { analyse } from '../../analysis/index.js';
import { buildLoads } from '../../loads/index.js';
import type { Header, LedgerFastening, Project } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change, given, shedProject } from '../../structure/testing.js';
import type { CheckContext } from '../contract.js';
import { LOT } from '../testing.js';

export const worked = (project: Project): CheckContext => {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const effects = analyse(project, structure, loads).value!;
  return { project, structure, loads, effects, lot: LOT };
};

/** Three 1/2 in. bolts every 12 in. into a band 107.5 to 116.75 in. above the floor; ledger 2x12, its top at 119. */
export const bolts = (by: Partial<LedgerFastening> = {}): LedgerFastening => ({
  kind: 'bolt',
  diameter: 0.5,
  length: 5,
  washer: 2,
  spacing: 12,
  rows: [4.25, 6.75, 9.25],
  into: 'band',
  through: 0.4375,
  standoff: 0,
  framing: { species: 'Douglas Fir-Larch', depth: 1.5, bottom: 107.5, top: 116.75 },
  basis: '',
  verified: given(true, 'seen from below'),
  path: '/cover/ledgers/0/fastening',
  ...by,
});

export const header = (by: Partial<Header> = {}): Header => ({
  verified: given(true, "the builder's framing plan"),
  path: '/house/openings/0/header',
  ...by,
});

export const shed = (f: Partial<LedgerFastening> = {}, h: Header | 'none' = header()): Project =>
  change(shedProject, {
    house: { openings: (old) => old.map((o) => (o.sill < 40 ? (h === 'none' ? o : { ...o, header: h }) : o)) },
    cover: { ledgers: (old) => [{ ...old[0]!, fastening: bolts(f) }] },
  });
