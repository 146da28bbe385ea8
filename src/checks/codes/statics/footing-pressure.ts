/**
 * Soil pressure under a rigid footing that carries its load off centre (statics): linear pressure, no tension between
 * footing and soil. Inside the kern the whole base bears; beyond it a part lifts.
 */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';
import type { Point } from './polygon-integrals.js';
import { areaIntegrals, clipPositive } from './polygon-integrals.js';

export interface FootingPressure {
  /** Greatest and least pressure, psf. */
  readonly qMax: number;
  readonly qMin: number;
  /** Share of the base in contact, 1 inside the kern. */
  readonly contact: number;
}

/** Share of a side under which an eccentricity counts as none: it moves the pressure by less than the last printed digit. */
const ONE_WAY = 1e-6;

/** Resultant so near the edge that the pressure has no sensible value: the footing counts as overturned. */
const EDGE_MARGIN = 1e-6;

/**
 * Rectangular footing `B` (along x) by `L` (along y) inches, vertical load `P` pounds at (`ex`, `ey`) inches from the
 * centre. `undefined` where the load does not press (P ≤ 0) or falls outside the base: the footing would overturn.
 * Statics.
 */
export function rectangularFootingPressure(
  B: number,
  L: number,
  P: number,
  ex: number,
  ey: number,
  rec?: Recorder,
): FootingPressure | undefined {
  const x = Math.abs(ex);
  const y = Math.abs(ey);
  if (P <= 0 || x >= B / 2 - EDGE_MARGIN * B || y >= L / 2 - EDGE_MARGIN * L) return undefined;
  const mean = (P / (B * L)) * 144;
  const kern = (6 * x) / B + (6 * y) / L;
  let result: FootingPressure;
  let formula: string;
  if (kern <= 1) {
    result = { qMax: mean * (1 + kern), qMin: mean * (1 - kern), contact: 1 };
    formula = 'P/(B·L) · (1 + 6·ex/B + 6·ey/L)';
  } else if (x < ONE_WAY * B || y < ONE_WAY * L) {
    // One-way beyond the kern: a triangle of pressure three times the edge distance long.
    const alongX = x / B >= y / L;
    const side = alongX ? B : L;
    const length = 3 * (side / 2 - (alongX ? x : y));
    result = { qMax: (2 * mean * side) / length, qMin: 0, contact: length / side };
    formula = '2·P/(3·b·(side/2 − e))';
  } else {
    const base = [
      { x: -B / 2, y: -L / 2 },
      { x: B / 2, y: -L / 2 },
      { x: B / 2, y: L / 2 },
      { x: -B / 2, y: L / 2 },
    ];
    const plane = noTensionPlane(base, P, x, y);
    result = {
      qMax: (plane.a + (plane.b * B) / 2 + (plane.c * L) / 2) * 144,
      qMin: 0,
      contact: plane.contact / (B * L),
    };
    formula = 'no-tension plane in equilibrium with P, P·ex, P·ey';
    if (rec) recordCorner(B, L, plane, rec);
  }
  rec?.step({
    symbol: 'qmax',
    meaning:
      kern <= 1 ? 'greatest soil pressure, load inside the kern' : 'greatest soil pressure, part of the base lifts',
    formula,
    substituted: `P = ${say(P)} lb, B = ${say(B)} in, L = ${say(L)} in, ex = ${say(x)} in, ey = ${say(y)} in`,
    value: result.qMax,
    unit: 'psf',
    clause: 'statics',
  });
  return result;
}

/** Digits enough for the differences below. */
const fine = (x: number): string => String(Number(x.toPrecision(8)));

/** Steps that let a reader put the found plane to the test: it must give back P, ex and ey. */
function recordCorner(B: number, L: number, { a, b, c }: Plane, rec: Recorder): void {
  const q = a + (b * B) / 2 + (c * L) / 2;
  // Zero line of the pressure, measured from the most loaded corner along both sides.
  const x0 = q / b;
  const y0 = q / c;
  const u = Math.max(0, 1 - B / x0);
  const w = Math.max(0, 1 - L / y0);
  const solid = (q * x0 * y0) / 6;
  const P = solid * (1 - u ** 3 - w ** 3);
  const mx = solid * (x0 / 4 - u ** 3 * (B + (x0 - B) / 4) - (w ** 3 * (x0 * w)) / 4);
  const my = solid * (y0 / 4 - w ** 3 * (L + (y0 - L) / 4) - (u ** 3 * (y0 * u)) / 4);
  const meaning = 'from the most loaded corner to where the pressure ends';
  rec.step({
    symbol: 'x0',
    meaning: `${meaning}, found by trial`,
    formula: 'P, ex and ey below agree',
    substituted: `along x, u = max(0, 1 − B/x0) = ${fine(u)}`,
    value: x0,
    unit: 'in',
    clause: 'statics',
  });
  rec.step({
    symbol: 'y0',
    meaning: `${meaning}, found by trial`,
    formula: 'P, ex and ey below agree',
    substituted: `along y, w = max(0, 1 − L/y0) = ${fine(w)}`,
    value: y0,
    unit: 'in',
    clause: 'statics',
  });
  rec.step({
    symbol: 'P',
    meaning: 'volume of the pressure pyramid less the parts beyond the base: must be the load',
    formula: 'q·x0·y0/6 · (1 − u³ − w³), q = qmax/144',
    substituted: `${fine(q)} · ${fine(x0)} · ${fine(y0)}/6 · (1 − ${fine(u)}³ − ${fine(w)}³)`,
    value: P,
    unit: 'lb',
    clause: 'statics',
  });
  rec.step({
    symbol: 'ex',
    meaning: 'its centroid from the middle of the base: must be the eccentricity',
    formula: 'B/2 − (q·x0·y0/6)·(x0/4 − u³·(B + (x0 − B)/4) − w⁴·x0/4)/P',
    substituted: `${say(B)}/2 − ${fine(solid)} · (${fine(x0)}/4 − ${fine(u)}³ · (${say(B)} + (${fine(x0)} − ${say(B)})/4) − ${fine(w)}⁴ · ${fine(x0)}/4)/${fine(P)}`,
    value: B / 2 - mx / P,
    unit: 'in',
    clause: 'statics',
  });
  rec.step({
    symbol: 'ey',
    meaning: 'the same along y',
    formula: 'L/2 − (q·x0·y0/6)·(y0/4 − w³·(L + (y0 − L)/4) − u⁴·y0/4)/P',
    substituted: `${say(L)}/2 − ${fine(solid)} · (${fine(y0)}/4 − ${fine(w)}³ · (${say(L)} + (${fine(y0)} − ${say(L)})/4) − ${fine(u)}⁴ · ${fine(y0)}/4)/${fine(P)}`,
    value: L / 2 - my / P,
    unit: 'in',
    clause: 'statics',
  });
}

/**
 * Round base with a part lifted: the pressure is a wedge on the segment of half angle α. Volume and first moment of that
 * wedge for radius 1 and edge pressure 1.
 */
function segmentWedge(angle: number): { readonly volume: number; readonly moment: number } {
  const s = Math.sin(angle);
  const c = Math.cos(angle);
  const third = (2 / 3) * s ** 3;
  return {
    volume: (third - c * (angle - s * c)) / (1 - c),
    moment: ((angle - s * c + 2 * s ** 3 * c) / 4 - c * third) / (1 - c),
  };
}

/** Half angle of the segment in contact for a load at `share` of the radius beyond the kern. */
function contactAngle(share: number): number {
  let low = 1e-4;
  let high = Math.PI;
  for (let i = 0; i < 60; i += 1) {
    const mid = (low + high) / 2;
    const w = segmentWedge(mid);
    if (w.moment / w.volume > share) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

/** Round footing of diameter `D` inches, load `P` pounds `e` inches off centre; `undefined` as above. Statics. */
export function roundFootingPressure(D: number, P: number, e: number, rec?: Recorder): FootingPressure | undefined {
  const off = Math.abs(e);
  if (P <= 0 || off >= D / 2 - EDGE_MARGIN * D) return undefined;
  const area = (Math.PI / 4) * D * D;
  const kern = (8 * off) / D;
  const mean = (P / area) * 144;
  const R = D / 2;
  if (kern <= 1) {
    const qMax = mean * (1 + kern);
    rec?.step({
      symbol: 'qmax',
      meaning: 'greatest soil pressure, load inside the kern',
      formula: 'P/A · (1 + 8·e/D)',
      substituted: `P = ${say(P)} lb, D = ${say(D)} in, e = ${say(off)} in`,
      value: qMax,
      unit: 'psf',
      clause: 'statics',
    });
    return { qMax, qMin: mean * (1 - kern), contact: 1 };
  }
  const angle = contactAngle(off / R);
  const { volume, moment } = segmentWedge(angle);
  const qMax = (P / (volume * R * R)) * 144;
  rec?.step({
    symbol: 'α',
    meaning: 'half angle of the segment in contact, found by trial (radians)',
    formula:
      'M(α)/V(α) = e/R, with V = [(2/3)·sin³α − cosα·(α − sinα·cosα)]/(1 − cosα), M = [(α − sinα·cosα + 2·sin³α·cosα)/4 − (2/3)·cosα·sin³α]/(1 − cosα)',
    substituted: `M = ${say(moment)}, V = ${say(volume)}, M/V = ${say(moment / volume)}, e/R = ${say(off)}/${say(R)}`,
    value: angle,
    unit: '',
    clause: 'statics',
  });
  rec?.step({
    symbol: 'qmax',
    meaning: 'greatest soil pressure, part of the base lifts',
    formula: 'P/(V·R²) · 144',
    substituted: `${say(P)}/(${say(volume)} · ${say(R)}²) · 144`,
    value: qMax,
    unit: 'psf',
    clause: 'statics',
  });
  return { qMax, qMin: 0, contact: (angle - Math.sin(angle) * Math.cos(angle)) / Math.PI };
}

interface Plane {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Area in contact, in². */
  readonly contact: number;
}

/**
 * Pressure plane q = a + b·x + c·y (psi) whose positive part balances P at (ex, ey). It minimises the convex energy
 * ½∫q₊² − P·q(ex, ey), so damped Newton steps from the full-contact plane always arrive. The load lies inside the base.
 */
function noTensionPlane(base: readonly Point[], P: number, ex: number, ey: number): Plane {
  const energy = (a: number, b: number, c: number): number => {
    const m = areaIntegrals(clipPositive(base, a, b, c));
    const square = a * a * m.A + b * b * m.Sxx + c * c * m.Syy + 2 * (a * b * m.Sx + a * c * m.Sy + b * c * m.Sxy);
    return square / 2 - P * (a + b * ex + c * ey);
  };
  const whole = areaIntegrals(base);
  let a = P / whole.A;
  let b = (P * ex) / whole.Sxx;
  let c = (P * ey) / whole.Syy;
  let now = energy(a, b, c);
  let contact = whole.A;
  for (let step = 0; step < 100; step += 1) {
    const m = areaIntegrals(clipPositive(base, a, b, c));
    contact = m.A;
    const ra = P - (a * m.A + b * m.Sx + c * m.Sy);
    const rb = P * ex - (a * m.Sx + b * m.Sxx + c * m.Sxy);
    const rc = P * ey - (a * m.Sy + b * m.Sxy + c * m.Syy);
    const [da, db, dc] = solveSymmetric3(m.A, m.Sx, m.Sy, m.Sxx, m.Sxy, m.Syy, ra, rb, rc);
    let t = 1;
    let next = energy(a + da, b + db, c + dc);
    while (next > now && t > 1e-6) {
      t /= 2;
      next = energy(a + t * da, b + t * db, c + t * dc);
    }
    a += t * da;
    b += t * db;
    c += t * dc;
    const done = Math.abs(now - next) <= 1e-14 * Math.abs(now);
    now = next;
    if (done) break;
  }
  return { a, b, c, contact };
}

/** Solves [[p,q,r],[q,s,t],[r,t,u]]·x = (x1,x2,x3) by Cramer's rule. */
function solveSymmetric3(
  p: number,
  q: number,
  r: number,
  s: number,
  t: number,
  u: number,
  x1: number,
  x2: number,
  x3: number,
): readonly [number, number, number] {
  const c11 = s * u - t * t;
  const c12 = r * t - q * u;
  const c13 = q * t - r * s;
  const det = p * c11 + q * c12 + r * c13;
  const c22 = p * u - r * r;
  const c23 = q * r - p * t;
  const c33 = p * s - q * q;
  return [
    (c11 * x1 + c12 * x2 + c13 * x3) / det,
    (c12 * x1 + c22 * x2 + c23 * x3) / det,
    (c13 * x1 + c23 * x2 + c33 * x3) / det,
  ];
}
