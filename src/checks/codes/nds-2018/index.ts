/** National Design Specification for Wood Construction, 2018: one clause, one function. */
export * from './adjusted.js';
export * from './appendix-e.js';
export * from './ch2-adjustment.js';
export * from './ch3-bearing.js';
export * from './ch3-bending.js';
export * from './ch3-columns.js';
export * from './ch3-combined.js';
export * from './ch3-shear.js';
export * from './ch4-sawn.js';
export * from './ch5-glulam.js';
export * from './ch8-scl.js';
export * from './ch11-connections.js';
export * from './ch12-dowels.js';
export * from './ch12-small-dowels.js';
export * from './ch12-steel-plates.js';
export * from './ch12-withdrawal.js';
export * from './ch15-built-up.js';
