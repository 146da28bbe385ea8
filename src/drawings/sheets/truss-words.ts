/** Where the truss papers stand, in the same words on cover, framing plan, papers sheet and inspections. */
import type { DrawingInput } from './contract.js';

type Source = Pick<DrawingInput, 'project' | 'structure' | 'results'>;

/** True when every truss's sealed sheet is entered and agrees. */
export const papersComplete = ({ results }: Source): boolean => {
  const own = results.filter((r) => r.check === 'truss-papers');
  return own.length > 0 && own.every((r) => r.status === 'pass');
};

/** Who let the papers be handed in later; undefined when nobody did. */
export function deferredBy({ project }: Source): string | undefined {
  const { deferred } = project.cover;
  return deferred?.state === 'given' && deferred.from !== '' && deferred.value.includes('trusses')
    ? deferred.from
    : undefined;
}

/** One phrase: `sealed and in this set`, `deferred with leave of …`, `not here yet`. */
export function paperState(input: Source): string {
  if (papersComplete(input)) return 'sealed sheets of every truss, compared in this set';
  const by = deferredBy(input);
  return by
    ? `deferred submittal with leave of ${by}: sealed sheets approved by the office before a truss is set`
    : 'sealed sheets, not entered yet and no leave to defer them: the set stays preliminary';
}

/** The deferred item as a list for notes; empty where no truss is or nothing is deferred. */
export const trussesDeferred = (input: Source): string[] =>
  input.structure.members.some((m) => m.truss) && !papersComplete(input) ? [`Truss papers: ${paperState(input)}.`] : [];
