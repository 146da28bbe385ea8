/** Hand statics in closed form. */
export * from './beams.js';
export * from './continuous.js';
