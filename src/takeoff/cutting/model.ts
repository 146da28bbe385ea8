/** The cutting problem of one section: boards as sold, pieces to be cut from them, and the plan that answers it. */

/** A length the yard sells, inches, and what one costs (any unit, the same for all of a problem). */
export interface Stock {
  readonly length: number;
  readonly cost: number;
}

/** One piece to be cut, inches. `id` is unique in the problem. */
export interface Cut {
  readonly id: string;
  /** As drawn: `RF1`, `B2`. */
  readonly mark: string;
  /** What it is, for the saw's list: `ply 2 of 3`, `block between frames`. Empty for a member in one piece. */
  readonly what: string;
  readonly length: number;
}

export interface CuttingProblem {
  readonly stock: readonly Stock[];
  readonly cuts: readonly Cut[];
  /** Width of the saw's cut, inches. */
  readonly kerf: number;
  /** Cut off every board before use, for end checks and squaring, inches. */
  readonly trim: number;
}

export interface Board {
  readonly stock: Stock;
  /** In the order they are cut, longest first. */
  readonly cuts: readonly Cut[];
  /** Left at the end of the board after trim, cuts and kerfs, inches. */
  readonly offcut: number;
}

/** How a plan was found. */
export type Method = 'all patterns' | 'column generation' | 'search' | 'heuristic';

export interface CuttingPlan {
  readonly boards: readonly Board[];
  /** Pieces longer than any board less its trim: they must be ordered to length. */
  readonly tooLong: readonly Cut[];
  readonly cost: number;
  /** No plan can cost less than this. */
  readonly bound: number;
  /** (cost − bound) / bound; 0 when the plan is proved least. */
  readonly gap: number;
  readonly method: Method;
  /** Cost of the best-fit-decreasing plan of the same pieces, to compare with. */
  readonly baseline: number;
}

/** What a mixed-integer solver is asked: a model in the LP text format, and a limit of nodes (never of time). */
export interface SolveOptions {
  readonly nodes: number;
  /** An answer this near the solver's own bound counts as best: two costs are never nearer than that. */
  readonly gap: number;
}
export interface SolveAnswer {
  /** True when the solver proved its answer best for the model it was given. */
  readonly optimal: boolean;
  readonly objective: number;
  /** Values by variable name. */
  readonly values: Readonly<Record<string, number>>;
  /** Dual value of each row, in the order written; empty for an integer model. */
  readonly duals: readonly number[];
}
/** The apps hand one in; undefined when it found no answer. Must be deterministic. */
export type Solve = (lp: string, options: SolveOptions) => SolveAnswer | undefined;
