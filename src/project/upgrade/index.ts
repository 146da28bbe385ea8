/** Older files are brought to the present format by numbered steps, one after another; newer ones are refused. */
import type { Issue } from '../../base/issue.js';
import { fault } from '../issues.js';
import { VERSION_KEY } from '../schema/index.js';
import type { Node, ObjectNode } from '../text/node.js';
import { nestFinish } from './0001-nest-finish.js';
import type { UpgradeStep } from './step.js';

/** In order; step `n` takes a file of version `n` to `n + 1`. */
export const STEPS: readonly UpgradeStep[] = [nestFinish];
export const CURRENT_VERSION = STEPS.length;

export interface Upgraded {
  /** The root in the present format; undefined when this is no project or too new. */
  readonly root: ObjectNode | undefined;
  readonly issues: readonly Issue[];
}

export function upgrade(root: Node): Upgraded {
  const refuse = (issue: Issue): Upgraded => ({ root: undefined, issues: [issue] });
  const example = `{ "${VERSION_KEY}": ${CURRENT_VERSION}, "job": { … }, … }`;
  if (root.kind !== 'object') return refuse(fault('not-a-project', [], 'a project file holds one object', example));
  const key = root.members.get(VERSION_KEY)?.value;
  if (key === undefined) {
    return refuse(fault('not-a-project', [], `this is no project file: it has no key "${VERSION_KEY}"`, example));
  }
  const version = key.kind === 'scalar' ? key.value : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return refuse(
      fault(
        'wrong-type',
        [VERSION_KEY],
        'the format version is a whole number',
        `"${VERSION_KEY}": ${CURRENT_VERSION}`,
      ),
    );
  }
  if (version > CURRENT_VERSION) {
    const message = `this file is of format ${version}, written for a later version of the program; this one reads up to ${CURRENT_VERSION}`;
    return refuse(fault('newer-version', [VERSION_KEY], message, 'a later version of the program'));
  }
  const steps = STEPS.slice(version);
  for (const step of steps) step.apply(root);
  if (steps.length === 0) return { root, issues: [] };
  const message = `This file is of format ${version} and was read as ${CURRENT_VERSION}: ${steps.map((s) => s.summary).join('; ')}.`;
  return { root, issues: [{ code: 'upgraded', severity: 'note', path: `/${VERSION_KEY}`, message }] };
}
