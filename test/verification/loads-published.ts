/** Published comparisons of loads and foundations: each number below comes from the data file, never from the test. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Suite, Tolerance } from './record.js';

interface Published {
  readonly id: string;
  readonly source: string;
  readonly where: string;
  readonly provenance: 'read' | 'memory';
  readonly expected: unknown;
}

const DATA = JSON.parse(readFileSync(join(import.meta.dirname, 'data/loads.json'), 'utf8')) as readonly Published[];

/** The published number at a path of the check's `expected` part. */
export function publishedNumber(id: string, path: readonly (string | number)[]): number {
  let at: unknown = find(id).expected;
  for (const key of path) at = (at as Record<string | number, unknown>)[key];
  if (typeof at !== 'number') throw new Error(`${id}: no published number at ${path.join('.')}`);
  return at;
}

function find(id: string): Published {
  const check = DATA.find((c) => c.id === id);
  if (!check) throw new Error(`no published check ${id}`);
  return check;
}

export interface Asked {
  readonly clause: string;
  readonly tolerance: Tolerance;
  readonly unit: string;
  readonly note?: string;
}

/** Compares `ours` with the number at `path` (dotted, array indices as numbers) of check `id`. */
export function against(suite: Suite, id: string, path: string, ours: number, asked: Asked): void {
  const keys = path.split('.').map((k) => (/^\d+$/.test(k) ? Number(k) : k));
  const { source, where, provenance: from } = find(id);
  // A published formula evaluated by us is no published number.
  const provenance = where.includes('arithmetic done here') ? 'hand' : from;
  suite.compare({
    id,
    quantity: path,
    source,
    where,
    provenance,
    published: publishedNumber(id, keys),
    ours,
    ...asked,
  });
}

export const leaveOut = (suite: Suite, id: string, clause: string, reason: string): void =>
  suite.leaveOut({ id, clause, source: find(id).source, reason });

/** Ids of the whole file, to show that none was forgotten. */
export const PUBLISHED_IDS: readonly string[] = DATA.map((c) => c.id);

/** For numbers that must agree to the last digit; the sliver only admits binary rounding. */
export const EXACT: Tolerance = { abs: 1e-9, reason: 'a printed coefficient or limit: exact' };

/** A tolerance with its reason. */
export const within = (abs: number, reason: string): Tolerance => ({ abs, reason });
export const withinShare = (rel: number, reason: string): Tolerance => ({ rel, reason });
