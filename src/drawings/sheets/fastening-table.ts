/** Fastening schedule: nails of sheathing, blocks and plies, and the ledger's fasteners, for whoever drives and whoever counts them. */
import { findFastener } from '../../catalog/index.js';
import { shankText } from '../../checks/house/calculated.js';
import { NOT_STATED, overlayJointsOf } from '../../checks/tie-in/overlay-fastening.js';
import { markList } from '../../report/path/table.js';
import type { Block, TableRow } from '../annotate/index.js';
import { SHEET_IDS, type SheetContext } from './contract.js';

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

/** Of a roof that goes on over the house: in the words of the statement, or said to be missing. */
function overlays({ input }: SheetContext): TableRow[] {
  return (input.structure.overlays ?? []).flatMap((o) =>
    overlayJointsOf(input, o).map((j): TableRow => [j.what, j.how || NOT_STATED, j.from]),
  );
}

/** Joints have their fasteners on the joint plan, each with its loads: named here so that nobody looks for them in vain. */
function joints({ input }: SheetContext): TableRow[] {
  const marks = [
    ...new Set(input.structure.joints.filter((j) => j.kind !== 'fascia-to-framing').map((j) => j.mark)),
    ...(input.project.cover.houseTies ?? []).map((t) => t.mark),
  ];
  const trim = [...new Set(input.structure.joints.filter((j) => j.kind === 'fascia-to-framing').map((j) => j.mark))];
  return [
    [
      `${markList(marks)}: joints`,
      `joint plan, sheet ${SHEET_IDS['joint-plan']}`,
      'only the fasteners the loads were published or calculated with',
    ],
    ...(trim.length > 0
      ? [[`${markList(trim)}: fascia to tails`, 'the code’s fastening schedule', 'at every tail'] as const]
      : []),
  ];
}

export function fasteningTable(ctx: SheetContext): Block {
  const h = ctx.style.note;
  return {
    kind: 'table',
    title: 'Fastening schedule of this set',
    columns: [
      { head: 'What is fastened', max: 34 * h },
      { head: 'With', max: 44 * h },
      { head: 'How', grow: true },
    ],
    rows: [...sheathing(ctx), ...plies(ctx), ...ledgers(ctx), ...overlays(ctx), ...joints(ctx)],
  };
}
