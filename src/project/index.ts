/** The door of this stage: text → Project. */
export { NO_SUBMITTAL } from './complete/submittal.js';
export { editText, type TextEdit, treeOf } from './edit.js';
export * from './model.js';
export { locate, read } from './read.js';
export { projectJsonSchema } from './schema/index.js';
export { STARTER_KINDS, type StarterKind, type StarterOptions, starter } from './starter/index.js';
export { CURRENT_VERSION } from './upgrade/index.js';
