/** Schedule of knee braces and cross members, and what the joint schedule says of side load. */
import type { Member } from '../../structure/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

export function bracingTable(
  { input: { structure }, len }: SheetContext,
  wood: (m: Member) => string,
  worst: (m: Member) => string,
): readonly Block[] {
  const parts = structure.members.filter((m) => m.role === 'strut' || m.role === 'brace');
  const first = parts.filter((m, i) => parts.findIndex((o) => o.mark === m.mark) === i);
  if (first.length === 0) return [];
  const rows = first.map(
    (m): TableRow => [
      { text: m.mark, mark: m.mark, path: m.path },
      m.role === 'strut' ? 'cross member' : 'knee brace',
      m.section.label,
      wood(m),
      String(parts.filter((o) => o.mark === m.mark).length),
      len(m.length),
      m.cuts.join('; '),
      worst(m),
    ],
  );
  return [
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Knee brace and cross member schedule',
      columns: [
        { head: 'Mark' },
        { head: 'What' },
        { head: 'Section' },
        { head: 'Condition' },
        { head: 'Count', align: 'right' },
        { head: 'Cut length', align: 'right' },
        { head: 'Run, rise and cuts' },
        { head: 'Nearest limit', grow: true },
      ],
      rows,
    },
  ];
}

/** Whether the side load is in the joint forces: where posts hold it both ways it is. */
export function sideText({ input: { project, effects } }: SheetContext): string {
  const { x, y } = project.cover.lateral;
  const named = [x, y].every((s) => s !== 'none' && s !== 'unknown');
  return named && effects.failure === undefined
    ? 'with the side load down to where the beam is held sideways: what that place asks of braces, posts or the house is checked apart.'
    : 'without the side load in a direction for which nothing is named that holds it: see the cover.';
}
