import { expect, it } from 'vitest';
import {
  continuousUniform,
  overhangUniform,
  simpleUniform,
  THREE_EQUAL_SPANS,
  TWO_EQUAL_SPANS,
} from '../../src/checks/codes/statics/index.js';
import { against, forgotten, published } from './helpers/wood-published.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('wood-statics');
const clause = 'statics: three-moment equation';

it('three equal spans, uniform load on all', () => {
  const p = published('formula-three-span');
  const c = continuousUniform([1, 1, 1], 1);
  const asked = { clause, unit: '', reason: 'handbook coefficients, 2 to 4 figures' };
  against(suite, p, 'R_end', c.reactions[0]!, asked);
  against(suite, p, 'R_int', c.reactions[1]!, asked);
  against(suite, p, 'V_int', c.shears[0]![1], asked);
  against(suite, p, 'M_neg', -c.supportMoments[1]!, asked);
  against(suite, p, 'M_pos_end', c.spanMoments[0]!, asked);
  against(suite, p, 'M_pos_mid', c.spanMoments[1]!, asked);
  against(suite, p, 'defl', c.deflectionsTimesEI[0]!, asked);
  expect(THREE_EQUAL_SPANS.V).toBeCloseTo(c.shears[0]![1], 12);
  expect(THREE_EQUAL_SPANS.MEndSpan).toBeCloseTo(c.spanMoments[0]!, 12);
});

it('three spans, two adjacent ones loaded', () => {
  const p = published('formula-three-span-two-loaded');
  const c = continuousUniform([1, 1, 0], 1);
  const asked = { clause, unit: '', reason: 'handbook coefficients to 0.001' };
  for (let i = 0; i < 4; i++) against(suite, p, `R${i + 1}`, c.reactions[i]!, asked);
  against(suite, p, 'M_pos1', c.spanMoments[0]!, asked);
  against(suite, p, 'M_pos2', c.spanMoments[1]!, asked);
  against(suite, p, 'M_R3', c.supportMoments[2]!, asked);
  against(suite, p, 'defl', c.deflectionsTimesEI[0]!, { ...asked, tolerance: { abs: 0.0001 } });
});

it('two spans, one loaded', () => {
  const p = published('formula-two-span-one-loaded');
  const c = continuousUniform([1, 0], 1);
  const asked = { clause, unit: '', reason: 'exact fractions' };
  for (let i = 0; i < 3; i++) against(suite, p, `R${i + 1}`, c.reactions[i]!, asked);
  against(suite, p, 'M_pos', c.spanMoments[0]!, asked);
  against(suite, p, 'M_R2', c.supportMoments[1]!, asked);
  const both = continuousUniform([1, 1], 1);
  expect(both.reactions[1]).toBeCloseTo(TWO_EQUAL_SPANS.RMiddle, 12);
  expect(both.spanMoments[0]).toBeCloseTo(TWO_EQUAL_SPANS.MSpan, 12);
});

it('simple span, uniform load', () => {
  const p = published('formula-simple');
  const s = simpleUniform(1, 1, 1);
  const asked = { clause: 'statics: simple beam', unit: '', reason: 'exact fractions' };
  against(suite, p, 'R', s.R, asked);
  against(suite, p, 'M', s.M, asked);
  against(suite, p, 'defl', s.deflection, asked);
});

it('one overhang, uniform load', () => {
  const p = published('formula-overhang');
  const s = overhangUniform(1, 10, 2.5, 1);
  const asked = { clause: 'statics: overhanging beam', unit: '', reason: 'exact decimals' };
  against(suite, p, 'R1', s.R1, asked);
  against(suite, p, 'R2', s.R2, asked);
  against(suite, p, 'M_span', s.MSpan, asked);
  against(suite, p, 'M_support', -s.MSupport, asked);
});

it('leaves no statics check unanswered', () => expect(forgotten(suite, 'wood-statics')).toEqual([]));
