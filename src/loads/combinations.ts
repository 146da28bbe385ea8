/**
 * Combinations over the cases at hand. The standard's list names loads; each `W` becomes one combination for every wind
 * case, and a line naming a load that has no case is left out (a lesser line of the list already covers the rest).
 */
import { COMBINATIONS, type CombinationMethod, type NominalLoad } from './codes/asce7/index.js';
import type { Asce7Edition } from './codes/support.js';
import type { Combination, LoadCase, LoadKind } from './model.js';

/** Load duration factors of NDS 2018 Table 2.3.2 for the loads of a cover; D stands alone as permanent. */
const DURATION: Readonly<Record<LoadKind, number>> = { D: 0.9, Lr: 1.25, S: 1.15, W: 1.6 };

/** CD of the shortest load in a combination (NDS 2018 2.3.2). */
const shortest = (kinds: readonly LoadKind[]): number => kinds.reduce((cd, kind) => Math.max(cd, DURATION[kind]), 0.9);

const isKind = (load: NominalLoad): load is LoadKind => load === 'D' || load === 'Lr' || load === 'S' || load === 'W';
const term = (kind: LoadKind, factor: number): string => (factor === 1 ? kind : `${factor}${kind}`);

/** Expands one method of the standard over the cases, in list order; exact repeats are dropped. */
export function expandCombinations(
  cases: readonly LoadCase[],
  edition: Asce7Edition,
  method: CombinationMethod,
): readonly Combination[] {
  const index = (kind: LoadKind): number => cases.findIndex((c) => c.kind === kind);
  const single: Readonly<Record<'D' | 'Lr' | 'S', number>> = { D: index('D'), Lr: index('Lr'), S: index('S') };
  const winds = cases.flatMap((c, i) => (c.kind === 'W' ? [i] : []));
  const out: Combination[] = [];
  const seen = new Set<string>();
  for (const rule of COMBINATIONS[edition][method]) {
    // Floor live load does not act on a cover; seismic effects and ponding rain have no case here.
    const loads = (Object.keys(rule.factors) as NominalLoad[]).filter((load) => load !== 'L');
    if (!loads.every(isKind)) continue;
    const kinds = loads as LoadKind[];
    if (kinds.some((k) => (k === 'W' ? winds.length === 0 : single[k] < 0))) continue;
    const label = kinds.map((k) => term(k, rule.factors[k]!)).join(' + ');
    if (seen.has(label)) continue;
    seen.add(label);
    const CD = shortest(kinds);
    const uplift = kinds.includes('W') && (rule.factors.D ?? 1) < 1;
    for (const wind of kinds.includes('W') ? winds : [-1]) {
      const terms = kinds.map((k) => ({ case: k === 'W' ? wind : single[k], factor: rule.factors[k]! }));
      const short = label.replaceAll(' ', '');
      const id = wind < 0 ? short : `${short} (${cases[wind]!.id})`;
      out.push({ id, label, terms, CD, clause: rule.clause, uplift });
    }
  }
  return out;
}
