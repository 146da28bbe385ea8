/** Inspections and notes: what each inspector looks at with this project's numbers, what must be at hand, what goes wrong. */
import { houseFacts } from '../../checks/house/facts.js';
import { type Block, columnsFlow, measure, splitColumns } from '../annotate/index.js';
import { SHEET_IDS, type SheetBody, type SheetContext, type SheetKind } from './contract.js';
import { fasteningTable } from './fastening-table.js';
import { stages } from './inspection-stages.js';
import { evened, flowOn } from './parts.js';
import { clearOfWires } from './service-words.js';
import { paperState, trussesDeferred } from './truss-words.js';

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

const cautions = (wires: string): readonly string[] => [
  'Digging: call the utility locating service some days ahead, wait for the marks, dig by hand near them. Septic, private gas, irrigation and low-voltage lines are not marked. Shore or slope deep or caving holes; cover them overnight.',
  'Lifting: beams and trusses are heavier than they look; use a lift or enough hands, tag lines, nobody under a load. Unbraced trusses fall over: brace the first to the ground, tie each next one before letting go, no load on them before they are sheathed.',
  'Ladders and roofs: level footing, tied off, three feet above the edge; fall protection on the roof; none in wind, rain or frost.',
  'Cutting treated wood: goggles, gloves, dust mask, outdoors; do not burn the offcuts; wash before eating.',
  `Electricity: turn off and test before work near wires; keep ladders and trusses ten feet from ${wires}; own permit for electrical work.`,
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

const table = (ctx: SheetContext): Block[] => [
  {
    kind: 'table',
    title: 'Inspections: call for each, wait for it, then cover',
    columns: [
      { head: 'Inspection', max: 12 * ctx.style.note },
      { head: 'When', max: 10 * ctx.style.note },
      { head: 'Looked at, with the numbers of this set', grow: true },
      { head: 'Passed: date, by', width: 13 * ctx.style.note },
    ],
    rows: stages(ctx).map((r) => [...r, '']),
  },
  {
    kind: 'para',
    text: 'Offices differ in names, order and number of inspections: the permit card decides. Nothing is covered, poured or loaded before its inspection.',
  },
];

function notes(ctx: SheetContext): Block[] {
  const { input } = ctx;
  const trusses = input.structure.members.some((m) => m.truss);
  const items = special(ctx);
  return [
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
    { kind: 'bullets', items: items.length > 0 ? items : ['None.'] },
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
    { kind: 'bullets', items: cautions(clearOfWires(input.project)) },
    {
      kind: 'para',
      text: `Sizes: schedules, sheet ${SHEET_IDS.schedules} on. Joints: joint plan, sheet ${SHEET_IDS['joint-plan']}. What is not on these sheets is asked, not guessed.`,
    },
  ];
}

/**
 * The tables across the sheet, the notes in columns under them where all fit; else on the next sheet, so that no few lines
 * stand alone.
 */
function draw(ctx: SheetContext): SheetBody[] {
  const { area, style } = ctx;
  const title = 'Inspections and notes';
  const more = `${title}, continued`;
  const layer = 'G-ANNO-NOTE';
  const tables = columnsFlow(measure([...table(ctx), fasteningTable(ctx)], area.w, style, layer), [area]);
  const first: SheetBody = { title, scaleNote: 'No scale', viewports: [], items: tables.items };
  const bodies = [first, ...flowOn(tables.rest, [area], more)];
  const shares = area.w > 24 ? [1, 1, 1] : [1, 1];
  const columns = splitColumns(area, shares, style.gutter);
  const slugs = measure(notes(ctx), columns[0]!.w, style, layer);
  const room = { ...area, h: (tables.bottoms[0] ?? area.y) - area.y - style.gutter };
  const under = splitColumns(room, shares, style.gutter);
  if (bodies.length > 1 || room.h < 0 || columnsFlow(slugs, under).rest.length > 0)
    return [...bodies, ...flowOn(slugs, evened(slugs, columns), more)];
  const { items } = columnsFlow(slugs, evened(slugs, under));
  return [{ ...first, items: [...first.items, ...items] }];
}

export const inspections: SheetKind = { title: 'Inspections and notes', discipline: 'G', needed: () => true, draw };
