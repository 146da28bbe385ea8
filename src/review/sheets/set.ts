/** What the checks need, from a structure and the sheets drawn of it. */
import { drawingArea, sheetFrame, stampSpace } from '../../drawings/annotate/title-block.js';
import type { Sheet } from '../../drawings/ir/index.js';
import type { Structure } from '../../structure/model.js';
import type { DrawnSet } from './contract.js';

/** All sheets of one size; an empty set has nothing to judge. */
export function drawnSet(sheets: readonly Sheet[], structure: Structure): DrawnSet {
  const size = sheets[0]?.size ?? 'ARCH D';
  const marks = new Set([...structure.members, ...structure.footings, ...structure.joints].map((p) => p.mark));
  return { sheets, marks, frame: sheetFrame(size), area: drawingArea(size), stamp: stampSpace(size) };
}
