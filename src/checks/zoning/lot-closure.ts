/** A traverse that does not close is a typing error or a wrong record: distances from it are not to be trusted. */
import type { Check } from '../contract.js';
import { measured } from '../finding.js';

/** Error of closure allowed as a share of the perimeter: 1 in 5000 (common practice, no source). */
export const CLOSURE_LIMIT = 1 / 5000;

export const lotClosure: Check = {
  id: 'lot-closure',
  title: 'Lot boundary closes',
  subjects: () => [{ id: 'lot', path: '/lot/courses' }],
  run(_subject, { lot }, rec) {
    const { error, perimeter } = lot.closure;
    const share = perimeter > 0 ? error / perimeter : 1;
    rec?.step({
      symbol: 'e/P',
      meaning: 'error of closure over perimeter',
      formula: 'e / P',
      substituted: `${error.toFixed(2)} / ${perimeter.toFixed(0)} in`,
      value: share,
      unit: '',
      clause: 'common practice, no source',
      from: ['/lot/courses'],
    });
    return measured(
      {
        demand: share,
        capacity: CLOSURE_LIMIT,
        unit: '',
        clause: 'common practice, no source',
        formula: '(e/P) / (1/5000)',
        remedy: `The lot lines miss their starting point by ${error.toFixed(1)} in: check each bearing and distance against the record.`,
      },
      rec,
    );
  },
};
