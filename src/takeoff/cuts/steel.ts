/**
 * Reinforcement as the footing's steel names it. Bars are cut to the concrete less its cover; what the words do not say in a
 * form known here is left open.
 */
import type { Footing } from '../../structure/model.js';
import type { LooseCut } from './model.js';
import { barSpec } from './stock.js';

/** Cover of bars in concrete cast against earth, and of bars in a pier's form, inches (ACI 318-14 20.6.1.3, recalled). */
export const EARTH_COVER = 3;
export const FORM_COVER = 2;

const EACH_WAY = /\((\d+)\)\s*#(\d+)\s+each way/gi;
const VERTICAL = /\((\d+)\)\s*#(\d+)\s+vertical/gi;
const TIES = /#(\d+)\s+ties\s+at\s+(\d+(?:\.\d+)?)\s*in/gi;

/** Of a tie that overlaps itself, inches. Common practice, no source: the office's detail governs. */
const TIE_LAP = 8;

export interface ReadSteel {
  readonly cuts: readonly LooseCut[];
  /** What is left of the words when all that was understood is taken out; empty when all was. */
  readonly left: string;
}

export function steelOf(f: Footing): ReadSteel {
  const cuts: LooseCut[] = [];
  let n = 0;
  const add = (count: number, bar: number, length: number, what: string): void => {
    for (let i = 0; i < count; i++)
      cuts.push({
        spec: barSpec(bar),
        phase: 'footings',
        cut: { id: `${f.id}.s${String(++n).padStart(2, '0')}`, part: f.id, mark: f.mark, what, length },
      });
  };
  const height = f.top - f.bottom;
  for (const [, count, bar] of f.steel.matchAll(EACH_WAY))
    add(2 * Number(count), Number(bar), f.size - 2 * EARTH_COVER, 'pad, each way');
  for (const [, count, bar] of f.steel.matchAll(VERTICAL))
    add(Number(count), Number(bar), height - EARTH_COVER - FORM_COVER, 'upright in the pier');
  for (const [, bar, spacing] of f.steel.matchAll(TIES)) {
    const ring = Math.PI * (f.pierDiameter - 2 * EARTH_COVER) + TIE_LAP;
    const rings = Math.floor(Math.max(0, height - f.padThickness - FORM_COVER) / Number(spacing)) + 1;
    add(rings, Number(bar), ring, 'tie, bent round');
  }
  const left = f.steel
    .replace(EACH_WAY, '')
    .replace(VERTICAL, '')
    .replace(TIES, '')
    .replace(/\b(in|pad|pier|with|and|none)\b/gi, '')
    .replace(/[\s;,.]+/g, ' ')
    .trim();
  return { cuts, left };
}
