/** Annotation: everything on a sheet that is not the structure itself. Functions return primitives and what they measured. */
export type { Block, Slug } from './block.js';
export * from './dim-string.js';
export * from './feet-inches.js';
export * from './flow.js';
export * from './layout.js';
export * from './leader.js';
export * from './marks.js';
export { type LetterOptions, type Pencil, pencil } from './pencil.js';
export * from './place-tags.js';
export * from './style.js';
export * from './table.js';
export * from './tags.js';
export * from './title-block.js';
export * from './view-title.js';
