/** Loads: what acts on the roof, case by case, and how cases combine. */
export { attachedPressure } from './attached-wind.js';
export { buildLoads } from './build.js';
export type * from './model.js';
export { appendixConditions } from './patio-appendix.js';
export { seismicForce } from './seismic.js';
export { flowsUnder } from './wind.js';
