/** Notes of the site as changes of the project file: only what was noted is rewritten, the rest of the file stays as it is. */
import { parseLength, type TextEdit } from '../../../src/drawing.js';
import type { Noted } from './work-api.js';

type Of<K extends Noted['what']> = Extract<Noted, { what: K }>;

interface WrittenItem {
  readonly item?: string;
  readonly done?: boolean;
  readonly measured?: string;
  readonly note?: string;
  readonly photo?: string;
}
interface WrittenVisit {
  readonly stage?: string;
  readonly date?: string;
  readonly result?: string;
  readonly items?: readonly WrittenItem[];
}
interface WrittenReading {
  readonly kind?: string;
  readonly from?: string;
  readonly to?: string;
}
interface WrittenPrice {
  readonly item?: string;
  readonly unit?: string;
}
interface Tree {
  readonly prices?: readonly WrittenPrice[];
  readonly log?: {
    readonly inspections?: readonly WrittenVisit[];
    readonly asBuilt?: { readonly readings?: readonly WrittenReading[] };
  };
}

/** Empty words are left out of the file, not written as nothing. */
const filled = (o: object): object => Object.fromEntries(Object.entries(o).filter(([, v]) => v !== ''));
const put = (at: string, o: object): TextEdit[] =>
  Object.entries(o).map(([key, value]) => ({ path: `${at}/${key}`, ...(value === '' ? {} : { value }) }));

const isClosed = (v: WrittenVisit): boolean => v.result === 'failed' || v.result === 'partial';

/**
 * The visit that a note belongs to: the last of its stage. After one that was failed or passed in part the next note begins
 * a new visit, so that the log keeps what was said before.
 */
function visitOf(tree: Tree, stage: string): number | undefined {
  const visits = tree.log?.inspections ?? [];
  const last = visits.findLastIndex((v) => v.stage === stage);
  return last < 0 || isClosed(visits[last]!) ? undefined : last;
}

const begun = (stage: string, date: string, more: object): TextEdit => ({
  path: '/log/inspections/-',
  value: { stage, date, result: 'pending', ...more },
});

function item(tree: Tree, { stage, item: id, today, set }: Of<'item'>): TextEdit[] {
  const visits = tree.log?.inspections ?? [];
  const before = visits
    .filter((v) => v.stage === stage)
    .flatMap((v) => v.items ?? [])
    .findLast((i) => i.item === id);
  const whole = filled({ done: false, ...before, item: id, ...set });
  const at = visitOf(tree, stage);
  if (at === undefined) return [begun(stage, today, { items: [whole] })];
  const items = visits[at]!.items ?? [];
  const row = items.findLastIndex((i) => i.item === id);
  if (row < 0) return [{ path: `/log/inspections/${at}/items/-`, value: whole }];
  return put(`/log/inspections/${at}/items/${row}`, set);
}

/**
 * What the inspector said. On the day of a visit it corrects that visit; on a later day another verdict than failed or passed
 * in part is a visit of its own.
 */
function visit(tree: Tree, { stage, today, set }: Of<'visit'>): TextEdit[] {
  const visits = tree.log?.inspections ?? [];
  const at = visits.findLastIndex((v) => v.stage === stage);
  const last = visits[at];
  if (!last) return [begun(stage, today, filled(set))];
  const other = set.result !== undefined && set.result !== last.result;
  if (other && isClosed(last) && last.date !== today) return [begun(stage, today, filled(set))];
  const dated = other && !last.date ? { date: today } : {};
  return put(`/log/inspections/${at}`, { ...dated, ...set });
}

function reading(tree: Tree, n: Of<'reading'>): TextEdit[] {
  const all = tree.log?.asBuilt?.readings ?? [];
  const alike = all.flatMap((r, i) => (r.kind === n.kind && r.from === n.from && r.to === n.to ? [i] : []));
  const at = alike[n.nth];
  const base = '/log/asBuilt/readings';
  if (n.typed === '') return at === undefined ? [] : [{ path: `${base}/${at}` }];
  const { kind, from, to, typed: value, today: date, instrument } = n;
  if (at !== undefined) return put(`${base}/${at}`, { value, date, instrument });
  return [{ path: `${base}/-`, value: { kind, ...(from === undefined ? {} : { from }), to, value, date, instrument } }];
}

function price(tree: Tree, n: Of<'price'>): TextEdit[] {
  const at = (tree.prices ?? []).findLastIndex((p) => p.item === n.item && p.unit === n.unit);
  if (n.typed === '') return at < 0 ? [] : [{ path: `/prices/${at}` }];
  const value = Number(n.typed);
  if (at >= 0) return [{ path: `/prices/${at}/price`, value }];
  return [{ path: '/prices/-', value: { item: n.item, unit: n.unit, price: value } }];
}

const KINDS: { readonly [K in Noted['what']]: (tree: Tree, n: Of<K>) => TextEdit[] } = {
  item,
  visit,
  reading,
  price,
  prices: (_, n) => [{ path: '/prices', value: n.rows }],
};

/** What is wrong with what was typed; undefined when it can be written. */
export function typedFault(n: Noted): { readonly message: string; readonly expected: string } | undefined {
  if (n.what === 'reading' && n.typed !== '') {
    const p = parseLength(n.typed);
    return p.ok ? undefined : p;
  }
  if (n.what === 'price' && n.typed !== '' && !/^\d+(\.\d+)?$/.test(n.typed))
    return { message: `"${n.typed}" is not a price`, expected: 'a number, e.g. 21.50' };
  return undefined;
}

/** @param tree the file as plain data, as it is before the note */
export const notedEdits = (tree: unknown, n: Noted): readonly TextEdit[] =>
  (KINDS[n.what] as (tree: Tree, n: Noted) => TextEdit[])((tree ?? {}) as Tree, n);
