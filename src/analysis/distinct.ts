/**
 * Combinations that differ for one part. A case that loads another roof, or another span far away, often gives a part bit
 * for bit the forces of some other case; combinations of one family that differ in such cases only are one and the same
 * to this part. The first of them stands for all, so a search that keeps the first worst finds what it found before.
 */
import type { Vec3 } from '../base/vec.js';
import type { Combination } from '../loads/model.js';
import type { FootingForces, JointForces, MemberEffects } from './model.js';
import { twinsOf } from './twins.js';

function sameRow(a: Float64Array, b: Float64Array): boolean {
  if (a === b) return true;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

const curvesOf = (e: MemberEffects): readonly (readonly Float64Array[])[] => [e.m, e.v, e.n, e.mWeak, e.vWeak, e.sag];

const memberTwinsMade = new WeakMap<
  readonly Float64Array[],
  { readonly effects: MemberEffects; readonly twins: Int32Array }
>();

/** Members that share their curves, as alike rafters do, share the answer. */
function memberTwins(effects: MemberEffects): Int32Array {
  const known = memberTwinsMade.get(effects.m);
  const mine = curvesOf(effects);
  if (known && curvesOf(known.effects).every((curve, i) => curve === mine[i])) return known.twins;
  const twins = workOutTwins(effects);
  memberTwinsMade.set(effects.m, { effects, twins });
  return twins;
}

function workOutTwins(effects: MemberEffects): Int32Array {
  const curves = curvesOf(effects);
  const print = (c: number): number => {
    let sum = 0;
    for (const curve of curves) {
      const row = curve[c]!;
      for (let i = 0; i < row.length; i++) sum += (i + 1) * row[i]!;
    }
    return sum;
  };
  const same = (a: number, b: number): boolean => {
    for (const curve of curves) if (!sameRow(curve[a]!, curve[b]!)) return false;
    return true;
  };
  return twinsOf(effects.m.length, print, same);
}

/** `rows`: force, and moment where there is one. */
function vectorTwins(rows: readonly (readonly Vec3[])[]): Int32Array {
  const print = (c: number): number => {
    let sum = 0;
    for (let r = 0; r < rows.length; r++) {
      const f = rows[r]![c]!;
      sum += f.x + 2 * f.y + 3 * f.z;
    }
    return sum;
  };
  const same = (a: number, b: number): boolean => {
    for (let r = 0; r < rows.length; r++) {
      const p = rows[r]![a]!;
      const q = rows[r]![b]!;
      if (p !== q && (p.x !== q.x || p.y !== q.y || p.z !== q.z)) return false;
    }
    return true;
  };
  return twinsOf(rows[0]?.length ?? 0, print, same);
}

/** What a combination is to the sums of one part. */
type Summed = Pick<Combination, 'label' | 'CD' | 'terms'>;

/** The combinations that differ, and their places in the whole list. */
interface Distinct<C> {
  readonly list: readonly C[];
  readonly places: readonly number[];
}

/** Combinations of one family have the same label and the same factors. */
interface Families {
  readonly of: readonly number[];
  /** Answers with the twins they were worked out for, by a hash of these: parts of one roof mostly share theirs. */
  readonly known: Map<number, { readonly twins: Int32Array; readonly distinct: Distinct<Summed> }[]>;
}

const familiesMade = new WeakMap<readonly Summed[], Families>();

function familiesOf(combinations: readonly Summed[]): Families {
  let families = familiesMade.get(combinations);
  if (!families) {
    const numbers = new Map<string, number>();
    const of = combinations.map(({ label, CD, terms }) => {
      const name = `${label} ${CD} ${terms.map((t) => t.factor)}`;
      if (!numbers.has(name)) numbers.set(name, numbers.size);
      return numbers.get(name)!;
    });
    families = { of, known: new Map() };
    familiesMade.set(combinations, families);
  }
  return families;
}

function sameTwins(a: Int32Array, b: Int32Array): boolean {
  if (a === b) return true;
  for (let c = 0; c < a.length; c++) if (a[c] !== b[c]) return false;
  return a.length === b.length;
}

function distinctUnder<C extends Summed>(twins: Int32Array, combinations: readonly C[]): Distinct<C> {
  const { of, known } = familiesOf(combinations);
  let hash = 0;
  for (let c = 0; c < twins.length; c++) hash = (31 * hash + twins[c]!) | 0;
  const alike = known.get(hash) ?? [];
  const hit = alike.find((k) => sameTwins(k.twins, twins));
  // Kept for this very list, so it holds what the list holds.
  if (hit) return hit.distinct as Distinct<C>;
  const seen = new Set<number>();
  const list: C[] = [];
  const places: number[] = [];
  combinations.forEach((combination, k) => {
    let key = of[k]!;
    for (const t of combination.terms) key = key * twins.length + twins[t.case]!;
    // A key too large to be exact stands for nothing but itself.
    if (Number.isSafeInteger(key)) {
      if (seen.has(key)) return;
      seen.add(key);
    }
    list.push(combination);
    places.push(k);
  });
  const distinct = { list, places };
  known.set(hash, [...alike, { twins, distinct }]);
  return distinct;
}

type Part = MemberEffects | JointForces | FootingForces;

const twinsMade = new WeakMap<Part, Int32Array>();

const twinsFor = (part: Part): Int32Array => {
  let twins = twinsMade.get(part);
  if (!twins) {
    if ('stations' in part) twins = memberTwins(part);
    else twins = vectorTwins(part.moment ? [part.force, part.moment] : [part.force]);
    twinsMade.set(part, twins);
  }
  return twins;
};

/** The combinations that differ for a member, a joint or a footing; each stands for the later ones like it. */
export const distinctCombinations = <C extends Summed>(part: Part, combinations: readonly C[]): readonly C[] =>
  distinctUnder(twinsFor(part), combinations).list;

/** Their indices in the list handed in. */
export const distinctPlaces = (part: Part, combinations: readonly Combination[]): readonly number[] =>
  distinctUnder(twinsFor(part), combinations).places;
