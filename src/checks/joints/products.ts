/** Each joint needs a product with a published allowable load, or a calculated connection. Neither can be named yet. */
import type { Recorder } from '../../base/trace.js';
import type { Check, Finding } from '../contract.js';
import { notApplicable, notEvaluated } from '../finding.js';
import { type Demand, demandText, jointDemands } from './demands.js';
import { JOINT_TRAITS } from './kinds.js';

const CLAUSE = 'NDS 2018 chapter 11';

function record(symbol: string, meaning: string, d: Demand, path: string, rec?: Recorder): void {
  rec?.step({
    symbol,
    meaning: d.value > 0 ? meaning : `${meaning}: none under any combination`,
    formula: 'largest over the joints of this mark',
    substituted: d.value > 0 ? `${d.joint}, ${d.combination}` : 'none',
    value: d.value,
    unit: 'lb',
    clause: 'ASCE 7-16 2.4',
    from: [path],
  });
}

export const jointProducts: Check = {
  id: 'joint-products',
  title: 'Joint product or calculated connection',
  subjects(ctx) {
    const seen = new Map(ctx.structure.joints.map((j) => [j.mark, j.path]));
    return [...seen].map(([id, path]) => ({ id, path }));
  },
  run(subject, ctx, rec): Finding {
    const d = jointDemands(ctx).find((q) => q.mark === subject.id);
    if (!d) return notEvaluated(CLAUSE, 'no joint of this mark was placed');
    if (!JOINT_TRAITS[d.kind].carries) {
      return notApplicable(CLAUSE, 'it holds trim, not the roof: face nails as the general notes say');
    }
    rec?.heading(`${d.mark}: ${d.count} × ${d.kind.replaceAll('-', ' ')}`);
    record('Pd', 'allowable load needed downward', d.down, d.path, rec);
    record('Pu', 'allowable load needed upward', d.up, d.path, rec);
    record('Px', 'allowable load needed along the house wall', d.alongX, d.path, rec);
    record('Py', 'allowable load needed square to the house wall', d.alongY, d.path, rec);
    const most = [d.down, d.up, d.alongX, d.alongY].reduce((a, b) => (b.value > a.value ? b : a));
    return {
      ...notEvaluated(CLAUSE, `This joint ${demandText(d)}; no product or calculated connection is named for it yet.`),
      demand: most.value,
      unit: 'lb',
      combination: most.combination,
    };
  },
};
