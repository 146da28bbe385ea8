/**
 * The mixed-integer solver that the cutting plan asks, in a worker. The page hands in its WebAssembly, as it does with the
 * fonts, so that the single file and the offline page work alike; compiling it is why the page's policy allows
 * `wasm-unsafe-eval` (compiled WebAssembly only; `eval` of text stays forbidden).
 */
import type { Solve } from '../../../src/index.js';

/** What we use of the library; its type file describes the CommonJS build. */
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

/** The same as on the command line, so that both find the same plan. */
const FIXED = { random_seed: 0, mip_rel_gap: 0, parallel: 'off' } as const;

let started: Promise<Solve | undefined> | undefined;

type Instantiate = (imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void) => void;

async function start(wasm: Uint8Array): Promise<Solve> {
  const library = await import('highs');
  const load = library.default as unknown as (o: { instantiateWasm: Instantiate }) => Promise<Solver>;
  // Compiled here, where a refusal is heard; the library itself would wait for ever.
  const compiled = await WebAssembly.compile(wasm.slice().buffer);
  const highs = await new Promise<Solver>((done, failed) => {
    const instantiateWasm: Instantiate = (imports, ready) => {
      WebAssembly.instantiate(compiled, imports).then(ready, failed);
    };
    load({ instantiateWasm }).then(done, failed);
  });
  return (lp, { nodes, gap }) => {
    const s = highs.solve(lp, { ...FIXED, mip_max_nodes: nodes, mip_abs_gap: Math.max(gap, 1e-6) });
    const rows = [...s.Rows].sort((a, b) => a.Index - b.Index);
    return {
      optimal: s.Status === 'Optimal',
      objective: s.ObjectiveValue,
      values: Object.fromEntries(Object.entries(s.Columns).map(([name, c]) => [name, c.Primal ?? 0])),
      duals: rows.map((r) => r.Dual ?? 0),
    };
  };
}

/** Undefined when a browser forbids it; plans are then made by the own search, and say how far from the bound they may be. */
export function solverOf(wasm: Uint8Array | undefined): Promise<Solve | undefined> {
  if (!wasm) return Promise.resolve(undefined);
  started ??= start(wasm).catch((e: unknown) => {
    console.warn(`cutting plans without the solver: ${e instanceof Error ? e.message : String(e)}`);
    return undefined;
  });
  return started;
}
