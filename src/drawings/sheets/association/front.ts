/** First page of the packet for an association: what is proposed, how high, of what and in which colors, when, and who has seen it. */
import { NO_SUBMITTAL } from '../../../project/index.js';
import { type Block, measure, splitColumns } from '../../annotate/index.js';
import type { SheetBody, SheetContext, SheetKind } from '../contract.js';
import { flowOn } from '../parts.js';

/** Parts whose finish every committee asks for; a row without an entry stays open on the page. */
const PARTS = ['roof', 'fascia and gutter', 'posts', 'beams', 'ceiling'] as const;

const OPEN = 'to be stated';

function heights(ctx: SheetContext): Block {
  const { structure, project, lot } = ctx.input;
  const limit = project.basis.zoning.heightLimit;
  return {
    kind: 'table',
    title: 'Height and place',
    columns: [
      { head: 'What', grow: true },
      { head: 'Proposed', align: 'right' },
    ],
    rows: [
      ...structure.roofs.flatMap((r) => [
        [`${r.mark}: highest point above the ground at the house`, ctx.len(r.highestPoint - structure.grade.z0)],
        [`${r.mark}: lowest eave above the ground at the house`, ctx.len(r.lowestEave - structure.grade.z0)],
      ]),
      ['Height the zoning counter allows', limit.state === 'unknown' ? 'not known yet' : ctx.len(limit.value)],
      ...lot.distances.map((d) => [`Eave to the ${d.line}, ${d.yard} yard`, ctx.len(d.toEave)]),
    ],
  };
}

function finishes(ctx: SheetContext): Block {
  const { project } = ctx.input;
  const given = project.submittal?.association?.finishes ?? [];
  const said = (part: string) => given.some((f) => f.part.toLowerCase() === part);
  const coverings = [...new Set(project.cover.roofs.map((r) => r.finish.covering))].join(', ');
  const open = PARTS.filter((p) => !said(p)).map((p) => [p, p === 'roof' ? coverings : OPEN, OPEN, '–']);
  return {
    kind: 'table',
    title: 'Materials and colors',
    columns: [
      { head: 'Part' },
      { head: 'Material', grow: true },
      { head: 'Color', max: ctx.style.note * 26 },
      { head: 'Sample' },
    ],
    rows: [...given.map((f) => [f.part, f.material, f.color, f.sample || '–']), ...open],
  };
}

function draw(ctx: SheetContext): SheetBody[] {
  const { project, structure } = ctx.input;
  const a = project.submittal?.association ?? NO_SUBMITTAL.association;
  const gutters = project.cover.roofs.some((r) => r.finish.gutter);
  const neighbors = a?.neighbors ?? [];
  const lines = project.lot.courses.map((c) => ({ name: '', side: c.name }));
  const blocks: Block[] = [
    { kind: 'heading', text: project.job.title },
    { kind: 'para', text: project.job.scope },
    {
      kind: 'pairs',
      rows: [
        { name: 'To', value: a?.name ?? 'the architectural committee' },
        { name: 'Owner', value: project.job.owner },
        { name: 'Address', value: project.job.address },
        { name: 'Parcel', value: project.job.parcel },
        { name: 'Roof', value: project.cover.roofs.map((r) => `${r.mark} ${r.pitchText}`).join(', ') },
        { name: 'Cover', value: structure.attachment },
        { name: 'Date', value: project.job.date },
      ],
    },
    { kind: 'heading', text: 'In this packet' },
    {
      kind: 'table',
      columns: [{ head: 'Sheet' }, { head: 'Title', grow: true }],
      rows: ctx.index.map((s) => [s.id, s.title]),
    },
    heights(ctx),
    finishes(ctx),
    { kind: 'heading', text: 'Drainage' },
    {
      kind: 'bullets',
      items: [
        gutters
          ? 'The roof’s water is caught in gutters and led down; it is not let onto a neighbor’s land.'
          : 'The roof’s water falls from its eaves onto the owner’s land; it is not let onto a neighbor’s land.',
        'The ground falls away from the house as it does now; the plot plan shows the distances to every line.',
        ...(a?.drainage ? [a.drainage] : []),
      ],
    },
    {
      kind: 'table',
      title: 'Schedule of the work',
      columns: [{ head: 'Step', grow: true }, { head: 'When' }, { head: 'Note', max: ctx.style.note * 24 }],
      rows:
        (a?.schedule ?? []).length > 0
          ? a!.schedule.map((s) => [s.step, s.when, s.note || '–'])
          : [['Work', OPEN, '–']],
    },
    { kind: 'para', text: `Material and debris are kept: ${a?.storage || OPEN}.` },
    {
      kind: 'table',
      title: 'Neighbors who have seen this packet',
      columns: [{ head: 'Neighbor', grow: true }, { head: 'Beyond' }, { head: 'Signature and date', grow: true }],
      rows: (neighbors.length > 0 ? neighbors : lines).map((n) => [n.name || ' ', n.side || ' ', ' \n ']),
    },
    { kind: 'heading', text: 'Decision of the committee' },
    {
      kind: 'para',
      text: 'Agreed / agreed with conditions / not agreed: ______________________________   Date: ______________',
    },
    {
      kind: 'para',
      text: 'The building permit is asked for separately; this packet shows no structure and proves none. Photographs of the site and samples of material go with it where the committee asks for them.',
    },
  ];
  const columns = splitColumns(ctx.area, [1, 1], ctx.style.gutter);
  return flowOn(measure(blocks, columns[0]!.w, ctx.style, 'G-ANNO-NOTE'), columns, 'Application, continued').map(
    (b, i) => (i === 0 ? { ...b, title: 'Application to the association' } : b),
  );
}

export const front: SheetKind = {
  title: 'Application to the association',
  discipline: 'G',
  lists: true,
  needed: () => true,
  draw,
};
