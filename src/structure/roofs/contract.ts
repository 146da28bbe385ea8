import type { Vec2 } from '../../base/vec.js';
import type { RoofAxes } from '../axes.js';
import type { Section, Surface } from '../model.js';

/** What carries the framing, seen across the ridge. */
export interface Bearing {
  readonly part: string;
  readonly kind: 'beam' | 'ledger';
  /** Centre of a beam; framing face of a ledger. Roof coordinate `a`. */
  readonly at: number;
  readonly section: Section;
  /** Part of its top the framing lies on: the whole width, or half of a beam that two roofs share from its two sides. */
  readonly seat: { readonly at: number; readonly width: number };
}

/** One slope, from its eave up to ridge or high edge, in roof coordinate `a`. */
export interface Leg {
  /** Id of the surface it becomes. */
  readonly surface: string;
  readonly eave: number;
  readonly top: number;
}

/**
 * A roof's outline before framing: where it bears, how its slopes run, where its frames stand. Bearings are in order of
 * growing `a`; a one-slope roof rises with `a`, so its low bearing comes first.
 */
export interface Profile {
  readonly axes: RoofAxes;
  readonly ridgeAxis: 'x' | 'y';
  readonly bearings: readonly [Bearing, Bearing];
  readonly legs: readonly Leg[];
  /** A beam under the ridge: the half of it that each leg bears on, in the order of the legs. */
  readonly ridge?: readonly [Bearing, Bearing];
  /** Frame centres along the ridge, and the edges of the roof (rakes). */
  readonly stations: readonly number[];
  readonly extent: readonly [number, number];
  readonly shape: Surface['shape'];
  /** Set for a roof of four slopes. */
  readonly hip?: HipPlan;
}

/** One eave of a hip roof with the slope behind it. */
export interface HipFace {
  readonly surface: string;
  /** Beam under it. */
  readonly beam: string;
  /** Corner of the eaves it starts at, unit vector along it, and unit vector up the slope, on plan. */
  readonly origin: Vec2;
  readonly u: Vec2;
  readonly inward: Vec2;
  readonly length: number;
}

export interface HipPlan {
  /** Counter-clockwise seen from above. */
  readonly faces: readonly HipFace[];
  /** Across the ridge from eave to eave. */
  readonly width: number;
  /** Width of the beams. */
  readonly seat: number;
  readonly ridge: { readonly mark: string; readonly width: number };
}
