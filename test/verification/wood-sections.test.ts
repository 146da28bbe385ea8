import { expect, it } from 'vitest';
import { findSize } from '../../src/catalog/sizes.js';
import { findSpecies, woodWeightPcf } from '../../src/catalog/species.js';
import { area, momentOfInertia, sectionModulus } from '../../src/checks/codes/nds-2018/index.js';
import { against, forgotten, topic } from './helpers/wood-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('wood-sections');

it.each(topic('section properties'))('$id', (p) => {
  const { b, d } = findSize(p.inputs.nominal)!;
  const asked = { clause: 'NDS Supplement Table 1B', reason: 'printed to 4 figures', tolerance: { rel: 0.0006 } };
  const exact = { ...asked, tolerance: { abs: 1e-9 }, reason: 'exact dressed size' };
  against(suite, p, 'b_in', b, { ...exact, unit: 'in' });
  against(suite, p, 'd_in', d, { ...exact, unit: 'in' });
  against(suite, p, 'A_in2', area(b, d), { ...asked, unit: 'in²' });
  against(suite, p, 'Sxx_in3', sectionModulus(b, d), { ...asked, unit: 'in³' });
  against(suite, p, 'Ixx_in4', momentOfInertia(b, d), { ...asked, unit: 'in⁴' });
});

it.each(topic('density'))('$id', (p) => {
  const species = findSpecies(p.inputs.species)!;
  expect(species.G).toBe(p.inputs.G);
  against(suite, p, 'weight_lb_per_ft3', woodWeightPcf(species.G), {
    clause: 'NDS Supplement 3.1.3',
    unit: 'lb/ft³',
    reason: 'printed to 0.1; the moisture content of 15 % is inferred, the footnote was cut off in the copy read',
    tolerance: { abs: 0.051 },
  });
});

it('leaves no section check unanswered', () => expect(forgotten(suite, 'wood-sections')).toEqual([]));
