/** The door of this stage: the lot in house axes and what zoning asks of it. */
export { type CoverFootprint, measureLot } from './measure.js';
export * from './model.js';
export type { Separation } from './separations.js';
export { DOUBTFUL_CLOSURE, NO_CLOSURE, type Survey, surveyLot } from './survey.js';
