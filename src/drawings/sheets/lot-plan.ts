import { contains } from '../../base/plane.js';
import { formatArea, formatBearing, formatNumber } from '../../base/quantity/index.js';
import type { Vec2 } from '../../base/vec.js';
import { clearest, measure, type TableRow, textBlock } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { extents, northOnPlan, placeView, SITE_SCALES, scaleFor, withSideColumn } from './parts.js';

const feet = (inches: number): string => `${formatNumber(inches / 12, 2)}'`;

function middle(a: Vec2, b: Vec2): Vec2 {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Reads from the bottom or the right of the sheet. */
function readable(angle: number): number {
  let a = angle;
  while (a > Math.PI / 2 + 1e-9) a -= Math.PI;
  while (a <= -Math.PI / 2 + 1e-9) a += Math.PI;
  return a;
}

function draw(ctx: SheetContext): SheetBody[] {
  const { lot, structure, project } = ctx.input;
  const { style, area } = ctx;
  const h = style.note;
  const { main, side } = withSideColumn(area, Math.min(area.w * 0.3, 62 * h), style.gutter);
  const model = extents(lot.corners);
  const scale = scaleFor(ctx, model, main, { x: h * 9, y: h * 7 }, SITE_SCALES);
  const items: Primitive[] = [];
  const over: Primitive[] = [];
  const center = middle({ x: model.x, y: model.y }, { x: model.x + model.w, y: model.y + model.h });

  for (const e of lot.easements) {
    items.push({ kind: 'polyline', layer: 'C-PROP-ESMT', pen: 'easement', points: e.outline, closed: true });
    const b = extents(e.outline);
    const at = { x: b.x + 0.74 * b.w, y: b.y + 0.74 * b.h };
    over.push({
      kind: 'text',
      layer: 'C-ANNO-NOTE',
      at: b.w >= b.h ? { ...at, y: b.y + b.h / 2 } : { ...at, x: b.x + b.w / 2 },
      content: e.name,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      angle: b.w >= b.h ? 0 : Math.PI / 2,
    });
  }
  // Distances to the lot lines that stand on the plan; one that runs through the house stands in the table only.
  const house = project.house.walls.map((w) => w.start);
  const measured = lot.distances.flatMap((d) => {
    const line = lot.lines.find((l) => l.name === d.line)!;
    const from = project.basis.zoning.referenceEdge.value === 'post' ? d.nearestPost : d.nearestEave;
    const foot = { x: from.x - line.inward.x * d.governing, y: from.y - line.inward.y * d.governing };
    return contains(house, middle(from, foot)) ? [] : [{ d, line, from, foot }];
  });
  for (const s of lot.setbacks)
    items.push({ kind: 'line', layer: 'C-PROP-STBK', pen: 'setback', a: s.start, b: s.end });
  items.push({ kind: 'polyline', layer: 'C-PROP', pen: 'property', points: lot.corners, closed: true });
  for (const p of lot.corners)
    items.push({
      kind: 'symbol',
      layer: 'C-PROP',
      at: p,
      items: [
        { kind: 'circle', layer: 'C-PROP', center: { x: 0, y: 0 }, radius: h * 0.4, pen: 'symbol', fill: 'paper' },
      ],
    });
  for (const l of lot.lines) {
    const angle = Math.atan2(l.end.y - l.start.y, l.end.x - l.start.x);
    const read = readable(angle);
    const up = { x: -Math.sin(read), y: Math.cos(read) };
    const outward = { x: -l.inward.x, y: -l.inward.y };
    const sign = up.x * outward.x + up.y * outward.y >= 0 ? 1 : -1;
    over.push({
      kind: 'symbol',
      layer: 'C-ANNO-NOTE',
      // Side lines are labelled off their middle, where house and new roof are labelled too.
      at:
        l.yard === 'front' || l.yard === 'rear'
          ? middle(l.start, l.end)
          : { x: l.start.x + 0.25 * (l.end.x - l.start.x), y: l.start.y + 0.25 * (l.end.y - l.start.y) },
      path: l.path,
      items: [
        {
          kind: 'text',
          layer: 'C-ANNO-NOTE',
          at: { x: up.x * sign * h * 1.6, y: up.y * sign * h * 1.6 },
          content: `${formatBearing(l.azimuth)}   ${feet(l.distance)}`,
          height: h,
          angle: read,
          align: 'center',
          valign: 'middle',
          face: 'bold',
        },
        {
          kind: 'text',
          layer: 'C-ANNO-NOTE',
          at: { x: up.x * sign * h * 3.5, y: up.y * sign * h * 3.5 },
          content: `${l.name}, ${l.yard} yard`,
          height: h,
          angle: read,
          align: 'center',
          valign: 'middle',
        },
      ],
    });
  }
  for (const p of project.lot.paving) {
    items.push({ kind: 'polyline', layer: 'C-PVMT', pen: 'existing', points: p.outline, closed: true });
    const b = extents(p.outline);
    over.push({
      kind: 'text',
      layer: 'C-ANNO-NOTE',
      at: { x: b.x + b.w / 2, y: b.y + 0.35 * b.h },
      content: p.name,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
    });
  }
  for (const s of structure.slabs)
    items.push({
      kind: 'polyline',
      layer: 'C-PVMT',
      pen: s.state === 'new' ? 'new-fine' : 'existing',
      points: s.outline,
      closed: true,
      mark: s.mark,
    });
  items.push({ kind: 'polyline', layer: 'C-BLDG-EXST', pen: 'profile', points: house, closed: true, fill: 'tint' });
  const hb = extents(house);
  over.push({
    kind: 'text',
    layer: 'C-ANNO-NOTE',
    at: { x: hb.x + hb.w / 2, y: hb.y + hb.h / 2 },
    content: `Existing house, ${project.house.stories} ${project.house.stories === 1 ? 'story' : 'stories'}`,
    height: h,
    align: 'center',
    valign: 'middle',
    mask: true,
  });
  for (const b of project.lot.buildings) {
    items.push({
      kind: 'polyline',
      layer: 'C-BLDG-EXST',
      pen: 'existing-cut',
      points: b.outline,
      closed: true,
      fill: 'tint',
    });
  }
  for (const r of structure.roofs) {
    const ring = [r.min, { x: r.max.x, y: r.min.y }, r.max, { x: r.min.x, y: r.max.y }];
    items.push({ kind: 'hatch', layer: 'C-BLDG', pattern: 'generic', loops: [ring], mark: r.mark, spacing: 1.6 });
    items.push({ kind: 'polyline', layer: 'C-BLDG', pen: 'new', points: ring, closed: true, mark: r.mark });
    over.push({
      kind: 'text',
      layer: 'C-ANNO-NOTE',
      at: { x: (r.min.x + r.max.x) / 2, y: (r.min.y + r.max.y) / 2 },
      content: structure.roofs.length > 1 ? r.mark : `New patio roof ${r.mark}`,
      height: h,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      mask: true,
      mark: r.mark,
    });
  }
  for (const f of structure.footings)
    items.push({
      kind: 'circle',
      layer: 'C-BLDG',
      center: f.at,
      radius: Math.max(6, f.pierDiameter / 2),
      pen: 'new-fine',
      fill: 'paper',
      mark: f.mark,
    });
  for (const { d, line, from, foot } of measured) {
    const angle = readable(Math.atan2(line.inward.y, line.inward.x));
    over.push({
      kind: 'dimension',
      layer: 'C-ANNO-DIMS',
      a: foot,
      b: from,
      angle,
      base: from,
      offset: 0,
      value: d.governing,
      text: feet(d.governing),
      height: h,
      noExtensionA: true,
      noExtensionB: true,
    });
  }
  for (const i of project.lot.items) {
    over.push({
      kind: 'symbol',
      layer: 'C-UTIL',
      at: i.at,
      items: [
        { kind: 'circle', layer: 'C-UTIL', center: { x: 0, y: 0 }, radius: h * 0.55, pen: 'symbol', fill: 'paper' },
        {
          kind: 'text',
          layer: 'C-UTIL',
          at: { x: i.at.x > center.x ? h * 1.1 : -h * 1.1, y: 0 },
          content: i.label,
          height: h,
          valign: 'middle',
          align: i.at.x > center.x ? 'left' : 'right',
          mask: true,
        },
      ],
    });
  }
  for (const b of project.lot.buildings) {
    const e = extents(b.outline);
    const word = (u: number, v: number): Primitive => ({
      kind: 'text',
      layer: 'C-ANNO-NOTE',
      at: { x: e.x + u * e.w, y: e.y + v * e.h },
      content: b.name,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
    });
    // In the building, else beside it.
    const off = (1.2 * h) / scale.ratio;
    const [above, below] = [1 + off / e.h, -off / e.h];
    over.push(
      ...clearest(
        [
          [word(0.5, 0.5)],
          [word(0.5, 0.2)],
          [word(0.5, 0.8)],
          [word(0.5, above)],
          [word(0.5, below)],
          [word(0, above)],
          [word(1, above)],
        ],
        scale.ratio,
        over,
      ),
    );
  }
  for (const s of lot.setbacks) {
    const word = (k: number): Primitive => ({
      kind: 'text',
      layer: 'C-ANNO-NOTE',
      at: { x: s.start.x + k * (s.end.x - s.start.x), y: s.start.y + k * (s.end.y - s.start.y) },
      content: `${s.yard} setback ${feet(s.required)}`,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      angle: readable(Math.atan2(s.end.y - s.start.y, s.end.x - s.start.x)),
    });
    const places = [0.6, 0.4, 0.25, 0.88, 0.12, 0.7, 0.5, 0.33].map((k) => [word(k)]);
    over.push(...clearest([[word(0.78)], ...places], scale.ratio, over, items));
  }
  const view = placeView(ctx, {
    box: main,
    model,
    scale,
    number: '1',
    title: 'Lot plan',
    items,
    over,
    north: northOnPlan(lot.north),
    plan: true,
  });

  const edge = project.basis.zoning.referenceEdge.value;
  const setbackRows: TableRow[] = lot.distances.map((d) => [
    d.line,
    d.yard,
    feet(d.required),
    feet(d.governing),
    feet(d.toPost),
    feet(d.toEave),
    d.governing >= d.required - 1e-9 ? 'meets' : 'DOES NOT MEET',
  ]);
  const pct = (a: number): string => `${formatNumber((100 * a) / lot.coverage.basis, 1)} %`;
  const coverRows: TableRow[] = [
    ...lot.coverage.rows.map((r): TableRow => [r.name, r.state, formatArea(r.area)]),
    ['Total before', '', `${formatArea(lot.coverage.existing)} (${pct(lot.coverage.existing)})`],
    ['Total with new roof', '', `${formatArea(lot.coverage.proposed)} (${pct(lot.coverage.proposed)})`],
    ['Allowed', '', `${formatNumber(100 * lot.coverage.limit, 0)} % of ${formatArea(lot.coverage.basis)}`],
  ];
  const notes = textBlock(
    measure(
      [
        {
          kind: 'table',
          title: `Yards, measured from the ${edge} as the office asks`,
          columns: [
            { head: 'Lot line' },
            { head: 'Yard' },
            { head: 'Required', align: 'right' },
            { head: 'Proposed', align: 'right' },
            { head: 'To post', align: 'right' },
            { head: 'To eave', align: 'right' },
            { head: 'Result', grow: true },
          ],
          rows: setbackRows,
        },
        { kind: 'gap' },
        {
          kind: 'table',
          title: `Coverage of the ${project.basis.zoning.coverageOf}`,
          columns: [{ head: 'Building' }, { head: 'State' }, { head: 'Area', align: 'right', grow: true }],
          rows: coverRows,
        },
        { kind: 'gap' },
        { kind: 'heading', text: 'Notes' },
        {
          kind: 'numbered',
          items: [
            `Lot ${formatArea(lot.area)}. Traverse closes within ${formatNumber(lot.closure.error, 2)} in over ${feet(lot.closure.perimeter)}. The bearings and distances are the owner's record; this is not a survey.`,
            'Property pins stay exposed until the final inspection.',
            'Dashed lines inside the boundary: setback lines and easements. Hatched: the new roof. Open circles on it: posts.',
            'Call the utility locating service before digging. Private lines, septic parts and irrigation are not marked by it: hand dig near them.',
            'Roof water is led away from the house and not onto a neighbor.',
          ],
        },
      ],
      side.w,
      style,
    ),
    { x: side.x, y: side.y + side.h },
  );
  return [
    {
      title: 'Lot plan',
      scaleNote: view.scale.label,
      viewports: [view.viewport],
      items: [...view.items, ...notes.items],
    },
  ];
}

export const lotPlan: SheetKind = {
  title: 'Lot plan',
  discipline: 'C',
  file: 'site-plan',
  needed: () => true,
  draw,
};
