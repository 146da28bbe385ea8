/** The project on the desk: its history, what was derived from it, and how it is kept. */
import { create } from 'zustand';
import type { TextEdit } from '../../../src/index.js';
import type { Changed, Live, Summary } from '../core/api.js';
import { quick } from '../core/client.js';
import { latest } from '../core/latest.js';
import { useDesk } from './desk.js';
import { begun, committed, type Entry, type History, moved, named, present } from './history.js';
import * as storage from './storage.js';

export interface Notice {
  readonly text: string;
  readonly tone: 'note' | 'problem';
  readonly actions?: readonly { readonly label: string; readonly run: () => void }[];
}

interface ProjectState {
  readonly id: string | undefined;
  readonly history: History | undefined;
  readonly summary: Summary | undefined;
  /** The sheet while something is dragged, and what the checks say of it. */
  readonly live: Live | undefined;
  readonly busy: boolean;
  readonly saved: 'saved' | 'saving' | 'not-kept' | 'conflict';
  readonly revision: number;
  readonly notice: Notice | undefined;
}

export const useProject = create<ProjectState>(() => ({
  id: undefined,
  history: undefined,
  summary: undefined,
  live: undefined,
  busy: false,
  saved: 'saved',
  revision: 0,
  notice: undefined,
}));

const set = useProject.setState;
const get = useProject.getState;

export const say = (text: string, tone: Notice['tone'] = 'note', actions?: Notice['actions']): void =>
  set({ notice: { text, tone, ...(actions ? { actions } : {}) } });
export const hush = (): void => set({ notice: undefined });

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('eavewright');
interface Heard {
  readonly id: string;
  readonly revision: number;
}
if (channel)
  channel.onmessage = ({ data }: MessageEvent<Heard>) => {
    const { id, revision } = get();
    if (data.id !== id || data.revision <= revision) return;
    set({ saved: 'conflict' });
    say('This project was changed in another tab.', 'problem', [
      { label: 'Show that change', run: () => void open(data.id) },
      { label: 'Keep mine as a copy', run: () => void copy() },
    ]);
  };

const derive = latest(async (text: string) => quick.call('derive', text, useDesk.getState().sheet));

async function show(): Promise<void> {
  const { history } = get();
  if (!history) return;
  const text = present(history).text;
  const wished = useDesk.getState().sheet;
  set({ busy: true });
  const summary = await derive(text);
  if (!summary) return;
  set({ summary, live: undefined, busy: !summary.whole });
  if (summary.sheet) useDesk.getState().sheetDrawn(summary.sheet.id);
  if (!summary.whole) await showRest(summary, text, wished);
}

/** The first sheet is on the desk: the others follow, unless the project has changed meanwhile and brings its own. */
async function showRest(summary: Summary, text: string, wished: string | undefined): Promise<void> {
  const rest = await quick.call('rest', wished);
  if (get().summary !== summary || textNow() !== text) return;
  set({ summary: { ...summary, ...rest }, busy: false });
  if (rest.sheet) useDesk.getState().sheetDrawn(rest.sheet.id);
}

let keeping: Promise<void> = Promise.resolve();
let same = 0;

/** Saves follow one another; each is a transaction, so a killed tab leaves the last whole one. */
function keep(from: number): void {
  same = Math.min(same, from);
  keeping = keeping.then(async () => {
    const { id, history, revision, saved } = get();
    if (!id || !history || saved === 'conflict') return;
    set({ saved: 'saving' });
    try {
      const title = titleOf(present(history).text);
      const r = await storage.save(id, title, history, revision, same, Date.now());
      if (!r.ok) {
        set({ saved: 'conflict' });
        say('Another tab has saved this project since. Yours is not written over it.', 'problem', [
          { label: 'Show the other', run: () => void open(id) },
          { label: 'Keep mine as a copy', run: () => void copy() },
        ]);
        return;
      }
      same = history.entries.length;
      set({ saved: 'saved', revision: r.revision });
      channel?.postMessage({ id, revision: r.revision } satisfies Heard);
    } catch {
      set({ saved: 'not-kept' });
    }
  });
}

const titleOf = (text: string): string =>
  /"title"\s*:\s*"((?:[^"\\]|\\.)*)"/.exec(text)?.[1]?.replaceAll('\\"', '"') ?? 'Untitled';
const entry = (name: string, text: string): Entry => ({ name, text, when: Date.now() });

/** Puts a text on the desk as a new project. */
export async function begin(text: string, name: string): Promise<void> {
  const id = crypto.randomUUID();
  same = 0;
  set({ id, history: begun(entry(name, text)), revision: 0, saved: 'saved', summary: undefined, notice: undefined });
  location.hash = `p=${id}`;
  keep(0);
  await show();
}

/** Opens a project kept on this machine. */
export async function open(id: string): Promise<boolean> {
  const found = await storage.load(id).catch(() => undefined);
  if (!found) return false;
  same = found.history.entries.length;
  set({ id, history: found.history, revision: found.row.revision, saved: 'saved', notice: undefined });
  location.hash = `p=${id}`;
  await show();
  return true;
}

/** Clears the desk; what lay on it is kept. */
export function putAway(): void {
  history.replaceState(null, '', location.pathname + location.search);
  set({ id: undefined, history: undefined, summary: undefined, live: undefined, notice: undefined });
  useDesk.setState({
    picked: undefined,
    result: undefined,
    field: undefined,
    main: 'sheets',
    panel: 'start',
    sheet: undefined,
  });
}

/** Goes on under a new name, leaving the project as the other tab has it. */
export async function copy(): Promise<void> {
  const { history } = get();
  if (!history) return;
  same = 0;
  const id = crypto.randomUUID();
  set({ id, revision: 0, saved: 'saved', notice: undefined });
  location.hash = `p=${id}`;
  keep(0);
}

export async function change(name: string, text: string): Promise<void> {
  const { history } = get();
  if (!history || present(history).text === text) return;
  const next = committed(history, entry(name, text));
  set({ history: next });
  keep(history.at + 1);
  await show();
}

/** Changes values of the file; says so when it cannot. */
export async function edit(name: string, edits: readonly TextEdit[]): Promise<boolean> {
  return applied(name, await quick.call('edit', textNow(), edits));
}

export async function applied(name: string, c: Changed): Promise<boolean> {
  if (c.text === undefined) {
    const i = c.issues[0];
    const { anyway } = c;
    say(
      i
        ? `Not changed: ${i.message} ${i.expected ? `What would be right: ${i.expected}` : ''}`
        : 'That could not be changed.',
      'problem',
      anyway === undefined
        ? undefined
        : [{ label: 'Change it anyway', run: () => void change(name, anyway).then(hush) }],
    );
    return false;
  }
  // What another tab did stays said until it is settled.
  if (get().saved !== 'conflict') hush();
  await change(name, c.text);
  return true;
}

export function goTo(at: number): void {
  const { history } = get();
  if (!history) return;
  const next = moved(history, at);
  if (next === history) return;
  set({ history: next });
  keep(next.entries.length);
  void show();
}
export const undo = (): void => goTo((get().history?.at ?? 0) - 1);
export const redo = (): void => goTo((get().history?.at ?? 0) + 1);

export function nameVersion(version: string): void {
  const { history } = get();
  if (!history) return;
  set({ history: named(history, version) });
  keep(history.at);
}

/** The text now on the desk. */
export const textNow = (): string => {
  const { history } = get();
  return history ? present(history).text : '';
};

const dragCall = latest((handle: string, by: number, sheet: string) => quick.call('drag', handle, by, sheet));

/** One frame of dragging: asks for the sheet as it would be. */
export async function dragTo(handle: string, by: number, sheet: string): Promise<void> {
  const start = performance.now();
  const live = await dragCall(handle, by, sheet);
  if (!live) return;
  set({ live });
  performance.measure('drag-sheet', { start });
}

export async function drop(handle: string, by: number, name: string): Promise<void> {
  const ok = by !== 0 && (await applied(name, await quick.call('moved', handle, by)));
  if (!ok) set({ live: undefined });
}

/** Asks for another sheet of the same state. */
export async function showSheet(id: string): Promise<void> {
  const sheet = await quick.call('sheet', id);
  const { summary } = get();
  if (sheet && summary) set({ summary: { ...summary, sheet }, live: undefined });
}

export const whenKept = (): Promise<void> => keeping;
