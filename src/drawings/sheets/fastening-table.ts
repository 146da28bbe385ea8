/** Fastening schedule: every nail, screw, bolt and tie of the set in one list, for whoever drives and whoever counts them. */
import { findFastener } from '../../catalog/index.js';
import { shankText } from '../../checks/house/calculated.js';
import { jointDemands } from '../../checks/joints/demands.js';
import { JOINT_WORDS } from '../../structure/joint-words.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';
import { madeOf } from './joint-text.js';
import { tieRows } from './tie-rows.js';

const name = (id: string): string => findFastener(id)?.name ?? id;

function sheathing({ input, len }: SheetContext): TableRow[] {
  return input.project.cover.roofs.flatMap((r): TableRow[] => {
    const n = r.finish.nailing;
    if (!n || r.finish.sheathing === '') return [];
    const row = (what: string, how: string): TableRow => [`${r.mark}: ${what}`, name(n.nail), how];
    return [
      row(
        'sheathing, panel ends and edges',
        `at ${len(n.edge)}${n.blocked ? ', every edge on framing or blocks' : ''}`,
      ),
      row('sheathing, in the field', `at ${len(n.field)} into every frame`),
      row('sheathing, outer edges, ridge and hips', `at ${len(n.boundary ?? n.edge)}`),
      ...(n.heel
        ? [[`${r.mark}: blocks over bearings`, name(n.heel.nail), `${n.heel.count} toe-nails in every bay`] as const]
        : []),
    ];
  });
}

function plies({ input, len }: SheetContext): TableRow[] {
  const { members } = input.structure;
  return Object.entries(input.project.choices.sections).flatMap(([key, c]): TableRow[] => {
    const f = 'plyFastening' in c ? c.plyFastening : undefined;
    const marks = [
      ...new Set(members.filter((m) => m.section.choice === key && m.section.plies > 1).map((m) => m.mark)),
    ];
    return f && marks.length > 0
      ? [
          [
            `${marks.join(', ')}: plies to each other`,
            name(f.fastener),
            `${f.rows} rows at ${len(f.spacing)}, ${len(f.edge)} from edges, ${len(f.end)} from ends, at each face`,
          ],
        ]
      : [];
  });
}

function ledgers({ input, len }: SheetContext): TableRow[] {
  return input.project.cover.ledgers.flatMap((l): TableRow[] => {
    const f = l.fastening;
    if (!f) return [];
    const what = f.kind === 'bolt' ? 'through bolts' : f.kind === 'lag' ? 'lag screws' : 'wood screws';
    return [
      [
        `${l.mark}: ledger to the house`,
        `${shankText(f, len)} x ${len(f.length)} ${what}, washers ${len(f.washer)}`,
        `${f.rows.length} at each place, drawn in the ledger detail`,
      ],
    ];
  });
}

/** Joints whose fasteners a product or a calculation names; trim by the code's own list. */
function joints(ctx: SheetContext): TableRow[] {
  return jointDemands(ctx.input)
    .filter((d) => d.kind !== 'ledger-to-house')
    .map((d): TableRow => [`${d.mark}: ${JOINT_WORDS[d.kind]}, ${d.count}`, madeOf(ctx, d), '']);
}

export function fasteningTable(ctx: SheetContext): Block {
  const h = ctx.style.note;
  const rows: TableRow[] = [...sheathing(ctx), ...plies(ctx), ...ledgers(ctx)];
  const made = joints(ctx).map((r): TableRow => [r[0]!, r[1]!, 'at every joint of the mark']);
  const ties = tieRows(ctx).map((r): TableRow => {
    const mark = r[0]!;
    return [`${typeof mark === 'string' ? mark : mark.text}: tie to the house`, r[8]!, 'all in one line'];
  });
  return {
    kind: 'table',
    title: 'Fastening schedule of this set',
    columns: [
      { head: 'What is fastened', max: 30 * h },
      { head: 'With', grow: true },
      { head: 'How', max: 34 * h },
    ],
    rows: [...rows, ...made, ...ties],
  };
}
