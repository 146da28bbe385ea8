/** Slabs, steps and ground. */
import type { Inches } from '../../base/units.js';
import type { Vec2 } from '../../base/vec.js';

export type WorkState = 'existing' | 'new' | 'removed';

export interface Slab {
  readonly mark: string;
  readonly state: WorkState;
  readonly outline: readonly Vec2[];
  readonly thickness: Inches;
  /** Top of slab at y = 0, relative to finished floor (negative is below). */
  readonly topAtHouse: Inches;
  /** Fall per inch of y, away from the house; positive drains away. */
  readonly fall: number;
  readonly path: string;
}

export interface Step {
  readonly outline: readonly Vec2[];
  readonly risers: number;
  readonly top: Inches;
  readonly state: WorkState;
  readonly path: string;
}

export type ExistingKind = 'cover' | 'wall' | 'fence' | 'planter' | 'paving' | 'post' | 'deck' | 'other';

/** What stands where the cover will be, besides slabs and steps. */
export interface ExistingThing {
  readonly name: string;
  readonly kind: ExistingKind;
  readonly outline: readonly Vec2[];
  readonly state: 'existing' | 'removed';
  readonly path: string;
}

export interface Patio {
  readonly slabs: readonly Slab[];
  readonly steps: readonly Step[];
  readonly existing: readonly ExistingThing[];
  readonly grade: { readonly atHouse: Inches; readonly fall: number };
}
