/** Which results stand on the calculation sheets: the table of what governs, the plain statements, the steps. */
import { formatNumber } from '../../base/quantity/index.js';
import type { TraceLine } from '../../base/trace.js';
import type { CheckResult } from '../../checks/contract.js';
import { markList } from '../../report/path/table.js';
import type { Block, TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

/** Figures as calculations print them: three or more that count, however small the number. */
export const value = (v: number): string => {
  const a = Math.abs(v);
  // Rounding of the arithmetic, not an answer.
  if (a < 1e-9) return '0';
  if (a < 1e-3) return v.toExponential(2);
  if (a < 0.1) return formatNumber(v, a < 0.01 ? 5 : 4, { trim: true });
  return formatNumber(v, a >= 1000 ? 0 : a >= 100 ? 1 : a >= 10 ? 2 : 3, { trim: true });
};

/** The sheet's face has no perpendicular sign: Fc⊥ is lettered Fc,perp. */
const lettered = (text: string): string => text.replaceAll('⊥', ',perp');

/** Parts that differ from mark to mark: schedules and load path name each one's ratio, so each one's steps are shown. */
const BY_MARK: ReadonlySet<string> = new Set([
  'joint-products',
  'joint-bearing',
  'truss-preliminary',
  'scissor-spread',
  'scissor-thrust',
]);

/** Has numbers worth a place: passed or failed, or worked out for information only (a truss that its plant designs). */
const counts = (r: CheckResult): boolean =>
  r.status === 'fail' || (r.capacity > 0 && (r.status === 'pass' || (r.status === 'not-applicable' && r.ratio > 0)));

/** Of results that ask the same question of equal parts, the one nearest its limit, joints and trusses each by its mark; in the registry's order. */
export function governing(results: readonly CheckResult[]): readonly CheckResult[] {
  const best = new Map<string, CheckResult>();
  for (const r of results) {
    if (!counts(r)) continue;
    const key = BY_MARK.has(r.check) ? r.id : `${r.check}|${r.path.replace(/\/\d+/g, '/#')}`;
    const known = best.get(key);
    if (!known || r.ratio > known.ratio) best.set(key, r);
  }
  return [...best.values()];
}

const steps = (lines: readonly TraceLine[]): number => lines.filter((l) => l.kind === 'step').length;

/**
 * True for a result that is counted or looked up, not calculated: a prescriptive least size, nothing of it used up, or whole
 * numbers compared in at most two steps.
 */
export const isStatement = (r: CheckResult, lines: readonly TraceLine[]): boolean =>
  r.status === 'pass' &&
  (r.prescriptive === true ||
    r.ratio < 5e-4 ||
    (Number.isInteger(r.demand) && Number.isInteger(r.capacity) && steps(lines) <= 2));

export interface Sorted {
  readonly calculated: readonly CheckResult[];
  readonly statements: readonly CheckResult[];
}

/** Calculated results and statements apart. */
export function sorted(ctx: SheetContext): Sorted {
  const all = governing(ctx.input.results);
  const statements = all.filter((r) => isStatement(r, ctx.input.explain(r.id)));
  const said = new Set(statements);
  return { calculated: all.filter((r) => !said.has(r)), statements };
}

/** A failed result without a capacity has no ratio worth printing. */
const ratio = (r: CheckResult): string => (r.capacity > 0 ? r.ratio.toFixed(2) : '');

const outcome = (r: CheckResult): string => (r.status === 'fail' ? `${ratio(r)} FAILS`.trim() : ratio(r));

/** Every calculated check once for each kind of part, before any step. */
export function governingTable({ calculated }: Sorted, note: number): Block {
  return {
    kind: 'table',
    title: 'What governs: demand over capacity, 1.00 is the limit',
    columns: [
      { head: 'Check', max: 30 * note },
      { head: 'Part' },
      { head: 'Ratio', align: 'right' },
      { head: 'Combination', max: 24 * note },
      { head: 'Clause', grow: true, max: 26 * note },
    ],
    rows: calculated.map(
      (r): TableRow => [
        r.title,
        { text: r.subject, path: r.path },
        { text: outcome(r), face: 'condensed-bold' },
        r.combination || '–',
        r.clause,
      ],
    ),
  };
}

/** The first step of a statement, every step of a rule of several least sizes, or the count where there is none but the ratio. */
function foundText(r: CheckResult, lines: readonly TraceLine[]): string {
  const all = lines.flatMap((l) => (l.kind === 'step' && l.symbol !== 'ratio' ? [l] : []));
  const said = r.prescriptive ? all : all.slice(0, 1);
  if (said.length === 0) return `${value(r.demand)} ${r.unit}`.trim();
  return said.map((l) => `${l.meaning}: ${value(l.value)} ${l.unit}`.trim()).join('; ');
}

/** What was counted or looked up and holds, parts alike on one row. */
export function statementsTable({ statements }: Sorted, ctx: SheetContext): Block {
  const groups = new Map<string, { readonly found: string; readonly all: CheckResult[] }>();
  for (const r of statements) {
    const found = foundText(r, ctx.input.explain(r.id));
    const key = `${r.title}|${r.clause}|${value(r.demand)}|${value(r.capacity)}|${found}`;
    const known = groups.get(key);
    if (known) known.all.push(r);
    else groups.set(key, { found, all: [r] });
  }
  const rows = [...groups.values()].map(({ found, all: group }): TableRow => {
    const r = group[0]!;
    return [r.title, markList(group.map((g) => g.subject)), lettered(found), r.clause];
  });
  return {
    kind: 'table',
    title: 'Counted or looked up, and found in order',
    columns: [
      { head: 'Question', max: 26 * ctx.style.note },
      { head: 'Of' },
      { head: 'Found', max: 30 * ctx.style.note },
      { head: 'Clause', grow: true },
    ],
    rows,
  };
}

const STATUS: Readonly<Partial<Record<CheckResult['status'], string>>> = {
  fail: 'FAILS',
  'not-applicable': 'for information',
};

/** Heading, governing combination and steps of one result. */
export function stepsOf(ctx: SheetContext, r: CheckResult): Block[] {
  const status = STATUS[r.status] ?? 'passes';
  const out: Block[] = [
    { kind: 'heading', text: `${r.subject} – ${r.title}: ${[ratio(r), status].filter(Boolean).join(', ')}` },
  ];
  if (r.combination) out.push({ kind: 'para', text: `Combination ${r.combination}`, face: 'condensed', keep: true });
  for (const line of ctx.input.explain(r.id)) {
    if (line.kind === 'heading') {
      out.push({ kind: 'para', text: lettered(line.text), face: 'condensed-bold', keep: true });
      continue;
    }
    const middle = line.substituted && line.substituted !== line.formula ? ` = ${line.substituted}` : '';
    out.push({
      kind: 'step',
      symbol: lettered(line.symbol),
      meaning: lettered(line.note ? `${line.meaning} (${line.note})` : line.meaning),
      expression: lettered(`${line.formula}${middle} = ${value(line.value)} ${line.unit}`.trim()),
      clause: lettered(line.clause),
    });
  }
  if (r.note) out.push({ kind: 'para', text: lettered(r.note), face: 'condensed' });
  return out;
}
