/**
 * Of a large cover most terms and most load cases lie on other roofs. What there is on the surfaces of one member: the terms
 * there, and the cases that use any of them or the members' own weight. Members on the same surfaces share the answer.
 */
import type { Member } from '../structure/model.js';
import type { CaseTerms, Terms } from './terms.js';

/** A load case as far as it reaches some surfaces. */
export interface NearCase {
  /** Its number among all cases. */
  readonly index: number;
  readonly self: number;
  /** Places in `Near.terms` and factors, in the case's own order. */
  readonly term: readonly number[];
  readonly factor: readonly number[];
}

export interface Near {
  /** Numbers of the terms, increasing. */
  readonly terms: readonly number[];
  /** In the order of all cases. */
  readonly cases: readonly NearCase[];
}

function nearOf(surfaces: readonly string[], terms: Terms): Near {
  const numbers = surfaces.flatMap((s) => terms.onSurface.get(s) ?? []);
  if (surfaces.length > 1) numbers.sort((a, b) => a - b);
  const places = new Map(numbers.map((n, place) => [n, place]));
  const reach = (c: CaseTerms, index: number): NearCase[] => {
    const term: number[] = [];
    const factor: number[] = [];
    c.term.forEach((n, k) => {
      const place = places.get(n);
      if (place === undefined) return;
      term.push(place);
      factor.push(c.factor[k]!);
    });
    return term.length > 0 || c.self !== 0 ? [{ index, self: c.self, term, factor }] : [];
  };
  return { terms: numbers, cases: terms.cases.flatMap(reach) };
}

const made = new WeakMap<Terms, Map<string, Near>>();

/** What there is on the surfaces that a member's strips lie on. */
export function nearTo(member: Member, terms: Terms): Near {
  let known = made.get(terms);
  if (!known) {
    known = new Map();
    made.set(terms, known);
  }
  const surfaces = [...new Set(member.strips.map((s) => s.surface))];
  const name = surfaces.join(' ');
  let near = known.get(name);
  if (!near) {
    near = nearOf(surfaces, terms);
    known.set(name, near);
  }
  return near;
}
