/** The mixed-integer solver that the cutting plan asks: a WebAssembly library, loaded once, with a limit of nodes only. */
import * as library from 'highs';
import type { Solve } from '../../src/index.js';

/** What we use of the library; its type file describes the CommonJS build, Node loads the other one. */
interface Solver {
  solve(
    lp: string,
    options: Readonly<Record<string, string | number>>,
  ): {
    readonly Status: string;
    readonly ObjectiveValue: number;
    readonly Columns: Readonly<Record<string, { readonly Primal?: number }>>;
    readonly Rows: readonly { readonly Index: number; readonly Dual?: number }[];
  };
}
const load = library.default as unknown as () => Promise<Solver>;

/** Seed and the like are the library's own, written out so that a new version cannot change a plan unseen. */
const FIXED = { random_seed: 0, mip_rel_gap: 0, parallel: 'off' } as const;

export async function loadSolver(): Promise<Solve> {
  const highs = await load();
  return (lp, { nodes, gap }) => {
    const s = highs.solve(lp, { ...FIXED, mip_max_nodes: nodes, mip_abs_gap: Math.max(gap, 1e-6) });
    const values = Object.fromEntries(Object.entries(s.Columns).map(([name, c]) => [name, c.Primal ?? 0]));
    const rows = [...s.Rows].sort((a, b) => a.Index - b.Index);
    return {
      optimal: s.Status === 'Optimal',
      objective: s.ObjectiveValue,
      values,
      duals: rows.map((r) => r.Dual ?? 0),
    };
  };
}
