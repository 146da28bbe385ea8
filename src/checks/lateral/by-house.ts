/** Side load handed to the house through the roof diaphragm. */
import { notEvaluated } from '../finding.js';
import { ALONG, SWAY_CLAUSE, type SwaySystem } from './system.js';

export const byHouse: SwaySystem = {
  answer: (axis) =>
    notEvaluated(
      SWAY_CLAUSE,
      `Side load ${ALONG[axis]} is to be held by the house; that path is not worked out yet. Needed: the roof diaphragm and its tie to the house.`,
    ),
};
