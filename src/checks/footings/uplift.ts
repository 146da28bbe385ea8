/** Wind lifting a footing out of the ground: net uplift against 0.6 of the concrete and of the soil standing on the pad. */
import { footingEnvelope } from '../../analysis/index.js';
import { UPLIFT_DEAD_FACTOR, upliftResistance } from '../codes/statics/index.js';
import type { Check } from '../contract.js';
import { measured, notApplicable } from '../finding.js';
import { noForces } from '../members/subjects.js';
import { footingSubjects, footingWeights, type LoadedFooting, loadedFootings } from './footing.js';

const CLAUSE = 'ASCE 7-16 2.4.1 (7)';

export const footingUplift: Check = {
  id: 'footing-uplift',
  title: 'Footing uplift',
  subjects: footingSubjects,
  run(subject, ctx, rec) {
    const loaded = loadedFootings(ctx, subject.id);
    if (!loaded) return noForces(CLAUSE);
    let worst: { on: LoadedFooting; up: number; combination: string; ratio: number } | undefined;
    for (const on of loaded) {
      const e = footingEnvelope(ctx.effects, on.footing.id, ctx.loads.combinations);
      if (!e || e.up.value <= 0) continue;
      const w = footingWeights(ctx, on.footing);
      const ratio = e.up.value / (UPLIFT_DEAD_FACTOR.ASD * (w.concrete + w.soilOver));
      if (worst && ratio <= worst.ratio) continue;
      worst = { on, up: e.up.value, combination: ctx.loads.combinations[e.up.combination]?.id ?? '', ratio };
    }
    if (!worst) return notApplicable(CLAUSE, 'no combination lifts this footing');
    const { footing } = worst.on;
    const w = footingWeights(ctx, footing);
    rec?.heading(`${footing.id}: ${footing.size} in ${footing.round ? 'round' : 'square'}, ${worst.combination}`);
    rec?.step({
      symbol: 'U',
      meaning: 'net uplift from the post, 0.6 of the dead load above already taken off',
      formula: 'largest of the combinations',
      substituted: worst.combination,
      value: worst.up,
      unit: 'lb',
      clause: CLAUSE,
      from: [footing.path],
    });
    return measured(
      {
        demand: worst.up,
        capacity: upliftResistance(0, w.concrete, w.soilOver, UPLIFT_DEAD_FACTOR.ASD, rec),
        unit: 'lb',
        combination: worst.combination,
        clause: CLAUSE,
        formula: 'U / R',
        remedy: `Wind would lift ${footing.id}: make it heavier, or its pad wider and deeper so that more soil stands on it.`,
      },
      rec,
    );
  },
};
