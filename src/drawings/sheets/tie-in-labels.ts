/** Words, arrows and tags of the tie-in plan, each where it touches nothing. */
import { flat, type Vec2 } from '../../base/vec.js';
import type { OverlayPlaced } from '../../structure/model.js';
import { overlayPoint } from '../../structure/tie-in/frame.js';
import { placeNote, slopeArrow, type TagWish } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';
import { axisOf } from './tie-in-lines.js';

/** Marks of fill rafters on one side, of a plate and of the ridge board. */
export function wishesOf(ctx: SheetContext, o: OverlayPlaced): TagWish[] {
  const { style } = ctx;
  const h = style.note;
  const layer = 'S-ANNO-SYMB' as const;
  const at = (x: number, y: number): Vec2 => flat(overlayPoint(o.frame, x, y, 0));
  const side = { x: o.frame.side.x, y: o.frame.side.y };
  const fills = o.fills.map(
    (f): TagWish => ({
      kind: 'rafter',
      text: f.mark,
      at: at(f.x, -0.55 * f.run),
      off: { x: -o.frame.into.x * h * 2.6, y: -o.frame.into.y * h * 2.6 },
      layer,
      style,
      path: `${o.path}/rafter`,
    }),
  );
  const v = o.valleys[0]!;
  const mid = { x: v.foot.x + 0.72 * (v.head.x - v.foot.x), y: v.foot.y + 0.72 * (v.head.y - v.foot.y) };
  return [
    ...fills,
    {
      kind: 'rafter',
      text: o.plates.mark,
      at: { x: mid.x - side.x * 4, y: mid.y - side.y * 4 },
      off: { x: side.x * h * 6, y: side.y * h * 6 },
      layer,
      style,
      path: `${o.path}/plate`,
    },
    {
      kind: 'rafter',
      text: o.board.mark,
      at: at(o.edge + 0.3 * (o.head - o.edge), 0),
      off: { x: side.x * h * 4, y: side.y * h * 4 },
      layer,
      style,
      path: `${o.path}/ridge`,
    },
  ];
}

/** True length along each valley, outside of it, over the old roof, where it touches nothing. */
export function valleyWords(
  ctx: SheetContext,
  o: OverlayPlaced,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const h = ctx.style.note;
  const out: Primitive[] = [];
  for (const v of o.valleys) {
    let read = Math.atan2(v.head.y - v.foot.y, v.head.x - v.foot.x);
    if (read > Math.PI / 2 + 1e-9) read -= Math.PI;
    else if (read <= -Math.PI / 2 + 1e-9) read += Math.PI;
    const outward = { x: o.frame.side.x * v.sign, y: o.frame.side.y * v.sign };
    const up = { x: -Math.sin(read), y: Math.cos(read) };
    const k = up.x * outward.x + up.y * outward.y > 0 ? 1 : -1;
    const [first, ...more] = [1.6, 3.2].flatMap((off) =>
      [0.42, 0.55, 0.3, 0.68, 0.2].map(
        (t): Primitive => ({
          kind: 'symbol',
          layer: 'S-ANNO-NOTE',
          at: { x: v.foot.x + t * (v.head.x - v.foot.x), y: v.foot.y + t * (v.head.y - v.foot.y) },
          mark: v.mark,
          path: o.path,
          items: [
            {
              kind: 'text',
              layer: 'S-ANNO-NOTE',
              at: { x: up.x * k * h * off, y: up.y * k * h * off },
              content: `${v.mark} ${ctx.len(v.length)} true`,
              height: h,
              angle: read,
              align: 'center',
              valign: 'middle',
            },
          ],
        }),
      ),
    );
    out.push(placeNote([first!, ...more], 0.4 * h, ratio, [...over, ...out], lines));
  }
  return out;
}

/** Plan angle at the end of the ridge, with its arc, on the first side. */
export function valleyAngle(ctx: SheetContext, o: OverlayPlaced): Primitive[] {
  const h = ctx.style.note;
  const v = o.valleys[0]!;
  const down = Math.atan2(-o.frame.into.y, -o.frame.into.x);
  const toFoot = Math.atan2(v.foot.y - v.head.y, v.foot.x - v.head.x);
  const r = Math.min(40, 0.4 * o.shape.run);
  const turn = Math.atan2(Math.sin(toFoot - down), Math.cos(toFoot - down));
  const mid = down + turn * 0.55;
  return [
    {
      kind: 'polyline',
      layer: 'S-ANNO-DIMS',
      pen: 'dimension',
      points: Array.from({ length: 17 }, (_, i) => {
        const a = down + (turn * i) / 16;
        return { x: v.head.x + r * Math.cos(a), y: v.head.y + r * Math.sin(a) };
      }),
    },
    {
      kind: 'text',
      layer: 'S-ANNO-DIMS',
      at: { x: v.head.x + Math.cos(mid) * r * 1.3, y: v.head.y + Math.sin(mid) * r * 1.3 },
      content: `${((o.shape.planAngle * 180) / Math.PI).toFixed(1)}°`,
      height: h,
      align: 'center',
      valign: 'middle',
      mask: true,
    },
  ];
}

/** Falls of old and new slopes, and names of the lines that are not the new work's. */
export function labels(
  ctx: SheetContext,
  o: OverlayPlaced,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive[] {
  const { style, input } = ctx;
  const h = style.note;
  const at = (x: number, y: number): Vec2 => flat(overlayPoint(o.frame, x, y, 0));
  const out: Primitive[] = [];
  const put = (first: Primitive, ...more: Primitive[]): void => {
    out.push(placeNote([first, ...more], 0.4 * h, ratio, [...over, ...out], lines));
  };
  const arrow = (p: Vec2, way: Vec2, text: string): Primitive =>
    slopeArrow({ at: p, angle: Math.atan2(way.y, way.x), text, layer: 'A-ANNO-SYMB', style });
  const pitch = input.project.cover.roofs.find((r) => r.mark === o.roof)?.pitchText ?? '';
  const fall = { x: -o.frame.into.x, y: -o.frame.into.y };
  const old = `old ${Number((12 * o.shape.old).toFixed(2))}/12`;
  const [one, ...others] = [-0.8, 0.8, -0.95, 0.95, -0.65, 0.65].flatMap((k) =>
    [-8, 4, -20, -32].map((back) => arrow(at(o.head + back, k * o.half), fall, old)),
  );
  put(one!, ...others);
  for (const f of o.faces) {
    const way = { x: o.frame.side.x * f.sign, y: o.frame.side.y * f.sign };
    const places = [0.4, 0.55, 0.3].flatMap((k) => [0.5, 0.25, 0.75].map((t) => ({ k, t })));
    const [first, ...more] = places.map(({ k, t }) => {
      const x = o.edge + t * (o.start - o.edge) + (t > 0.6 ? 14 : 4);
      return arrow(at(x, f.sign * k * o.half), way, pitch);
    });
    put(first!, ...more);
  }
  const level = axisOf(o) === 'y' ? 0 : Math.PI / 2;
  const name = (x: number, content: string): void => {
    const [first, ...more] = [0.82, -0.82, 0.6, -0.6, 0.35, -0.35]
      .flatMap((k) => [-1.1, 1.1].map((up) => ({ k, up })))
      .map(
        ({ k, up }): Primitive => ({
          kind: 'symbol',
          layer: 'A-ANNO-NOTE',
          at: at(x, k * o.half),
          items: [
            {
              kind: 'text',
              layer: 'A-ANNO-NOTE',
              at: level === 0 ? { x: 0, y: up * h } : { x: up * h, y: 0 },
              content,
              height: h,
              angle: level,
              align: 'center',
              valign: 'middle',
              mask: true,
            },
          ],
        }),
      );
    put(first!, ...more);
  };
  name(0, 'old eave edge');
  const wall = input.structure.walls.find((w) => Math.abs(w.out.x * fall.x + w.out.y * fall.y - 1) < 1e-6);
  // On a small plan the valleys' own words come first.
  if (wall && 2 * o.half * ratio > 32 * h)
    name((o.frame.origin.x - wall.start.x) * fall.x + (o.frame.origin.y - wall.start.y) * fall.y, 'house wall below');
  return out;
}
