/**
 * IBC 2018 1807.3.2 under shear and moment together: Eq. 18-1 with P·h written as the moment at grade Mg, so that it holds
 * for a post fixed above as well, and Eq. 18-3. Lengths in inches outside, feet inside the equations; forces in pounds.
 */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import { LATERAL_DEPTH_CAP, PRESSURE_DEPTH_CAP } from './ch18-soil.js';

export interface PostAtGrade {
  /** Horizontal force at the ground surface, lb, and moment there, lb·in; sizes, never negative. */
  readonly P: number;
  readonly Mg: number;
  /** Width that presses on the soil, in: diameter of a round post or of cast concrete, diagonal of a square post. */
  readonly b: number;
  /** Allowable lateral bearing per foot of depth, psf/ft, any factor of 1806.3.4 included. */
  readonly lateral: number;
}

/** S1 in psf at a third of trial depth `d` (in); the depth counts to 12 ft, the pressure to 15 times its value. */
const S1At = (d: number, lateral: number): number =>
  lateral * Math.min(Math.min(d, PRESSURE_DEPTH_CAP) / 36, LATERAL_DEPTH_CAP);

export interface DepthTrial {
  readonly S1: number;
  readonly A: number;
  /** Depth that Eq. 18-1 asks for, ft. */
  readonly needs: number;
}

/** Eq. 18-1 at a trial depth `d` inches: one row of its iteration. */
export function depthTrial(d: number, { P, Mg, b, lateral }: PostAtGrade): DepthTrial {
  const S1 = S1At(d, lateral);
  const A = (2.34 * P) / (S1 * (b / 12));
  // A·h = 2.34·(P·h)/(S1·b): the root stays finite where only a moment acts.
  const Ah = (2.34 * (Mg / 12)) / (S1 * (b / 12));
  return { S1, A, needs: 0.5 * (A + Math.sqrt(A * A + 4.36 * Ah)) };
}

/** Trials printed before the depth itself. */
const SHOWN = 3;

function record(symbol: string, meaning: string, d: number, post: PostAtGrade, rec: Recorder): void {
  const t = depthTrial(d, post);
  const ft = post.b / 12;
  rec.step({
    symbol: 'S1',
    meaning: `allowable lateral bearing at a third of ${say(d / 12)} ft`,
    formula: 'lateral value · min(d, 12 ft)/3',
    substituted: `${say(post.lateral)} · ${say(Math.min(d, PRESSURE_DEPTH_CAP) / 12)}/3`,
    value: t.S1,
    unit: 'psf',
    clause: 'IBC 2018 1807.3.2.1',
  });
  rec.step({
    symbol: 'A',
    meaning: 'term A',
    formula: '2.34·P/(S1·b)',
    substituted: `2.34 · ${say(post.P)}/(${say(t.S1)} · ${say(ft)})`,
    value: t.A,
    unit: 'ft',
    clause: 'IBC 2018 Eq. 18-1',
  });
  rec.step({
    symbol,
    meaning,
    formula: '0.5·(A + √(A² + 4.36·2.34·Mg/(S1·b))), which is Eq. 18-1 with P·h = Mg',
    substituted: `0.5 · (${say(t.A)} + √(${say(t.A)}² + 4.36 · 2.34 · ${say(post.Mg / 12)}/(${say(t.S1)} · ${say(ft)})))`,
    value: t.needs,
    unit: 'ft',
    clause: 'IBC 2018 Eq. 18-1',
  });
}

/**
 * Embedment depth in inches of a post free to move at grade, the fixed point of Eq. 18-1. `start` (in) is the first trial
 * depth of the printed iteration; it does not change the result.
 */
export function freePostDepth(post: PostAtGrade, start: number, rec?: Recorder): number {
  if (post.P <= 0 && post.Mg <= 0) return 0;
  const needs = (d: number): number => 12 * depthTrial(d, post).needs;
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
  if (rec) {
    let d = start;
    for (let i = 1; i <= SHOWN; i += 1) {
      const asked = needs(d);
      if (Math.abs(asked - d) <= 0.002 * d) break;
      record('d', `trial ${i}: depth asked for when ${say(d / 12)} ft is assumed`, d, post, rec);
      d = (d + asked) / 2;
    }
    record('d', 'embedment depth, post free at grade: the depth that asks for itself', high, post, rec);
  }
  return high;
}

/** Embedment depth in inches of a post held at grade by a rigid floor or pavement, from the moment there (Eq. 18-3). */
export function heldPostDepth({ Mg, b, lateral }: PostAtGrade, rec?: Recorder): number {
  if (Mg <= 0) return 0;
  const feet = (4.25 * (Mg / 12)) / (b / 12);
  const cap = PRESSURE_DEPTH_CAP / 12;
  const cubic = Math.cbrt(feet / lateral);
  const d = cubic <= cap ? cubic : Math.sqrt(feet / (lateral * cap));
  const S3 = lateral * Math.min(d, cap);
  rec?.step({
    symbol: 'S3',
    meaning: 'allowable lateral bearing at the depth of embedment',
    formula: 'lateral value · min(d, 12 ft)',
    substituted: `${say(lateral)} · ${say(Math.min(d, cap))}`,
    value: S3,
    unit: 'psf',
    clause: 'IBC 2018 1807.3.2.2',
  });
  rec?.step({
    symbol: 'd',
    meaning: 'embedment depth, post held at grade by the slab',
    formula: '√(4.25·Mg/(S3·b))',
    substituted: `√(4.25 · ${say(Mg / 12)}/(${say(S3)} · ${say(b / 12)}))`,
    value: d,
    unit: 'ft',
    clause: 'IBC 2018 Eq. 18-3',
  });
  return d * 12;
}

/** Clearance of a concrete-filled hole round its post, in: the hole less the post's diagonal (1807.3.3, recalled). */
export const castRoom = (hole: number, diagonal: number): number => hole - diagonal;

/**
 * Force in pounds that allowable lateral bearing gives on an upright face `width` inches wide from `top` to `bottom` inches
 * below grade: the pressure grows evenly with depth (1806.3.3).
 */
export function facePressure(perFoot: number, width: number, top: number, bottom: number, rec?: Recorder): number {
  const a = Math.max(top, 0) / 12;
  const z = Math.max(bottom, 0) / 12;
  const value = (perFoot * (width / 12) * (z * z - a * a)) / 2;
  rec?.step({
    symbol: 'Rp',
    meaning: `lateral bearing on the face ${say(a)} to ${say(z)} ft below grade`,
    formula: 'lateral value · width · (z2² − z1²)/2',
    substituted: `${say(perFoot)} · ${say(width / 12)} · (${say(z)}² − ${say(a)}²)/2`,
    value,
    unit: 'lb',
    clause: 'IBC 2018 1806.3.1, 1806.3.3',
  });
  return value;
}
