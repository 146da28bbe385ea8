/** Traces for the tests of checks: the lines of a check's first subject, and one step's last value. */
import { makeRecorder, type TraceLine } from '../base/trace.js';
import type { Check, CheckContext } from './contract.js';

export function explained(check: Check, ctx: CheckContext): readonly TraceLine[] {
  const subject = check.subjects(ctx)[0];
  if (!subject) throw new Error(`${check.id} finds no subject`);
  const rec = makeRecorder();
  check.run(subject, ctx, rec);
  return rec.lines;
}

export function stepValue(lines: readonly TraceLine[], symbol: string): number {
  const step = lines.findLast((l) => l.kind === 'step' && l.symbol === symbol);
  if (step?.kind !== 'step') throw new Error(`no step ${symbol}`);
  return step.value;
}
