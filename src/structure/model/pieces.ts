/** Convex pieces, for pictures. */
import type { Vec3 } from '../../base/vec.js';
import type { WorkState } from '../../project/model.js';
import type { MemberRole } from './members.js';

/** Convex solid; faces list vertex indices counter-clockwise seen from outside. */
export interface Solid {
  readonly vertices: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

export type MaterialClass =
  | 'wood'
  | 'engineered-wood'
  | 'concrete'
  | 'covering'
  | 'sheathing'
  | 'metal'
  | 'earth'
  | 'house-wall'
  | 'house-roof'
  | 'glass';

/** What a picture needs of a part: convex pieces with the mark they belong to. */
export interface Piece {
  readonly part: string;
  readonly mark: string;
  readonly role:
    | MemberRole
    | 'footing'
    | 'slab'
    | 'step'
    | 'wall'
    | 'opening'
    | 'house-roof'
    | 'roof-surface'
    | 'grade';
  readonly state: WorkState;
  readonly material: MaterialClass;
  readonly solid: Solid;
}
