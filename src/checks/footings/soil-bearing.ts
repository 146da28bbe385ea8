/** Pressure on the soil under the allowable-stress combinations, the footing's own net weight included. IBC 2018 1806. */
import { combineVector } from '../../analysis/index.js';
import type { Combination } from '../../loads/model.js';
import type { Check } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { raised, raiseToStatics } from '../hand.js';
import { sumText } from '../members/scan.js';
import { noForces } from '../members/subjects.js';
import { footingSubjects, footingWeights, type LoadedFooting, loadedFootings, pressureUnder } from './footing.js';

const CLAUSE = 'IBC 2018 1806.1';

interface Worst {
  readonly on: LoadedFooting;
  readonly combination: Combination;
  readonly q: number;
  readonly tips: boolean;
}

export const soilBearing: Check = {
  id: 'soil-bearing',
  title: 'Soil pressure',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let worst: Worst | undefined;
    for (const on of loaded) {
      const { net } = footingWeights(ctx, on.footing);
      for (const combination of ctx.loads.combinations) {
        // A footing that is lifted presses on nothing; uplift is another check.
        if (combineVector(on.forces.force, combination).z + net <= 0) continue;
        const p = pressureUnder(on, combination, net);
        if (p === undefined) worst = { on, combination, q: 0, tips: true };
        else if (!worst || (!worst.tips && p.qMax > worst.q)) worst = { on, combination, q: p.qMax, tips: false };
      }
    }
    if (!worst) return notApplicable(CLAUSE, 'no combination presses on this footing');
    const { on, combination } = worst;
    const { footing } = on;
    const { bearing } = ctx.project.basis.soil;
    const weights = footingWeights(ctx, footing);
    rec?.heading(`${footing.id}: ${footing.size} in ${footing.round ? 'round' : 'square'}, ${combination.id}`);
    rec?.step({
      symbol: 'P',
      meaning: 'load from the post',
      formula: combination.label,
      substituted: sumText(ctx, combination, (c) => on.forces.force[c]!.z),
      value: combineVector(on.forces.force, combination).z,
      unit: 'lb',
      clause: combination.clause,
      from: [footing.path],
    });
    rec?.step({
      symbol: 'Wnet',
      meaning: 'weight of the concrete less the soil it displaces',
      formula: 'Wc − Ws',
      substituted: `${weights.concrete.toFixed(0)} − ${(weights.concrete - weights.net).toFixed(0)}`,
      value: weights.net,
      unit: 'lb',
      clause: 'common practice, no source',
      from: [footing.path, '/basis/soil/density'],
    });
    const p = pressureUnder(on, combination, weights.net, rec);
    const raise = raiseToStatics(ctx, (about) => about.startsWith(`${footing.id} under `));
    const q = raised(p?.qMax ?? 0, 'qmax', 'psf', raise, rec);
    rec?.step({
      symbol: 'qa',
      meaning: 'allowable soil bearing',
      formula: 'given',
      substituted: bearing.from,
      value: bearing.value,
      unit: 'psf',
      clause: 'IBC 2018 Table 1806.2',
      from: [bearing.path],
    });
    return measured(
      {
        demand: q,
        capacity: bearing.value,
        unit: 'psf',
        combination: combination.id,
        clause: CLAUSE,
        formula: 'qmax / qa',
        mustFail: worst.tips,
        remedy: worst.tips
          ? `${footing.id} would tip over: make its base wider.`
          : `${footing.id} presses too hard on the soil: make its base wider.`,
      },
      rec,
    );
  },
};
