/** Tables and notes of the tie-in sheet: cuts, flashing, eaves, what the old roof is given. */
import { formatAngle, formatArea } from '../../base/quantity/index.js';
import { NOT_STATED, overlayJointsOf } from '../../checks/tie-in/overlay-fastening.js';
import { oldRoofOf, overlayLoads, overlayOf } from '../../checks/tie-in/overlay-loads.js';
import type { OverlayPlaced } from '../../structure/model.js';
import { matchEaves } from '../../structure/tie-in/eaves.js';
import { type FlashingRun, flashingRuns } from '../../structure/tie-in/flashing.js';
import { commonDifference, fillCuts } from '../../structure/tie-in/overlay-shape.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';
import { isMetal } from './details/wall-edges.js';

const member = (o: OverlayPlaced, mark: string) => o.members.find((m) => m.mark === mark);
const count = (o: OverlayPlaced, mark: string): number => o.members.filter((m) => m.mark === mark).length;

export function cutTable(ctx: SheetContext, o: OverlayPlaced): Block[] {
  const { len } = ctx;
  const cuts = fillCuts(o.shape);
  const cell = (mark: string) => ({ text: mark, mark, path: o.path });
  const size = (mark: string): string => member(o, mark)?.section.label ?? '';
  const rows: TableRow[] = [
    ...o.fills.map(
      (f): TableRow => [
        cell(f.mark),
        size(f.mark),
        '1 left, 1 right',
        len(f.long),
        f.short > 0 ? len(f.short) : '–',
        `${formatAngle(cuts.plumb)} / ${formatAngle(cuts.seat)} / ${formatAngle(cuts.bevel)}`,
      ],
    ),
    [
      cell(o.plates.mark),
      size(o.plates.mark),
      '1 left, 1 right',
      len(o.plates.long),
      len(o.shape.valley),
      `edge ${formatAngle(o.plates.bevel)}; ends ${formatAngle(o.plates.ridgeCut)} off square`,
    ],
    [
      cell(o.board.mark),
      size(o.board.mark),
      '1',
      len(o.board.long),
      len(o.board.short),
      `end ${formatAngle(o.board.cut)} from level`,
    ],
    ...[...new Set(o.members.filter((m) => m.role === 'fascia').map((m) => m.mark))].map((mark): TableRow => {
      const m = member(o, mark)!;
      return [cell(mark), m.section.label, `${count(o, mark)} more`, len(m.length), '–', m.cuts.join('; ')];
    }),
  ];
  return [
    {
      kind: 'table',
      title: 'Cut table, over the old roof',
      columns: [
        { head: 'Mark' },
        { head: 'Size' },
        { head: 'Pieces' },
        { head: 'Long point', align: 'right' },
        { head: 'Short', align: 'right' },
        { head: 'Plumb / seat / tilt', grow: true },
      ],
      rows,
    },
    {
      kind: 'para',
      text: `Lengths on the upper edge, long point to long point, at the downhill face; “short” is the lower edge of a fill rafter, the long edge of a plate, the lower edge of the board. Each pair of fill rafters is ${len(commonDifference(o.shape, overlayOf(ctx.input, o.roof)?.spacing ?? 0) * Math.hypot(1, o.shape.slope))} shorter than the one before. Measure the old roof with a level and a straightedge before cutting: every length here follows from its ${Number((12 * o.shape.old).toFixed(2))}/12 and its eave at ${len(o.frame.origin.z)} above the floor.`,
    },
  ];
}

const KIND: Readonly<Record<string, string>> = {
  valley: 'valley lining',
  step: 'step flashing',
  apron: 'apron',
  'kick-out': 'kick-out',
  'drip-edge': 'drip edge',
};

const SIDEWALL =
  'sidewall flashing of the panel maker in one run from the eave up, 4 in up the wall, behind cladding and water barrier';

/** Runs of one kind and place added up; single pieces counted. */
export function flashingTable(ctx: SheetContext): Block[] {
  const runs = flashingRuns(ctx.input.structure);
  // Panels have their maker's flashing beside a wall instead of pieces by courses.
  const oneRun = (r: FlashingRun): boolean =>
    r.kind === 'step' && isMetal(ctx.input.project.cover.roofs.find((x) => x.mark === r.roof)?.finish.covering ?? '');
  const groups = new Map<string, typeof runs>();
  for (const r of runs) {
    // Valleys are one run each and alike; the rest is told by its place.
    const key = r.kind === 'valley' ? r.kind : `${r.kind}|${r.at}|${oneRun(r)}`;
    groups.set(key, [...(groups.get(key) ?? []), r]);
  }
  const rows = [...groups.values()].map((g): TableRow => {
    const total = g.reduce((t, r) => t + r.length, 0);
    return [
      oneRun(g[0]!) ? 'sidewall flashing' : KIND[g[0]!.kind]!,
      [...new Set(g.map((r) => r.at))].join(', '),
      String(g.length),
      total > 0 ? ctx.len(total) : '–',
      oneRun(g[0]!) ? SIDEWALL : g[0]!.what,
    ];
  });
  return [
    {
      kind: 'table',
      title: 'Flashing',
      columns: [
        { head: 'Run' },
        { head: 'At' },
        { head: 'Pieces', align: 'right' },
        { head: 'In all', align: 'right' },
        { head: 'What', grow: true },
      ],
      rows,
    },
  ];
}

export function tieInBlocks(ctx: SheetContext, o: OverlayPlaced): Block[] {
  const { len, input } = ctx;
  const { project } = input;
  const q = overlayLoads(input, o);
  const spec = overlayOf(input, o.roof);
  const old = oldRoofOf(input, o);
  const roof = project.cover.roofs.find((r) => r.mark === o.roof)!;
  const statement = spec?.statement;
  const plate = old ? old.plate + (old.heel ?? 0) : 0;
  const m = matchEaves(
    { over: plate, slope: o.shape.old, overhang: old?.overhang ?? 0 },
    { over: o.eave + roof.eave * o.shape.slope, slope: o.shape.slope, overhang: roof.eave },
  );
  const psf = (x: number): string => `${x.toFixed(1)} psf`;
  return [
    { kind: 'heading', text: 'Geometry' },
    {
      kind: 'pairs',
      rows: [
        { name: 'Slopes', value: `old ${Number((12 * o.shape.old).toFixed(2))}/12, new ${roof.pitchText}` },
        { name: 'New ridge', value: `${len(o.ridge)}, ${len(o.oldRidge - o.ridge)} under the old ridge` },
        { name: 'Ridge over the old roof', value: `${len(o.head)} level from the old eave edge` },
        {
          name: 'Valleys',
          value: `${len(o.shape.valley)} each, ${formatAngle(o.shape.planAngle)} from the ridge on plan, falling ${(12 * o.shape.valleySlope).toFixed(2)} in 12`,
        },
        { name: 'Angle between the roofs', value: formatAngle(o.shape.between) },
        {
          name: 'New sheathing here',
          value: `${o.faces.map((f) => formatArea(f.area)).join(' and ')}, each a piece cut by its valley`,
        },
        {
          name: 'Eaves',
          value: `new ${len(m.off)} over old; level with it at an overhang of ${len(m.overhang)}, or with the bearing ${len(m.off)} lower`,
        },
      ],
    },
    { kind: 'heading', text: 'What the old roof is given' },
    {
      kind: 'pairs',
      rows: [
        { name: 'Dead load', value: `${psf(q.dead)} on ${formatArea(q.area)} of plan` },
        { name: q.liveKind === 'S' ? 'Snow' : 'Roof live load', value: `${psf(q.live)}, moved from the old roof` },
        { name: 'Along the valley plates', value: `${Math.round(q.plate)} lb/ft at most` },
        { name: 'On one old rafter', value: `${Math.round(q.point)} lb at most, at ${q.worst.mark}` },
        {
          name: 'Outward at a seat',
          value: `${Math.round(q.worst.thrust)} lb; ${statement?.thrust?.state === 'given' ? `${Math.round(statement.thrust.value)} lb stated: ${statement.thrust.from || 'no source'}` : 'OPEN: no resistance stated'}`,
        },
        {
          name: 'Stated',
          value: statement
            ? `${psf(statement.down.value)} dead, ${Math.round(statement.point.value)} lb on one rafter, ${psf(statement.up.value)} uplift: ${statement.down.from || 'no source'}`
            : 'OPEN: a licensed professional has to state what it may take',
        },
        ...overlayJointsOf(input, o).map((j) => ({ name: j.what, value: j.how || `OPEN: ${NOT_STATED}` })),
        ...(old?.framing
          ? [
              {
                name: 'Old framing',
                value: `${old.framing.size} ${old.framing.kind} at ${len(old.framing.spacing)}; ${old.framing.sheathing}`,
              },
            ]
          : [{ name: 'Old framing', value: 'OPEN: not looked at' }]),
      ],
    },
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        'Do not cut, notch or drill old rafters or trusses; trusses take nothing new without their designer’s word (IRC 2018 R802.10.4, recalled).',
        'Order: old covering off; plates; ridge board, held by a prop until the pairs stand; fill rafters in pairs; sheathing; lining; covering. Keep a tarpaulin ready: the old roof is open meanwhile.',
        'Work on the old roof needs fall protection; nobody stands under it. Old coverings may hold asbestos: have them tested.',
        'Vents and flues under the new roof are carried through it before it is sheathed. Attic air: the old vents under the overlay are lost, their area is made up elsewhere.',
        'Old gutter comes off between the valleys’ feet and gets end caps; both remaining parts need an outlet of their own.',
        'The inspector sees plates and fill rafters before they are sheathed.',
      ],
    },
  ];
}
