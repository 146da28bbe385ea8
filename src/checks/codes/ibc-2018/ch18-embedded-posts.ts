/**
 * IBC 2018 1807.3: posts and poles that resist sideways load by embedment. Lengths in inches outside, feet inside the
 * equations. The method is not for structures whose deflection would harm brittle finishes (1807.3.1).
 */
import type { Recorder } from '../../../base/trace.js';
import { freePostDepth, heldPostDepth } from './ch18-embedment.js';

/** Round post: its diameter; square post or footing: its diagonal. Inches. IBC 2018 1807.3.2.1. */
export const effectiveWidthSquare = (side: number): number => side * Math.SQRT2;

/** Term A of Eq. 18-1 in feet: 2.34·P/(S1·b); `P` lb, `S1` psf, `b` in. */
export const embedmentA = (P: number, S1: number, b: number): number => (2.34 * P) / (S1 * (b / 12));

/** Depth in inches that Eq. 18-1 asks for at a given `S1` (psf). */
export function nonconstrainedDepthAt(P: number, h: number, b: number, S1: number): number {
  if (P <= 0) return 0;
  const A = embedmentA(P, S1, b);
  return 6 * A * (1 + Math.sqrt(1 + (4.36 * (h / 12)) / A));
}

/**
 * Embedment depth in inches of a post free to move at grade. `P` horizontal load (lb) at `h` above grade (in), `b` width
 * (in), `lateral` allowable lateral bearing per foot of depth (psf/ft, any pole factor included). S1 is at d/3, so the
 * depth is the fixed point of Eq. 18-1: the right side falls with d, hence exactly one root.
 */
export const nonconstrainedEmbedment = (P: number, h: number, b: number, lateral: number, rec?: Recorder): number =>
  P <= 0 ? 0 : freePostDepth({ P, Mg: P * h, b, lateral }, 36, rec);

/**
 * Embedment depth in inches of a post held at grade by a rigid floor or pavement: Eq. 18-2, which is Eq. 18-3 with the
 * moment at grade P·h. Arguments as above. Soil or loose pavers at grade do not count as restraint.
 */
export const constrainedEmbedment = (P: number, h: number, b: number, lateral: number, rec?: Recorder): number =>
  P <= 0 || h <= 0 ? 0 : heldPostDepth({ P, Mg: P * h, b, lateral }, rec);

/** Concrete backfill: the hole is at least this much larger than the post, in, and of at least this strength, psi (1807.3.3). */
export const BACKFILL_OVERSIZE = 4;
export const BACKFILL_STRENGTH = 2000;
/** Clean sand backfill is tamped in layers of at most, in (1807.3.3). */
export const BACKFILL_SAND_LAYER = 8;
