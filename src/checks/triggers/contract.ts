import type { CheckContext } from '../contract.js';

/** A condition that calls for a licensed professional, or may do so at some offices. */
export interface Trigger {
  readonly id: string;
  readonly level: 'needs' | 'some-offices';
  /** Where it was read, or `common practice, no source`. */
  readonly source: string;
  /** The condition as it stands in this project; undefined when it does not arise. */
  found(ctx: CheckContext): string | undefined;
}
