export { type ApprovalStep, approvalsOf, type Clock, INACTIVE_DAYS, INACTIVE_SOURCE, kindOf } from './approvals.js';
export { type Change, changesBetween, reopened } from './changes.js';
export { dateOf, dayNumber } from './dates.js';
export { OFFICES } from './offices.js';
