export { asMeasured } from './as-measured.js';
export { asBuiltOf } from './asbuilt.js';
export { INSTRUMENTS, SIGMA_SOURCE } from './instruments.js';
export type * from './model.js';
export { type Rerun, rerunOf } from './rerun.js';
