/** Roof surfaces and the roofs they make. */
import type { Vec2, Vec3 } from '../../base/vec.js';

/**
 * A roof plane. Local frame: `origin`, unit `u` horizontal along the eave, unit `v` up the slope, `n = u × v` outward (up).
 * `outline` is in (u, v) inches, counter-clockwise. Strips of framing members tile it exactly.
 */
export interface Surface {
  readonly id: string;
  readonly mark: string;
  readonly roof: string;
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly n: Vec3;
  readonly outline: readonly Vec2[];
  /** Radians from horizontal. */
  readonly slope: number;
  /** Horizontal unit vector pointing down the slope. */
  readonly downhill: Vec2;
  /** Layers from top to bottom; psf on the slope. */
  readonly layers: readonly {
    readonly name: string;
    readonly psf: number;
    readonly source: string;
    /** Hangs under the framing: a ceiling, which a truss carries on its bottom chord. */
    readonly under?: true;
  }[];
  readonly slippery: boolean;
  readonly sheathed: boolean;
  /** Thickness of sheathing and covering above the framing's top edge, square to the slope. */
  readonly thickness: number;
  /** Aerodynamic shape of the whole roof it belongs to (ASCE 7 Figs. 27.3-4 to 27.3-7; none of them is of a hip). */
  readonly shape: 'monoslope' | 'pitched' | 'troughed' | 'hipped';
  /** Edge weights along v = const edges, lb/in: fascia, gutter. */
  readonly edges: readonly { readonly name: string; readonly v: number; readonly weight: number }[];
  /** Its edge at this u is none: the roof goes on over the house (tie-in). */
  readonly onto?: number;
  readonly path: string;
}

export interface RoofPlaced {
  readonly mark: string;
  readonly surfaces: readonly string[];
  /** Mean roof height above the adjacent grade, inches (ASCE 7 26.2). */
  readonly meanHeight: number;
  /** Plan extents including overhangs. */
  readonly min: Vec2;
  readonly max: Vec2;
  /** Ridge direction, or the direction across the fall for a shed. */
  readonly ridgeAxis: 'x' | 'y';
  readonly slope: number;
  readonly highestPoint: number;
  readonly lowestEave: number;
  /** Part of it touching the house wall line, so that wind cannot pass under that side freely. */
  readonly attached: boolean;
  /** Other roofs of the cover whose water or slopes meet its own; absent where it stands alone. */
  readonly neighbours?: readonly RoofNeighbour[];
  readonly path: string;
}

/** `drains-onto`: its eave sheds on the other; `drains-against`: into the other's side, which stands higher; `valley`, `ridge`: two slopes meet low side or high side on. */
export interface RoofNeighbour {
  readonly roof: string;
  readonly how: 'drains-onto' | 'drains-against' | 'valley' | 'ridge';
}
