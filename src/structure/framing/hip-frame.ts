/** What the parts of a hip roof's framing share: its measures, and points over its plan. */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { HipRoof } from '../../project/model.js';
import type { Section } from '../model.js';
import type { HipFace, HipPlan } from '../roofs/contract.js';

export interface Frame {
  readonly roof: HipRoof;
  readonly plan: HipPlan;
  readonly common: Section;
  readonly hip: Section;
  readonly tan: number;
  readonly cos: number;
  readonly sin: number;
  /** Height of the common rafters' top edges at a plan distance up from the eave. */
  topEdge(s: number): number;
  readonly plumb: number;
}

export const planAt = (face: HipFace, t: number, s: number): Vec2 => ({
  x: face.origin.x + face.u.x * t + face.inward.x * s,
  y: face.origin.y + face.u.y * t + face.inward.y * s,
});
export const at = (p: Vec2, z: number): Vec3 => ({ x: p.x, y: p.y, z });
