/**
 * The project after reading: every length in inches, every angle in radians, every choice spelled out. Values the
 * office decides carry where they came from; values we assumed are listed once in `assumptions`. Later stages never
 * ask "was this given?": they read the value, and the cover sheet reads the lists.
 */
import type { Assumption, Question } from './model/base.js';
import type { Basis } from './model/basis.js';
import type { Buying } from './model/buying.js';
import type { Choices, Log, PriceRow } from './model/choices.js';
import type { Cover } from './model/cover.js';
import type { House } from './model/house.js';
import type { Job } from './model/job.js';
import type { Lot } from './model/lot.js';
import type { Patio } from './model/patio.js';
import type { Submittal } from './model/submittal.js';

export type * from './model/base.js';
export type * from './model/basis.js';
export type * from './model/buying.js';
export type * from './model/choices.js';
export type * from './model/cover.js';
export type * from './model/electrical.js';
export type * from './model/house.js';
export type * from './model/job.js';
export * from './model/log.js';
export type * from './model/lot.js';
export type * from './model/materials.js';
export type * from './model/patio.js';
export type * from './model/roofs.js';
export type * from './model/submittal.js';
export type * from './model/supports.js';

export interface Project {
  readonly version: 1;
  readonly job: Job;
  readonly basis: Basis;
  readonly lot: Lot;
  readonly house: House;
  readonly patio: Patio;
  readonly cover: Cover;
  readonly choices: Choices;
  readonly prices: readonly PriceRow[];
  /** Absent: bought and built as is usual, see `USUAL_BUYING`. */
  readonly buying?: Buying | undefined;
  readonly log: Log;
  /** Absent: nothing beside the drawings, see `NO_SUBMITTAL`. */
  readonly submittal?: Submittal | undefined;
  readonly assumptions: readonly Assumption[];
  readonly questions: readonly Question[];
}
