/**
 * What is kept on this machine: every state of every project. A save writes only what changed, in one transaction, and is
 * refused when another tab has saved since: nobody's work is overwritten silently.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Entry, History } from './history.js';

export interface ProjectRow {
  readonly id: string;
  readonly title: string;
  /** Counts every save. */
  readonly revision: number;
  readonly at: number;
  readonly count: number;
  readonly changed: number;
}

interface Schema extends DBSchema {
  projects: { key: string; value: ProjectRow };
  entries: { key: [string, number]; value: Entry & { readonly project: string; readonly n: number } };
}

const NAME = 'eavewright';
let opening: Promise<IDBPDatabase<Schema>> | undefined;

function db(): Promise<IDBPDatabase<Schema>> {
  opening ??= openDB<Schema>(NAME, 1, {
    upgrade(d) {
      d.createObjectStore('projects', { keyPath: 'id' });
      d.createObjectStore('entries', { keyPath: ['project', 'n'] });
    },
  });
  return opening;
}

export type Saved =
  | { readonly ok: true; readonly revision: number }
  | { readonly ok: false; readonly theirs: ProjectRow | undefined };

/** Keeps a history; `known` is the revision this tab last saw, 0 for a new project; `same` leading entries are kept already. */
export async function save(
  id: string,
  title: string,
  h: History,
  known: number,
  same: number,
  now: number,
): Promise<Saved> {
  const t = (await db()).transaction(['projects', 'entries'], 'readwrite');
  const row = await t.objectStore('projects').get(id);
  if ((row?.revision ?? 0) !== known) {
    t.abort();
    await t.done.catch(() => {});
    return { ok: false, theirs: row };
  }
  const entries = t.objectStore('entries');
  for (let n = Math.min(same, h.entries.length); n < h.entries.length; n++) {
    void entries.put({ ...h.entries[n]!, project: id, n });
  }
  if (row && row.count > h.entries.length)
    void entries.delete(IDBKeyRange.bound([id, h.entries.length], [id, row.count]));
  const revision = known + 1;
  void t.objectStore('projects').put({ id, title, revision, at: h.at, count: h.entries.length, changed: now });
  await t.done;
  return { ok: true, revision };
}

export async function load(id: string): Promise<{ row: ProjectRow; history: History } | undefined> {
  const d = await db();
  const row = await d.get('projects', id);
  if (!row) return undefined;
  const kept = await d.getAll('entries', IDBKeyRange.bound([id, 0], [id, row.count]));
  if (kept.length === 0) return undefined;
  const entries = kept.map(({ project: _p, n: _n, ...e }): Entry => e);
  return { row, history: { entries, at: Math.min(row.at, entries.length - 1) } };
}

export async function list(): Promise<ProjectRow[]> {
  const rows = await (await db()).getAll('projects');
  return rows.sort((a, b) => b.changed - a.changed);
}

export async function remove(id: string): Promise<void> {
  const t = (await db()).transaction(['projects', 'entries'], 'readwrite');
  void t.objectStore('projects').delete(id);
  void t.objectStore('entries').delete(IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]));
  await t.done;
}
