import type { Recorder } from '../../../base/trace.js';

/**
 * A value for each load duration, worked out once: what a part is worth at a joint changes with nothing else. Worked out
 * again for a recorder, which asks for the steps.
 */
export function perDuration<T>(value: (CD: number, rec?: Recorder) => T): (CD: number, rec?: Recorder) => T {
  const known = new Map<number, { readonly value: T }>();
  return (CD, rec) => {
    if (rec) return value(CD, rec);
    let made = known.get(CD);
    if (!made) {
      made = { value: value(CD) };
      known.set(CD, made);
    }
    return made.value;
  };
}
