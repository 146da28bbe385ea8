/** What lies on the ground of the lot: street, easements, setbacks, paving, utilities, drainage. */
import type { Vec2 } from '../../../base/vec.js';
import type { UtilityKind } from '../../../project/model.js';
import type { Primitive } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { extents } from '../parts.js';
import { between, feet, type Lettering, readable } from './words.js';

/** Short letters on a utility line, explained in the table of the sheet. */
export const UTILITY_CODE: Readonly<Record<UtilityKind, string>> = {
  electric: 'E',
  gas: 'G',
  water: 'W',
  sewer: 'S',
  septic: 'SE',
  storm: 'SD',
  communication: 'T',
  irrigation: 'IR',
};

const streetOf = (ctx: Pick<SheetContext, 'input'>) => {
  const { street } = ctx.input.project.lot;
  return { street, line: ctx.input.lot.lines[street.course] };
};

/** Paper inches beyond the street line that the street takes up on the plan, in model inches. */
export function streetDepth(ctx: Pick<SheetContext, 'input'>): number {
  const { street } = streetOf(ctx);
  return Math.max(street.toPavement ?? 0, (street.rightOfWay ?? 0) / 2);
}

/** Lines of the ground, in model inches. */
export function groundLines(ctx: SheetContext): Primitive[] {
  const { lot, project, structure } = ctx.input;
  const { street, line } = streetOf(ctx);
  const out: Primitive[] = [];
  if (line) {
    const off = (d: number) => ({
      a: { x: line.start.x - d * line.inward.x, y: line.start.y - d * line.inward.y },
      b: { x: line.end.x - d * line.inward.x, y: line.end.y - d * line.inward.y },
    });
    if (street.toPavement !== undefined)
      out.push({ kind: 'line', layer: 'C-ROAD', pen: 'existing', ...off(street.toPavement) });
    if (street.rightOfWay !== undefined)
      out.push({ kind: 'line', layer: 'C-ROAD', pen: 'center', ...off(street.rightOfWay / 2) });
  }
  for (const e of lot.easements)
    out.push({ kind: 'polyline', layer: 'C-PROP-ESMT', pen: 'easement', points: e.outline, closed: true });
  for (const s of lot.setbacks) out.push({ kind: 'line', layer: 'C-PROP-STBK', pen: 'setback', a: s.start, b: s.end });
  for (const p of project.lot.paving)
    out.push({ kind: 'polyline', layer: 'C-PVMT', pen: 'existing', points: p.outline, closed: true });
  for (const s of structure.slabs)
    out.push({
      kind: 'polyline',
      layer: 'C-PVMT',
      pen: s.state === 'new' ? 'new-fine' : s.state === 'removed' ? 'demolition' : 'existing',
      points: s.outline,
      closed: true,
      mark: s.mark,
    });
  for (const t of project.patio.existing)
    out.push({
      kind: 'polyline',
      layer: 'C-BLDG-EXST',
      pen: t.state === 'removed' ? 'demolition' : 'existing',
      points: t.outline,
      closed: true,
    });
  for (const u of project.lot.utilities)
    out.push({ kind: 'polyline', layer: 'C-UTIL', pen: u.overhead ? 'above' : 'hidden', points: u.points });
  return out;
}

/** Names and widths of all that, each clear of the rest. */
export function groundWords(ctx: SheetContext, l: Lettering, ratio: number): void {
  const { lot, project } = ctx.input;
  const h = ctx.style.note;
  const { street, line } = streetOf(ctx);
  if (line) {
    const angle = readable(Math.atan2(line.end.y - line.start.y, line.end.x - line.start.x));
    const words = [
      street.name.toUpperCase(),
      ...(street.rightOfWay === undefined ? [] : [`${feet(street.rightOfWay)} right of way`]),
    ];
    const depth = street.rightOfWay !== undefined ? street.rightOfWay / 2 : streetDepth(ctx);
    // Between pavement and center line, but never into the lettering of the street line itself.
    const d = depth > 0 ? ((street.toPavement ?? 0) + depth) / 2 : 0;
    const off = Math.max(d, (5.9 * h) / ratio);
    const away = (p: Vec2): Vec2 => ({ x: p.x - off * line.inward.x, y: p.y - off * line.inward.y });
    const w = { content: words.join(', '), angle, face: 'bold' as const, path: '/lot/street' };
    l.along(w, away(line.start), away(line.end));
  }
  for (const [i, e] of lot.easements.entries()) {
    const width = project.lot.easements[i]?.width;
    const b = extents(e.outline);
    const flat = b.w >= b.h;
    const content = width === undefined ? e.name : `${e.name}, ${feet(width)} wide`;
    const w = { content, angle: flat ? 0 : Math.PI / 2, path: `/lot/easements/${i}` };
    const [from, to] = flat
      ? [
          { x: b.x, y: b.y + b.h / 2 },
          { x: b.x + b.w, y: b.y + b.h / 2 },
        ]
      : [
          { x: b.x + b.w / 2, y: b.y },
          { x: b.x + b.w / 2, y: b.y + b.h },
        ];
    l.along(w, from!, to!, [0.74, 0.6, 0.4, 0.25, 0.5]);
  }
  for (const s of lot.setbacks) {
    const angle = readable(Math.atan2(s.end.y - s.start.y, s.end.x - s.start.x));
    const w = { content: `${s.yard} setback ${feet(s.required)}`, angle };
    l.along(w, s.start, s.end, [0.78, 0.6, 0.4, 0.25, 0.15, 0.88]);
  }
  for (const p of project.lot.paving) l.box({ content: p.name }, extents(p.outline));
  for (const u of project.lot.utilities) {
    const code = u.overhead ? `OH ${UTILITY_CODE[u.kind]}` : UTILITY_CODE[u.kind];
    const legs = u.points.slice(1).map((b, i) => [u.points[i]!, b] as const);
    const size = ([a, b]: (typeof legs)[number]): number => Math.hypot(b.x - a.x, b.y - a.y);
    const longest = legs.reduce((p, q) => (size(q) > size(p) ? q : p));
    const angle = readable(Math.atan2(longest[1].y - longest[0].y, longest[1].x - longest[0].x));
    l.along({ content: code, angle, layer: 'C-UTIL', face: 'condensed-bold' }, ...longest);
  }
  for (const d of project.lot.drainage) {
    const angle = Math.atan2(d.to.y - d.from.y, d.to.x - d.from.x);
    l.sign(
      between(d.from, d.to, 0.5),
      { kind: 'line', layer: 'C-TOPO', pen: 'leader', a: d.from, b: d.to },
      {
        kind: 'symbol',
        layer: 'C-TOPO',
        at: d.to,
        angle,
        items: [
          {
            kind: 'polyline',
            layer: 'C-TOPO',
            closed: true,
            fill: 'ink',
            points: [
              { x: 0, y: 0 },
              { x: -1.6 * h, y: 0.4 * h },
              { x: -1.6 * h, y: -0.4 * h },
            ],
          },
        ],
      },
    );
    if (d.label === '') continue;
    const w = { content: d.label, angle: readable(angle), layer: 'C-TOPO' as const };
    l.along(w, d.from, d.to, undefined, [0, 1.5 * h, -1.5 * h]);
  }
  for (const t of project.patio.existing) {
    const b = extents(t.outline);
    if (t.state === 'existing') l.box({ content: t.name }, b);
  }
}
