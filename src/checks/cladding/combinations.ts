/** The allowable-stress combinations with component wind in place of the main system's wind. */
import type { Combination, Loads } from '../../loads/model.js';
import { componentId } from './zone-wind.js';

export interface ComponentCombination {
  readonly id: string;
  readonly label: string;
  readonly clause: string;
  readonly CD: number;
  /** Factor of the component wind. */
  readonly wind: number;
  /** The other loads: a case's index and its factor. */
  readonly terms: Combination['terms'];
}

const made = new WeakMap<Loads['combinations'], readonly ComponentCombination[]>();

/** One for each line of the standard that has wind; the main system's wind cases drop out. ASCE 7 2.4. */
export function componentCombinations(loads: Loads): readonly ComponentCombination[] {
  const known = made.get(loads.combinations);
  if (known) return known;
  const out: ComponentCombination[] = [];
  const seen = new Set<string>();
  const isWind = (i: number): boolean => loads.cases[i]?.kind === 'W';
  for (const c of loads.combinations) {
    const wind = c.terms.find((t) => isWind(t.case));
    if (!wind) continue;
    const terms = c.terms.filter((t) => !isWind(t.case));
    const key = `${c.label} ${terms.map((t) => t.case)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    out.push({
      id: componentId(c.label),
      label: c.label,
      clause: c.clause,
      CD: c.CD,
      wind: wind.factor,
      terms,
    });
  }
  made.set(loads.combinations, out);
  return out;
}
