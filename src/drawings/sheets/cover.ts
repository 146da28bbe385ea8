import { formatBearing, formatNumber, formatPsf, formatSpeed } from '../../base/quantity/index.js';
import { CONCRETE_PCF } from '../../catalog/index.js';
import type { Office } from '../../project/model.js';
import { type Block, splitColumns, type TableRow } from '../annotate/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { flowSheets } from './parts.js';
import { deferredBy, papersComplete } from './truss-words.js';

const CAUTIONS = [
  'This set was prepared with a program that helps; it certifies nothing. Local codes and the authority having jurisdiction decide.',
  'Anything marked “outside scope” needs a licensed professional.',
  'What touches the existing house must be verified on site before work: studs, floor band, what is behind the cladding.',
  'Call the utility locating service before digging. Turn off and verify power before work near wiring; electrical work under its own permit.',
  'Brace posts, beams and trusses until the roof is sheathed. Do not stand under a lifted load. Wear a mask and goggles when cutting treated wood.',
  'Keep the approved set, the truss papers and the inspection card on site. Do not cover work before it is inspected. Changes need approval first.',
];

const state = <T>(v: Office<T>): string =>
  v.state === 'given'
    ? v.from || 'given, source not stated'
    : v.state === 'assumed'
      ? 'assumed'
      : 'UNKNOWN: placeholder';

const COMPUTED = new Set(['Lr', 'pf', 'ps', 'qh', 'h']);

/** Design criteria a reviewer looks for, each with where it came from. */
function criteria(ctx: SheetContext): TableRow[] {
  const { basis, job } = ctx.input.project;
  const u = job.units;
  const w = basis.wind;
  const row = <T>(label: string, v: Office<T>, text: string): TableRow => [label, { text, path: v.path }, state(v)];
  const own: TableRow[] = [
    row('Roof live load', basis.roofLive.minimum, formatPsf(basis.roofLive.minimum.value, u)),
    row('Ground snow load', basis.snow.ground, formatPsf(basis.snow.ground.value, u)),
    row('Wind speed, 3 s gust', w.speed, formatSpeed(w.speed.value, u)),
    row('Exposure', w.exposure, w.exposure.value),
    row('Topographic factor Kzt', w.topographic, formatNumber(w.topographic.value, 2)),
    row('Seismic design category', basis.seismic.category, basis.seismic.category.value),
    ...(basis.seismic.sds ? [row('SDS', basis.seismic.sds, `${formatNumber(basis.seismic.sds.value, 3)} g`)] : []),
    ...(basis.seismic.siteClass ? [row('Site class', basis.seismic.siteClass, basis.seismic.siteClass.value)] : []),
    ...(basis.rainfall
      ? [row('Rainfall, one hour', basis.rainfall, `${formatNumber(basis.rainfall.value, 1)} in/h`)]
      : []),
    row('Frost depth', basis.frost, ctx.len(basis.frost.value)),
    ['Soil unit weight', `${formatNumber(basis.soil.density, 0)} pcf`, basis.soil.description],
    ['Concrete unit weight', `${CONCRETE_PCF} pcf`, 'common practice, no source'],
    ['Ground elevation', ctx.len(w.elevation), 'for the ground elevation factor Ke'],
    row('Soil bearing', basis.soil.bearing, formatPsf(basis.soil.bearing.value, u)),
    ...basis.criteria.map((c): TableRow => row(c.label, c.value, c.value.value)),
  ];
  // Of the computed basis only what a reviewer compares with the office's own table; the rest is on the calculation sheets.
  const extra = ctx.input.loads.basis.rows
    .filter((r) => COMPUTED.has(r.symbol))
    .map(
      (r): TableRow => [
        `${r.meaning} (${r.symbol})`,
        `${formatNumber(r.value, 2, { trim: true })} ${r.unit}`,
        `${r.clause}${r.provenance === 'memory' ? '; recalled from memory: confirm' : ''}`,
      ],
    );
  return [...own, ...extra];
}

/** Conditions of this project under which a licensed professional is needed or an office may ask for one. */
function professional(ctx: SheetContext): Block[] {
  const items = ctx.input.results
    .filter((r) => r.check === 'engineer-triggers' && r.subject !== 'cover')
    .map((r) => `${r.note} (${r.clause})`);
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: 'Licensed professional' },
        { kind: 'bullets', items },
      ];
}

/** What is handed in later, on whose word; trusses whose sealed sheets are entered are no longer. */
function deferredItems(input: SheetContext['input']): string[] {
  const { project, structure } = input;
  if (!structure.members.some((m) => m.truss)) return ['None.'];
  if (papersComplete(input)) {
    const papers = project.cover.trussPapers ?? [];
    return [
      `None. Sealed truss designs: ${papers.map((p) => `${p.mark} ${p.from}, sealed by ${p.sealedBy}`).join('; ')}.`,
    ];
  }
  const by = deferredBy(input);
  return [
    by
      ? `Trusses: sealed design drawings and layout by the truss plant, deferred submittal accepted by ${by}. Trusses may not be set before the sealed papers are handed in, approved and entered here.`
      : 'Trusses: sealed design drawings and layout by the truss plant. The building official must agree to the deferral; approval before the trusses are set.',
  ];
}

function draw(ctx: SheetContext): SheetBody[] {
  const { project, verdict, lot, structure } = ctx.input;
  const { style, area } = ctx;
  const { job, basis } = project;
  const columns = area.w > 24 ? 3 : 2;
  const boxes = splitColumns(
    area,
    Array.from({ length: columns }, () => 1),
    style.gutter,
  );
  const width = boxes[0]!.w;
  const c = basis.codes;
  const roofs = project.cover.roofs.map((r) => {
    const p = structure.roofs.find((x) => x.mark === r.mark)!;
    return `${r.mark}: ${r.kind}, ${project.cover.attachment}, ${r.pitchText}, sheathing ${ctx.len(p.max.x - p.min.x)} by ${ctx.len(p.max.y - p.min.y)} in plan, fascia outside it, top ${ctx.len(p.highestPoint - structure.grade.z0)} above grade at the house`;
  });
  const blocks: Block[] = [
    { kind: 'heading', text: job.title },
    { kind: 'para', text: job.scope },
    {
      kind: 'pairs',
      rows: [
        { name: 'Address', value: job.address },
        { name: 'Owner', value: job.owner },
        { name: 'Parcel', value: job.parcel },
        { name: 'Prepared by', value: job.preparedBy },
        { name: 'Date', value: job.date },
        { name: 'Occupancy', value: 'one-family dwelling, covered patio' },
        { name: 'Codes', value: `${c.residential}, ${c.building}, ASCE ${c.loads}, ${c.wood}, ${c.concrete}` },
        { name: 'Risk category', value: basis.riskCategory },
        {
          name: 'Lot',
          value: `${formatNumber(lot.area / 144, 0)} sq ft; y axis of the house ${formatBearing(project.lot.outward)}`,
        },
        ...roofs.map((value) => ({ name: 'New roof', value })),
      ],
    },
    {
      kind: 'heading',
      text: verdict.issuable ? 'Status: complete for submittal' : 'Status: PRELIMINARY – NOT FOR PERMIT',
    },
    ...(verdict.issuable
      ? [
          {
            kind: 'para' as const,
            text: `Every mandatory check of this kind of structure was evaluated and passes; every joint has a product or a calculated connection${ctx.input.structure.overlays?.length ? ', and those of the roof over the house the fastening that the named professional states' : ''}.`,
          },
        ]
      : [
          { kind: 'para' as const, text: 'This set may not be submitted until these are settled:' },
          { kind: 'bullets' as const, items: [...verdict.reasons] },
        ]),
    { kind: 'heading', text: 'Sheet index' },
    {
      kind: 'table',
      columns: [{ head: 'Sheet' }, { head: 'Title', grow: true }],
      rows: ctx.index.map((s) => [s.id, s.title]),
    },
    { kind: 'heading', text: 'Design criteria' },
    {
      kind: 'table',
      columns: [
        { head: 'Criterion', max: width * 0.38 },
        { head: 'Value', max: width * 0.24 },
        { head: 'Where it comes from', grow: true },
      ],
      rows: criteria(ctx),
    },
    ...(project.questions.length > 0
      ? [
          { kind: 'heading' as const, text: 'Questions for the office' },
          { kind: 'numbered' as const, items: project.questions.map((q) => `${q.text} Meanwhile: ${q.meanwhile}.`) },
        ]
      : []),
    { kind: 'heading', text: 'Assumptions' },
    {
      kind: 'numbered',
      items:
        project.assumptions.length > 0
          ? project.assumptions.map((a) => `${a.text}. ${a.why}`)
          : ['None beyond what is written on the sheets: every input stands in the project file.'],
    },
    { kind: 'heading', text: 'Deferred submittals' },
    {
      kind: 'bullets',
      items: deferredItems(ctx.input),
    },
    ...professional(ctx),
    { kind: 'heading', text: 'Approvals' },
    {
      kind: 'table',
      columns: [{ head: 'Body' }, { head: 'State' }, { head: 'Date and note', grow: true }],
      rows: project.log.approvals.map((a) => [a.body, a.state, [a.date, a.note].filter(Boolean).join(' · ') || '–']),
    },
    { kind: 'heading', text: 'Cautions' },
    { kind: 'bullets', items: CAUTIONS },
    { kind: 'heading', text: 'Abbreviations' },
    {
      kind: 'para',
      text: "o.c. on center · f'c concrete strength · T.O. top of · ASD allowable stress design · PT pressure treated · UNO unless noted otherwise. Shapes: square footing, circle post, rounded beam, arrowed truss or rafter, diamond joint.",
    },
  ];
  return flowSheets(ctx, { title: 'Cover', blocks, columns, layer: 'G-ANNO-NOTE' });
}

export const cover: SheetKind = { title: 'Cover', discipline: 'G', lists: true, needed: () => true, draw };
