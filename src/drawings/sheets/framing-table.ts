/** Table and notes of the roof framing plan. */
import type { Member } from '../../structure/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';
import { framingNotes } from './framing-notes.js';
import { nailingNotes } from './nailing-words.js';
import { houseNotes } from './tie-rows.js';
import { paperState } from './truss-words.js';

/** One row a mark of these members, in their order. */
export function framingBlocks(ctx: SheetContext, members: readonly Member[]): Block[] {
  const { structure, project } = ctx.input;
  const { len } = ctx;
  const h = ctx.style.note;
  const count = (mark: string) => structure.members.filter((m) => m.mark === mark).length;
  const rows = [...new Set(members.map((m) => m.mark))].map((mark): TableRow => {
    const m = structure.members.find((x) => x.mark === mark)!;
    const what = m.truss
      ? `${m.truss.kind.replace('-', ' ')}${m.role === 'gable-truss' ? ', gable end' : ''}, span ${len(m.truss.span)}`
      : m.section.label;
    return [
      { text: mark, mark, path: m.path },
      what,
      String(count(mark)),
      m.truss ? len(m.truss.height) : len(m.length),
    ];
  });
  const trusses = members.some((m) => m.truss);
  const finish = project.cover.roofs.map(
    (r) =>
      `${r.mark}: ${structure.surfaces
        .find((s) => s.roof === r.mark)!
        .layers.map((l) => l.name)
        .join('; ')}.`,
  );
  return [
    {
      kind: 'table',
      title: 'Framing',
      columns: [
        { head: 'Mark' },
        { head: 'What', max: 26 * h },
        { head: 'Count', align: 'right' },
        { head: trusses ? 'Height or length' : 'Length', align: 'right', grow: true },
      ],
      rows,
    },
    { kind: 'heading', text: 'Roof, from top to bottom' },
    { kind: 'bullets', items: finish },
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        ...(trusses
          ? [
              `Trusses are designed and sealed by the truss plant’s engineer; the profile here is for order and layout. Do not cut, notch, drill or load them otherwise. Truss papers: ${paperState(ctx.input)}.`,
              'Set, brace and restrain trusses by the plant’s instructions. Unbraced trusses fall over: keep people from under them.',
            ]
          : [
              `Rafters run in one piece from ${structure.surfaces.length > structure.roofs.length ? 'ridge' : 'ledger'} to tail. Seat cuts no deeper than a quarter of the rafter depth.`,
            ]),
        ...framingNotes(structure, len),
        'Sheathing with its strength axis across the framing; end joints staggered. An unsheathed roof resists no side load.',
        ...nailingNotes(project, len),
        ...houseNotes(ctx),
        'Every frame is tied at both bearings: joint schedule.',
      ],
    },
  ];
}
