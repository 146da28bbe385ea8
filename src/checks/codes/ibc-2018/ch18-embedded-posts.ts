/**
 * IBC 2018 1807.3: posts and poles that resist sideways load by embedment. Lengths in inches outside, feet inside the
 * equations. The method is not for structures whose deflection would harm brittle finishes (1807.3.1).
 */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import { LATERAL_DEPTH_CAP } from './ch18-soil.js';

/** Embedment counted for lateral pressure, at most 12 ft. Of its two readings the smaller pressure is taken: d/3 ≤ 4 ft. */
export const PRESSURE_DEPTH_CAP = 144;

/** Round post: its diameter; square post or footing: its diagonal. Inches. IBC 2018 1807.3.2.1. */
export const effectiveWidthSquare = (side: number): number => side * Math.SQRT2;

const NONCONSTRAINED = 'IBC 2018 Eq. 18-1';
const CONSTRAINED = 'IBC 2018 Eq. 18-2';

/** Term A of Eq. 18-1 in feet: 2.34·P/(S1·b); `P` lb, `S1` psf, `b` in. */
export const embedmentA = (P: number, S1: number, b: number): number => (2.34 * P) / (S1 * (b / 12));

/** Depth in inches that Eq. 18-1 asks for at a given `S1` (psf). */
export function nonconstrainedDepthAt(P: number, h: number, b: number, S1: number): number {
  if (P <= 0) return 0;
  const A = embedmentA(P, S1, b);
  return 6 * A * (1 + Math.sqrt(1 + (4.36 * (h / 12)) / A));
}

/** S1 in psf for trial depth `d` (in): lateral value times a third of the depth, with both caps. */
const S1At = (d: number, lateral: number): number =>
  lateral * Math.min(Math.min(d, PRESSURE_DEPTH_CAP) / 36, LATERAL_DEPTH_CAP);

/**
 * Embedment depth in inches of a post free to move at grade. `P` horizontal load (lb) at `h` above grade (in), `b` width
 * (in), `lateral` allowable lateral bearing per foot of depth (psf/ft, any pole factor included). S1 is at d/3, so the
 * depth is the fixed point of Eq. 18-1: the right side falls with d, hence exactly one root.
 */
export function nonconstrainedEmbedment(P: number, h: number, b: number, lateral: number, rec?: Recorder): number {
  if (P <= 0) return 0;
  const needs = (d: number): number => nonconstrainedDepthAt(P, h, b, S1At(d, lateral));
  let low = 0;
  let high = 12;
  while (needs(high) > high) {
    low = high;
    high *= 2;
  }
  while (high - low > 1e-7 * high) {
    const mid = (low + high) / 2;
    if (needs(mid) > mid) low = mid;
    else high = mid;
  }
  const d = high;
  if (rec) {
    const S1 = S1At(d, lateral);
    const A = embedmentA(P, S1, b);
    rec.step({
      symbol: 'S1',
      meaning: 'allowable lateral bearing at a third of the depth',
      formula: 'lateral value · d/3',
      substituted: `${say(lateral)} · ${say(d / 12)}/3`,
      value: S1,
      unit: 'psf',
      clause: 'IBC 2018 1807.3.2.1',
    });
    rec.step({
      symbol: 'A',
      meaning: 'term A',
      formula: '2.34·P/(S1·b)',
      substituted: `2.34 · ${say(P)}/(${say(S1)} · ${say(b / 12)})`,
      value: A,
      unit: 'ft',
      clause: NONCONSTRAINED,
    });
    rec.step({
      symbol: 'd',
      meaning: 'embedment depth, post free at grade',
      formula: '0.5·A·(1 + √(1 + 4.36·h/A))',
      substituted: `0.5 · ${say(A)} · (1 + √(1 + 4.36 · ${say(h / 12)}/${say(A)}))`,
      value: d / 12,
      unit: 'ft',
      clause: NONCONSTRAINED,
    });
  }
  return d;
}

/**
 * Embedment depth in inches of a post held at grade by a rigid floor or pavement: d² = 4.25·P·h/(S3·b), S3 at depth d, no
 * deeper than 12 ft. Arguments as above. Soil or loose pavers at grade do not count as restraint.
 */
export function constrainedEmbedment(P: number, h: number, b: number, lateral: number, rec?: Recorder): number {
  if (P <= 0 || h <= 0) return 0;
  const feet = (4.25 * P * (h / 12)) / (b / 12);
  const cap = PRESSURE_DEPTH_CAP / 12;
  const cubic = Math.cbrt(feet / lateral);
  const d = cubic <= cap ? cubic : Math.sqrt(feet / (lateral * cap));
  const S3 = lateral * Math.min(d, cap);
  rec?.step({
    symbol: 'S3',
    meaning: 'allowable lateral bearing at the depth of embedment',
    formula: 'lateral value · d, d ≤ 12 ft',
    substituted: `${say(lateral)} · ${say(Math.min(d, cap))}`,
    value: S3,
    unit: 'psf',
    clause: 'IBC 2018 1807.3.2.2',
  });
  rec?.step({
    symbol: 'd',
    meaning: 'embedment depth, post restrained at grade',
    formula: '√(4.25·P·h/(S3·b))',
    substituted: `√(4.25 · ${say(P)} · ${say(h / 12)}/(${say(S3)} · ${say(b / 12)}))`,
    value: d,
    unit: 'ft',
    clause: CONSTRAINED,
  });
  return d * 12;
}

/** Concrete backfill: the hole is at least this much larger than the post, in, and of at least this strength, psi (1807.3.3). */
export const BACKFILL_OVERSIZE = 4;
export const BACKFILL_STRENGTH = 2000;
/** Clean sand backfill is tamped in layers of at most, in (1807.3.3). */
export const BACKFILL_SAND_LAYER = 8;
