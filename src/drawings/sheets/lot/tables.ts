/** Tables and notes of the lot plan: yards, coverage, separations, lines in the ground. */
import { formatArea, formatNumber } from '../../../base/quantity/index.js';
import type { Block, TableRow } from '../../annotate/index.js';
import type { SheetContext } from '../contract.js';
import { UTILITY_CODE } from './ground.js';
import { feet } from './words.js';

const yardRows = (ctx: SheetContext): TableRow[] =>
  ctx.input.lot.distances.map((d) => [
    d.line,
    d.yard,
    feet(d.required),
    { text: feet(d.governing), face: 'condensed-bold' },
    d.governing >= d.required - 1e-9 ? 'meets' : 'DOES NOT MEET',
  ]);

/** Distances to every line whatever edge the office measures from, and what fire separation makes of the eave. */
function edgeRows(ctx: SheetContext): TableRow[] {
  const words = { pass: 'free', fail: 'NOT ALLOWED' } as const;
  return ctx.input.lot.distances.map((d) => {
    const fire = ctx.input.results.find((r) => r.check === 'fire-separation' && r.subject === d.line);
    const status = fire?.status;
    return [
      d.line,
      feet(d.toPost),
      feet(d.toEave),
      feet(d.toHouse),
      status === 'pass' || status === 'fail' ? words[status] : status === undefined ? '–' : 'PROFESSIONAL',
    ];
  });
}

function coverageRows(ctx: SheetContext): TableRow[] {
  const { coverage } = ctx.input.lot;
  const { units } = ctx.input.project.job;
  const pct = (a: number): string => `${formatNumber((100 * a) / coverage.basis, 1)} %`;
  return [
    ...coverage.rows.map(
      (r): TableRow => [
        r.name,
        r.state,
        r.state === 'existing' ? formatArea(r.area, units) : '–',
        formatArea(r.area, units),
        '',
      ],
    ),
    [
      { text: 'Total', face: 'condensed-bold' },
      '',
      formatArea(coverage.existing, units),
      { text: formatArea(coverage.proposed, units), face: 'condensed-bold' },
      '',
    ],
    [
      'Share',
      '',
      pct(coverage.existing),
      { text: pct(coverage.proposed), face: 'condensed-bold' },
      `${formatNumber(100 * coverage.limit, 0)} % of ${formatArea(coverage.basis, units)}`,
    ],
  ];
}

/** Nearer than this two buildings stand against each other: a flashing gap, inches. */
const ADJOINS = 3;

const separationRows = (ctx: SheetContext): TableRow[] =>
  ctx.input.lot.separations.map((s) => [
    s.from,
    s.to,
    s.distance > ADJOINS ? feet(s.distance) : 'adjoins',
    s.required ? feet(s.required.distance) : 'ask',
    s.required ? (s.distance >= s.required.distance - 1e-9 ? 'meets' : 'LESS') : '–',
  ]);

/** `W water, OH E overhead service`: what the letters on lines in the ground mean. */
const utilityWords = (ctx: SheetContext): string =>
  ctx.input.project.lot.utilities.map((u) => `${u.overhead ? 'OH ' : ''}${UTILITY_CODE[u.kind]} ${u.label}`).join(', ');

function notes(ctx: SheetContext): string[] {
  const { lot, project } = ctx.input;
  const { units } = project.job;
  const { street, datum, utilities, drainage, items } = project.lot;
  const asked = lot.separations.find((s) => s.required)?.required?.source;
  const close = lot.closure.error > 0 ? `1 in ${formatNumber(1 / lot.closure.ratio, 0)}` : 'exactly';
  return [
    `Yards are measured from the ${project.basis.zoning.referenceEdge.value} of the new work (${project.basis.zoning.referenceEdge.from || 'source not stated'}).`,
    `Lot ${formatArea(lot.area, units)}. The traverse closes ${close}: ${formatNumber(lot.closure.error, 2)} in over ${feet(lot.closure.perimeter)}. Bearings and distances are the owner’s record; this is not a survey.`,
    'Hatched: the new roof, out to its edges. Open circles on it: posts. Tinted: existing buildings that stay. Short heavy dashes: to be removed. Dashes within the boundary: setback lines; dash and dot: easements.',
    'Fire separation: eaves and rakes 5.00’ or more from a lot line are not limited; nearer ones are, and within 2.00’ none is allowed (IRC Table R302.1, read as quoted). Other distances are to the nearest post and eave, gutters left out.',
    ...(street.rightOfWay === undefined
      ? ['The width of the right of way is not stated: ask the street department.']
      : []),
    ...(datum === '' ? [] : [`Elevations: ${datum}.`]),
    ...(asked ? [`Least distances of wells: ${asked}.`] : []),
    ...(items.some((i) => i.kind === 'septic-tank' || i.kind === 'leach-field' || i.kind === 'reserve-field')
      ? [
          'Septic tank, field and reserve are kept clear of posts, footings, traffic and roof water; the health department decides how far. Find them before digging.',
        ]
      : []),
    ...(utilities.length > 0
      ? [`Lines as far as they are known, place and depth not certain: ${utilityWords(ctx)}.`]
      : []),
    'Call the utility locating service before digging. Private lines, septic parts and irrigation are not marked by it: hand dig near them.',
    drainage.length > 0
      ? 'Arrows: the way the ground sheds water. Roof water is led away from the house along them and not onto a neighbor.'
      : 'Roof water is led away from the house and not onto a neighbor.',
    'Property pins are exposed for the setback inspection and stay exposed until the final.',
  ];
}

export function lotBlocks(ctx: SheetContext): Block[] {
  const { zoning } = ctx.input.project.basis;
  return [
    {
      kind: 'table',
      whole: true,
      title: `Yards, measured from the ${zoning.referenceEdge.value}`,
      columns: [
        { head: 'Lot line' },
        { head: 'Yard' },
        { head: 'Required', align: 'right' },
        { head: 'Proposed', align: 'right' },
        { head: 'Result', grow: true },
      ],
      rows: yardRows(ctx),
    },
    {
      kind: 'table',
      whole: true,
      title: 'To each line: post, eave, house',
      columns: [
        { head: 'Lot line' },
        { head: 'To post', align: 'right' },
        { head: 'To eave', align: 'right' },
        { head: 'House', align: 'right' },
        { head: 'Fire separation', grow: true },
      ],
      rows: edgeRows(ctx),
    },
    {
      kind: 'table',
      whole: true,
      title: `Coverage of the ${zoning.coverageOf === 'lot' ? 'lot' : 'rear yard'}`,
      columns: [
        { head: 'Building' },
        { head: 'State' },
        { head: 'Before', align: 'right' },
        { head: 'Proposed', align: 'right' },
        { head: 'Allowed', align: 'right', grow: true },
      ],
      rows: coverageRows(ctx),
    },
    {
      kind: 'table',
      whole: true,
      title: 'Separations',
      columns: [
        { head: 'From' },
        { head: 'To' },
        { head: 'Distance', align: 'right' },
        { head: 'Least', align: 'right' },
        { head: 'Result', grow: true },
      ],
      rows: separationRows(ctx),
    },
    { kind: 'heading', text: 'Notes' },
    { kind: 'numbered', items: notes(ctx) },
  ];
}
