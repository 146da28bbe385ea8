/**
 * Cheapest combination first, each worked out in full until one passes. A check that fails on a part shows that the options
 * the part is made of do not do: every combination with the same ones is passed over. That takes it that the rest of the
 * structure loads the part about alike; so at the end the next cheaper option of every choice is worked out in full, and
 * where it passes after all it is taken.
 */
import type { CheckResult } from '../checks/contract.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { Choice, Dimension, Option, Sized, Tools } from './model.js';
import { Queue } from './queue.js';

/** Combinations worked out at most. */
const MOST = 400;

interface Ranked {
  readonly dimension: Dimension;
  /** Cheapest first, each with its cost over the project as it is; what cannot be placed is left out. */
  readonly options: readonly { readonly option: Option; readonly extra: number }[];
}

interface Worked {
  readonly passes: boolean;
  readonly failing: readonly CheckResult[];
  readonly structure: Structure | undefined;
  readonly project: Project;
}

/** Options of some dimensions that do not do together. */
type Barred = readonly (readonly [dimension: number, option: number])[];

const isOpen = (r: CheckResult): boolean =>
  r.mandatory && (r.status === 'not-evaluated' || r.status === 'outside-scope');

function rank(project: Project, dimensions: readonly Dimension[], tools: Tools): Ranked[] {
  const placed = tools.place(project);
  const base = (placed && tools.cost(project, placed)) ?? 0;
  return dimensions.map((dimension) => ({
    dimension,
    options: dimension.options
      .flatMap((option) => {
        const p = option.apply(project);
        const s = tools.place(p);
        const cost = s && tools.cost(p, s);
        return cost === undefined ? [] : [{ option, extra: cost - base }];
      })
      .sort((a, b) => a.extra - b.extra),
  }));
}

export function searchSizes(project: Project, dimensions: readonly Dimension[], tools: Tools, most = MOST): Sized {
  const ranked = rank(project, dimensions, tools);
  const combinations = ranked.reduce((n, r) => n * r.options.length, 1);
  // What is open in the project as it is cannot be held against a size; anything more is.
  const open = tools.derive(project).results.filter(isOpen).length;
  let derived = 0;
  let pruned = 0;
  const work = (at: readonly number[]): Worked => {
    derived++;
    const p = at.reduce((q, i, k) => ranked[k]!.options[i]!.option.apply(q), project);
    const d = tools.derive(p);
    const failing = d.results.filter((r) => r.status === 'fail');
    const sound = d.structure !== undefined && d.issues.every((i) => i.severity !== 'error');
    const passes = sound && failing.length === 0 && d.results.filter(isOpen).length <= open;
    return { passes, failing, structure: d.structure, project: p };
  };
  const learn = (at: readonly number[], w: Worked): Barred[] => {
    const { structure } = w;
    if (!structure || w.failing.length === 0) return [at.map((i, k) => [k, i] as const)];
    return w.failing.map((r) => {
      const concerned = ranked.flatMap((x, k) =>
        x.dimension.concerns(r.subject, structure) ? [[k, at[k]!] as const] : [],
      );
      return concerned.length > 0 ? concerned : at.map((i, k) => [k, i] as const);
    });
  };

  const barred: Barred[] = [];
  const queue = new Queue();
  if (combinations > 0 && ranked.length > 0) {
    const at = ranked.map(() => 0);
    queue.push({ cost: ranked.reduce((s, r) => s + r.options[0]!.extra, 0), at, last: 0 });
  }
  let found: { at: readonly number[]; worked: Worked } | undefined;
  let finished = true;
  for (let e = queue.pop(); e !== undefined && !found; e = queue.pop()) {
    const { at } = e;
    if (barred.some((b) => b.every(([k, i]) => at[k] === i))) pruned++;
    else if (derived >= most) {
      finished = false;
      break;
    } else {
      const worked = work(at);
      if (worked.passes) {
        found = { at, worked };
        break;
      }
      barred.push(...learn(at, worked));
    }
    for (let k = e.last; k < at.length; k++) {
      const { options } = ranked[k]!;
      const next = at[k]! + 1;
      if (next >= options.length) continue;
      const raised = at.map((i, j) => (j === k ? next : i));
      queue.push({ cost: e.cost - options[at[k]!]!.extra + options[next]!.extra, at: raised, last: k });
    }
  }
  if (!found) return { combinations, derived, pruned, steps: [], finished };
  const settled = settle(found, ranked, work);
  return {
    combinations,
    derived,
    pruned,
    best: {
      choices: namesOf(settled.at, ranked),
      cost: tools.cost(settled.worked.project, settled.worked.structure!) ?? 0,
      project: settled.worked.project,
    },
    steps: settled.steps,
    finished,
  };
}

const namesOf = (at: readonly number[], ranked: readonly Ranked[]): Choice[] =>
  at.map((i, k) => ({ dimension: ranked[k]!.dimension.title, option: ranked[k]!.options[i]!.option.label }));

/** Tries the next cheaper option of each choice in full, until none of them passes. */
function settle(
  start: { at: readonly number[]; worked: Worked },
  ranked: readonly Ranked[],
  work: (at: readonly number[]) => Worked,
): { at: readonly number[]; worked: Worked; steps: Sized['steps'] } {
  let { at, worked } = start;
  for (;;) {
    const steps: { dimension: string; option: string; fails: string[] }[] = [];
    let better: { at: readonly number[]; worked: Worked } | undefined;
    for (const [k, r] of ranked.entries()) {
      if (at[k] === 0) continue;
      const lowered = at.map((i, j) => (j === k ? i - 1 : i));
      const w = work(lowered);
      if (w.passes) {
        better = { at: lowered, worked: w };
        break;
      }
      const words = w.failing.map((f) => `${f.title} of ${f.subject}`);
      steps.push({
        dimension: r.dimension.title,
        option: r.options[at[k]! - 1]!.option.label,
        fails: words.length > 0 ? words : ['it cannot be placed or judged'],
      });
    }
    if (!better) return { at, worked, steps };
    ({ at, worked } = better);
  }
}
