/** Search over sizes for the least cost that passes every check; the flow and the costs are handed in. */
export { dimensionsOf } from './dimensions.js';
export type { Choice, Dimension, Option, Sized, Tools } from './model.js';
export { searchSizes } from './search.js';
