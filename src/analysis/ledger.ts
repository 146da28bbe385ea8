/**
 * Ledger to house: a continuous beam on its fastener places, taken as rigid. Loads down and square to the wall go to the
 * places by the three-moment equation, so that a rafter beyond the last place loads it by more than itself and lifts the
 * next; forces along the ledger go to the two places beside them. Own weight as an even load on the same beam. Statics.
 */
import { distance } from '../base/vec.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import { addTo, makeRows, type Rows, rowsOf } from './rows.js';
import type { Terms } from './terms.js';

export interface LedgerResult {
  /** What each ledger joint hands to the wall, per case. */
  readonly joints: ReadonlyMap<string, Rows>;
  readonly applied: Rows;
  readonly failures: readonly string[];
}

/** Shares of a load at `x` between the two places that bound it, all to the last beyond it. `at` increasing. */
export function leverShares(
  at: readonly number[],
  x: number,
): readonly { readonly index: number; readonly share: number }[] {
  const last = at.length - 1;
  if (x <= at[0]!) return [{ index: 0, share: 1 }];
  if (x >= at[last]!) return [{ index: last, share: 1 }];
  let i = 1;
  while (at[i]! < x) i++;
  const t = (x - at[i - 1]!) / (at[i]! - at[i - 1]!);
  return [
    { index: i - 1, share: 1 - t },
    { index: i, share: t },
  ];
}

/** Tributary width of each of `at` on a length: half way to the neighbours, out to the ends. */
export function tributaryWidths(at: readonly number[], length: number): readonly number[] {
  return at.map((x, i) => {
    const from = i === 0 ? 0 : (at[i - 1]! + x) / 2;
    const to = i === at.length - 1 ? length : (x + at[i + 1]!) / 2;
    return to - from;
  });
}

/**
 * Reactions of an even beam on rigid supports at `at` (increasing), from the reactions each span alone would give
 * (`simple`), the moments over the end supports (hogging positive), and the load terms of the three-moment equation
 * M₋·l₋ + 2·M·(l₋ + l₊) + M₊·l₊ = load, one for each inner support. Statics.
 */
function reactions(
  at: readonly number[],
  simple: readonly number[],
  ends: readonly [number, number],
  load: readonly number[],
): number[] {
  const n = at.length - 1;
  const M = [...load];
  M[0] = ends[0];
  M[n] = ends[1];
  const span = (i: number): number => at[i + 1]! - at[i]!;
  // Forward sweep of the tridiagonal system: M_i = q_i − p_i·M_{i+1}.
  const p = [0];
  const q = [M[0]];
  for (let i = 1; i < n; i++) {
    const pivot = 2 * (span(i - 1) + span(i)) - span(i - 1) * p[i - 1]!;
    p[i] = span(i) / pivot;
    q[i] = (load[i]! - span(i - 1) * q[i - 1]!) / pivot;
  }
  for (let i = n - 1; i > 0; i--) M[i] = q[i]! - p[i]! * M[i + 1]!;
  const R = [...simple];
  for (let i = 0; i < n; i++) {
    const turn = (M[i]! - M[i + 1]!) / span(i);
    R[i] = R[i]! + turn;
    R[i + 1] = R[i + 1]! - turn;
  }
  return R;
}

/**
 * Share of a load at `x` that each support at `at` (increasing, distinct) of a continuous beam takes; negative where it is
 * lifted. The shares add up to 1 and balance the load's moment. One support takes all.
 */
export function beamShares(at: readonly number[], x: number): readonly number[] {
  const n = at.length - 1;
  if (n < 1) return [1];
  const simple = at.map(() => 0);
  const load = at.map(() => 0);
  if (x <= at[0]!) {
    simple[0] = 1;
    return reactions(at, simple, [at[0]! - x, 0], load);
  }
  if (x >= at[n]!) {
    simple[n] = 1;
    return reactions(at, simple, [0, x - at[n]!], load);
  }
  let i = 0;
  while (at[i + 1]! < x) i++;
  const l = at[i + 1]! - at[i]!;
  const a = x - at[i]!;
  const b = l - a;
  simple[i] = b / l;
  simple[i + 1] = a / l;
  load[i] = (a * b * (l + b)) / l;
  load[i + 1] = (a * b * (l + a)) / l;
  return reactions(at, simple, [0, 0], load);
}

/** Length of an even load on the whole beam, from 0 to `length`, that each support takes. They add up to the length. */
export function evenShares(at: readonly number[], length: number): readonly number[] {
  const n = at.length - 1;
  if (n < 1) return [length];
  const before = at[0]!;
  const after = length - at[n]!;
  const simple = [...tributaryWidths(at, length)];
  const cube = (i: number): number => (at[i + 1]! - at[i]!) ** 3 / 4;
  const load = at.map((_, i) => (i === 0 || i === n ? 0 : cube(i - 1) + cube(i)));
  return reactions(at, simple, [before ** 2 / 2, after ** 2 / 2], load);
}

export function analyseLedgers(index: StructureIndex, terms: Terms, framing: ReadonlyMap<string, Rows>): LedgerResult {
  const cases = terms.cases.length;
  const joints = new Map<string, Rows>();
  const applied = makeRows(cases);
  const failures: string[] = [];
  for (const ledger of index.structure.members) {
    if (ledger.role !== 'ledger') continue;
    const held: readonly Bearing[] = (index.below.get(ledger.id) ?? [])
      .filter((b) => index.walls.has(b.lower))
      .sort((p, q) => p.upperAlong - q.upperAlong);
    if (held.length === 0) {
      failures.push(`${ledger.id} is not fastened to the house`);
      continue;
    }
    const at = held.map((b) => b.upperAlong);
    const rows = held.map((b) => rowsOf(joints, b.joint.id, cases));
    const length = distance(ledger.start, ledger.end);
    // Level by construction: its axis in plan.
    const ux = (ledger.end.x - ledger.start.x) / length;
    const uy = (ledger.end.y - ledger.start.y) / length;
    for (const hung of index.above.get(ledger.id) ?? []) {
      const load = framing.get(hung.joint.id);
      if (!load) continue;
      const along = at.map(() => 0);
      for (const { index: i, share } of leverShares(at, hung.lowerAlong)) along[i] = share;
      const across = beamShares(at, hung.lowerAlong);
      rows.forEach((row, i) => {
        const s = across[i]!;
        const t = along[i]! - s;
        for (let c = 0; c < load.length; c += 3) {
          const x = load[c]!;
          const y = load[c + 1]!;
          const axial = t * (x * ux + y * uy);
          row[c] = row[c]! + s * x + axial * ux;
          row[c + 1] = row[c + 1]! + s * y + axial * uy;
          row[c + 2] = row[c + 2]! + s * load[c + 2]!;
        }
      });
    }
    const widths = evenShares(at, length);
    terms.cases.forEach((c, k) => {
      if (c.self === 0) return;
      widths.forEach((width, i) => {
        const weight = c.self * width * ledger.section.weight;
        addTo(rows[i]!, k, 0, 0, -weight);
        addTo(applied, k, 0, 0, -weight);
      });
    });
  }
  return { joints, applied, failures };
}
