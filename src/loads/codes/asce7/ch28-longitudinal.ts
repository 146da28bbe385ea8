/**
 * Horizontal wind along the ridge of an open building with transverse frames and a pitched roof (ASCE 7-16 28.3.5, 7-22
 * 28.3.7). It gives the sway force along the ridge, which the free-roof CN do not.
 */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord, OutOfScope } from '../support.js';
import { asce, num, outOfScope, tableDegrees } from '../support.js';
import { pressureKd } from './ch26-wind.js';

const section = (edition: Asce7Edition): string => asce(edition, edition === '7-16' ? '28.3.5' : '28.3.7');

/** External coefficients of Fig. 28.3-1, load case B: windward wall 5 and leeward wall 6 with their edge zones. */
export const GCPF = { windward: 0.4, windwardEdge: 0.61, leeward: -0.29, leewardEdge: -0.43 } as const;

/** Width of the edge zone `a`: the lesser of 0.1 of the least plan dimension and 0.4h, not under 0.04 of it or 3 ft. Inches. */
export function edgeZoneWidth(leastDimension: number, h: number): number {
  return Math.max(Math.min(0.1 * leastDimension, 0.4 * h), 0.04 * leastDimension, 36);
}

/**
 * Area of one edge strip of a gable end in in²: `a` wide, from the ground to the rake. `theta` in radians.
 * ASCE 7 Fig. 28.3-1.
 */
export function gableEdgeArea(a: number, eaveHeight: number, theta: number): number {
  return a * eaveHeight + 0.5 * a * a * Math.tan(theta);
}

/** Coefficient of a whole end wall: `inner` and `edge` weighted by area. Same area unit. ASCE 7-16 28.3.5, 7-22 28.3.7. */
export function areaWeightedGCpf(inner: number, edge: number, edgeArea: number, AE: number): number {
  return inner + ((edge - inner) * Math.min(edgeArea, AE)) / AE;
}

/** Frame width factor KB, `B` the frame's width normal to the ridge in inches. ASCE 7-16 28.3.5, 7-22 28.3.7. */
export function frameWidthKB(B: number): number {
  const feet = B / 12;
  return feet < 100 ? 1.8 - 0.01 * feet : 0.8;
}

/** Shielding factor KS for `n` frames (taken as at least 3) and solidity `phi` = AS/AE. ASCE 7-16 28.3.5, 7-22 28.3.7. */
export function shieldingKS(n: number, phi: number): number {
  return 0.6 + 0.073 * (Math.max(n, 3) - 3) + 1.25 * phi ** 1.8;
}

export interface LongitudinalInput {
  /** Velocity pressure at mean roof height with the chapter 28 Kz, psf. */
  readonly qh: number;
  readonly Kd: number;
  /** Roof slope, radians. */
  readonly theta: number;
  /** Width of the building normal to the ridge and least plan dimension, inches. */
  readonly B: number;
  readonly leastDimension: number;
  /** Mean roof height and eave height, inches. */
  readonly h: number;
  readonly eaveHeight: number;
  /** Number of transverse frames, two post lines counting as two. */
  readonly n: number;
  /** Effective solid area of the end wall and its area as if enclosed, in². */
  readonly AS: number;
  readonly AE: number;
}

export interface LongitudinalWind {
  readonly KB: number;
  readonly KS: number;
  readonly GCpfWindward: number;
  readonly GCpfLeeward: number;
  /** Horizontal pressure on AE, psf. */
  readonly p: number;
  /** Total force along the ridge, pounds. */
  readonly F: number;
}

/** The whole clause in one: KB, KS, weighted coefficients, p and F. ASCE 7-16 28.3.5, 7-22 28.3.7. */
export function longitudinalWind(
  x: LongitudinalInput,
  edition: Asce7Edition,
  rec?: Recorder,
): LongitudinalWind | OutOfScope {
  const deg = tableDegrees(x.theta);
  if (deg > 45) return outOfScope(section(edition), `roof slope ${num(deg)}° is over 45°`);
  const a = edgeZoneWidth(x.leastDimension, x.h);
  const edge = gableEdgeArea(a, x.eaveHeight, x.theta);
  const GCpfWindward = areaWeightedGCpf(GCPF.windward, GCPF.windwardEdge, edge, x.AE);
  const GCpfLeeward = areaWeightedGCpf(GCPF.leeward, GCPF.leewardEdge, edge, x.AE);
  const phi = x.AS / x.AE;
  const KB = frameWidthKB(x.B);
  const KS = shieldingKS(x.n, phi);
  const kd = pressureKd(x.Kd, edition);
  const p = x.qh * kd * (GCpfWindward - GCpfLeeward) * KB * KS;
  const F = (p * x.AE) / 144;
  if (rec) {
    const clause = section(edition);
    rec.step({
      symbol: 'a',
      meaning: 'width of the edge zone',
      formula: 'min(0.1 · least dimension, 0.4h) ≥ max(0.04 · least dimension, 3 ft)',
      substituted: `least dimension ${num(x.leastDimension / 12)} ft, h = ${num(x.h / 12)} ft`,
      value: a / 12,
      unit: 'ft',
      clause: asce(edition, 'Fig. 28.3-1'),
    });
    rec.step({
      symbol: 'KB',
      meaning: 'frame width factor',
      formula: '1.8 − 0.01·B, 0.8 from 100 ft',
      substituted: `B = ${num(x.B / 12)} ft`,
      value: KB,
      unit: '',
      clause,
    });
    rec.step({
      symbol: 'KS',
      meaning: 'shielding factor',
      formula: '0.60 + 0.073·(n − 3) + 1.25·φ^1.8, n ≥ 3',
      substituted: `n = ${x.n}, φ = ${num(x.AS / 144)}/${num(x.AE / 144)}`,
      value: KS,
      unit: '',
      clause,
    });
    rec.step({
      symbol: 'p',
      meaning: 'horizontal pressure along the ridge',
      formula: `qh${edition === '7-22' ? ' · Kd' : ''} · [(GCpf)ww − (GCpf)lw] · KB · KS`,
      substituted: `${num(x.qh)}${edition === '7-22' ? ` · ${num(kd)}` : ''} · (${num(GCpfWindward)} − (${num(GCpfLeeward)})) · ${num(KB)} · ${num(KS)}`,
      value: p,
      unit: 'psf',
      clause: asce(edition, edition === '7-16' ? 'Eq. 28.3-3' : '28.3.7'),
    });
    rec.step({
      symbol: 'F',
      meaning: 'total wind force along the ridge',
      formula: 'p · AE',
      substituted: `${num(p)} · ${num(x.AE / 144)}`,
      value: F,
      unit: 'lb',
      clause: asce(edition, edition === '7-16' ? 'Eq. 28.3-4' : '28.3.7'),
    });
  }
  return { KB, KS, GCpfWindward, GCpfLeeward, p, F };
}

export const WIND_28_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'wind.longframe',
    clause: 'ASCE 7-16 28.3.5, 7-22 28.3.7',
    title: 'Wind along the ridge of open frames',
    provenance: 'read',
    note: 'one edge strip of width a, following the gable line, as in the compared worked example',
  },
];
