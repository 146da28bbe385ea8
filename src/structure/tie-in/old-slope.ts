/** Which slope of the house a gable runs over, how it stands to the gable's ridge, and at which end. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { GableRoof, House } from '../../project/model.js';
import { roofAxes } from '../axes.js';
import { planeAt } from '../house/profile.js';
import { placeHouseRoofs } from '../house/registry.js';
import type { HousePlane } from '../model.js';

export interface OldSlope {
  readonly plane: HousePlane;
  /** Rise over run, and level unit vector up the slope. */
  readonly slope: number;
  readonly into: Vec2;
  /** Heights of its lowest and highest corner. */
  readonly eave: number;
  readonly top: number;
}

/** Level line of steepest rise of a plane and its rise over run; undefined when it is level. */
export function slopeOf(outline: readonly Vec3[]): { readonly slope: number; readonly into: Vec2 } | undefined {
  const at = (x: number, y: number): number => planeAt(outline, { x, y });
  const gx = at(1, 0) - at(0, 0);
  const gy = at(0, 1) - at(0, 0);
  const slope = Math.hypot(gx, gy);
  return slope < 1e-6 ? undefined : { slope, into: { x: gx / slope + 0, y: gy / slope + 0 } };
}

export function oldSlope(roof: GableRoof, planes: readonly HousePlane[]): OldSlope | undefined {
  const plane = planes.find((p) => p.id === roof.meetsHouse?.plane);
  const s = plane && slopeOf(plane.outline);
  if (plane === undefined || s === undefined) return undefined;
  const zs = plane.outline.map((p) => p.z);
  return { plane, ...s, eave: Math.min(...zs), top: Math.max(...zs) };
}

/** Cosine between the old slope's rise and the positive ridge axis: ±1 where the ridge runs straight up it. */
export function alongRidge(roof: GableRoof, s: OldSlope): number {
  const { along } = roofAxes(roof.ridge);
  return along.x * s.into.x + along.y * s.into.y;
}

/** End of a gable at which it goes on over the house: its first frame, its last, or neither. */
export function endOverHouse(roof: GableRoof, house: House): 'from' | 'to' | undefined {
  if (roof.meetsHouse === undefined) return undefined;
  const s = oldSlope(roof, placeHouseRoofs(house));
  if (s === undefined) return undefined;
  const c = alongRidge(roof, s);
  return c < -0.999 ? 'from' : c > 0.999 ? 'to' : undefined;
}

/** Where the gable's own surfaces end along the ridge: rakes, and half a bay past the frame at the house where it goes on. */
export function extentOf(roof: GableRoof, house: House): readonly [number, number] {
  const end = endOverHouse(roof, house);
  const half = (roof.meetsHouse?.spacing ?? 0) / 2;
  return [roof.from - (end === 'from' ? half : roof.rake), roof.to + (end === 'to' ? half : roof.rake)];
}
