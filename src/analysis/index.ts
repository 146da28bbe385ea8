/** Analysis: what the loads do to each part, case by case, and how to read it for a combination. */
export { analyse } from './analyse.js';
export { BALANCE_LIMIT } from './balance.js';
export { distinctCombinations } from './distinct.js';
export * from './effects.js';
export type * from './model.js';
export { mostOf, OVER } from './peaks.js';
export * from './truss-frame.js';
export { type TrussEffects, trussEffects } from './truss-set.js';
export { type ThrustSet, thrustSet } from './truss-thrust.js';
