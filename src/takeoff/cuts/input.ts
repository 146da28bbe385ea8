import type { Buying } from '../../project/model/buying.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';

/** What pieces are counted from. */
export interface TakeoffInput {
  readonly project: Project;
  readonly structure: Structure;
  readonly buying: Buying;
}
