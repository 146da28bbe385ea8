/** Letter pages of the work on the site. */
export { type StagesInput, stageSheets } from './stage-papers.js';
export { type StakeInput, stakeSheets } from './stake-papers.js';
