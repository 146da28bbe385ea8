/** Each part's exposure, treatment, cut ends and metal, as an inspector asks for them. */
import { durabilityRows, EXPOSURES } from '../../checks/durability/rows.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

export function durabilityBlocks(ctx: SheetContext): Block[] {
  const rows = durabilityRows(ctx.input).map(
    (r): TableRow => [
      { text: r.mark, mark: r.mark },
      EXPOSURES[r.exposure].words,
      r.has === 'none' ? 'untreated' : r.has.replace('-', ' '),
      r.category,
      r.cutEnds,
      r.metal,
    ],
  );
  return [
    {
      kind: 'table',
      title: 'Protection against decay and rust',
      columns: [
        { head: 'Mark' },
        { head: 'Exposure' },
        { head: 'Treatment' },
        { head: 'Use category' },
        { head: 'Cut ends' },
        { head: 'Metal in it', grow: true, max: 30 * ctx.style.note },
      ],
      rows,
    },
    {
      kind: 'para',
      text: 'Use categories of AWPA U1; posts stand on bases that keep them off the concrete. Follow the preservative maker where he asks for heavier coating; near salt water use stainless steel.',
    },
    { kind: 'gap' },
  ];
}
