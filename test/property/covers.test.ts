/**
 * Random covers from end to end: loads, reactions and every joint and part in between are in balance case by case, no
 * number is anything but a number, and no joint that carries can go missing unnoticed. `SEED=…` draws others.
 */
import { describe, expect, it } from 'vitest';
import { JOINT_TRAITS } from '../../src/checks/joints/kinds.js';
import { pathBreaks } from '../../src/checks/path/breaks.js';
import { explain } from '../../src/index.js';
import { draws, KINDS, type Worked } from './covers.js';
import { partSums } from './part-sums.js';

const TOLERANCE = 1e-6;

/** Places of numbers that are none, anywhere in a value; typed arrays are looked through too. */
function notNumbers(value: unknown, at: string, out: string[]): string[] {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) out.push(at);
  } else if (ArrayBuffer.isView(value)) {
    const row = value as Float64Array;
    for (let i = 0; i < row.length; i++) if (!Number.isFinite(row[i])) out.push(`${at}[${i}]`);
  } else if (value instanceof Map) for (const [k, v] of value) notNumbers(v, `${at}.${k}`, out);
  else if (Array.isArray(value)) for (const [i, v] of value.entries()) notNumbers(v, `${at}[${i}]`, out);
  else if (value && typeof value === 'object')
    for (const [k, v] of Object.entries(value)) notNumbers(v, `${at}.${k}`, out);
  return out;
}

function closes(d: Worked, name: string): void {
  expect(d.effects.failure, name).toBeUndefined();
  expect(new Set(d.loads.cases.map((c) => c.id)).size, `${name}: two cases of one id`).toBe(d.loads.cases.length);
  expect(d.effects.balance.length, name).toBe(d.loads.cases.length);
  for (const b of d.effects.balance) {
    expect(b.errorApplied, `${name}: ${b.case}, loads against the integral of the roof`).toBeLessThan(TOLERANCE);
    expect(b.errorReactions, `${name}: ${b.case}, loads against reactions`).toBeLessThan(TOLERANCE);
  }
}

describe.each(KINDS)('random covers: %s', (kind) => {
  const all = draws(kind, 4);

  it('loads equal the integral of the roof and the reactions in every case', () => {
    for (const { name, d } of all) closes(d, name);
  });

  it('what comes to a part from above, with its own load, goes on below', () => {
    for (const { name, d } of all) {
      const sums = partSums(d);
      expect(sums.length, name).toBeGreaterThan(5);
      for (const s of sums) {
        d.loads.cases.forEach((c, i) => {
          const [a, b] = [s.from[i]!, s.to[i]!];
          const scale = Math.max(1, s.size[i]!);
          for (const axis of ['x', 'y', 'z'] as const)
            expect(Math.abs(a[axis] - b[axis]) / scale, `${name}: ${s.part}, ${c.id}, ${axis}`).toBeLessThan(TOLERANCE);
        });
      }
    }
  });

  it('no result, effect or trace holds a number that is none', () => {
    for (const { name, d } of all) {
      const { results, effects, loads, lot } = d;
      expect(notNumbers({ results, effects, loads, lot }, '', []), name).toEqual([]);
    }
    const { name, d } = all[0]!;
    for (const r of d.results) {
      const lines = explain(d, r.id);
      expect(notNumbers(lines, r.id, []), name).toEqual([]);
      expect(JSON.stringify(lines), `${name}: ${r.id}`).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it('breaks where any one joint that carries is taken out', () => {
    // A ledger that ends more than three quarters of a stud bay past its last stud is a break from the start; look at another.
    const whole = all.find(({ d }) => pathBreaks(d.project, d.structure).length === 0);
    for (const { name, d } of all)
      for (const b of pathBreaks(d.project, d.structure)) expect(b.why, name).toMatch(/not fastened to the house near/);
    const { name, d } = whole!;
    for (const joint of d.structure.joints) {
      if (!JOINT_TRAITS[joint.kind].carries) continue;
      const joints = d.structure.joints.filter((j) => j !== joint);
      const breaks = pathBreaks(d.project, { ...d.structure, joints });
      const parts = joint.ties.map((t) => t.part);
      expect(
        breaks.some((b) => parts.includes(b.part)),
        `${name}: ${joint.id} (${joint.kind}, ${parts.join(' on ')}) taken out: ${breaks.map((b) => b.why).join('; ')}`,
      ).toBe(true);
    }
  });
});
