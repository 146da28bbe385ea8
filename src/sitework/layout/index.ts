export { csvField, csvLine, stakeCsv } from './csv.js';
export { BENCHMARK, CORNER, HOME, layoutOf } from './layout.js';
export type * from './model.js';
export * from './words.js';
