/** What every part of the project is said with: values of the office, assumptions, questions. */

/**
 * A value the building department (or the site) decides. `unknown` keeps a stated placeholder in `value` so that a
 * preliminary set can be drawn; it also puts a question on the cover and keeps the set from being issuable.
 */
export interface Office<T> {
  readonly value: T;
  readonly state: 'given' | 'assumed' | 'unknown';
  /** Who said so, as printed: `county design criteria sheet`. Empty when not given. */
  readonly from: string;
  readonly path: string;
}

export interface Assumption {
  readonly path: string;
  /** What was assumed, with its value as printed: `Post base standoff 1"`. */
  readonly text: string;
  readonly why: string;
}

export interface Question {
  readonly path: string;
  /** A question for the office, printed on the cover: `What is the frost depth here?` */
  readonly text: string;
  /** Placeholder used meanwhile, as printed. */
  readonly meanwhile: string;
}
