/** Collects the rows of the load basis as the cases are built, one row for each printed number. */
import type { TraceLine } from '../base/trace.js';
import type { LoadBasis } from './model.js';

export type BasisRow = LoadBasis['rows'][number];

export interface Question {
  readonly about: string;
  readonly why: string;
}

/** Growing record of what the load stage used (`rows`) and of what it could not answer (`outside`). */
export interface Ledger {
  readonly rows: BasisRow[];
  readonly outside: Question[];
}

export const makeLedger = (): Ledger => ({ rows: [], outside: [] });

/** Adds one row; `value` must be finite. */
export function note(
  ledger: Ledger,
  symbol: string,
  meaning: string,
  value: number,
  unit: string,
  clause: string,
  from: readonly string[],
  provenance: 'read' | 'memory' = 'read',
): void {
  ledger.rows.push({ symbol, meaning, value, unit, clause, from, provenance });
}

/** Steps of a calculation as rows, each with its formula and numbers, so that a reader can redo it from the basis alone. */
export function noteSteps(ledger: Ledger, lines: readonly TraceLine[], of: string, from: readonly string[]): void {
  for (const s of lines) {
    if (s.kind !== 'step') continue;
    const how = s.formula === s.substituted ? s.formula : `${s.formula} = ${s.substituted}`;
    const meaning = `${of}: ${s.meaning}: ${how}${s.note ? `; ${s.note}` : ''}`;
    note(ledger, s.symbol, meaning, s.value, s.unit, s.clause, s.from ?? from);
  }
}
