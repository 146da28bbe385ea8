/** Rafter ties that uplift presses along their length: no more slender than a column may be. NDS 2018 3.7.1.4. */
import { columnSlenderness } from '../codes/nds-2018/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { combineInto, sumText } from './scan.js';
import { loadedMembers, memberSubjects, noForces } from './subjects.js';

const CLAUSE = 'NDS 2018 3.7.1.4';
const LIMIT = 50;
/** Compression under this is rounding, lb. */
const TRACE = 1;

export const tieSlenderness: Check = {
  id: 'tie-slenderness',
  title: 'Rafter tie slenderness',
  subjects: (ctx) => memberSubjects(ctx, 'tie'),
  run(subject, ctx, rec) {
    const loaded = loadedMembers(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let most = TRACE;
    let at:
      | { readonly on: (typeof loaded)[number]; readonly combination: number; readonly station: number }
      | undefined;
    for (const on of loaded) {
      const n = new Float64Array(on.effects.stations.length);
      ctx.loads.combinations.forEach((c, combination) => {
        combineInto(n, on.effects.n, c);
        n.forEach((N, station) => {
          if (-N <= most) return;
          most = -N;
          at = { on, combination, station };
        });
      });
    }
    if (!at) return notApplicable(CLAUSE, 'no combination presses the ties along their length');
    const { on, combination, station } = at;
    const { member, effects } = on;
    const c = ctx.loads.combinations[combination]!;
    rec?.heading(`${member.id}: ${member.section.label}, ${c.id}`);
    rec?.step({
      symbol: 'C',
      meaning: 'greatest compression in the tie',
      formula: c.label,
      substituted: sumText(ctx, c, (k) => effects.n[k]![station]!),
      value: most,
      unit: 'lb',
      clause: c.clause,
      from: [member.path],
    });
    const least = Math.min(member.section.b / member.section.plies, member.section.d);
    const held = Math.floor(LIMIT * least);
    return measured(
      {
        demand: columnSlenderness(1, member.unbraced.top, least, rec),
        capacity: LIMIT,
        unit: '',
        combination: c.id,
        clause: CLAUSE,
        formula: 'le/d / 50',
        remedy: `Uplift presses ${member.mark} with ${Math.ceil(most)} lb: brace the ties sideways every ${held} in or closer ("braced"), or use a structural ridge beam.`,
      },
      rec,
    );
  },
};
