import { contains } from '../base/plane.js';
import type { Vec2 } from '../base/vec.js';
import type { Patio } from '../project/model.js';
import type { Incline, SlabPlaced } from './model.js';

export const heightAt = (plane: Incline, p: Vec2): number => plane.z0 + plane.gx * p.x + plane.gy * p.y;

export interface Ground {
  readonly grade: Incline;
  readonly slabs: readonly SlabPlaced[];
}

export const placeGround = (patio: Patio): Ground => ({
  grade: { z0: patio.grade.atHouse, gx: 0, gy: -patio.grade.fall },
  slabs: patio.slabs.map((s) => ({
    mark: s.mark,
    state: s.state,
    outline: s.outline,
    top: { z0: s.topAtHouse, gx: 0, gy: -s.fall },
    thickness: s.thickness,
    path: s.path,
  })),
});

/** The kept or new slab a point stands on. */
export const slabAt = (ground: Ground, p: Vec2): SlabPlaced | undefined =>
  ground.slabs.find((s) => s.state !== 'removed' && contains(s.outline, p));

/** Walking surface at a point: the slab there, else grade. */
export function surfaceAt(ground: Ground, p: Vec2): number {
  return heightAt(slabAt(ground, p)?.top ?? ground.grade, p);
}
