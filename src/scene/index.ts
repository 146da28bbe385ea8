export { sceneOf } from './meshes.js';
export type * from './model.js';
export { sceneState } from './state.js';
