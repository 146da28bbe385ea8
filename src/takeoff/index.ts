/** What to buy and how to cut it, from the placed structure; prices, orders, and whom to hire. */

export { PHASES, type Phase } from '../project/model/buying.js';
export { type Buy, type BuyOptions, buyOf } from './buy.js';
export { type CompareOptions, compareChoices } from './choices/compare.js';
export type { Compared, DeriveProject, Variant } from './choices/model.js';
export type { CutGroup, PartCut } from './cuts/model.js';
export * from './cutting/index.js';
export * from './hiring/index.js';
export { type BuyJson, buyJson } from './json.js';
export { GROUPS, type GroupId, type Line, type Open, type Takeoff, type Waste } from './model.js';
export type { PourOrder } from './orders/concrete.js';
export type { Mismatch, TrussSheet } from './orders/truss.js';
export type { PanelLayout, PanelPiece } from './panels/model.js';
export { type Costs, costsOf, type PhaseCost, type PricedLine } from './prices/costs.js';
export { INVENTED, inventedPrices } from './prices/invented.js';
export { pricesCsv, readPricesCsv } from './prices/list.js';
export { buyTables, purchaseTable } from './tables.js';
export { type TakeoffOptions, takeOff } from './take-off.js';
export { PHASE_NAMES } from './words.js';
