/** All computing happens off the page's own thread. What both workers can do; each adds its own and listens. */
import * as z from 'zod';
import {
  type Derived,
  derive,
  drawFirst,
  drawingInput,
  editsOf,
  editText,
  explain,
  FIRST_SHEET,
  type Handle,
  handlesOf,
  movesOf,
  nearestToLimit,
  parseLength,
  pathOf,
  type Sheet,
  STARTER_KINDS,
  type StarterKind,
  starter,
  treeOf,
  why,
} from '../../../src/drawing.js';
import type { Changed } from './answers.js';
import type { Call, PartRow, Quick, Reply, SheetRow, Shown, Summary } from './api.js';
import { notedEdits, typedFault } from './noted.js';
import { buffersOf, type PackedSheet, pack } from './pack.js';

// Building code at run time is what the page's Content Security Policy forbids.
z.config({ jitless: true });

export interface State {
  readonly text: string;
  readonly derived: Derived;
  readonly handles: readonly Handle[];
  /** Empty until all sheets are loaded and drawn. */
  index: readonly SheetRow[];
  set?: readonly Sheet[];
}

export const stateNow = (): State => now;

let now: State = {
  text: '',
  derived: { results: [], issues: [], verdict: { issuable: false, reasons: [] } },
  handles: [],
  index: [],
};
type Whole = typeof import('./whole.js');
/** What draws all sheets; undefined until it is loaded. */
let whole: Whole | undefined;
let bring: (() => Promise<Whole>) | undefined;
const loadWhole = async (): Promise<void> => {
  whole ??= await bring?.();
};
/** Hands over what draws all sheets, or the way to load it when it is first needed. */
export function know(w: Whole | (() => Promise<Whole>)): void {
  if (typeof w === 'function') bring = w;
  else whole = w;
}

/** Sheets of the state, all drawn once when first needed; before their makers are loaded, the first one alone. */
export function sheets(): readonly Sheet[] {
  if (now.set) return now.set;
  const input = drawingInput(now.derived);
  if (!input) return [];
  if (!whole) {
    const first = drawFirst(input);
    return first ? [first] : [];
  }
  now.set = whole.drawSet(input);
  now.index = now.set.map(({ id, title }) => ({ id, title }));
  return now.set;
}

const ROLES: Readonly<Record<string, string>> = { 'gable-truss': 'gable-end truss', strut: 'cross member' };

function partsOf(d: Derived): PartRow[] {
  const s = d.structure;
  if (!s) return [];
  const rows = [
    ...s.roofs.map((r) => ({ mark: r.mark, what: `roof ${r.mark}`, path: r.path })),
    ...s.members.map((m) => ({
      mark: m.mark,
      what: `${ROLES[m.role] ?? m.role.replaceAll('-', ' ')} ${m.mark}`,
      path: m.path,
    })),
    ...s.footings.map((f) => ({ mark: f.mark, what: `footing ${f.mark}`, path: f.path })),
    ...s.joints.map((j) => ({ mark: j.mark, what: `joint ${j.mark}, ${j.kind.replaceAll('-', ' ')}`, path: j.path })),
    ...(d.project?.cover.houseTies ?? []).map((t) => ({
      mark: t.mark,
      what: `tie ${t.mark} to the house`,
      path: t.path,
    })),
  ];
  return rows.filter((r, i) => r.mark !== '' && rows.findIndex((o) => o.mark === r.mark) === i);
}

function shown(sheet: string | undefined): Shown {
  const all = sheets();
  const one = all.find((s) => s.id === sheet) ?? all.find((s) => s.id === FIRST_SHEET) ?? all[0];
  return { index: all.map(({ id, title }) => ({ id, title })), sheet: one && pack(one), whole: whole !== undefined };
}

function summary(d: Derived, sheet: string | undefined, start: number): Summary {
  const { project, structure, lot } = d;
  return {
    ...shown(sheet),
    drawable: drawingInput(d) !== undefined,
    issues: d.issues,
    results: d.results,
    verdict: d.verdict,
    tree: treeOf(now.text),
    parts: partsOf(d),
    handles: now.handles.map(({ edits: _, ...h }) => h),
    questions: project?.questions ?? [],
    assumptions: project?.assumptions ?? [],
    title: project?.job.title ?? '',
    units: project?.job.units ?? 'us',
    lot:
      lot && structure
        ? {
            covered: lot.coverage.basis > 0 ? (lot.coverage.existing + lot.coverage.proposed) / lot.coverage.basis : 0,
            limit: lot.coverage.limit,
            distances: lot.distances.map((l) => ({ line: l.line, yard: l.yard, has: l.governing, needs: l.required })),
            highest: Math.max(...structure.roofs.map((r) => r.highestPoint)),
          }
        : undefined,
    took: performance.now() - start,
  };
}

function load(text: string): Derived {
  const derived = derive(text);
  const { project, structure } = derived;
  now = { text, derived, handles: project && structure ? handlesOf(project, structure) : [], index: [] };
  return derived;
}

const handleEdits = (id: string, by: number) => now.handles.find((h) => h.id === id)?.edits(by) ?? [];

const faults = (d: Derived) => d.issues.filter((i) => i.severity === 'error');

/** A change that would turn a file that draws into one that does not is handed back with the reason instead. */
function changed(o: ReturnType<typeof editText>): Changed {
  if (o.value === undefined || faults(now.derived).length > 0) return { text: o.value, issues: o.issues };
  const wrong = faults(derive(o.value));
  return wrong.length > 0 ? { text: undefined, issues: wrong, anyway: o.value } : { text: o.value, issues: [] };
}

export const quickApi: Quick = {
  async derive(text, sheet) {
    const start = performance.now();
    const derived = load(text);
    // A project without the sheet shown first waits for the others.
    if (sheets().length === 0) await loadWhole();
    return summary(derived, sheet, start);
  },
  async rest(sheet) {
    await loadWhole();
    return shown(sheet);
  },
  async sheet(id) {
    await loadWhole();
    const s = sheets().find((x) => x.id === id);
    return s && pack(s);
  },
  drag(handle, by, sheet) {
    const start = performance.now();
    const text = editText(now.text, handleEdits(handle, by)).value;
    const d = text === undefined ? now.derived : derive(text);
    const input = drawingInput(d);
    const drawn =
      input && (whole?.drawOne(input, sheet, { index: now.index }) ?? drawFirst(input, { index: now.index }));
    const near = nearestToLimit(d.results);
    return {
      sheet: drawn && pack(drawn),
      failing: d.results.filter((r) => r.status === 'fail').map((r) => `${r.title} ${r.subject}`),
      nearest: near && { title: near.title, subject: near.subject, ratio: near.ratio },
      issue: d.issues.find((i) => i.severity === 'error')?.message,
      took: performance.now() - start,
    };
  },
  moved: (handle, by) => changed(editText(now.text, handleEdits(handle, by))),
  edit: (text, edits) => changed(editText(text, edits)),
  noted(text, note) {
    const fault = typedFault(note);
    if (fault) return { text: undefined, issues: [{ code: 'bad-quantity', severity: 'error', path: '', ...fault }] };
    return changed(editText(text, notedEdits(treeOf(text), note)));
  },
  moves: (a, b, angle) => movesOf({ a, b, angle }, now.handles),
  dimension(move, from, typed) {
    const p = parseLength(typed);
    if (!p.ok)
      return {
        text: undefined,
        issues: [{ code: 'bad-quantity', severity: 'error', path: '', message: p.message, expected: p.expected }],
      };
    return changed(editText(now.text, editsOf(move, p.value - from, now.handles)));
  },
  why: (mark) => why(now.derived, mark),
  explain: (id) => ({ steps: explain(now.derived, id) }),
  path: (mark) => pathOf(now.derived, mark),
  starter: (kind) =>
    starter((STARTER_KINDS as readonly string[]).includes(kind) ? (kind as StarterKind) : 'gable-free'),
};

const packed = (v: unknown): PackedSheet | undefined => {
  if (typeof v !== 'object' || v === null) return undefined;
  if ('head' in v && 'boxes' in v) return v as PackedSheet;
  return 'sheet' in v ? packed((v as { sheet: unknown }).sheet) : undefined;
};

/** Answers calls by name, one after another. */
export function listen(api: object): void {
  self.onmessage = async ({ data }: MessageEvent<Call>) => {
    let reply: Reply;
    try {
      const run = (api as Record<string, (...args: readonly unknown[]) => unknown>)[data.name]!;
      reply = { id: data.id, value: await run(...data.args) };
    } catch (e) {
      reply = { id: data.id, fault: e instanceof Error ? `${e.message}\n${e.stack ?? ''}` : String(e) };
    }
    const sheet = packed(reply.value);
    const port = self as unknown as { postMessage(m: unknown, t: Transferable[]): void };
    port.postMessage(reply, sheet ? buffersOf(sheet) : []);
  };
}
