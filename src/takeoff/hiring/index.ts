export { CHECKLIST, DEPOSITS, LAW, SOURCES } from './checklist.js';
export type { BidComparison, BidStanding, Payment, Scope, ScopeLine } from './model.js';
export { compareBids, scopesOf, strayBids } from './scopes.js';
