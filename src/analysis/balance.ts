/** Sum of loads, the same from the project's own geometry, and sum of reactions: the three must agree case by case. */
import type { Issue } from '../base/issue.js';
import type { Vec3 } from '../base/vec.js';
import type { Balance } from './model.js';

/** Relative difference above which the load path is not closed. */
export const BALANCE_LIMIT = 1e-6;

const largest = (v: Vec3): number => Math.max(Math.abs(v.x), Math.abs(v.y), Math.abs(v.z));
const apart = (a: Vec3, b: Vec3): number =>
  largest({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z }) / Math.max(largest(a), largest(b), 1);

export const balanceOf = (id: string, applied: Vec3, integral: Vec3, reactions: Vec3): Balance => ({
  case: id,
  applied,
  integral,
  reactions,
  errorApplied: apart(applied, integral),
  errorReactions: apart(applied, reactions),
});

const text = (v: Vec3): string => `(${v.x.toFixed(2)}, ${v.y.toFixed(2)}, ${v.z.toFixed(2)}) lb`;

/** One error for each case that does not close, naming which two totals differ. */
export function balanceIssues(rows: readonly Balance[]): readonly Issue[] {
  const issues: Issue[] = [];
  const report = (b: Balance, what: string, found: Vec3): void => {
    issues.push({
      code: 'balance',
      severity: 'error',
      path: '/cover',
      message: `Load case ${b.case}: ${what}.`,
      found: text(found),
      expected: text(b.applied),
      subject: b.case,
    });
  };
  for (const b of rows) {
    // A total that is not a number fails too.
    if (!(b.errorApplied <= BALANCE_LIMIT))
      report(b, 'the load put on the model differs from the integral of the roof', b.integral);
    if (!(b.errorReactions <= BALANCE_LIMIT)) report(b, 'the reactions do not sum to the load', b.reactions);
  }
  return issues;
}
