/**
 * Sketches of how the cases that govern lie on the roof: wind pressures and snow, over the roof seen from the side. Each
 * shows the plan loads of its case as the loads stage made them; nothing is computed here but the drawing.
 */
import type { Vec2 } from '../../base/vec.js';
import type { LoadCase, PlanLoad, WindDirection } from '../../loads/model.js';
import type { RoofPlaced, Structure, Surface } from '../../structure/model.js';
import { type Block, pencil, splitColumns } from '../annotate/index.js';
import { type Primitive, textWidth, wrapText } from '../ir/index.js';
import type { SheetContext } from './contract.js';
import { type Sorted, value } from './governing.js';

/** Most sketches of wind: those not shown have the same form with other numbers. */
const MOST = 4;

type Axis = 'x' | 'y';

const axisOf = (d: WindDirection): Axis => (d.endsWith('x') ? 'x' : 'y');

/** Cases in the combinations that govern, in the order of the case list; snow that was asked for stands first. */
export function sketched(ctx: SheetContext, found: Sorted): readonly LoadCase[] {
  const { loads } = ctx.input;
  const deciding = new Set(found.calculated.map((r) => r.combination));
  const used = new Set(
    [...loads.combinations, ...loads.strength]
      .filter((c) => deciding.has(c.id))
      .flatMap((c) => c.terms.map((t) => t.case)),
  );
  const asked = new Set((loads.snow ?? []).flatMap((a) => a.cases.slice(0, 1)));
  // One wind and the same from the other side, or the same on its mirror image, say no more twice.
  const seen = new Set<string>();
  const unlike = (c: LoadCase): boolean => {
    const key = JSON.stringify((c.plan ?? []).map((p) => [p.roof, p.psf.toFixed(1), p.zone?.from, p.zone?.to]));
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  };
  const of = (kind: LoadCase['kind'], most: number, wanted: (c: LoadCase, i: number) => boolean): LoadCase[] =>
    loads.cases
      .filter((c, i) => c.kind === kind && (c.plan ?? []).some((p) => p.zone) && wanted(c, i))
      .filter(unlike)
      .slice(0, most);
  return [
    ...of('S', Number.POSITIVE_INFINITY, (c) => asked.has(c.id)),
    ...of('S', MOST, (_, i) => used.has(i)),
    ...of('W', MOST, (_, i) => used.has(i)),
  ];
}

/** Outline of a surface in the house's own axes, seen along one of them: the other and height. */
const seen = (s: Surface, axis: Axis): Vec2[] =>
  s.outline.map((p) => ({
    x: s.origin[axis] + s.u[axis] * p.x + s.v[axis] * p.y,
    y: s.origin.z + s.u.z * p.x + s.v.z * p.y,
  }));

/** A load with its ends along the axis in house coordinates, `first` being its end to windward. */
interface Span {
  readonly load: PlanLoad;
  readonly first: number;
  readonly last: number;
  readonly from: number;
  readonly to: number;
}

/** Zones count from the windward edge. */
function spanOf(load: PlanLoad, roof: RoofPlaced, axis: Axis): Span {
  const { toward, from, to } = load.zone ?? { toward: '+x', from: 0, to: roof.max[axis] - roof.min[axis] };
  const [first, last] = toward.startsWith('+')
    ? [roof.min[axis] + from, roof.min[axis] + to]
    : [roof.max[axis] - from, roof.max[axis] - to];
  return { load, first, last, from: Math.min(first, last), to: Math.max(first, last) };
}

interface Frame {
  readonly note: number;
  readonly at: Vec2;
  readonly width: number;
}

const ROOF = 6;
const LOADS = 6;

/** Height of one sketch in note heights: title, load figure, roof. */
const HEIGHT = 4 + LOADS + 5 + ROOF;

/** Heavy arrow of a load: onto the roof, or off it. */
function arrow(x: number, top: number, bottom: number, down: boolean, h: number): Primitive[] {
  const p = pencil('S-DETL', 'symbol');
  const [tip, tail] = down ? [bottom, top] : [top, bottom];
  const back = tip + (down ? 1 : -1) * 0.9 * h;
  return [
    p.line(x, tail, x, tip),
    p.shape(
      [
        [x, tip],
        [x - 0.35 * h, back],
        [x + 0.35 * h, back],
      ],
      undefined,
      'ink',
    ),
  ];
}

function sketch(structure: Structure, c: LoadCase, f: Frame): Primitive[] {
  const { note: h, at, width } = f;
  const p = pencil('S-DETL', 'symbol');
  const zoned = (c.plan ?? []).find((l) => l.zone)!;
  const axis = axisOf(zoned.zone!.toward);
  const roof = structure.roofs.find((r) => r.mark === zoned.roof)!;
  const loads = (c.plan ?? []).filter((l) => l.roof === roof.mark).map((l) => spanOf(l, roof, axis));
  const surfaces = structure.surfaces.filter((s) => s.roof === roof.mark);
  const edge = roof.min[axis];
  const scale = (width - 4 * h) / (roof.max[axis] - edge);
  const x = (v: number): number => at.x + 2 * h + (v - edge) * scale;
  const title = wrapText(`${c.id}, ${roof.mark}`, width, h, 'condensed-bold')[0]!;
  const out: Primitive[] = [p.text(at.x, at.y - h, title, h, { face: 'condensed-bold' })];
  const base = at.y - (4 + LOADS) * h;
  const most = Math.max(...loads.map((l, i) => Math.abs(l.load.psf) + under(loads, i)));
  const unit = ((LOADS - 1) * h) / most;
  const wind = zoned.acts === 'normal';
  const lettered: { readonly from: number; readonly to: number }[] = [];
  loads.forEach(({ load: l, first, last }, i) => {
    const [a, b] = [x(first), x(last)];
    const foot = base + under(loads, i) * unit;
    const [ha, hb] = [Math.abs(l.psf) * unit, Math.abs(l.psfTo ?? l.psf) * unit];
    out.push(
      p.shape(
        [
          [a, foot],
          [a, foot + ha],
          [b, foot + hb],
          [b, foot],
        ],
        'new-fine',
      ),
    );
    const text = l.psfTo === undefined ? value(l.psf) : `${value(l.psf)} to ${value(l.psfTo)}`;
    const room = Math.abs(b - a);
    const arrows = Math.min(6, Math.max(1, Math.floor(room / (4 * h))));
    if (wind)
      for (let k = 0; k < arrows; k++) {
        const ax = a + ((k + 0.5) / arrows) * (b - a);
        out.push(...arrow(ax, foot + ha, foot, l.psf > 0, h));
      }
    // The figure of a load on another stands inside its outline, the lowest one's below the line; one wider than its load
    // a line lower.
    const inside = foot > base + 1e-9;
    const middle = l.psfTo === undefined ? (a + b) / 2 : a + 0.3 * (b - a);
    const half = textWidth(text, h, 'condensed') / 2 + 0.3 * h;
    const fits = 2 * half < room;
    const free = inside || fits || lettered.every((t) => middle + half < t.from || t.to < middle - half);
    if (!free) return;
    if (!inside && !fits) lettered.push({ from: middle - half, to: middle + half });
    const y = inside ? foot + 0.5 * h : base - (fits ? 1.5 : 3) * h;
    out.push(p.text(middle, y, text, h, { face: 'condensed', align: 'center', mask: inside }));
  });
  out.push(p.line(x(edge) - h, base, x(roof.max[axis]) + h, base, 'symbol'));
  const z = surfaces.flatMap((s) => seen(s, axis).map((q) => q.y));
  const [low, high] = [Math.min(...z), Math.max(...z)];
  // Roof at the scale of its width, flattened only where it would be taller than its strip.
  const tall = Math.min(scale, ((ROOF - 1) * h) / Math.max(1, high - low));
  const top = base - 4 * h;
  for (const s of surfaces)
    out.push(
      p.shape(
        seen(s, axis).map((q) => [x(q.x), top - (high - q.y) * tall] as const),
        'new',
      ),
    );
  if (wind || c.id.includes('+') || c.id.includes('-')) {
    const y = at.y - 2.7 * h;
    const right = zoned.zone!.toward.startsWith('+');
    const [from, to] = right ? [at.x, at.x + 3 * h] : [at.x + 3 * h, at.x];
    const back = to + (right ? -1 : 1) * 0.9 * h;
    out.push(
      p.line(from, y, to, y, 'profile'),
      p.shape(
        [
          [to, y],
          [back, y + 0.4 * h],
          [back, y - 0.4 * h],
        ],
        undefined,
        'ink',
      ),
      p.text(at.x + 3.8 * h, y - 0.5 * h, AXIS_WORDS[axis][right ? 0 : 1], h, { face: 'condensed' }),
    );
  }
  return out;
}

const AXIS_WORDS: Readonly<Record<Axis, readonly [string, string]>> = {
  x: ['along the house, to the right', 'along the house, to the left'],
  y: ['out from the house', 'toward the house'],
};

/** Load already drawn below the middle of one: a drift lies on the even snow. */
function under(loads: readonly Span[], index: number): number {
  const l = loads[index]!;
  const middle = (l.from + l.to) / 2;
  return loads
    .slice(0, index)
    .filter((o) => o.load.acts === l.load.acts && o.from < middle && middle < o.to)
    .reduce((sum, o) => sum + Math.abs(o.load.psf), 0);
}

/** Two sketches a row; none where nothing varies over the roof. */
export function sketchBlocks(ctx: SheetContext, found: Sorted): Block[] {
  const cases = sketched(ctx, found);
  if (cases.length === 0) return [];
  const { note } = ctx.style;
  const rows = Array.from({ length: Math.ceil(cases.length / 2) }, (_, i) => cases.slice(2 * i, 2 * i + 2));
  return [
    { kind: 'heading', text: 'How snow and wind of the governing cases lie on the roof, psf' },
    {
      kind: 'para',
      text: 'Snow on the horizontal projection; wind square to the surface, negative lifting. Drift and sliding snow lie on the even snow. The roof below each figure is seen from its side, outlines of all its planes.',
      keep: true,
    },
    ...rows.map(
      (row): Block => ({
        kind: 'drawing',
        height: HEIGHT * note,
        draw: (at, width) => {
          const columns = splitColumns({ x: at.x, y: at.y, w: width, h: 0 }, [1, 1], 3 * note);
          return row.flatMap((c, i) =>
            sketch(ctx.input.structure, c, { note, at: { x: columns[i]!.x, y: at.y }, width: columns[i]!.w }),
          );
        },
      }),
    ),
  ];
}
