/** The linear and the integer model over patterns, as LP text, and column generation on the first. */
import type { Solve, SolveAnswer } from './model.js';
import { bestFills, type Pattern, patternKey } from './patterns.js';
import type { Ticked } from './ticks.js';

/** Numbers in LP text: plain decimals, no exponent. */
const num = (x: number): string => x.toFixed(9).replace(/\.?0+$/, '');

export function modelText(t: Ticked, patterns: readonly Pattern[], whole: boolean): string {
  const cost = patterns.map((p, j) => `${num(t.stock[p.stock]!.stock.cost)} x${j}`);
  const rows = t.kinds.map((k, i) => {
    const terms = patterns.flatMap((p, j) => (p.counts[i]! > 0 ? [`${p.counts[i]} x${j}`] : []));
    return ` c${i}: ${wrapped(terms)} >= ${k.cuts.length}`;
  });
  const names = patterns.map((_, j) => `x${j}`);
  return [
    'Minimize',
    ` cost: ${wrapped(cost)}`,
    'Subject To',
    ...rows,
    ...(whole ? ['General', ...chunks(names, 20).map((c) => ` ${c.join(' ')}`)] : []),
    'End',
    '',
  ].join('\n');
}

const chunks = <T>(list: readonly T[], n: number): T[][] =>
  Array.from({ length: Math.ceil(list.length / n) }, (_, i) => list.slice(n * i, n * i + n));

/** The format's readers limit the length of a line. */
const wrapped = (terms: readonly string[]): string =>
  chunks(terms, 12)
    .map((c) => c.join(' + '))
    .join('\n  + ');

/** Rounds of new patterns; every one improves the linear model, so few are needed. */
const ROUNDS = 400;

export interface Generated {
  readonly patterns: readonly Pattern[];
  /** Value of the linear model when no further pattern can improve it; undefined when the rounds ran out. */
  readonly bound: number | undefined;
}

/** Adds to the given patterns those the linear model asks for. Undefined when the solver gave no answer. */
export function generate(t: Ticked, start: readonly Pattern[], solve: Solve): Generated | undefined {
  const patterns = [...start];
  const known = new Set(patterns.map(patternKey));
  const limits = t.kinds.map((k) => k.cuts.length);
  for (let round = 0; round < ROUNDS; round++) {
    const answer = solve(modelText(t, patterns, false), { nodes: 1, gap: 0 });
    if (!answer?.optimal || answer.duals.length !== t.kinds.length) return undefined;
    let added = 0;
    for (const [stock, fill] of bestFills(t, answer.duals, limits).entries()) {
      const { cost } = t.stock[stock]!.stock;
      const pattern = { stock, counts: fill.counts };
      if (fill.value <= cost * (1 + 1e-7) || known.has(patternKey(pattern))) continue;
      known.add(patternKey(pattern));
      patterns.push(pattern);
      added++;
    }
    if (added === 0) return { patterns, bound: answer.objective };
  }
  return { patterns, bound: undefined };
}

/** Whole numbers of boards by pattern, checked to give every piece; undefined when the answer does not. */
export function wholePlan(t: Ticked, patterns: readonly Pattern[], answer: SolveAnswer): Pattern[] | undefined {
  const plan: Pattern[] = [];
  const made = t.kinds.map(() => 0);
  for (const [j, p] of patterns.entries()) {
    const n = answer.values[`x${j}`] ?? 0;
    const times = Math.round(n);
    if (Math.abs(n - times) > 1e-5) return undefined;
    for (let k = 0; k < times; k++) plan.push(p);
    p.counts.forEach((c, i) => {
      made[i]! += c * times;
    });
  }
  return t.kinds.every((k, i) => made[i]! >= k.cuts.length) ? plan : undefined;
}
