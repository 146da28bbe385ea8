/** Share of the lot (or of the rear yard) under roof once the cover stands. */
import type { Check } from '../contract.js';
import { measured } from '../finding.js';
import { squareFeet, ZONING } from './zoning.js';

export const lotCoverage: Check = {
  id: 'lot-coverage',
  title: 'Lot coverage',
  subjects: () => [{ id: 'lot', path: '/basis/zoning/coverageLimit' }],
  run(_subject, { lot, project }, rec) {
    const { coverage } = lot;
    const share = coverage.basis > 0 ? coverage.proposed / coverage.basis : 1;
    const basis = project.basis.zoning.coverageOf === 'lot' ? 'lot' : 'rear yard';
    rec?.step({
      symbol: 'coverage',
      meaning: `area under roof as a share of the ${basis}`,
      formula: 'covered area / area',
      substituted: `${squareFeet(coverage.proposed).toFixed(0)} / ${squareFeet(coverage.basis).toFixed(0)} ft²`,
      value: 100 * share,
      unit: '%',
      clause: ZONING,
      from: [project.basis.zoning.coverageLimit.path],
    });
    const spare = squareFeet(coverage.proposed - coverage.limit * coverage.basis);
    return measured(
      {
        demand: 100 * share,
        capacity: 100 * coverage.limit,
        unit: '%',
        clause: ZONING,
        formula: 'coverage / limit',
        remedy: `The ${basis} would be covered ${(100 * share).toFixed(1)} % where ${(100 * coverage.limit).toFixed(1)} % is allowed: make the roof ${spare.toFixed(0)} sq ft smaller, or ask for a variance.`,
      },
      rec,
    );
  },
};
