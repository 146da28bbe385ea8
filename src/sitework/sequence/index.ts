export { liftOf, ONE_PERSON, ONE_PERSON_SOURCE, weightOf } from './lifting.js';
export { type Bar, type Schedule, scheduleOf } from './schedule.js';
export { type HeavyPiece, type Sequence, sequenceOf } from './sequence.js';
export { type Task, tasksOf, type Wait } from './tasks.js';
