/** Wood where it gets wet is treated for it. IRC 2018 R317.1. */
import type { Check } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';
import { durabilityByMark, durabilityRows, EXPOSURES, RANK } from './rows.js';

const CLAUSE = 'IRC 2018 R317.1';

export const durability: Check = {
  id: 'durability',
  title: 'Wood protected against decay',
  subjects: (ctx) => durabilityRows(ctx).map((r) => ({ id: r.mark, path: r.path })),
  run(subject, ctx, rec) {
    const row = durabilityByMark(ctx).get(subject.id);
    if (!row) return notEvaluated(CLAUSE, 'this part was not placed');
    const { words } = EXPOSURES[row.exposure];
    rec?.step({
      symbol: 'class',
      meaning: `${words}: ${row.why}`,
      formula: 'treatment needed: 0 none, 1 above ground, 2 ground contact',
      substituted: row.needs,
      value: RANK[row.needs],
      unit: '',
      clause: row.exposure === 'under-roof' ? 'common practice, no source' : CLAUSE,
      from: [row.path],
    });
    return measured(
      {
        demand: RANK[row.needs],
        capacity: RANK[row.has],
        unit: 'treatment class',
        clause: CLAUSE,
        formula: 'class needed ≤ class of the wood',
        prescriptive: true,
        ratio: RANK[row.needs] > RANK[row.has] ? 2 : RANK[row.needs] === 0 ? 0 : RANK[row.needs] / RANK[row.has],
        note: `${words}; ${row.category}; cut ends: ${row.cutEnds}; metal: ${row.metal}.`,
        remedy: `${row.mark}: ${words}, ${row.why}. Use wood treated for ${row.needs.replace('-', ' ')} (${row.category}), or raise its end or cover it.`,
      },
      rec,
    );
  },
};
