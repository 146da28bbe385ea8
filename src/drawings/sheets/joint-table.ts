/** Table of joints for whoever buys connectors: what each must carry, on what basis, and what serves it. */
import { type JointDemand, jointDemands } from '../../checks/joints/demands.js';
import { NOT_STATED, overlayJointsOf } from '../../checks/tie-in/overlay-fastening.js';
import { JOINT_WORDS } from '../../structure/joint-words.js';
import type { Block, TableRow } from '../annotate/index.js';
import { sideText } from './bracing-table.js';
import type { SheetContext } from './contract.js';
import { detailCalls } from './details/sheets.js';
import { madeOf, pounds, tied } from './joint-text.js';
import { tieRows } from './tie-rows.js';

/** Load duration factor behind each direction that asks for something, and the lightest wood of the joint. */
function basis(ctx: SheetContext, d: JointDemand): string {
  const { loads, structure } = ctx.input;
  const factor = (id: string): string => {
    const c = loads.combinations.find((x) => x.id === id);
    return c ? c.CD.toFixed(2).replace(/0$/, '') : '';
  };
  const ways = (
    [
      ['down', d.down],
      ['up', d.up],
      ['side', d.alongX.value > d.alongY.value ? d.alongX : d.alongY],
    ] as const
  ).flatMap(([way, x]) => (x.value > 0 && factor(x.combination) !== '' ? [`${way} ${factor(x.combination)}`] : []));
  const wood = structure.joints
    .filter((j) => j.mark === d.mark)
    .flatMap((j) => j.ties)
    .flatMap((t) => structure.members.find((m) => m.id === t.part) ?? [])
    .sort((p, q) => p.section.values.G - q.section.values.G)[0];
  const wet = wood?.section.wet ? ', wet' : '';
  return [ways.length > 0 ? `CD ${ways.join(', ')}` : '', wood ? `G ${wood.section.values.G}${wet}` : '']
    .filter((t) => t !== '')
    .join('; ');
}

/** Joints of a roof that goes on over the house: no forces of the frame, but the words of the statement. */
function overlayFastening({ input, style }: SheetContext): Block[] {
  const rows = (input.structure.overlays ?? []).flatMap((o) =>
    overlayJointsOf(input, o).map((j): TableRow => [j.what, j.how || NOT_STATED, j.from]),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      title: 'Joints over the old roof: by the professional’s statement',
      columns: [
        { head: 'Joint', max: 24 * style.note },
        { head: 'Fastening', grow: true },
        { head: 'By', max: 24 * style.note },
      ],
      rows,
    },
  ];
}

/** The table of the joint plan with its notes. */
export function jointTable(ctx: SheetContext): Block[] {
  const h = ctx.style.note;
  const rows: TableRow[] = jointDemands(ctx.input).map((d) => [
    { text: d.mark, mark: d.mark, path: d.path },
    `${JOINT_WORDS[d.kind]}: ${tied(ctx.input.structure, d.mark)}`,
    String(d.count),
    ...[d.down, d.up, d.alongX, d.alongY].map((x) =>
      d.known || d.kind === 'fascia-to-framing' ? pounds(ctx, x) : '?',
    ),
    basis(ctx, d) || '–',
    madeOf(ctx, d),
  ]);
  // Ties to the house have no row of forces a joint: their words carry what they need.
  const ties = tieRows(ctx).map(
    (r): TableRow => [r[0]!, `${String(r[1])}: ${String(r[2])}`, r[3]!, r[4]!, r[5]!, r[6]!, r[7]!, '–', r[8]!],
  );
  return [
    {
      kind: 'table',
      title: 'Joints: allowable load each must have, and what serves it',
      columns: [
        { head: 'Mark' },
        { head: 'Joint and parts', max: 15 * h },
        { head: 'Count', align: 'right' },
        { head: 'Down', align: 'right' },
        { head: 'Up', align: 'right' },
        { head: 'Along house', align: 'right', max: 6 * h },
        { head: 'Out from house', align: 'right', max: 6 * h },
        { head: 'Load duration, wood', max: 10 * h },
        { head: 'Product or calculation', grow: true },
      ],
      rows: [...rows, ...ties],
    },
    ...overlayFastening(ctx),
    {
      kind: 'para',
      text: `Largest force on any one joint of the mark, allowable-stress level, ${sideText(ctx)} All directions may act together. A product counts when its published allowable loads, for this wood (specific gravity G or more), moisture and load duration CD, are at least these in every direction.`,
    },
    {
      kind: 'table',
      title: 'Details called for on this plan',
      columns: [{ head: 'Sheet' }, { head: 'No.', align: 'right' }, { head: 'Detail', grow: true }],
      rows: detailCalls(ctx).map((c): TableRow => [c.sheet, c.number, c.title]),
    },
    { kind: 'heading', text: 'Buying connectors' },
    {
      kind: 'numbered',
      items: [
        'Count is the number of joints; where the row names several pieces, buy count times pieces. Buy the fasteners the product’s loads are published with: no other nail or screw counts.',
        'A dot is a joint; a line with a count names all dots under it. Circles with two-part bubbles: detail above, its sheet below.',
        'Metal against treated wood: see protection against decay and rust in the schedules. Exchange a product only for one with loads as high each way, and show the change to the office first.',
      ],
    },
  ];
}
