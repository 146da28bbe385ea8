/** What to buy and how to cut it, from the placed structure; prices, orders, and whom to hire. */

export type { CutGroup, PartCut } from './cuts/model.js';
export * from './cutting/index.js';
export { GROUPS, type GroupId, type Line, type Open, type Takeoff, type Waste } from './model.js';
export type { PanelLayout, PanelPiece } from './panels/model.js';
export { type TakeoffOptions, takeOff } from './take-off.js';
