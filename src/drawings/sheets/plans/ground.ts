/** What lies on the ground beside the house besides slabs: steps and old things. */
import { centroid } from '../../../base/plane.js';
import type { ExistingThing } from '../../../project/model.js';
import { placeNote } from '../../annotate/index.js';
import type { Primitive } from '../../ir/index.js';
import type { SheetContext } from '../contract.js';
import { extents } from '../parts.js';

const PEN = { existing: 'existing', new: 'new-fine', removed: 'demolition' } as const;

/** Flights of steps with a line a riser, across the way out from the house. */
export function steps(ctx: SheetContext): Primitive[] {
  return ctx.input.project.patio.steps.flatMap((s): Primitive[] => {
    const b = extents(s.outline);
    const lines = Array.from({ length: Math.max(0, s.risers - 1) }, (_, i): Primitive => {
      const y = b.y + ((i + 1) * b.h) / s.risers;
      return { kind: 'line', layer: 'A-FLOR', pen: PEN[s.state], a: { x: b.x, y }, b: { x: b.x + b.w, y } };
    });
    return [
      { kind: 'polyline', layer: 'A-FLOR', pen: PEN[s.state], closed: true, points: s.outline, path: s.path },
      ...lines,
    ];
  });
}

export const oldThings = (ctx: SheetContext, which: (t: ExistingThing) => boolean): Primitive[] =>
  ctx.input.project.patio.existing.filter(which).map((t) => ({
    kind: 'polyline',
    layer: t.state === 'removed' ? 'A-WALL-DEMO' : 'A-FLOR-EXST',
    pen: PEN[t.state],
    closed: true,
    points: t.outline,
    path: t.path,
  }));

/** Names of old things, each on or by its own. */
export function oldNames(
  ctx: SheetContext,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
  words: (t: ExistingThing) => string,
  which: (t: ExistingThing) => boolean = () => true,
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const t of ctx.input.project.patio.existing.filter(which)) {
    const c = centroid(t.outline);
    const b = extents(t.outline);
    const upright = b.h > 1.5 * b.w;
    const way = (du: number, dv: number, turn: boolean): Primitive => ({
      kind: 'text',
      layer: 'A-ANNO-NOTE',
      at: { x: c.x + du * b.w, y: c.y + dv * b.h },
      content: words(t),
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      path: t.path,
      ...(turn && { angle: Math.PI / 2 }),
    });
    const ways = [-0.3, 0, 0.3].flatMap((dv) => [0, -0.2, 0.2].map((du) => way(du, dv, upright)));
    out.push(placeNote(ways as [Primitive, ...Primitive[]], 0.3 * h, ratio, [...over, ...out], lines));
  }
  return out;
}

/** Name of each slab that is there already, clear of what stands on it. */
export function slabNames(
  ctx: SheetContext,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const s of ctx.input.project.patio.slabs.filter((p) => p.state !== 'new')) {
    const b = extents(s.outline);
    const way = (u: number, v: number): Primitive => ({
      kind: 'text',
      layer: 'A-ANNO-NOTE',
      at: { x: b.x + u * b.w, y: b.y + v * b.h },
      content: `${s.mark}, ${s.state} slab, ${ctx.len(s.thickness)}`,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
      path: s.path,
    });
    const ways = [0.88, 0.75, 0.6, 0.45, 0.3].flatMap((v) => [0.5, 0.35, 0.65].map((u) => way(u, v)));
    out.push(placeNote(ways as [Primitive, ...Primitive[]], 0.4 * h, ratio, [...over, ...out], lines));
  }
  return out;
}

/** Names the dashed outline, once a roof. */
export function roofWords(
  ctx: SheetContext,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const r of ctx.input.structure.roofs) {
    const way = (t: number, side: 1 | -1): Primitive => ({
      kind: 'symbol',
      layer: 'A-ANNO-NOTE',
      at: { x: r.min.x + t * (r.max.x - r.min.x), y: r.max.y },
      items: [
        {
          kind: 'text',
          layer: 'A-ANNO-NOTE',
          at: { x: 0, y: side * 1.5 * h },
          content: `edge of roof ${r.mark} above`,
          height: h,
          align: 'center',
          valign: 'middle',
          mask: true,
        },
      ],
    });
    out.push(
      placeNote(
        [way(0.5, -1), way(0.3, -1), way(0.7, -1), way(0.5, 1), way(0.25, 1), way(0.75, 1)],
        0.3 * h,
        ratio,
        [...over, ...out],
        lines,
      ),
    );
  }
  return out;
}
