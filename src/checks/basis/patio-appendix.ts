/** Whether the patio-cover appendix, with its lighter live load, may be used: one step a condition. IRC 2018 Appendix H. */
import { appendixConditions } from '../../loads/index.js';
import type { Check } from '../contract.js';
import { notApplicable } from '../finding.js';

const CLAUSE = 'IRC 2018 Appendix H AH105.1';

export const patioAppendix: Check = {
  id: 'patio-appendix',
  title: 'Patio-cover appendix',
  subjects: () => [{ id: 'cover', path: '/cover' }],
  run(_subject, ctx, rec) {
    const conditions = appendixConditions(ctx.project, ctx.structure);
    for (const c of conditions)
      rec?.step({
        symbol: c.holds ? 'holds' : 'does not hold',
        meaning: c.what,
        formula: c.unit === '' ? 'yes = 1' : c.unit === '%' ? 'not less than the limit' : 'not more than the limit',
        substituted: c.unit === '' ? (c.holds ? 'yes' : 'no') : `limit ${c.limit} ${c.unit}`,
        value: c.value,
        unit: c.unit,
        clause: c.clause,
        from: c.from,
      });
    const failing = conditions.filter((c) => !c.holds);
    if (failing.length > 0)
      return notApplicable(
        CLAUSE,
        `the lighter live load is not used: ${failing.map((c) => c.otherwise).join('; ')}; the ordinary roof live load is carried`,
      );
    return {
      status: 'pass',
      demand: 0,
      capacity: 1,
      ratio: 0,
      unit: 'conditions not met',
      combination: '',
      clause: CLAUSE,
      note: 'Every condition of the appendix holds: a live load of 10 psf may be used where the office asks for no more and snow is less.',
    };
  },
};
