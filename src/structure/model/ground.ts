/** What stands in and on the ground: footings, slabs, grade. */
import type { Vec2 } from '../../base/vec.js';
import type { FootingKind, WorkState } from '../../project/model.js';

export interface Footing {
  readonly id: string;
  readonly mark: string;
  readonly kind: FootingKind;
  readonly at: Vec2;
  /** Top of concrete (pier top, or pad top), bottom of concrete, adjacent grade or slab surface: z, inches. */
  readonly top: number;
  readonly bottom: number;
  readonly surface: number;
  /** Bearing area on soil, square inches, and its plan size (diameter or side). */
  readonly bearingArea: number;
  readonly size: number;
  readonly round: boolean;
  readonly pierDiameter: number;
  readonly padThickness: number;
  /** Concrete volume in cubic inches; soil resting on the pad, cubic inches. */
  readonly concrete: number;
  readonly soilOver: number;
  /** A post that runs down into the hole: its foot, the width that presses sideways on the soil, what surrounds it. */
  readonly embedded?: EmbeddedFoot | undefined;
  /** Slab that carries the post without a footing, and its thickness. */
  readonly onSlab?: { readonly slab: string; readonly thickness: number } | undefined;
  /** The owner's statement that a rigid slab holds it at the surface. */
  readonly slabHolds?: boolean | undefined;
  readonly fc: number;
  readonly steel: string;
  readonly choice: string;
  readonly path: string;
}

export interface EmbeddedFoot {
  /** z of the post's foot, inches. */
  readonly foot: number;
  /** Diameter of cast concrete, or the diagonal of the post in other backfill, inches. */
  readonly width: number;
  /** Diagonal of the post, inches. */
  readonly diagonal: number;
  /** Concrete is cast round the post, so that it hangs on it; else sand or soil is tamped in. */
  readonly cast: boolean;
  readonly backfill: 'concrete' | 'sand' | 'soil';
}

/** z = z0 + gx·x + gy·y */
export interface Incline {
  readonly z0: number;
  readonly gx: number;
  readonly gy: number;
}

export interface SlabPlaced {
  readonly mark: string;
  readonly state: WorkState;
  readonly outline: readonly Vec2[];
  readonly top: Incline;
  readonly thickness: number;
  readonly path: string;
}
