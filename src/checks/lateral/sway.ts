/** Each horizontal direction names the system that resists it; none is a fail (ASCE 7-16 1.4.3). */
import type { LateralSystem } from '../../project/model.js';
import type { Check } from '../contract.js';
import { failed, notEvaluated } from '../finding.js';
import { byHouse } from './by-house.js';
import { byFixedPosts, byKneeBraces } from './by-posts.js';
import { ALONG, type Axis, SWAY_CLAUSE, type SwaySystem } from './system.js';

const SYSTEMS: Readonly<Record<LateralSystem, SwaySystem>> = {
  house: byHouse,
  'knee-braces': byKneeBraces,
  'fixed-posts': byFixedPosts,
  none: {
    answer: (axis) =>
      failed(SWAY_CLAUSE, `Nothing resists side load ${ALONG[axis]}: name the house, knee braces or fixed posts.`),
  },
  unknown: {
    answer: (axis) =>
      notEvaluated(
        SWAY_CLAUSE,
        `What resists side load ${ALONG[axis]} has not been chosen: name the house, knee braces or fixed posts.`,
      ),
  },
};

const sway = (axis: Axis): Check => ({
  id: `sway-${axis}`,
  title: `Sway ${ALONG[axis]}`,
  subjects: () => [{ id: 'cover', path: '/cover' }],
  run: (_, ctx, rec) => SYSTEMS[ctx.project.cover.lateral[axis]].answer(axis, ctx, rec),
});

export const swayX = sway('x');
export const swayY = sway('y');
