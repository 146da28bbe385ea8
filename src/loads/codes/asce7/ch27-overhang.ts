/**
 * Roof overhangs of the main wind-force system (ASCE 7-16 and 7-22 27.3.3): the windward wall's positive pressure, Cp 0.8,
 * acts on the underside together with the roof pressure above. The roof value is the largest suction the roof figure has
 * for the building's h/L, so that it holds in any zone, at any slope and for wind either way.
 */
import type { Recorder } from '../../../base/trace.js';
import type { Asce7Edition, ClauseRecord } from '../support.js';
import { asce, interpolate, MEMORY_NOTE, num } from '../support.js';
import { pressureKd } from './ch26-wind.js';

/** Cp on the underside of a windward overhang (27.3.3). */
export const OVERHANG_UNDER_CP = 0.8;

/** Largest roof suction of Fig. 27.3-1 near the edge: -0.9 for h/L up to 0.5, -1.3 from 1.0 on, linear between. */
export const edgeRoofCp = (hL: number): number => interpolate([0.5, 1], [-0.9, -1.3], hL);

/**
 * Net uplift of an overhang in psf, negative: `q·G·(Cp above − 0.8)`. `hL` is the building's mean roof height over its least
 * plan dimension.
 */
export function overhangPressure(
  qh: number,
  G: number,
  hL: number,
  Kd: number,
  edition: Asce7Edition,
  rec?: Recorder,
): number {
  const Cp = edgeRoofCp(hL);
  const p = qh * pressureKd(Kd, edition) * G * (Cp - OVERHANG_UNDER_CP);
  const kd = edition === '7-22';
  rec?.step({
    symbol: 'Cp',
    meaning: 'largest roof suction near an edge, by h/L of the house',
    formula: '−0.9 to h/L = 0.5, −1.3 from 1.0, linear between',
    substituted: `h/L = ${num(hL)}`,
    value: Cp,
    unit: '',
    clause: asce(edition, 'Fig. 27.3-1'),
    note: MEMORY_NOTE,
  });
  rec?.step({
    symbol: 'p',
    meaning: 'net wind pressure as on a roof overhang, minus is up',
    formula: kd ? 'qh · Kd · G · (Cp − 0.8)' : 'qh · G · (Cp − 0.8)',
    substituted: `${num(qh)}${kd ? ` · ${num(Kd)}` : ''} · ${num(G)} · (${num(Cp)} − 0.8)`,
    value: p,
    unit: 'psf',
    clause: asce(edition, '27.3.3'),
    note: MEMORY_NOTE,
  });
  return p;
}

export const WIND_OVERHANG_RECORDS: readonly ClauseRecord[] = [
  {
    id: 'wind.overhang',
    clause: 'ASCE 7-16 and 7-22 27.3.3, Fig. 27.3-1',
    title: 'Roof overhangs',
    provenance: 'memory',
    note: 'Cp 0.8 under the overhang and the roof suctions −0.9 and −1.3 recalled',
  },
];
