/** All computing happens off the page's own thread. What both workers can do; each adds its own and listens. */
import * as z from 'zod';
import {
  type Derived,
  derive,
  drawingInput,
  drawOne,
  drawSet,
  editsOf,
  editText,
  explain,
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
} from '../../../src/index.js';
import type { Changed } from './answers.js';
import type { Call, PartRow, Quick, Reply, Summary } from './api.js';
import { notedEdits, typedFault } from './noted.js';
import { buffersOf, type PackedSheet, pack } from './pack.js';

// Building code at run time is what the page's Content Security Policy forbids.
z.config({ jitless: true });

export interface State {
  readonly text: string;
  readonly derived: Derived;
  readonly handles: readonly Handle[];
  readonly index: readonly { readonly id: string; readonly title: string }[];
  set?: readonly Sheet[];
}

export const stateNow = (): State => now;

let now: State = {
  text: '',
  derived: { results: [], issues: [], verdict: { issuable: false, reasons: [] } },
  handles: [],
  index: [],
};
let _version = 0;

/** Sheets of the state, all drawn once when first needed. */
export function sheets(): readonly Sheet[] {
  if (!now.set) {
    const input = drawingInput(now.derived);
    now.set = input ? drawSet(input) : [];
  }
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

function summary(d: Derived, sheet: string | undefined, start: number): Summary {
  const { project, structure, lot } = d;
  const all = sheets();
  const shown = all.find((s) => s.id === sheet) ?? all.find((s) => s.id === 'S-101') ?? all[0];
  return {
    drawable: all.length > 0,
    issues: d.issues,
    results: d.results,
    verdict: d.verdict,
    index: now.index,
    sheet: shown && pack(shown),
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
  _version++;
  const index = sheets().map(({ id, title }) => ({ id, title }));
  now = { ...now, index };
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
  derive(text, sheet) {
    const start = performance.now();
    return summary(load(text), sheet, start);
  },
  sheet(id) {
    const s = sheets().find((x) => x.id === id);
    return s && pack(s);
  },
  drag(handle, by, sheet) {
    const start = performance.now();
    const text = editText(now.text, handleEdits(handle, by)).value;
    const d = text === undefined ? now.derived : derive(text);
    const input = drawingInput(d);
    const drawn = input && drawOne(input, sheet, { index: now.index });
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
