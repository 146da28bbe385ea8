import { describe, expect, it } from 'vitest';
import type { CheckResult, Status } from '../checks/contract.js';
import { judge } from './verdict.js';

const result = (status: Status, change: Partial<CheckResult> = {}): CheckResult => ({
  id: 'beam-bending:B1',
  check: 'beam-bending',
  title: 'Beam bending',
  subject: 'B1',
  path: '',
  mandatory: true,
  status,
  demand: 1,
  capacity: 2,
  ratio: 0.5,
  unit: '',
  combination: '',
  clause: '',
  note: status === 'pass' ? '' : 'so it is',
  ...change,
});
const issue = (severity: 'error' | 'warning') => ({ code: 'x', severity, path: '/cover', message: 'Not so.' });

describe('the verdict', () => {
  it('is issuable only when everything mandatory passes or does not apply', () => {
    expect(judge([], [result('pass'), result('not-applicable')], true)).toEqual({ issuable: true, reasons: [] });
  });

  it.each(['fail', 'outside-scope', 'not-evaluated'] as const)('is not with one result %s', (status) => {
    const v = judge([], [result('pass'), result(status)], true);
    expect(v.issuable).toBe(false);
    expect(v.reasons).toHaveLength(1);
    expect(v.reasons[0]).toContain('B1');
  });

  it('counts a fail and an out-of-scope answer even where the check is not mandatory', () => {
    expect(judge([], [result('fail', { mandatory: false })], true).issuable).toBe(false);
    expect(judge([], [result('outside-scope', { mandatory: false })], true).issuable).toBe(false);
    expect(judge([], [result('not-evaluated', { mandatory: false })], true).issuable).toBe(true);
  });

  it('is not with an error in the file, and is with a warning', () => {
    expect(judge([issue('error')], [result('pass')], true).issuable).toBe(false);
    expect(judge([issue('warning')], [result('pass')], true).issuable).toBe(true);
  });

  it('is never issuable when nothing was worked out, and says so', () => {
    const v = judge([], [], false);
    expect(v.issuable).toBe(false);
    expect(v.reasons).toHaveLength(1);
  });

  it('groups by check, worst first, and shortens long lists', () => {
    const many = Array.from({ length: 9 }, (_, i) =>
      result('not-evaluated', { check: 'joint-products', title: 'Joint', subject: `J${i + 1}` }),
    );
    const v = judge([], [...many, result('fail')], true);
    expect(v.reasons).toHaveLength(2);
    expect(v.reasons[0]).toContain('does not pass');
    expect(v.reasons[1]).toContain('and 3 more');
  });
});
