/** What each inspector looks at, in the order of the work, with this project's own sizes, counts and products. */
import { findFastener } from '../../catalog/index.js';
import { housePlaces } from '../../checks/house/places.js';
import { jointDemands } from '../../checks/joints/demands.js';
import { servedBy } from '../../checks/joints/serving.js';
import { GROUND } from '../../checks/roof/slab-fall.js';
import { markList } from '../../report/path/table.js';
import type { TableRow } from '../annotate/index.js';
import { besideLine } from './beside-house-words.js';
import type { SheetContext } from './contract.js';
import { meetsHouse } from './details/slab-edge.js';
import { footingSize, pierSize } from './footing-words.js';
import { briefly } from './joint-text.js';

const words = (s: string): string => s.replaceAll('-', ' ');

/** Sets of equal texts with the marks that share them: `F1–F4: 2'-6" square …`. */
function grouped(rows: readonly (readonly [mark: string, text: string])[]): string[] {
  const groups = new Map<string, string[]>();
  for (const [mark, text] of rows) groups.set(text, [...(groups.get(text) ?? []), mark]);
  return [...groups].map(([text, marks]) => `${markList([...new Set(marks)])}: ${text}`);
}

const footings = (ctx: SheetContext): string[] =>
  grouped(
    ctx.input.structure.footings
      .filter((f) => !f.onSlab)
      .map((f) => {
        const pier = pierSize(f, ctx.len);
        const shaft = pier === '–' ? '' : `, pier ${pier}`;
        return [
          f.mark,
          `${words(f.kind)}, ${footingSize(f, ctx.len)}${shaft}; bottom ${ctx.len(f.surface - f.bottom)} below the surface, top ${ctx.len(f.top)} from the floor; f'c ${f.fc} psi; ${f.steel}`,
        ];
      }),
  );

function anchors(ctx: SheetContext): string[] {
  const { choices } = ctx.input.project;
  return Object.entries(choices.anchors ?? {}).flatMap(([name, a]) => {
    const at = ctx.input.structure.footings.filter((f) => f.choice === name).map((f) => f.mark);
    return at.length === 0
      ? []
      : [
          `${markList(at)}: anchor ${ctx.len(a.bolt)} headed bolt, ${ctx.len(a.embedment)} embedded, held by a template before the pour`,
        ];
  });
}

/** Joints of some kinds with their count and what serves them. */
const joints = (ctx: SheetContext, pick: RegExp): string[] =>
  jointDemands(ctx.input)
    .filter((d) => pick.test(d.kind))
    .map((d) => {
      const served = servedBy(ctx.input.project.choices, d.mark, d.kind);
      const how =
        served?.by === 'connection' ? 'calculated connection, fasteners in the joint schedule' : briefly(ctx, d.mark);
      return `${d.mark}, ${d.count} ${d.count > 1 ? 'places' : 'place'}: ${how}`;
    });

function nailing(ctx: SheetContext): string[] {
  const { len } = ctx;
  return grouped(
    ctx.input.project.cover.roofs.flatMap((r): (readonly [string, string])[] => {
      const n = r.finish.nailing;
      if (r.finish.sheathing === '') return [];
      if (!n) return [[r.mark, 'sheathing nails still to be named']];
      const heel = n.heel
        ? `; blocks over bearings, ${n.heel.count} toe-nails ${findFastener(n.heel.nail)?.name ?? n.heel.nail} each`
        : '';
      return [
        [
          r.mark,
          `${findFastener(n.nail)?.name ?? n.nail} at ${len(n.edge)} on panel edges, ${len(n.field)} in the field, ${len(n.boundary ?? n.edge)} along outer edges${n.blocked ? ', all edges blocked' : ''}${heel}`,
        ] as const,
      ];
    }),
  );
}

function plies(ctx: SheetContext): string[] {
  const { len } = ctx;
  const { sections } = ctx.input.project.choices;
  return grouped(
    ctx.input.structure.members.flatMap((m) => {
      const c = sections[m.section.choice];
      const f = c && 'plyFastening' in c ? c.plyFastening : undefined;
      return m.section.plies > 1 && f
        ? [
            [
              m.mark,
              `plies by ${findFastener(f.fastener)?.name ?? f.fastener}, ${f.rows} rows at ${len(f.spacing)} at each face`,
            ] as const,
          ]
        : [];
    }),
  );
}

/** Each thing to look at on a line of its own. */
const join = (items: readonly string[]): string =>
  items
    .filter((t) => t !== '')
    .map((t) => `– ${t}`)
    .join('\n');

/** Inspections in the order of the work, with room to sign; those this project has no part for are left out. */
export function stages(ctx: SheetContext): TableRow[] {
  const { input, len } = ctx;
  const { structure, project, lot } = input;
  const slabs = structure.slabs.filter((s) => s.state === 'new');
  const trusses = structure.members.some((m) => m.truss);
  const wired = (project.cover.electrical?.devices ?? []).some((d) => d.state === 'new');
  const atHouse = housePlaces(input).length > 0 || (project.cover.houseTies ?? []).length > 0;
  const ties = (project.cover.houseTies ?? []).map((t) => t.mark);
  const near = lot.distances
    .filter((d) => d.required > 0)
    .map((d) => `${d.line} ${len(d.governing)} (required ${len(d.required)})`);
  const rows: (TableRow | false)[] = [
    [
      'Setback and layout',
      'before digging',
      join([
        'Boundary pins found and left exposed, strings at post centers and roof edges',
        near.length > 0 ? `Distances: ${near.join(', ')}` : '',
        'Diagonals or check lengths as the footing plan gives them',
      ]),
    ],
    structure.footings.some((f) => !f.onSlab) && [
      'Footings',
      'before concrete',
      join([
        besideLine(ctx),
        ...footings(ctx),
        ...anchors(ctx),
        `Bottoms on undisturbed soil, clean and dry, at or below the frost depth of ${len(project.basis.frost.value)}; bars on supports, 3" off the soil (common practice, no source); NOT POURED`,
      ]),
    ],
    slabs.length > 0 && [
      'Slab',
      'before concrete',
      join([
        grouped(
          slabs.map((s) => [s.mark, `${len(s.thickness)} thick on compacted ground, falling away from the house`]),
        ).join('; '),
        `Joints round piers${slabs.some(meetsHouse) ? ' and against the house' : ''}; conduit in open trench`,
      ]),
    ],
    [
      'Posts and beams',
      'before they are covered',
      join([
        ...joints(ctx, /^(post-to-footing|beam-to-post|beam-splice|strut-to-post|brace-to)/),
        ...plies(ctx),
        'Post ends off the concrete, cut ends treated; posts plumb and braced',
      ]),
    ],
    atHouse && [
      'Attachment to the house',
      'before flashing and cladding',
      join([
        ...joints(ctx, /^(ledger-to-house|rafter-to-ledger|beam-to-wall|post-to-house)/),
        ties.length > 0 ? `${ties.join(', ')}: side ties to the wall, fasteners as scheduled` : '',
        'Framing of the house seen; flashing in its order',
      ]),
    ],
    [
      'Framing and roof nailing',
      'before roofing',
      join([
        ...joints(ctx, /^(truss-to-beam|rafter-to-beam|rafter-to-ridge|tie-to-rafter|hip|jack|outlooker)/),
        ...nailing(ctx),
        trusses
          ? 'Truss labels as on the sealed sheets; bracing of bottom chords and gable ends'
          : 'Seat cuts no deeper than drawn',
      ]),
    ],
    wired && [
      'Electrical, own permit',
      'rough, then final',
      join([
        'Outdoor receptacle with ground-fault protection and a weatherproof cover, switched light at each door to grade',
        'Boxes rated for the place, and for a fan where one hangs (electrical code as the office has it)',
      ]),
    ],
    [
      'Final',
      'before use',
      join([
        'All trades final; covering, flashing and gutter as drawn',
        `Ground falling ${len(GROUND.fall)} in ${len(GROUND.over)} away from the house (IRC 2018 R401.3)`,
        'Approved sheets on site',
      ]),
    ],
  ];
  return rows.filter((r): r is TableRow => r !== false);
}
