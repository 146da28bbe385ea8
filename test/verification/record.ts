/**
 * The one mechanism of the verification ring: a published number, our number, and how far apart they may lie.
 * `compare` asserts and also keeps a record; at the end of the file the records go to `out/<suite>.json`, from which
 * `scripts/verification-report.ts` writes `docs/verification.md`.
 */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';

export interface Tolerance {
  /** Allowed absolute difference, in the unit of the comparison. */
  readonly abs?: number;
  /** Allowed difference as a fraction of the published value. */
  readonly rel?: number;
  /** Why it is this wide: `published to 0.01`, `table rounds to 10 lb`. */
  readonly reason: string;
}

/**
 * `read`: seen in the place given; `memory`: recalled, to be confirmed; `hand`: our own hand statics, worked beside the
 * comparison and published nowhere; `program`: what another program printed when it was run on the same case.
 */
export type Provenance = 'read' | 'memory' | 'hand' | 'program';

export interface Comparison {
  /** Stable id of the check; with `quantity` it must be unique in the suite. */
  readonly id: string;
  /** Which number of the check this is, e.g. `CP`; '' or absent when the check has one number only. */
  readonly quantity?: string;
  /** Standard and clause the computed number implements, e.g. `NDS 2018 3.7.1`. */
  readonly clause: string;
  /** Document the published number comes from. */
  readonly source: string;
  /** Where that document, or a copy of it, was read. */
  readonly where: string;
  readonly provenance: Provenance;
  readonly published: number;
  readonly ours: number;
  /** Both `abs` and `rel` given: the wider of the two counts. */
  readonly tolerance: Tolerance;
  readonly unit: string;
  readonly note?: string;
}

/** A published check that the ring does not compare, and the honest reason. */
export interface LeftOut {
  readonly id: string;
  readonly clause: string;
  readonly source: string;
  readonly reason: string;
}

export interface SuiteRecord {
  readonly suite: string;
  readonly compared: readonly Comparison[];
  readonly leftOut: readonly LeftOut[];
}

export interface Suite {
  compare(c: Comparison): void;
  leaveOut(l: LeftOut): void;
  /** Ids answered so far, compared or left out; a last test asks it whether any published check was forgotten. */
  ids(): ReadonlySet<string>;
}

export const OUT = join(dirname(fileURLToPath(import.meta.url)), 'out');

/** Allowed absolute difference of a comparison. */
export const allowance = (c: Pick<Comparison, 'published' | 'tolerance'>): number =>
  Math.max(c.tolerance.abs ?? 0, (c.tolerance.rel ?? 0) * Math.abs(c.published));

const key = (r: { readonly id: string; readonly quantity?: string }): string => `${r.id} ${r.quantity ?? ''}`;
const byKey = (a: { id: string; quantity?: string }, b: { id: string; quantity?: string }): number =>
  key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0;

/** Opens a suite; call once at the top of a `*.test.ts` file, with the file's own name. */
export function verificationSuite(suite: string): Suite {
  const compared: Comparison[] = [];
  const leftOut: LeftOut[] = [];
  const seen = new Set<string>();

  afterAll(() => {
    const record: SuiteRecord = { suite, compared: compared.sort(byKey), leftOut: leftOut.sort(byKey) };
    mkdirSync(OUT, { recursive: true });
    const path = join(OUT, `${suite}.json`);
    const draft = `${path}.${process.pid}.tmp`;
    writeFileSync(draft, `${JSON.stringify(record, null, 1)}\n`);
    renameSync(draft, path);
  });

  const claim = (k: string): void => {
    if (seen.has(k)) throw new Error(`verification record used twice: ${k}`);
    seen.add(k);
  };

  return {
    compare(c) {
      claim(key(c));
      compared.push(c);
      const allowed = allowance(c);
      // A tolerance of nothing would hide a forgotten one; an exact integer comparison says abs: 1e-9 and why.
      expect(allowed, `${key(c)}: no tolerance given`).toBeGreaterThan(0);
      expect(Number.isFinite(c.ours), `${key(c)}: computed value is ${c.ours}`).toBe(true);
      // The last term only absorbs binary rounding of decimals such as 0.3 - 0.2.
      const difference = Math.abs(c.ours - c.published);
      expect(
        difference,
        `${key(c)} (${c.clause}): published ${c.published} ${c.unit}, computed ${c.ours}; ${c.tolerance.reason}`,
      ).toBeLessThanOrEqual(allowed + 1e-9 * Math.abs(c.published));
    },
    leaveOut(l) {
      claim(key(l));
      leftOut.push(l);
    },
    ids: () => new Set([...compared, ...leftOut].map((r) => r.id)),
  };
}
