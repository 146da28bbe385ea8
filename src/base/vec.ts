/**
 * Points and vectors. House axes, right-handed: x along the house wall from left to right as seen looking out of the
 * house, y out from the wall, z up from the finished floor. Inches.
 */
export interface Vec2 {
  readonly x: number;
  readonly y: number;
}
export interface Vec3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const v2 = (x: number, y: number): Vec2 => ({ x, y });
export const v3 = (x: number, y: number, z: number): Vec3 => ({ x, y, z });
export const add = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const sub = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const scale = (a: Vec3, s: number): Vec3 => ({ x: a.x * s, y: a.y * s, z: a.z * s });
export const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const length = (a: Vec3): number => Math.hypot(a.x, a.y, a.z);
/** Without the root: for the many forces that are only asked whether they are nothing. */
export const isShorter = (a: Vec3, limit: number): boolean => a.x * a.x + a.y * a.y + a.z * a.z < limit * limit;
export const distance = (a: Vec3, b: Vec3): number => length(sub(a, b));
export const unit = (a: Vec3): Vec3 => scale(a, 1 / length(a));
export const along = (a: Vec3, b: Vec3, t: number): Vec3 => add(a, scale(sub(b, a), t));
export const flat = (a: Vec3): Vec2 => ({ x: a.x, y: a.y });
export const raise = (a: Vec2, z: number): Vec3 => ({ x: a.x, y: a.y, z });
