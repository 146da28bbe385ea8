/**
 * Two small placed structures made by hand for tests, with the project they stand for: a shed (rafters from a ledger to
 * a beam on posts) and a gable (trusses on two beams). Only what loads and analysis read is filled in with care.
 */
export { GABLE, type GableSize, makeGable } from './testing-gable.js';
export { CALM, type Fixture, GROUND, type Site, solid } from './testing-parts.js';
export { makeShed, SHED, type ShedSize } from './testing-shed.js';
