/** Inspections and notes: what each inspector looks at with this project's numbers, what must be at hand, what goes wrong. */
import { findFastener } from '../../catalog/index.js';
import { GRADE_DISTANCE, GRADE_FALL } from '../../checks/codes/irc-2018/index.js';
import { houseFacts } from '../../checks/house/facts.js';
import { housePlaces } from '../../checks/house/places.js';
import { jointDemands } from '../../checks/joints/demands.js';
import { servedBy } from '../../checks/joints/serving.js';
import { markList } from '../../report/path/table.js';
import type { Block, TableRow } from '../annotate/index.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { footingSize, pierSize } from './footing-words.js';
import { briefly } from './joint-text.js';
import { flowSheets } from './parts.js';
import { paperState, trussesDeferred } from './truss-words.js';

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
        served?.by === 'connection' ? 'calculated connection, drawn in the connection details' : briefly(ctx, d.mark);
      return `${d.mark}, ${d.count} places: ${how}`;
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

const join = (items: readonly string[]): string => items.filter((t) => t !== '').join('. ');

/** Inspections in the order of the work; those this project has no part for are left out. */
function stages(ctx: SheetContext): TableRow[] {
  const { input, len } = ctx;
  const { structure, project, lot } = input;
  const slabs = structure.slabs.filter((s) => s.state === 'new');
  const trusses = structure.members.some((m) => m.truss);
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
        'Joints round piers and against the house; conduit in open trench',
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
    [
      'Electrical, own permit',
      'rough, then final',
      'Outdoor receptacle with ground-fault protection and a weatherproof cover, switched light at each door to grade, boxes rated for the place and for a fan where one hangs (electrical code as the office has it)',
    ],
    [
      'Final',
      'before use',
      `All trades final; covering, flashing, gutter; ground falling ${len(GRADE_FALL)} in ${len(GRADE_DISTANCE)} (IRC 2018 R401.3); approved sheets on site`,
    ],
  ];
  return rows.filter((r): r is TableRow => r !== false);
}

/** What is open, deferred or for a professional, each from its own place in the model. */
function special(ctx: SheetContext): string[] {
  const { input } = ctx;
  const seen = houseFacts(input).filter((f) => f.state === 'on-site' || f.state === 'open');
  const triggers = input.results
    .filter((r) => r.check === 'engineer-triggers' && r.subject !== 'cover')
    .map((r) => r.note);
  return [
    ...trussesDeferred(ctx.input),
    ...[
      ...new Set(
        seen.map((f) => `${f.place}: ${f.what}${f.state === 'open' ? ' (open: to verify before the permit)' : ''}`),
      ),
    ],
    ...triggers,
    ...input.project.questions.map((q) => `Open question to the office: ${q.text}`),
  ];
}

const FAILURES = [
  'Not ready when called, or covered before it was seen.',
  'Not as on the approved sheets: another size, place, nail or connector, even a better one.',
  'Papers not at hand: approved set, truss drawings, product reports.',
  'Holes with loose soil, water or roots; bars on the ground; too shallow or off center.',
  'Connector with holes left empty or with other nails than its loads were published for; missed or overdriven sheathing nails.',
  'Post end on concrete or soil; wood not treated as scheduled.',
];

const CAUTIONS: readonly string[] = [
  'Digging: call the utility locating service some days ahead, wait for the marks, dig by hand near them. Septic, private gas, irrigation and low-voltage lines are not marked. Shore or slope deep or caving holes; cover them overnight.',
  'Lifting: beams and trusses are heavier than they look; use a lift or enough hands, tag lines, nobody under a load. Unbraced trusses fall over: brace the first to the ground, tie each next one before letting go, no load on them before they are sheathed.',
  'Ladders and roofs: level footing, tied off, three feet above the edge; fall protection on the roof; none in wind, rain or frost.',
  'Cutting treated wood: goggles, gloves, dust mask, outdoors; do not burn the offcuts; wash before eating.',
  'Electricity: turn off and test before work near wires; keep ladders and trusses ten feet from the service drop; own permit for electrical work.',
  'The house: shore before a stud, plate or header is cut; find cables, pipes and gas first; old paint, stucco and siding may hold lead or asbestos.',
];

function trades(ctx: SheetContext): Block[] {
  const { input } = ctx;
  const treated = input.structure.members.some((m) => m.section.treatment !== 'none');
  const list = (text: string, items: readonly string[]): Block[] => [
    { kind: 'heading', text },
    { kind: 'bullets', items },
  ];
  return [
    ...list('Concrete', [
      'Strengths in the footing schedule are least 28-day strengths. Pour each footing without a cold joint; have all bags there before mixing. Keep it damp; no load before it has set, seven days before roof loads (common practice, no source).',
      'Anchors set by template and checked against the layout again after the pour: a bolt out of place is reported to the office, not bent.',
    ]),
    ...list('Carpentry', [
      'Species and grades as scheduled, stamps left in sight. Dry, straight pieces; crowns up. Field cuts and holes only where drawn.',
      ...(treated
        ? ['Cut ends and holes of treated wood brushed as the schedules say; metal in treated wood as listed there.']
        : []),
      'Every joint has its tie: gravity holds nothing in wind. Fill every hole the published load counts on, with the fastener it names.',
    ]),
    ...list('Roofing and flashing', [
      'Each layer laps over the one below; sealant is no flashing. Covering, underlayment and fasteners by their makers’ instructions, kept on site.',
      'Water goes to gutter or grade and away from footings and neighbours.',
    ]),
    ...list('Electrical', [
      'Under its own permit by who may do it; no wire or box in a bearing, a truss or a connector.',
    ]),
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const { area, input } = ctx;
  const trusses = input.structure.members.some((m) => m.truss);
  const blocks: Block[] = [
    {
      kind: 'table',
      title: 'Inspections: call for each, wait for it, then cover',
      columns: [{ head: 'Inspection' }, { head: 'When' }, { head: 'Looked at', grow: true }],
      rows: stages(ctx),
    },
    {
      kind: 'para',
      text: 'Offices differ in names, order and number of inspections: the permit card decides. Nothing is covered, poured or loaded before its inspection.',
    },
    { kind: 'heading', text: 'At hand for every inspection' },
    {
      kind: 'bullets',
      items: [
        'The approved set with the office’s stamp, and the permit card where it can be signed.',
        ...(trusses ? [`Truss papers: ${paperState(input)}.`] : []),
        'Published load tables or reports of every connector on the joint plan, with the fasteners they ask for.',
        'Tickets of concrete, grade stamps and treatment tags; the utility locating ticket.',
        'Ladder, light and access; an adult where the inspector must enter the house.',
      ],
    },
    { kind: 'heading', text: 'Why inspections fail' },
    { kind: 'bullets', items: FAILURES },
    { kind: 'heading', text: 'Special items' },
    { kind: 'bullets', items: special(ctx).length > 0 ? special(ctx) : ['None.'] },
    { kind: 'heading', text: 'Changes and time' },
    {
      kind: 'bullets',
      items: [
        'A change from the approved sheets needs the office’s approval first: show it clouded, with its sheets and numbers made anew.',
        'Permits commonly lapse when no inspection passes for 180 days (several offices’ rules; the permit decides).',
      ],
    },
    ...trades(ctx),
    { kind: 'heading', text: 'Cautions' },
    { kind: 'bullets', items: CAUTIONS },
    {
      kind: 'para',
      text: `Sizes: schedules, sheet ${SHEET_IDS.schedules} on. Joints: joint plan, sheet ${SHEET_IDS['joint-plan']}. What is not on these sheets is asked, not guessed.`,
    },
  ];
  return flowSheets(ctx, {
    title: 'Inspections and notes',
    blocks,
    columns: area.w > 24 ? 3 : 2,
    layer: 'G-ANNO-NOTE',
  });
}

export const inspections: SheetKind = { title: 'Inspections and notes', discipline: 'G', needed: () => true, draw };
