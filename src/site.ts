/**
 * The work on the site from what was derived: stake-out, stage cards, and the flow run a second time with what was measured.
 * As-built measures are adjusted between read and place: once as designed, once as measured, never in a loop.
 */
import type { Issue } from './base/issue.js';
import { jointDemands } from './checks/joints/demands.js';
import { deriveProject } from './derive.js';
import type { Sheet } from './drawings/ir/index.js';
import { stageSheets, stakeSheets } from './drawings/sitework/index.js';
import type { Project } from './project/index.js';
import { contextOf, type Derived } from './report/derived.js';
import {
  type ApprovalStep,
  type AsBuilt,
  approvalsOf,
  asBuiltOf,
  asMeasured,
  type Change,
  changesBetween,
  csvLine,
  type Layout,
  layoutOf,
  type Rerun,
  rerunOf,
  type Sequence,
  type StageCard,
  sequenceOf,
  stageCards,
  stakeCsv,
} from './sitework/index.js';

export interface Stake {
  readonly layout: Layout;
  readonly csv: string;
  readonly sheets: readonly Sheet[];
}

/** Undefined when no structure could be placed. */
export function stakeOf(d: Derived): Stake | undefined {
  const { project, structure } = d;
  if (!project || !structure) return undefined;
  const layout = layoutOf(structure);
  const run = asBuiltRun(d);
  return {
    layout,
    csv: stakeCsv(layout, project),
    sheets: stakeSheets({
      project,
      structure,
      north: d.lot?.north,
      built: run?.built,
      second: run && { ...run.measured.verdict, changed: run.changed },
      issuable: d.verdict.issuable,
    }),
  };
}

export interface Stages {
  readonly cards: readonly StageCard[];
  readonly sequence: Sequence;
  readonly approvals: readonly ApprovalStep[];
  readonly changes?: readonly Change[] | undefined;
  readonly csv: string;
  readonly sheets: readonly Sheet[];
}

/** `today` is a date, for the clock of the permits; `approved` the project as it was approved, to tell what changed. */
export function stagesOf(
  d: Derived,
  o: { readonly today?: string; readonly approved?: Project } = {},
): Stages | undefined {
  const { project, structure, lot } = d;
  if (!project || !structure) return undefined;
  const ctx = contextOf(d);
  const built = asBuiltOf(project, structure).value;
  const cards = stageCards({ project, structure, lot, built, demands: ctx ? jointDemands(ctx) : [] });
  const sequence = sequenceOf(project, structure);
  const approvals = approvalsOf(project, structure, o.today);
  const changes = o.approved && changesBetween(o.approved, project);
  return {
    cards,
    sequence,
    approvals,
    changes,
    csv: cardsCsv(cards),
    sheets: stageSheets({ project, cards, sequence, approvals, changes, issuable: d.verdict.issuable }),
  };
}

/** Every line to tick of every card, as the log has it. */
function cardsCsv(cards: readonly StageCard[]): string {
  const rows = cards.flatMap((c) => {
    const filled = new Map(c.log.flatMap((l) => l.items).map((i) => [i.item, i]));
    const strangers = [...filled.keys()]
      .filter((k) => c.items.every((i) => i.id !== k))
      .map((id) => ({ id, text: '' }));
    return [...c.items, ...strangers].map((i) => {
      const f = filled.get(i.id);
      return [c.id, c.result, i.id, i.text, f?.done ? 'yes' : 'no', f?.measured ?? '', f?.note ?? '', f?.photo ?? ''];
    });
  });
  return [['stage', 'result', 'item', 'what', 'done', 'measured', 'note', 'photo'], ...rows].map(csvLine).join('');
}

export interface AsBuiltRun {
  readonly built: AsBuilt;
  /** The flow run with what was measured. */
  readonly measured: Derived;
  readonly changed: readonly Rerun[];
  readonly issues: readonly Issue[];
}

/** Undefined when nothing was measured, or no structure could be placed. */
export function asBuiltRun(d: Derived): AsBuiltRun | undefined {
  const { project, structure } = d;
  if (!project || !structure) return undefined;
  const { value: built, issues } = asBuiltOf(project, structure);
  if (!built) return undefined;
  const measured = deriveProject(asMeasured(project, structure));
  return { built, measured, changed: rerunOf(d.results, measured.results), issues };
}
