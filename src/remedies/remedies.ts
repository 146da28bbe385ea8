/**
 * What would cure a failing check, found by trying: one value of the file is changed, everything is derived again, and the
 * change is kept when the check then passes. `derive` is handed in, so that nothing here runs the flow by itself.
 */
import type { CheckResult } from '../checks/contract.js';
import { editText, type TextEdit, treeOf } from '../project/edit.js';
import type { Derived } from '../report/derived.js';
import { type Beside, GROW, WORDS } from './grow.js';
import { targetsOf } from './targets.js';

export interface Remedy {
  /** `“beam”: depth 13 1/2 in`. */
  readonly text: string;
  readonly edits: readonly TextEdit[];
  /** Material added to the whole cover: wood, lb, and concrete, cubic feet. */
  readonly wood: number;
  readonly concrete: number;
  /** Ratio of the check afterwards. */
  readonly ratio: number;
  /** Results that failed and then pass, this one counted; results that passed and then fail. */
  readonly fixes: number;
  readonly breaks: number;
}

/** Pounds of lumber that a cubic foot of concrete counts as when remedies are ranked. By memory of prices, no source. */
const CONCRETE_AS_WOOD = 12;

const at = (tree: unknown, path: string): unknown =>
  path
    .split('/')
    .slice(1)
    .reduce<unknown>(
      (o, k) =>
        typeof o === 'object' && o !== null ? (o as Beside)[k.replaceAll('~1', '/').replaceAll('~0', '~')] : undefined,
      tree,
    );

interface Material {
  readonly wood: number;
  readonly concrete: number;
}

function material(d: Derived): Material {
  const { members = [], footings = [] } = d.structure ?? {};
  return {
    wood: members.reduce((s, m) => s + m.section.weight * m.length, 0),
    concrete: footings.reduce((s, f) => s + f.concrete, 0) / 1728,
  };
}

const failing = (d: Derived): ReadonlySet<string> =>
  new Set(d.results.filter((r) => r.status === 'fail').map((r) => r.id));

function judged(
  text: string,
  edits: readonly TextEdit[],
  id: string,
  before: Derived,
  derive: (t: string) => Derived,
): Omit<Remedy, 'text'> | undefined {
  const changed = editText(text, edits).value;
  if (changed === undefined) return undefined;
  const after = derive(changed);
  const result = after.results.find((r) => r.id === id);
  if (result?.status !== 'pass') return undefined;
  const [was, is] = [material(before), material(after)];
  const [f0, f1] = [failing(before), failing(after)];
  return {
    edits,
    wood: is.wood - was.wood,
    concrete: is.concrete - was.concrete,
    ratio: result.ratio,
    fixes: [...f0].filter((x) => !f1.has(x)).length,
    breaks: [...f1].filter((x) => !f0.has(x)).length,
  };
}

const rank = (r: Remedy): number => r.wood + CONCRETE_AS_WOOD * r.concrete + 1e4 * r.breaks;

/**
 * Single changes after which a failing result passes, those that add least material first; of each value only the least
 * that does. Empty when the result does not fail or nothing tried cures it.
 */
export function remediesOf(
  text: string,
  before: Derived,
  id: string,
  derive: (text: string) => Derived,
  most = 5,
): readonly Remedy[] {
  const { project, structure } = before;
  const result: CheckResult | undefined = before.results.find((r) => r.id === id);
  if (!project || !structure || result?.status !== 'fail') return [];
  const tree = treeOf(text);
  const found: Remedy[] = [];
  for (const target of targetsOf(result, project, structure)) {
    const object = at(tree, target.path);
    if (typeof object !== 'object' || object === null) continue;
    for (const [key, value] of Object.entries(object)) {
      const options = GROW[key]?.(value, object as Beside) ?? [];
      for (const next of options) {
        const edits = [{ path: `${target.path}/${key}`, value: next.value }];
        const cure = judged(text, edits, id, before, derive);
        if (!cure) continue;
        const word = WORDS[key] ?? key;
        found.push({ ...cure, text: `${target.what}: ${word === '' ? '' : `${word} `}${next.said}` });
        break;
      }
    }
  }
  return found.sort((a, b) => rank(a) - rank(b)).slice(0, most);
}
