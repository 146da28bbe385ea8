/**
 * The placed structure: every part in three dimensions with a short stable mark. House axes (src/base/vec.ts).
 * Nothing here knows a load; nothing after this stage branches on a roof or framing kind, it reads these properties.
 */
export type * from './model/ground.js';
export type * from './model/house.js';
export type * from './model/joints.js';
export type * from './model/members.js';
export type * from './model/overlay.js';
export type * from './model/pieces.js';
export type * from './model/sections.js';
export type * from './model/structure.js';
export type * from './model/surfaces.js';
