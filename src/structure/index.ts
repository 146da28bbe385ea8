/** The door of this stage: Project → Structure. */
export * from './model.js';
export { piecesOf } from './pieces/index.js';
export { place, type Site } from './place.js';
export { cornersOf, onSurface, planeHeight } from './surfaces.js';
