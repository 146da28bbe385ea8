/** The existing house: walls broken into convex pieces so that openings are real holes, leaves in the holes, roof slabs. */
import { cutByPlane, planeThrough, prism } from '../../base/geometry/index.js';
import { clipConvex } from '../../base/plane.js';
import type { Vec2 } from '../../base/vec.js';
import type { Opening, OpeningKind } from '../../project/model.js';
import { HOUSE_ROOF_DEPTH, HOUSE_WALL_DEPTH } from '../constants.js';
import { planeAt } from '../house/profile.js';
import type { HousePlane, MaterialClass, Piece, Solid, Structure, WallPlaced } from '../model.js';
import { plate, rectangle, type Upright } from './upright.js';

/** Beyond any wall height. */
const FAR = 1e4;
/** Leaf of an opening: thickness, and how far its face stands back from the outside. Drawing only. */
const LEAF = 1.5;
const RECESS = 2;

const LEAF_MATERIAL: Readonly<Record<OpeningKind, MaterialClass>> = {
  window: 'glass',
  'sliding-door': 'glass',
  'french-door': 'glass',
  door: 'wood',
  'garage-door': 'wood',
  vent: 'metal',
};

/** Parts of a wall's face that no opening takes: upright strips between jambs, cut at sills and heads. */
function solidCells(length: number, openings: readonly Opening[]): Vec2[][] {
  const cuts = [0, length];
  for (const o of openings) cuts.push(Math.max(0, o.offset), Math.min(length, o.offset + o.width));
  const xs = [...new Set(cuts)].sort((a, b) => a - b);
  const cells: Vec2[][] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const [x0, x1] = [xs[i]!, xs[i + 1]!];
    if (x1 - x0 < 1e-6) continue;
    const holes = openings
      .filter((o) => o.offset < x1 - 1e-6 && o.offset + o.width > x0 + 1e-6)
      .sort((a, b) => a.sill - b.sill);
    let z = -FAR;
    for (const o of holes) {
      if (o.sill > z) cells.push(rectangle(x0, z, x1, o.sill));
      z = Math.max(z, o.head);
    }
    cells.push(rectangle(x0, z, x1, FAR));
  }
  return cells;
}

/** The wall's face: up to the plate, and above it what stands under the slopes of a gable end. */
function faces(w: WallPlaced, length: number, dir: Vec2, planes: readonly HousePlane[]): Vec2[][] {
  const out = [rectangle(0, w.base, length, w.plate)];
  for (const plane of planes) {
    const line = crossing(plane, w, length, dir);
    if (line === undefined) continue;
    const [s, t] = line;
    const z = (along: number): number =>
      Math.max(w.plate, planeAt(plane.outline, { x: w.start.x + dir.x * along, y: w.start.y + dir.y * along }));
    if (z(s) > w.plate + 0.01 || z(t) > w.plate + 0.01)
      out.push([
        { x: s, y: w.plate },
        { x: t, y: w.plate },
        { x: t, y: z(t) },
        { x: s, y: z(s) },
      ]);
  }
  return out;
}

/** Stretch of the wall line under a roof plane. */
function crossing(plane: HousePlane, w: WallPlaced, length: number, dir: Vec2): [number, number] | undefined {
  let s = 0;
  let t = length;
  const ring = plane.outline;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    const side = (x: number, y: number): number => (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
    const h0 = side(w.start.x, w.start.y);
    const rate = (b.x - a.x) * dir.y - (b.y - a.y) * dir.x;
    if (Math.abs(rate) < 1e-9) {
      if (h0 < -1e-6) return undefined;
    } else if (rate > 0) s = Math.max(s, -h0 / rate);
    else t = Math.min(t, -h0 / rate);
  }
  return t - s > 0.01 ? [s, t] : undefined;
}

/** Cuts a wall piece along the diagonal where another wall meets it at an outside corner, so that no seam shows. */
function mitre(solid: Solid, w: WallPlaced, dir: Vec2, walls: readonly WallPlaced[]): Solid | undefined {
  let piece: Solid | undefined = solid;
  for (const sign of [-1, 1] as const) {
    const at = sign > 0 ? w.end : w.start;
    const onward = { x: dir.x * sign, y: dir.y * sign };
    const next = walls.find((o) => {
      const meets = sign > 0 ? o.start : o.end;
      return o !== w && Math.hypot(meets.x - at.x, meets.y - at.y) < 1e-6;
    });
    // At an inside corner the walls do not overlap.
    if (next === undefined || next.out.x * onward.x + next.out.y * onward.y < 1e-6) continue;
    // The diagonal runs along the sum of the two outward normals.
    const across = { x: -(w.out.y + next.out.y), y: w.out.x + next.out.x, z: 0 };
    const away = across.x * onward.x + across.y * onward.y > 0 ? 1 : -1;
    piece = piece && cutByPlane(piece, planeThrough({ ...at, z: 0 }, { x: away * across.x, y: away * across.y, z: 0 }));
  }
  return piece;
}

function wallPieces(w: WallPlaced, structure: Structure): Piece[] {
  const length = Math.hypot(w.end.x - w.start.x, w.end.y - w.start.y);
  if (!(length > 0)) return [];
  const dir = { x: (w.end.x - w.start.x) / length, y: (w.end.y - w.start.y) / length };
  const on: Upright = { origin: w.start, dir };
  const pieces: Piece[] = [];
  const cells = solidCells(length, w.openings);
  for (const face of faces(w, length, dir, structure.housePlanes)) {
    for (const cell of cells) {
      for (const solid of plate(on, clipConvex(face, cell), -HOUSE_WALL_DEPTH, 0)) {
        const cut = mitre(solid, w, dir, structure.walls);
        if (cut)
          pieces.push({
            part: w.id,
            mark: w.name,
            role: 'wall',
            state: 'existing',
            material: 'house-wall',
            solid: cut,
          });
      }
    }
  }
  for (const o of w.openings) {
    const leaf = rectangle(o.offset, o.sill, o.offset + o.width, o.head);
    for (const solid of plate(on, leaf, -RECESS - LEAF, -RECESS))
      pieces.push({
        part: o.mark,
        mark: o.mark,
        role: 'opening',
        state: 'existing',
        material: LEAF_MATERIAL[o.kind],
        solid,
      });
  }
  return pieces;
}

const DOWN = { x: 0, y: 0, z: -HOUSE_ROOF_DEPTH };

function roofPiece(plane: HousePlane): Piece {
  const o = plane.outline[0]!;
  const flat = { x: 0, y: 0 };
  const gx = planeAt(plane.outline, { x: 1, y: 0 }) - planeAt(plane.outline, flat);
  const gy = planeAt(plane.outline, { x: 0, y: 1 }) - planeAt(plane.outline, flat);
  const profile = plane.outline.map((p) => ({ x: p.x - o.x, y: p.y - o.y }));
  return {
    part: plane.id,
    mark: plane.id,
    role: 'house-roof',
    state: plane.state,
    material: 'house-roof',
    solid: prism(profile, o, { x: 1, y: 0, z: gx }, { x: 0, y: 1, z: gy }, DOWN),
  };
}

export const housePieces = (structure: Structure): Piece[] => [
  ...structure.walls.flatMap((w) => wallPieces(w, structure)),
  ...structure.housePlanes.map(roofPiece),
];
