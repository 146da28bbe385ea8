/** What other sheets show of a roof over the old roof: its outline on the framing plan, its rows in the schedules, a note. */
import { flat } from '../../base/vec.js';
import type { Member, OverlayPlaced, Structure } from '../../structure/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import { SHEET_IDS, type SheetContext } from './contract.js';
import { planOfMember, valleyLines } from './tie-in-lines.js';

/** Thin, for the tie-in sheet dimensions and tags them. */
export const overlayOnPlan = (structure: Structure): Primitive[] =>
  (structure.overlays ?? []).flatMap((o) => [
    ...o.faces.map(
      (f): Primitive => ({
        kind: 'polyline',
        layer: 'A-ROOF-OTLN',
        pen: 'new-fine',
        closed: true,
        points: f.outline.map(flat),
        mark: o.roof,
      }),
    ),
    ...o.members.map(
      (m): Primitive => ({
        kind: 'polyline',
        layer: 'S-FRAM',
        pen: 'new-fine',
        closed: true,
        points: planOfMember(o, m),
        mark: m.mark,
      }),
    ),
    ...valleyLines(o),
  ]);

const run = (marks: readonly string[]): string =>
  marks.length < 3 ? marks.join(', ') : `${marks[0]}–${marks[marks.length - 1]}`;

/** One note a roof: which marks stand on the old roof and where they are drawn. */
export const overlayNotes = (structure: Structure): string[] =>
  (structure.overlays ?? []).map(
    (o) =>
      `Over the house (${o.plane}): fill rafters ${run(o.fills.map((f) => f.mark))}, valley plates ${o.plates.mark}, ridge board ${o.board.mark} stand on the old roof, not on the beams; cuts and flashing on ${SHEET_IDS['tie-in']}.`,
  );

/** Marks of one overlay with its first member each. */
const first = (o: OverlayPlaced): Member[] =>
  o.members.filter((m, i) => o.members.findIndex((q) => q.mark === m.mark) === i && m.role !== 'fascia');

export function overlaySchedule(ctx: SheetContext): Block[] {
  const rows = (ctx.input.structure.overlays ?? []).flatMap((o) =>
    first(o).map(
      (m): TableRow => [
        { text: m.mark, mark: m.mark, path: m.path },
        m.role === 'ridge' ? 'ridge board' : m.role.replaceAll('-', ' '),
        m.section.label,
        String(o.members.filter((q) => q.mark === m.mark).length),
        ctx.len(m.length),
        m.cuts.join('; '),
      ],
    ),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      title: 'On the old roof',
      columns: [
        { head: 'Mark' },
        { head: 'What' },
        { head: 'Section' },
        { head: 'Count', align: 'right' },
        { head: 'Cut length', align: 'right' },
        { head: 'Cuts', grow: true },
      ],
      rows,
    },
    { kind: 'gap' },
  ];
}
