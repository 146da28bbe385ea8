/**
 * Diagnostics as data. A stage returns a value together with every issue it met; nothing is thrown for bad input.
 * Exceptions are for our own faults only.
 */
export type Severity = 'error' | 'warning' | 'note';

export interface Issue {
  /** Stable kebab-case code, e.g. `unknown-key`, `post-outside-lot`. Never reworded once published. */
  readonly code: string;
  readonly severity: Severity;
  /** JSON pointer into the project file, e.g. `/cover/roofs/0/pitch`; `''` is the whole file. */
  readonly path: string;
  /** One sentence: what is wrong. */
  readonly message: string;
  /** The value found, as written. */
  readonly found?: string;
  /** What would be right, with an example in the trade's notation. */
  readonly expected?: string;
  /** 1-based place in the file, filled by the reader (and for later stages by `locate`). */
  readonly line?: number;
  readonly column?: number;
  /** Mark of the part concerned, when one exists. */
  readonly subject?: string;
}

/** A stage's result: `value` is undefined exactly when an error left nothing to go on with. */
export interface Outcome<T> {
  readonly value: T | undefined;
  readonly issues: readonly Issue[];
}

export const hasErrors = (issues: readonly Issue[]): boolean => issues.some((i) => i.severity === 'error');
