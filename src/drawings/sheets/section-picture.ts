/** The cut that section and detail share: where it looks, what it shows, and the ground in it. */
import type { Vec2 } from '../../base/vec.js';
import type { Piece } from '../../structure/model.js';
import type { Primitive, Rect } from '../ir/index.js';
import { CAMERAS, type CameraName } from '../views/camera.js';
import { picture } from '../views/picture.js';
import type { SheetContext } from './contract.js';
import { type SectionPlane, sectionPlanes } from './section-plane.js';

export interface Cutting {
  readonly name: CameraName;
  readonly cutAt: number;
}

/** Looking toward the house for a cut across a ridge that runs out from it; toward −x for a cut square to the house. */
export const cuttingOf = (plane: SectionPlane): Cutting => ({
  name: plane.across === 'x' ? 'rear' : 'right',
  cutAt: plane.at,
});

function cutting(ctx: SheetContext, number: number): Cutting {
  const planes = sectionPlanes(ctx.input.structure);
  return cuttingOf(planes[number] ?? planes[0]);
}

/** Soil line and the surface people walk on, in the picture of a section. */
export function soil(ctx: SheetContext, cut: Cutting, frame: Rect): Primitive[] {
  const { grade } = ctx.input.structure;
  const c = CAMERAS[cut.name];
  const x0 = frame.x - 12;
  const x1 = frame.x + frame.w + 12;
  const z = (a: number): number => {
    const y = cut.name === 'rear' ? cut.cutAt : c.right.y * a;
    return y < 0 ? grade.z0 : grade.z0 + grade.gy * y;
  };
  const points: Vec2[] = [
    { x: x0, y: z(x0) },
    ...(cut.name === 'rear' || x0 > 0 || x1 < 0 ? [] : [{ x: 0, y: z(0) }]),
    { x: x1, y: z(x1) },
  ];
  const under = points.map((p) => ({ x: p.x, y: p.y - 8 })).reverse();
  return [
    { kind: 'polyline', layer: 'C-TOPO', pen: 'profile', points },
    { kind: 'hatch', layer: 'A-SECT-PATT', pattern: 'earth', loops: [[...points, ...under]] },
  ];
}

const HOUSE = new Set<Piece['role']>(['wall', 'opening', 'house-roof']);

/** Looking toward the house, its wall beyond would only crowd the cut; cut square to the house, the wall belongs to it. */
export function coverOnly(ctx: SheetContext, number = 0): (p: Piece) => boolean {
  const across = cutting(ctx, number).name === 'rear';
  return (p) => !(across && HOUSE.has(p.role));
}

/** Picture of the section of a running number, the main one being 0. */
export function sectionPicture(ctx: SheetContext, keep: (p: Piece) => boolean, number = 0) {
  const cut = cutting(ctx, number);
  const camera = CAMERAS[cut.name];
  const pic = picture(ctx.pieces.filter(keep), camera, {
    layers: { fresh: 'A-SECT', existing: 'A-ELEV-EXST', cut: 'A-SECT-MCUT', pattern: 'A-SECT-PATT' },
    cutAt: cut.cutAt,
  });
  return { cut, camera, pic };
}
