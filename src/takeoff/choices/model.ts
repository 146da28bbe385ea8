import type { CheckResult } from '../../checks/contract.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';

/** A way to build it otherwise: the changed project, or undefined where it does not apply. */
export interface Variant {
  readonly id: string;
  readonly title: string;
  /** What it changes, for the list; undefined where there is nothing to change. */
  readonly change: (p: Project) => { readonly project: Project; readonly words: string } | undefined;
}

/** The whole flow, handed in: this folder does not know it. */
export type DeriveProject = (p: Project) => {
  readonly structure?: Structure;
  readonly results: readonly CheckResult[];
  readonly issues: readonly { readonly severity: string; readonly message: string }[];
};

export interface Compared {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  /** Material with a price, work with a price; lines without. */
  readonly total: number;
  readonly unpriced: number;
  /** Against the project as it is. */
  readonly difference: number;
  /** Checks that fail, in words, and how many could not be evaluated. */
  readonly failing: readonly string[];
  readonly open: number;
  /** It could not be placed: why. */
  readonly refused: string;
}
