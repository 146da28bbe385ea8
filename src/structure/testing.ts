/**
 * Two complete projects as the reader gives them, modelled on the two examples but fixed, so that hand numbers stand:
 * `gableProject` (attached gable, scissor trusses on glulam beams, kept slab) and `shedProject` (ledger, rafters, built-up
 * beam). For tests of this and later stages; `change` copies one with parts replaced.
 */
export { houseEndsProject } from './testing-ends.js';
export { gableProject } from './testing-gable.js';
export { given } from './testing-parts.js';
export { shedProject } from './testing-shed.js';

/** Shapes of `T` with any part replaced; arrays are replaced whole or changed item by item through a function. */
export type Change<T> = T extends readonly (infer _)[]
  ? T | ((old: T) => T)
  : T extends object
    ? { readonly [K in keyof T]?: Change<T[K]> } | ((old: T) => T)
    : T;

/** A copy with the given parts replaced; functions receive the old value. */
export function change<T>(old: T, by: Change<T>): T {
  if (typeof by === 'function') return (by as (o: T) => T)(old);
  if (by === null || typeof by !== 'object' || Array.isArray(by) || typeof old !== 'object' || old === null)
    return by as T;
  const out: Record<string, unknown> = { ...(old as Record<string, unknown>) };
  for (const [key, value] of Object.entries(by)) out[key] = change(out[key] as never, value as never);
  return out as T;
}
