/** Collects the rows of the load basis as the cases are built, one row for each printed number. */
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
