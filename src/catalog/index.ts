/** The catalogue's door: what can be bought, as frozen rows with source, edition and provenance. */
export * from './concrete.js';
export * from './coverings.js';
export * from './engineered.js';
export * from './fasteners.js';
export * from './grades.js';
export * from './model.js';
export * from './panels.js';
export * from './sizes.js';
export * from './soils.js';
export * from './species.js';
