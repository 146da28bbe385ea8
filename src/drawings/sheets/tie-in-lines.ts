/** Lines of a roof over the old roof that several plans draw, and the old roof itself from above. */
import { flat, type Vec2 } from '../../base/vec.js';
import type { Member, OverlayPlaced, Structure } from '../../structure/model.js';
import { overlayPoint } from '../../structure/tie-in/frame.js';
import { overlaySolid } from '../../structure/tie-in/pieces.js';
import type { LayerName, PenName, Primitive } from '../ir/index.js';
import { hull } from '../views/cut.js';
import type { SheetContext } from './contract.js';

export const poly = (
  points: readonly Vec2[],
  layer: LayerName,
  pen: PenName,
  mark?: string,
  fill?: 'paper',
): Primitive => ({
  kind: 'polyline',
  layer,
  pen,
  points,
  closed: true,
  ...(mark !== undefined && { mark }),
  ...(fill && { fill }),
});

/** Outline of a cut member seen from above. */
export function planOfMember(o: OverlayPlaced, m: Member): Vec2[] {
  const solid = overlaySolid(o, m);
  return solid ? hull(solid.vertices.map(flat)) : [];
}

/** House axis the new ridge runs along, and the coordinate on it of a distance up the old slope. */
export const axisOf = (o: OverlayPlaced): 'x' | 'y' => (Math.abs(o.frame.into.y) > 0.5 ? 'y' : 'x');
export const along = (o: OverlayPlaced, x: number): number => {
  const axis = axisOf(o);
  return o.frame.origin[axis] + o.frame.into[axis] * x;
};

/** Walls of the house below its roof. */
export const wallLines = (structure: Structure): Primitive[] =>
  structure.walls.map((w): Primitive => ({ kind: 'line', layer: 'A-WALL-EXST', pen: 'hidden', a: w.start, b: w.end }));

/** Chimneys, vents and skylights. */
export function standingItems(ctx: SheetContext): Primitive[] {
  return ctx.input.project.house.roofs.flatMap((r) =>
    (r.standing ?? []).map((t): Primitive => {
      const [w, d] = [t.width / 2, t.depth / 2];
      return poly(
        [
          { x: t.at.x - w, y: t.at.y - d },
          { x: t.at.x + w, y: t.at.y - d },
          { x: t.at.x + w, y: t.at.y + d },
          { x: t.at.x - w, y: t.at.y + d },
        ],
        'A-ROOF-EXST',
        'existing-cut',
        t.name,
        'paper',
      );
    }),
  );
}

/** Old roof, what stands on it, and the wall below it. */
export const oldRoofItems = (ctx: SheetContext): Primitive[] => [
  ...ctx.input.structure.housePlanes.map((p) => poly(p.outline.map(flat), 'A-ROOF-EXST', 'existing', p.id)),
  ...wallLines(ctx.input.structure),
  ...standingItems(ctx),
];

/** Valleys as heavy lines. */
export const valleyLines = (o: OverlayPlaced): Primitive[] =>
  o.valleys.map(
    (v): Primitive => ({
      kind: 'line',
      layer: 'A-ROOF',
      pen: 'profile',
      a: flat(v.foot),
      b: flat(v.head),
      mark: v.mark,
      role: 'valley',
    }),
  );

/** Ridge and valleys. */
export const seams = (o: OverlayPlaced): Primitive[] => [
  ...valleyLines(o),
  {
    kind: 'line',
    layer: 'A-ROOF',
    pen: 'new',
    a: flat(overlayPoint(o.frame, o.edge, 0, 0)),
    b: flat(overlayPoint(o.frame, o.head, 0, 0)),
    role: 'ridge',
  },
];
