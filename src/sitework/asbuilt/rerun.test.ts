import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../checks/contract.js';
import { rerunOf } from './rerun.js';

const result = (id: string, status: CheckResult['status'], ratio: number): CheckResult => ({
  id,
  check: id.split(':')[0]!,
  title: id,
  subject: id.split(':')[1]!,
  path: '',
  mandatory: true,
  status,
  demand: ratio,
  capacity: 1,
  ratio,
  unit: '',
  combination: '',
  clause: '',
  note: '',
});

describe('the two runs', () => {
  const was = [
    result('a:B1', 'pass', 0.5),
    result('a:B2', 'pass', 0.5),
    result('b:P1', 'pass', 0.9),
    result('c:F1', 'pass', 0.3),
  ];
  it('tell what answers otherwise first, then what moved most; a thousandth is no change', () => {
    const now = [
      result('a:B1', 'pass', 0.501),
      result('a:B2', 'pass', 0.7),
      result('b:P1', 'fail', 1.02),
      result('c:F1', 'pass', 0.35),
    ];
    expect(rerunOf(was, now).map((c) => [c.id, c.was.status, c.now.status])).toEqual([
      ['b:P1', 'pass', 'fail'],
      ['a:B2', 'pass', 'pass'],
      ['c:F1', 'pass', 'pass'],
    ]);
  });
  it('say nothing where both runs agree', () => {
    expect(rerunOf(was, was)).toEqual([]);
  });
});
