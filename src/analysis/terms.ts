/**
 * The load cases taken apart: each distinct piece of roof with one way of loading it is a term, and every case is a sum
 * of terms times a pressure. Effects are worked out once for a unit of each term.
 */
import type { Vec2 } from '../base/vec.js';
import type { LoadCase, Loads } from '../loads/model.js';
import type { Surface } from '../structure/model.js';

/** `vertical` acts down, `normal` square to the surface onto its top face. */
export type TermKind = 'vertical' | 'normal' | 'edge';

export interface Term {
  readonly surface: string;
  readonly kind: TermKind;
  readonly region: readonly Vec2[] | undefined;
  /** Height of the edge on the surface (edge terms only). */
  readonly v: number;
}

/** One case as factors on terms: lb per in² of surface for areas, lb/in for edges. */
export interface CaseTerms {
  readonly term: Int32Array;
  readonly factor: Float64Array;
  /** Factor on the members' own weight: 1 in the dead case, else 0. */
  readonly self: number;
}

export interface Terms {
  readonly terms: readonly Term[];
  /** Numbers of the terms of each surface, increasing. */
  readonly onSurface: ReadonlyMap<string, readonly number[]>;
  readonly cases: readonly CaseTerms[];
}

export function collectTerms(loads: Loads, surfaces: ReadonlyMap<string, Surface>): Terms {
  const terms: Term[] = [];
  const bySurface = new Map<string, number[]>();
  const find = (surface: string, kind: TermKind, region: readonly Vec2[] | undefined, v: number): number => {
    let known = bySurface.get(surface);
    if (!known) {
      known = [];
      bySurface.set(surface, known);
    }
    for (const i of known) {
      const t = terms[i]!;
      if (t.kind === kind && t.region === region && t.v === v) return i;
    }
    terms.push({ surface, kind, region, v });
    known.push(terms.length - 1);
    return terms.length - 1;
  };
  const one = (c: LoadCase): CaseTerms => {
    const term: number[] = [];
    const factor: number[] = [];
    for (const load of c.areas) {
      const surface = surfaces.get(load.surface);
      if (!surface) continue;
      const kind = load.acts === 'normal' ? 'normal' : 'vertical';
      // A load on the projection is spread over the longer sloping area.
      const onSlope = load.acts === 'plan' ? Math.cos(surface.slope) : 1;
      term.push(find(load.surface, kind, load.region, 0));
      factor.push((load.psf * onSlope) / 144);
    }
    for (const edge of c.edges) {
      if (!surfaces.has(edge.surface)) continue;
      term.push(find(edge.surface, 'edge', undefined, edge.v));
      factor.push(edge.weight);
    }
    return { term: Int32Array.from(term), factor: Float64Array.from(factor), self: c.selfWeight ? 1 : 0 };
  };
  return { cases: loads.cases.map(one), terms, onSurface: bySurface };
}
