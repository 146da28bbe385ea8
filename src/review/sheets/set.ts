/** What the checks need, from a structure and the sheets drawn of it. */
import { drawingArea, sheetFrame, stampSpace } from '../../drawings/annotate/title-block.js';
import type { Sheet } from '../../drawings/ir/index.js';
import type { Structure } from '../../structure/model.js';
import type { DrawnSet } from './contract.js';

/** All sheets of one size; an empty set has nothing to judge. */
export function drawnSet(sheets: readonly Sheet[], structure: Structure): DrawnSet {
  const size = sheets[0]?.size ?? 'ARCH D';
  const over = (structure.overlays ?? []).flatMap((o) => o.members);
  const placed = [...structure.members, ...over, ...structure.footings, ...structure.joints];
  const marks = new Set(placed.map((p) => p.mark));
  return { sheets, marks, frame: sheetFrame(size), area: drawingArea(size), stamp: stampSpace(size) };
}
