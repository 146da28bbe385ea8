/** Hand statics in closed form: beams, footings, braces. */
export * from './beams.js';
export * from './continuous.js';
export * from './footing-pressure.js';
export * from './footing-uplift.js';
export * from './knee-brace.js';
