/** The calculation text as data: what was given, what it led to, and the steps of the governing result of each check. */
import type { TraceLine } from '../base/trace.js';
import type { CheckResult } from '../checks/contract.js';
import { contextOf, type Derived } from './derived.js';
import { explainIn } from './explain.js';

export type CalculationBlock =
  | { readonly kind: 'heading'; readonly level: 1 | 2; readonly text: string }
  | { readonly kind: 'rows'; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | { readonly kind: 'steps'; readonly result: CheckResult; readonly steps: readonly TraceLine[] };

const figure = (x: number): string => {
  const r = Math.abs(x) >= 1000 ? Math.round(x) : Number(x.toPrecision(4));
  return String(r === 0 ? 0 : r);
};

/** Results with numbers, in the registry's order, each part once. */
const withSteps = (results: readonly CheckResult[]): readonly CheckResult[] =>
  results.filter((r) => r.status === 'pass' || r.status === 'fail');

/** All blocks; empty when the checks could not run. */
export function calculationBlocks(d: Derived): readonly CalculationBlock[] {
  const ctx = contextOf(d);
  if (!ctx) return [];
  const { project, loads, effects } = ctx;
  const blocks: CalculationBlock[] = [
    { kind: 'heading', level: 1, text: 'Given' },
    {
      kind: 'rows',
      head: ['What', 'Value'],
      rows: [
        ['Codes', `${project.basis.codes.residential}, ${project.basis.codes.building}`],
        ['Loads', `ASCE ${project.basis.codes.loads}`],
        ['Wood', project.basis.codes.wood],
        ['Concrete', project.basis.codes.concrete],
        ['Risk category', project.basis.riskCategory],
        ['Soil', `${project.basis.soil.description}, ${project.basis.soil.bearing.value} psf`],
        ...project.assumptions.map((a) => ['Assumed', `${a.text}: ${a.why}`]),
        ...project.questions.map((q) => ['Open question', `${q.text} Meanwhile: ${q.meanwhile}`]),
      ],
    },
    { kind: 'heading', level: 1, text: 'Load basis' },
    {
      kind: 'rows',
      head: ['Symbol', 'Meaning', 'Value', 'Unit', 'Clause'],
      rows: loads.basis.rows.map((r) => [
        r.symbol,
        r.meaning,
        figure(r.value),
        r.unit,
        r.provenance === 'memory' ? `${r.clause} (recalled: confirm)` : r.clause,
      ]),
    },
    { kind: 'heading', level: 1, text: 'Balance of loads and reactions' },
    {
      kind: 'rows',
      head: ['Case', 'Applied down, lb', 'Reactions down, lb', 'Difference'],
      rows: effects.balance.map((b) => [
        b.case,
        figure(-b.applied.z),
        figure(-b.reactions.z),
        Math.max(b.errorApplied, b.errorReactions).toFixed(6),
      ]),
    },
    { kind: 'heading', level: 1, text: 'Hand statics beside the analysis' },
    {
      kind: 'rows',
      head: ['About', 'Case', 'Statics', 'Analysed', 'Unit', 'Governs', 'Reason'],
      rows: effects.hand.map((h) => [
        h.about,
        h.case,
        figure(h.statics),
        figure(h.analysed),
        h.unit,
        h.governs,
        h.reason,
      ]),
    },
    { kind: 'heading', level: 1, text: 'Checks' },
  ];
  let check = '';
  for (const result of withSteps(d.results)) {
    if (result.check !== check) blocks.push({ kind: 'heading', level: 2, text: result.title });
    check = result.check;
    blocks.push({ kind: 'steps', result, steps: explainIn(ctx, result.id) });
  }
  return blocks;
}
