/** Whether the forces may be believed at all: the frame stands, and what goes in comes out. */
import type { Check } from '../contract.js';
import { failed, measured } from '../finding.js';

/** Largest relative difference between loads and reactions that is still rounding. */
export const BALANCE_TOLERANCE = 0.001;

export const frameSolved: Check = {
  id: 'frame-solved',
  title: 'Frame stands without loose parts',
  subjects: () => [{ id: 'frame', path: '/cover' }],
  run(_subject, { effects }, rec) {
    const { failure } = effects;
    if (failure !== undefined) return failed('statics', `${failure}: give it a support or a connection.`);
    return measured(
      { demand: 0, capacity: 1, unit: 'loose parts', clause: 'statics', formula: 'loose parts ≤ 0', remedy: '' },
      rec,
    );
  },
};

export const loadBalance: Check = {
  id: 'load-balance',
  title: 'Loads and reactions in balance',
  subjects: () => [{ id: 'frame', path: '/cover' }],
  run(_subject, { effects }, rec) {
    if (effects.balance.length === 0)
      return failed('statics', 'No load case was balanced, so no force can be trusted.');
    let worst = effects.balance[0]!;
    const error = (b: typeof worst): number => Math.max(b.errorApplied, b.errorReactions);
    for (const b of effects.balance) if (!(error(b) <= error(worst))) worst = b;
    rec?.step({
      symbol: 'ε',
      meaning: `largest relative difference between loads put on, roof geometry and reactions (case ${worst.case})`,
      formula: 'max(|applied − integral|, |applied − reactions|) / |applied|',
      substituted: `max(${worst.errorApplied.toExponential(1)}, ${worst.errorReactions.toExponential(1)})`,
      value: error(worst),
      unit: '',
      clause: 'statics',
    });
    return measured(
      {
        demand: error(worst),
        capacity: BALANCE_TOLERANCE,
        unit: '',
        combination: worst.case,
        clause: 'statics',
        formula: 'ε / tolerance',
        remedy: `Loads and reactions of case ${worst.case} differ by ${(100 * error(worst)).toFixed(2)} %: part of the load has no path to the soil.`,
      },
      rec,
    );
  },
};
