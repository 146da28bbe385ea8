/** The take-off, its cutting plans and prices, for the Buy view. */
import {
  type Buy,
  buyOf,
  type Compared,
  compareChoices,
  type Derived,
  deriveProject,
  drawingInput,
  inventedPrices,
  PHASE_NAMES,
  PHASES,
  readPricesCsv,
} from '../../../src/index.js';
import { solverOf } from './solver.js';
import type { BuyView, ThoroughWork, WorkOptions } from './work-api.js';

/** The same as `eavewright buy` makes; undefined when no structure could be placed. */
export async function bought(d: Derived, o: WorkOptions): Promise<Buy | undefined> {
  if (!d.project || !d.structure) return undefined;
  const solve = await solverOf(o.solver);
  return buyOf(d.project, d.structure, drawingInput(d), { solve, prices: o.invented ? 'invented' : undefined });
}

export async function buyView(d: Derived, o: WorkOptions): Promise<BuyView | undefined> {
  const b = await bought(d, o);
  if (!b) return undefined;
  const { costs, takeoff } = b;
  return {
    units: b.project.job.units,
    pricesAre: b.pricesAre,
    solver: (await solverOf(o.solver)) !== undefined,
    phases: PHASES.map((phase) => ({
      phase,
      name: PHASE_NAMES[phase],
      lines: costs.lines.filter((l) => l.line.phase === phase),
      cost: costs.phases.find((p) => p.phase === phase),
    })).filter((p) => p.lines.length > 0 || p.cost !== undefined),
    totals: {
      material: costs.material,
      work: costs.work,
      total: costs.total,
      unpriced: costs.unpriced.length,
      unknownWork: costs.unknownWork.map((p) => PHASE_NAMES[p]),
    },
    open: takeoff.open,
    cuts: takeoff.cuts,
    mismatches: b.trusses.flatMap((t) =>
      t.mismatches.map((m) => `${m.mark}, ${m.what}: ordered ${m.ordered}, ${m.where} has ${m.found}`),
    ),
  };
}

export async function comparedChoices(d: Derived, o: WorkOptions): Promise<readonly Compared[]> {
  if (!d.project) return [];
  const solve = await solverOf(o.solver);
  return compareChoices(d.project, deriveProject, { solve, ...(o.invented ? { priceList: inventedPrices } : {}) });
}

export const pricesFrom: ThoroughWork['pricesFrom'] = (csv) => {
  const { value, issues } = readPricesCsv(csv);
  return {
    rows: value,
    problems: issues.map((i) => `line ${i.line ?? 1}: ${i.message} Found ${i.found}; right would be ${i.expected}.`),
  };
};
