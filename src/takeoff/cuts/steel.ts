/**
 * Reinforcement as the footing's steel names it. Bars are cut to the concrete less its cover; what the words do not say in a
 * form known here is left open.
 */
import { laidSteel } from '../../checks/footings/laid-steel.js';
import type { Footing } from '../../structure/model.js';
import type { LooseCut } from './model.js';
import { barSpec } from './stock.js';

const EACH_WAY = /\((\d+)\)\s*#(\d+)\s+each way/i;
const VERTICAL = /\((\d+)\)\s*#(\d+)\s+vertical/i;
const TIES = /#(\d+)\s+ties\s+at\s+(\d+(?:\.\d+)?)\s*in/i;

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
  const { mat, uprights, ties } = laidSteel(f);
  if (mat) add(2 * mat.count, mat.bar, mat.length, 'pad, each way');
  if (uprights)
    add(
      uprights.count,
      uprights.bar,
      uprights.stock,
      uprights.hook ? 'upright in the pier, its foot bent to a hook' : 'upright in the pier',
    );
  if (ties) add(ties.count, ties.bar, ties.stock, 'tie, bent round');
  const left = f.steel
    .replace(mat ? EACH_WAY : '', '')
    .replace(uprights ? VERTICAL : '', '')
    .replace(ties ? TIES : '', '')
    .replace(/\b(in|pad|pier|with|and|none)\b/gi, '')
    .replace(/[\s;,.]+/g, ' ')
    .trim();
  return { cuts, left };
}
