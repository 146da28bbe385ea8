/** Choices side by side: each built by the whole flow, taken off, priced and checked. */

import { USUAL_BUYING } from '../../project/complete/buying.js';
import type { PriceRow, Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import type { Takeoff } from '../model.js';
import { type Costs, costsOf } from '../prices/costs.js';
import { type TakeoffOptions, takeOff } from '../take-off.js';
import type { Compared, DeriveProject } from './model.js';
import { VARIANTS } from './variants.js';

export interface CompareOptions extends TakeoffOptions {
  /** Prices of a take-off; the project's own when absent. Invented ones are made for each take-off anew. */
  readonly priceList?: (t: Takeoff) => readonly PriceRow[];
}

function priced(project: Project, structure: Structure, o: CompareOptions): Costs {
  const first = takeOff(project, structure, o);
  const prices = o.priceList?.(first) ?? o.prices ?? project.prices;
  const t = o.priceList ? takeOff(project, structure, { ...o, prices }) : first;
  return costsOf(t, prices, project.buying ?? USUAL_BUYING);
}

/** The project as it is, then every variant that applies to it. */
export function compareChoices(project: Project, derive: DeriveProject, o: CompareOptions = {}): Compared[] {
  let base: number | undefined;
  const row = (id: string, title: string, words: string, p: Project): Compared => {
    const d = derive(p);
    const errors = d.issues.filter((i) => i.severity === 'error');
    if (!d.structure || errors.length > 0)
      return {
        id,
        title,
        words,
        total: 0,
        unpriced: 0,
        difference: 0,
        failing: [],
        open: 0,
        refused: errors[0]?.message ?? 'it cannot be placed',
      };
    const costs = priced(p, d.structure, o);
    base ??= costs.total;
    const failing = d.results.filter((r) => r.status === 'fail').map((r) => `${r.title} of ${r.subject}`);
    return {
      id,
      title,
      words,
      total: costs.total,
      unpriced: costs.unpriced.length,
      difference: costs.total - base,
      failing,
      open: d.results.filter((r) => r.mandatory && (r.status === 'not-evaluated' || r.status === 'outside-scope'))
        .length,
      refused: '',
    };
  };
  return [
    row('as-drawn', 'As drawn', 'the project as it is', project),
    ...VARIANTS.flatMap((v) => {
      const changed = v.change(project);
      return changed ? [row(v.id, v.title, changed.words, changed.project)] : [];
    }),
  ];
}
