/** Least cost that passes: what may be chosen, and what the search found. */
import type { CheckResult } from '../checks/contract.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';

export interface Option {
  readonly label: string;
  readonly apply: (p: Project) => Project;
}

/** One choice of the project with its alternatives. */
export interface Dimension {
  readonly id: string;
  readonly title: string;
  readonly options: readonly Option[];
  /** Whether a check's subject is made of this choice: then a failing check says something of the option, not of the rest. */
  readonly concerns: (subject: string, s: Structure) => boolean;
}

/** The whole flow, and what a structure costs; both handed in. */
export interface Tools {
  readonly derive: (p: Project) => {
    readonly structure?: Structure;
    readonly results: readonly CheckResult[];
    readonly issues: readonly { readonly severity: string }[];
  };
  /** Undefined where something it needs has no price. */
  readonly cost: (p: Project, s: Structure) => number | undefined;
  /** Places without checking, to price one option; undefined where it cannot be placed. */
  readonly place: (p: Project) => Structure | undefined;
}

export interface Choice {
  readonly dimension: string;
  readonly option: string;
}

export interface Sized {
  /** Of all options of all choices together. */
  readonly combinations: number;
  /** Combinations worked out in full, and those passed over for what a worked-out one had shown. */
  readonly derived: number;
  readonly pruned: number;
  /** Absent when nothing passes within the limit. */
  readonly best?: { readonly choices: readonly Choice[]; readonly cost: number; readonly project: Project };
  /** The next cheaper option of each choice, worked out in full with the others as found: why it does not do. */
  readonly steps: readonly { readonly dimension: string; readonly option: string; readonly fails: readonly string[] }[];
  /** False when the limit of worked-out combinations ended the search. */
  readonly finished: boolean;
}
