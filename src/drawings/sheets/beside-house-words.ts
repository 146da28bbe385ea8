/** The caution for footings dug beside the house, the same on footing plan and inspection list. */
import { type BesideHouse, besideHouse } from '../../checks/footings/beside-house.js';
import type { Block } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

/** Common practice, no source, for the line; who decides below it. */
const UNDERMINING =
  'Do not dig below a line 45 degrees down from the lower edge of the house footing (common practice, no source) without underpinning: dig the house footing free at one place by hand and verify its depth before digging. Below that line a licensed professional must design it.';

const distances = (ctx: SheetContext, b: BesideHouse): string =>
  `${b.footing.mark}: edge ${ctx.len(b.clear)} from the house wall, bottom ${ctx.len(b.depth)} below grade`;

/** One line on them; empty where none is dug near the house. */
export function besideLine(ctx: SheetContext): string {
  const all = besideHouse(ctx.input.structure);
  return all.length === 0
    ? ''
    : `CAUTION, house footing: ${all.map((b) => distances(ctx, b)).join('; ')}. ${UNDERMINING}`;
}

export function besideBlocks(ctx: SheetContext): Block[] {
  const all = besideHouse(ctx.input.structure);
  if (all.length === 0) return [];
  const head = (text: string) => ({ head: text, align: 'right' as const, max: 11 * ctx.style.note });
  return [
    {
      kind: 'table',
      title: 'CAUTION: footings beside the house footing',
      columns: [
        { head: 'Mark' },
        head('Edge from house wall'),
        head('Bottom below grade'),
        { ...head('House footing at least this deep, and its projection more'), max: 20 * ctx.style.note, grow: true },
      ],
      rows: all.map((b) => [
        { text: b.footing.mark, mark: b.footing.mark, path: b.footing.path },
        ctx.len(b.clear),
        ctx.len(b.depth),
        ctx.len(b.least),
      ]),
    },
    { kind: 'para', text: UNDERMINING },
  ];
}
