export { stageCards } from './cards.js';
export type * from './contract.js';
export { STAGES } from './registry.js';
