/**
 * Ledger to house: each rafter's reaction goes to its two neighbouring fastener groups in inverse proportion to the
 * distance (to the nearest alone past the last one); the ledger's own weight goes by tributary width.
 */
import { distance } from '../base/vec.js';
import type { Bearing, StructureIndex } from './index-structure.js';
import { addRows, addTo, makeRows, type Rows, rowsOf } from './rows.js';
import type { Terms } from './terms.js';

export interface LedgerResult {
  /** What each ledger joint hands to the wall, per case. */
  readonly joints: ReadonlyMap<string, Rows>;
  readonly applied: Rows;
  readonly failures: readonly string[];
}

/** Shares of a load at `x` between the two supports that bound it. `at` increasing. */
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

export function analyseLedgers(index: StructureIndex, terms: Terms, framing: ReadonlyMap<string, Rows>): LedgerResult {
  const cases = terms.cases.length;
  const joints = new Map<string, Rows>();
  const applied = makeRows(cases);
  const failures: string[] = [];
  for (const ledger of index.structure.members) {
    if (ledger.role !== 'ledger') continue;
    const held: readonly Bearing[] = (index.below.get(ledger.id) ?? []).filter((b) => index.walls.has(b.lower));
    if (held.length === 0) {
      failures.push(`${ledger.id} is not fastened to the house`);
      continue;
    }
    const at = held.map((b) => b.upperAlong);
    const rows = held.map((b) => rowsOf(joints, b.joint.id, cases));
    for (const hung of index.above.get(ledger.id) ?? []) {
      const load = framing.get(hung.joint.id);
      if (!load) continue;
      for (const { index: i, share } of leverShares(at, hung.lowerAlong)) addRows(rows[i]!, load, share);
    }
    const widths = tributaryWidths(at, distance(ledger.start, ledger.end));
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
