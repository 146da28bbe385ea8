/** Details where roof edges meet the wall of the house: flashing order, and the kick-out of sloping edges. */
import type { SheetContext } from '../contract.js';
import type { Detail } from './contract.js';
import { flashing } from './flashing.js';
import { kickOut } from './kick-out.js';
import { eachEdge, edgesOf } from './wall-edges.js';

export const wallEdgeDetails = (ctx: SheetContext): readonly Detail[] => {
  const edges = eachEdge(edgesOf(ctx));
  return [
    ...edges.filter((e) => !e.sloping).map((e) => flashing(ctx, e)),
    ...edges.filter((e) => e.sloping).flatMap((e) => [flashing(ctx, e), kickOut(ctx, e)]),
  ];
};
