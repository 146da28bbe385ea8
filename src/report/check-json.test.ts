import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../checks/contract.js';
import { nearestToLimit } from './check-json.js';

const result = (id: string, ratio: number, more: Partial<CheckResult> = {}): CheckResult => ({
  id,
  check: id,
  title: id,
  subject: 'F1',
  path: '/x',
  mandatory: false,
  status: 'pass',
  demand: ratio,
  capacity: 1,
  ratio,
  unit: '',
  combination: '',
  clause: '',
  note: '',
  ...more,
});

describe('the result nearest its limit', () => {
  it('leaves out what fails, and least sizes that are met', () => {
    const least = result('size', 1, { prescriptive: true });
    const all = [result('bending', 0.7), least, result('shear', 0.8), result('bearing', 1.2, { status: 'fail' })];
    expect(nearestToLimit(all)?.id).toBe('shear');
    expect(nearestToLimit([least])).toBeUndefined();
  });
});
