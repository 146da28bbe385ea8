export { handlesOf } from './handles.js';
export type { Handle } from './model.js';
export { type DimensionMove, editsOf, movesOf } from './stations.js';
export { writeLength } from './write.js';
