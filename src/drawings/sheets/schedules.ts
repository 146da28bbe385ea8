/** Schedules: every marked part once, with what it takes to buy, cut, place and connect it. */
import { formatForce } from '../../base/quantity/index.js';
import { type JointDemand, jointDemands } from '../../checks/joints/demands.js';
import { NOT_STATED, overlayJointsOf } from '../../checks/tie-in/overlay-fastening.js';
import { JOINT_WORDS } from '../../structure/joint-words.js';
import type { Member } from '../../structure/model.js';
import type { Block, TableRow } from '../annotate/index.js';
import { bracingTable, sideText } from './bracing-table.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { durabilityBlocks } from './durability.js';
import { footingSize, pierSize } from './footing-words.js';
import { isStatement } from './governing.js';
import { madeOf, pounds, tied } from './joint-text.js';
import { flowSheets } from './parts.js';
import { overlaySchedule } from './tie-in-parts.js';
import { tieRows } from './tie-rows.js';

const first = (members: readonly Member[]): Member[] =>
  members.filter((m, i) => members.findIndex((o) => o.mark === m.mark) === i);

function draw(ctx: SheetContext): SheetBody[] {
  const { structure, project, results } = ctx.input;
  const { area, style, len } = ctx;
  const u = project.job.units;
  const lb = (d: JointDemand['down']): string => pounds(ctx, d);
  const of = (...roles: Member['role'][]) => structure.members.filter((m) => roles.includes(m.role));
  const worst = ({ id, mark }: { readonly id: string; readonly mark: string }): string => {
    // A question of yes or no is at its limit or nowhere: it says nothing of how near a part is.
    const r = results
      .filter(
        (x) =>
          (x.subject === id || x.subject === mark) && (x.status === 'pass' || x.status === 'fail') && x.capacity > 0,
      )
      .sort((p, q) => q.ratio - p.ratio)
      .find((x) => !isStatement(x, ctx.input.explain(x.id)));
    return r ? `${r.ratio.toFixed(2)} ${r.title.toLowerCase()}${r.status === 'fail' ? ', FAILS' : ''}` : '–';
  };
  const wood = (m: Member): string =>
    [
      m.section.treatment === 'none' ? 'untreated' : `treated, ${m.section.treatment.replace('-', ' ')}`,
      m.section.wet ? 'wet service' : 'dry service',
    ].join(', ');
  const cell = (m: { mark: string; path: string }) => ({ text: m.mark, mark: m.mark, path: m.path });

  const footings: TableRow[] = structure.footings.map((f) => [
    cell(f),
    f.kind.replaceAll('-', ' '),
    footingSize(f, len),
    pierSize(f, len),
    len(f.surface - f.bottom),
    len(f.top),
    `${f.fc} psi`,
    f.steel,
    worst(f),
  ]);
  const posts: TableRow[] = of('post').map((m) => [
    cell(m),
    m.section.label,
    wood(m),
    len(m.length),
    len(m.start.z),
    len(m.end.z),
    worst(m),
  ]);
  // How the plies of a built-up section are fastened stands in the file as a sentence; single pieces have none.
  const fastening = (m: Member): string => {
    const c = project.choices.sections[m.section.choice];
    return c !== undefined && 'fastening' in c && c.plies > 1 ? c.fastening : '–';
  };
  const beams: TableRow[] = of('beam', 'ledger').map((m) => [
    cell(m),
    m.section.label,
    fastening(m),
    wood(m),
    len(m.length),
    formatForce(Math.ceil(m.section.weight * m.length), u, 0),
    worst(m),
  ]);
  const count = (mark: string) => structure.members.filter((m) => m.mark === mark).length;
  const rafters: TableRow[] = first(of('rafter', 'hip')).map((m) => [
    cell(m),
    m.section.label,
    wood(m),
    String(count(m.mark)),
    len(m.length),
    m.cuts.join('; ') || 'square',
    worst(m),
  ]);
  const trusses: TableRow[] = first(of('truss', 'gable-truss')).map((m) => {
    const t = m.truss!;
    const pitch = (v: number): string => `${Number((v * 12).toFixed(2))}/12`;
    const asPitch = (v: number): string => (t.topPitch > 0 ? pitch(Math.tan(v)) : '');
    return [
      cell(m),
      `${t.kind.replace('-', ' ')}${m.role === 'gable-truss' ? ', gable end' : ''}`,
      String(count(m.mark)),
      len(t.span),
      `${asPitch(t.topPitch)} top, ${asPitch(t.bottomPitch)} bottom`,
      len(t.heel),
      t.overhang.map((o) => len(o)).join(' and '),
      len(t.height),
      formatForce(Math.ceil(t.weight), u, 0),
    ];
  });
  const finishes: TableRow[] = first(of('fascia', 'gutter', 'blocking', 'outlooker', 'barge')).map((m) => [
    cell(m),
    m.role,
    m.section.label,
    String(count(m.mark)),
    len(m.length),
  ]);
  const demands = jointDemands(ctx.input);
  const joints: TableRow[] = demands.map((d: JointDemand) => [
    { text: d.mark, mark: d.mark, path: d.path },
    JOINT_WORDS[d.kind],
    tied(structure, d.mark),
    String(d.count),
    lb(d.down),
    lb(d.up),
    lb(d.alongX),
    lb(d.alongY),
    madeOf(ctx, d),
  ]);
  joints.push(...tieRows(ctx));
  // Over the old roof no frame of ours gives forces: the words of the statement stand for the product.
  for (const o of structure.overlays ?? [])
    for (const j of overlayJointsOf(ctx.input, o))
      joints.push([
        '–',
        'over the old roof',
        j.what,
        '–',
        '–',
        '–',
        '–',
        '–',
        j.how ? `${j.how} (${j.from})` : NOT_STATED,
      ]);
  const openings: TableRow[] = structure.walls.flatMap((w) =>
    w.openings.map(
      (o): TableRow => [
        cell(o),
        o.kind.replace('-', ' '),
        w.name,
        `${len(o.width)} x ${len(o.head - o.sill)}`,
        len(o.head),
        o.room,
        o.escape ? 'yes' : 'no',
      ],
    ),
  );
  const layers: TableRow[] = structure.roofs.flatMap((r) => {
    const s = structure.surfaces.find((x) => x.roof === r.mark)!;
    return s.layers.map((l): TableRow => [r.mark, l.name, `${l.psf.toFixed(1)} psf`, l.source]);
  });
  const blocks: Block[] = [
    {
      kind: 'table',
      title: 'Footing schedule',
      columns: [
        { head: 'Mark' },
        { head: 'Kind' },
        { head: 'Pad or pier' },
        { head: 'Pier' },
        { head: 'Bottom below surface', align: 'right' },
        { head: 'Top from floor', align: 'right' },
        { head: "f'c" },
        { head: 'Reinforcement', grow: true },
        { head: 'Nearest limit' },
      ],
      rows: footings,
    },
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Post schedule',
      columns: [
        { head: 'Mark' },
        { head: 'Section' },
        { head: 'Condition' },
        { head: 'Cut length', align: 'right' },
        { head: 'Bottom from floor', align: 'right' },
        { head: 'Top from floor', align: 'right' },
        { head: 'Nearest limit', grow: true },
      ],
      rows: posts,
    },
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Beam and ledger schedule',
      columns: [
        { head: 'Mark' },
        { head: 'Section' },
        { head: 'Plies fastened', max: 26 * style.note },
        { head: 'Condition' },
        { head: 'Cut length', align: 'right' },
        { head: 'Weight', align: 'right' },
        { head: 'Nearest limit', grow: true },
      ],
      rows: beams,
    },
    ...bracingTable(ctx, wood, worst),
    { kind: 'gap' },
    ...(rafters.length
      ? [
          {
            kind: 'table' as const,
            title: 'Rafter schedule',
            columns: [
              { head: 'Mark' },
              { head: 'Section' },
              { head: 'Condition' },
              { head: 'Count', align: 'right' as const },
              { head: 'Cut length', align: 'right' as const },
              { head: 'Cuts', grow: true },
              { head: 'Nearest limit' },
            ],
            rows: rafters,
          },
          { kind: 'gap' as const },
        ]
      : []),
    ...overlaySchedule(ctx),
    ...(trusses.length
      ? [
          {
            kind: 'table' as const,
            title: 'Truss schedule, for the order; the plant’s engineer designs them',
            columns: [
              { head: 'Mark' },
              { head: 'Kind' },
              { head: 'Count', align: 'right' as const },
              { head: 'Span, out to out of bearings', align: 'right' as const },
              { head: 'Pitch' },
              { head: 'Heel', align: 'right' as const },
              { head: 'Overhang', align: 'right' as const },
              { head: 'Height', align: 'right' as const },
              { head: 'Weight assumed', align: 'right' as const, grow: true },
            ],
            rows: trusses,
          },
          { kind: 'gap' as const },
        ]
      : []),
    {
      kind: 'table',
      title: 'Joint schedule: allowable load each joint must have, at the load durations of its combinations',
      columns: [
        { head: 'Mark' },
        { head: 'Joint' },
        { head: 'Ties', max: 30 * style.note },
        { head: 'Count', align: 'right' },
        { head: 'Down', align: 'right' },
        { head: 'Up', align: 'right' },
        { head: 'Along house', align: 'right' },
        { head: 'Out from house', align: 'right' },
        { head: 'Product or calculation', grow: true },
      ],
      rows: joints,
    },
    {
      kind: 'para',
      text: `Largest force on any one joint of the mark, allowable-stress level, ${sideText(ctx)} Choose connectors whose published allowable loads, for this wood and load duration, are at least these; all directions act together.`,
    },
    { kind: 'gap' },
    ...durabilityBlocks(ctx),
    {
      kind: 'table',
      title: 'Finishes along the roof edge',
      columns: [
        { head: 'Mark' },
        { head: 'What' },
        { head: 'Section' },
        { head: 'Count', align: 'right' },
        { head: 'Length', align: 'right', grow: true },
      ],
      rows: finishes,
    },
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Roof layers and their weight',
      columns: [
        { head: 'Roof' },
        { head: 'Layer' },
        { head: 'Weight', align: 'right' },
        { head: 'Source', grow: true },
      ],
      rows: layers,
    },
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Existing openings near the work',
      columns: [
        { head: 'Mark' },
        { head: 'Kind' },
        { head: 'Wall' },
        { head: 'Size', align: 'right' },
        { head: 'Head above floor', align: 'right' },
        { head: 'Room' },
        { head: 'Escape', grow: true },
      ],
      rows: openings,
    },
  ];
  return flowSheets(ctx, { title: 'Schedules', blocks, columns: area.w > 24 ? 2 : 1, layer: 'G-ANNO-SCHD' });
}

export const schedules: SheetKind = { title: 'Schedules', discipline: 'S', needed: () => true, draw };
