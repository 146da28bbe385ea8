/** The door of this stage: what is done on the ground. Data only. */
export * from './approvals/index.js';
export * from './asbuilt/index.js';
export * from './layout/index.js';
export * from './sequence/index.js';
export * from './stages/index.js';
