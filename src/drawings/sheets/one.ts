/** One sheet of a set by itself: what a screen needs while something is dragged, without paying for all the others. */
import type { Sheet } from '../ir/index.js';
import type { DrawingInput } from './contract.js';
import { drawOneOf, type SetPlace } from './one-of.js';
import { SHEETS } from './registry.js';
import { drawSet } from './set.js';

/**
 * The sheet with that id as `drawSet` would draw it; undefined when this project has none with that id. A sheet that lists the
 * set cannot be drawn without it: for that one all are drawn.
 */
export const drawOne = (given: DrawingInput, id: string, place: SetPlace): Sheet | undefined =>
  drawOneOf(SHEETS, given, id, place) ?? drawSet(given).find((s) => s.id === id);
