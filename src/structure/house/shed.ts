import type { Vec2, Vec3 } from '../../base/vec.js';
import type { HouseRoofShape } from './contract.js';

const DOWN: Readonly<Record<'+x' | '-x' | '+y' | '-y', Vec2>> = {
  '+x': { x: 1, y: 0 },
  '-x': { x: -1, y: 0 },
  '+y': { x: 0, y: 1 },
  '-y': { x: 0, y: -1 },
};

/** One plane; the plate is that of the low side. Overhang at the high and low eaves, rake at the sides. */
export const shed: HouseRoofShape<'shed'> = {
  planes(r) {
    const fall = r.fall ?? (r.ridge === 'x' ? '+y' : '+x');
    const d = DOWN[fall];
    const tan = Math.tan(r.pitch);
    const [ox, oy] = d.x !== 0 ? [r.overhang, r.rake] : [r.rake, r.overhang];
    const low = d.x > 0 ? r.max.x : d.x < 0 ? r.min.x : d.y > 0 ? r.max.y : r.min.y;
    const corner = (x: number, y: number): Vec3 => {
      const toward = d.x !== 0 ? d.x * (x - low) : d.y * (y - low);
      return { x, y, z: r.plate - toward * tan };
    };
    const [x0, y0, x1, y1] = [r.min.x - ox, r.min.y - oy, r.max.x + ox, r.max.y + oy];
    return [[corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)]];
  },
};
