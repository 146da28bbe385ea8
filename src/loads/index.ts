/** Loads: what acts on the roof, case by case, and how cases combine. */
export { buildLoads } from './build.js';
export type * from './model.js';
