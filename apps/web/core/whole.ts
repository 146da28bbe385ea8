/** All sheets of the set: loaded by the quick worker after it has shown the first one. */
export { drawOne, drawSet } from '../../../src/index.js';
