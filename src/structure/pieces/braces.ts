/** A knee brace as a plate cut upright at the post and level at the top. */
import { prism } from '../../base/geometry/index.js';
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { Member, Piece } from '../model.js';
import { memberPiece } from './supports.js';

const UP: Vec3 = { x: 0, y: 0, z: 1 };

export function bracePieces(m: Member): Piece[] {
  const run = Math.hypot(m.end.x - m.start.x, m.end.y - m.start.y);
  const rise = m.end.z - m.start.z;
  const long = Math.hypot(run, rise);
  const dir = { x: (m.end.x - m.start.x) / run, y: (m.end.y - m.start.y) / run };
  // An edge at offset ±depth/2 from the centre line, met by the upright through the start and the level through the end.
  const o = m.section.depth / 2;
  const upright = (side: 1 | -1): Vec2 => ({ x: 0, y: (side * o * long) / run });
  const level = (side: 1 | -1): Vec2 => ({ x: run - (side * o * long) / rise, y: rise });
  const half = m.section.width / 2;
  const left = { x: -dir.y, y: dir.x, z: 0 };
  const origin = { x: m.start.x + left.x * half, y: m.start.y + left.y * half, z: m.start.z };
  const through = { x: -2 * half * left.x, y: -2 * half * left.y, z: 0 };
  const outline = [upright(1), upright(-1), level(-1), level(1)];
  return [memberPiece(m, prism(outline, origin, { x: dir.x, y: dir.y, z: 0 }, UP, through))];
}
