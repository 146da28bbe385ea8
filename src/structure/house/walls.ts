import type { Vec2 } from '../../base/vec.js';
import type { House, HouseWall } from '../../project/model.js';
import type { WallPlaced } from '../model.js';

/** Outward normal: the corners run clockwise seen from above, so outside is on the left of start → end. */
export function wallOut(w: Pick<HouseWall, 'start' | 'end'>): Vec2 {
  const dx = w.end.x - w.start.x;
  const dy = w.end.y - w.start.y;
  const l = Math.hypot(dx, dy);
  return l > 0 ? { x: -dy / l + 0, y: dx / l + 0 } : { x: 0, y: 1 };
}

/** House walls from the ground at the house up to their plate. */
export const placeWalls = (house: House, base: number): WallPlaced[] =>
  house.walls.map((w, i) => ({
    id: `HW${i + 1}`,
    name: w.name,
    start: w.start,
    end: w.end,
    out: wallOut(w),
    base,
    plate: w.plate,
    openings: house.openings.filter((o) => o.wall === i),
    path: w.path,
  }));

/** Plan outline of the house, counter-clockwise. */
export const houseOutline = (house: House): Vec2[] => house.walls.map((w) => w.start).reverse();
