/** What a framing plan says of the roof's shape: ridges, and the fall of each surface clear of other lettering. */
import { contains } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Structure, Surface } from '../../structure/model.js';
import { placeNote, slopeArrow } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';

/** Top edges shared by the two planes of a pitched roof. */
export function ridgeLines(structure: Structure): { readonly a: Vec2; readonly b: Vec2 }[] {
  return structure.roofs.flatMap((r) => {
    const s = structure.surfaces.filter((x) => x.roof === r.mark);
    if (s.length < 2) return [];
    const { origin, u, v, outline } = s[0]!;
    const top = Math.max(...outline.map((p) => p.y));
    const ends = outline
      .filter((p) => Math.abs(p.y - top) < 1e-6)
      .map((p) => ({ x: origin.x + u.x * p.x + v.x * p.y, y: origin.y + u.y * p.x + v.y * p.y }));
    return ends.length >= 2 ? [{ a: ends[0]!, b: ends[1]! }] : [];
  });
}

/** Places along a surface's eave and up its slope, as shares of both, at which its arrow may stand. */
const ARROW_PLACES = [0.5, 0.36, 0.64, 0.25, 0.75].flatMap((v) =>
  [0.72, 0.62, 0.82, 0.5, 0.38, 0.28, 0.18].map((u) => ({ u, v })),
);

/** The arrow of a surface's fall, clear of what is lettered on it already. */
export function fallOf(
  ctx: SheetContext,
  s: Surface,
  ratio: number,
  over: readonly Primitive[],
  lines: readonly Primitive[],
): Primitive {
  const { project } = ctx.input;
  const [u0, u1] = [Math.min(...s.outline.map((p) => p.x)), Math.max(...s.outline.map((p) => p.x))];
  const [v0, v1] = [Math.min(...s.outline.map((p) => p.y)), Math.max(...s.outline.map((p) => p.y))];
  // Joint tags stand at the first frames, where x and y are least: arrows are tried from the other end.
  const back = s.u.x + s.u.y < 0;
  const roof = project.cover.roofs.find((r) => r.mark === s.roof);
  const way = (share: { readonly u: number; readonly v: number }): Primitive => {
    const u = u0 + (back ? 1 - share.u : share.u) * (u1 - u0);
    const v = v0 + share.v * (v1 - v0);
    return slopeArrow({
      at: { x: s.origin.x + s.u.x * u + s.v.x * v, y: s.origin.y + s.u.y * u + s.v.y * v },
      angle: Math.atan2(s.downhill.y, s.downhill.x),
      text: roof?.pitchText ?? '',
      layer: 'A-ANNO-SYMB',
      style: ctx.style,
      ...(roof && { path: `${roof.path}/pitch` }),
    });
  };
  const within = ARROW_PLACES.filter(({ u, v }) =>
    contains(s.outline, { x: u0 + (back ? 1 - u : u) * (u1 - u0), y: v0 + v * (v1 - v0) }),
  );
  const [first = ARROW_PLACES[0]!, ...rest] = within;
  return placeNote([way(first), ...rest.map(way)], 0.4 * ctx.style.note, ratio, over, lines);
}
