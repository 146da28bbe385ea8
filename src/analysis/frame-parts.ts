/**
 * Parts of the support frame that do not touch each other know nothing of each other's loads, and most cases load one
 * roof only. So each part is solved for the cases that differ there, and these are put together: the first differing case
 * of every part is one solve, the second another. However many roofs stand side by side, there are as many solves as one
 * of them needs, and cases that are the same to a part share one set of curves.
 */
import { frameCase, type Place } from './frame-loads.js';
import type { MemberEffects } from './model.js';
import {
  type CaseResult,
  type DistributedLoad,
  type FactoredFrame,
  type FrameCase,
  solveCase,
} from './solver/index.js';
import type { CaseTerms } from './terms.js';
import { twinsOf } from './twins.js';

/** By load case the number of the solve that holds it. */
export type Solves = Int32Array;

export interface SolvedFrame {
  readonly frame: FactoredFrame;
  readonly cases: readonly FrameCase[];
  readonly results: readonly CaseResult[];
  /** The solves of the part that a node belongs to. */
  at(node: number): Solves;
}

/** For every node the number of its part, from 0 up, and how many parts there are. */
function partsOf(frame: FactoredFrame): { readonly of: Int32Array; readonly count: number } {
  const { nodes, elements } = frame.model;
  const up = Int32Array.from(nodes, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (up[r] !== r) r = up[r]!;
    up[i] = r;
    return r;
  };
  for (const { start, end } of elements) up[root(end)] = root(start);
  const numbers = new Map<number, number>();
  const of = Int32Array.from(nodes, (_, i) => {
    const r = root(i);
    const known = numbers.get(r) ?? numbers.size;
    numbers.set(r, known);
    return known;
  });
  return { of, count: numbers.size };
}

/** For every case the first case that puts the same on one part. */
function partTwins(places: readonly Place[], cases: readonly CaseTerms[]): Int32Array {
  const print = (c: number): number => {
    let sum = cases[c]!.self;
    for (const { rows } of places) sum += rows[3 * c]! + 2 * rows[3 * c + 1]! + 3 * rows[3 * c + 2]!;
    return sum;
  };
  const same = (a: number, b: number): boolean => {
    if (cases[a]!.self !== cases[b]!.self) return false;
    for (const { rows } of places) for (let k = 0; k < 3; k++) if (rows[3 * a + k] !== rows[3 * b + k]) return false;
    return true;
  };
  return twinsOf(cases.length, print, same);
}

/** `weights`: the members' own weight, which acts in the cases that say so. */
export function solveParts(
  frame: FactoredFrame,
  places: readonly Place[],
  weights: readonly DistributedLoad[],
  cases: readonly CaseTerms[],
): SolvedFrame {
  const { elements } = frame.model;
  const parts = partsOf(frame);
  const partOf = (p: Place): number => parts.of['node' in p ? p.node : elements[p.element]!.start]!;
  const onPart = Array.from({ length: parts.count }, () => ({
    places: [] as Place[],
    weights: [] as DistributedLoad[],
  }));
  for (const p of places) onPart[partOf(p)]!.places.push(p);
  for (const w of weights) onPart[parts.of[elements[w.element]!.start]!]!.weights.push(w);

  const joined: {
    nodal: NonNullable<FrameCase['nodal']>[];
    points: NonNullable<FrameCase['points']>[];
    own: (readonly DistributedLoad[])[];
  }[] = [];
  const solves = onPart.map((part): Solves => {
    const twins = partTwins(part.places, cases);
    const numbers = new Int32Array(cases.length);
    let next = 0;
    cases.forEach((c, i) => {
      if (twins[i] !== i) {
        numbers[i] = numbers[twins[i]!]!;
        return;
      }
      numbers[i] = next;
      joined[next] ??= { nodal: [], points: [], own: [] };
      const into = joined[next]!;
      const own = frameCase(i, part.places, part.weights, c.self);
      into.nodal.push(own.nodal ?? []);
      into.points.push(own.points ?? []);
      into.own.push(own.distributed ?? []);
      next++;
    });
    return numbers;
  });
  const frameCases = joined.map(({ nodal, points, own }) => ({
    nodal: nodal.flat(),
    points: points.flat(),
    distributed: own.flat(),
  }));
  return {
    frame,
    cases: frameCases,
    results: frameCases.map((c) => solveCase(frame, c)),
    at: (node) => solves[parts.of[node]!]!,
  };
}

/** How many solves a part needs: those numbered below this. */
export const solvesOf = (solves: Solves): number => 1 + solves.reduce((most, i) => Math.max(most, i), -1);

type Curves = Pick<MemberEffects, 'm' | 'v' | 'n' | 'mWeak' | 'vWeak' | 'sag'>;

/** Curves of the solves of a part, handed to the cases; cases that are one solve share a row. */
export function byCase(curves: Curves, solves: Solves): Curves {
  const rows = (of: readonly Float64Array[]): readonly Float64Array[] => Array.from(solves, (i) => of[i]!);
  const { m, v, n, mWeak, vWeak, sag } = curves;
  return { m: rows(m), v: rows(v), n: rows(n), mWeak: rows(mWeak), vWeak: rows(vWeak), sag: rows(sag) };
}
