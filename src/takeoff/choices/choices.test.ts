import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../checks/contract.js';
import type { Project } from '../../project/model.js';
import { place } from '../../structure/index.js';
import { gableProject, shedProject } from '../../structure/testing.js';
import { ridgeProject } from '../../structure/testing-ridge.js';
import { inventedPrices } from '../prices/invented.js';
import { compareChoices } from './compare.js';
import type { DeriveProject } from './model.js';
import { VARIANTS } from './variants.js';

const result = (status: string): CheckResult =>
  ({ id: 'x', title: 'Bending', subject: 'B1', status, mandatory: true }) as unknown as CheckResult;

/** Places for real; says of every glulam beam that it passes and of every other that it fails. */
const derive: DeriveProject = (p) => {
  const { value, issues } = place(p, {});
  const glulam = value?.members.filter((m) => m.role === 'beam').every((m) => m.section.sizeClass === 'glulam');
  return { ...(value ? { structure: value } : {}), issues, results: [result(glulam ? 'pass' : 'fail')] };
};
const ids = (p: Project): string[] => VARIANTS.flatMap((v) => (v.change(p) ? [v.id] : []));

describe('VARIANTS', () => {
  it('apply where there is something to change', () => {
    expect(ids(gableProject)).toEqual(['rafters', 'built-up']);
    expect(ids(ridgeProject)).toContain('trusses');
    // A roof of one slope has no truss here; its beam is built up of plies.
    expect(ids(shedProject)).toEqual(['glulam']);
  });
  it('place what they change', () => {
    for (const p of [gableProject, ridgeProject, shedProject])
      for (const v of VARIANTS) {
        const changed = v.change(p);
        if (!changed) continue;
        const { value, issues } = place(changed.project, {});
        expect(
          issues.filter((i) => i.severity === 'error'),
          v.id,
        ).toEqual([]);
        expect(value, v.id).toBeDefined();
      }
  });
  it('leave sealed papers of trusses that go behind', () => {
    const v = VARIANTS.find((x) => x.id === 'rafters')!;
    expect(v.change(gableProject)!.project.cover.trussPapers).toBeUndefined();
  });
});

describe('compareChoices', () => {
  it('prices and checks each choice against the project as it is', () => {
    const rows = compareChoices(gableProject, derive, { priceList: inventedPrices });
    expect(rows.map((r) => r.id)).toEqual(['as-drawn', 'rafters', 'built-up']);
    expect(rows[0]!.difference).toBe(0);
    for (const r of rows) {
      expect(r.total).toBeGreaterThan(0);
      expect(r.difference).toBeCloseTo(r.total - rows[0]!.total, 9);
      expect(r.unpriced).toBe(0);
    }
    expect(rows.find((r) => r.id === 'built-up')!.failing).toEqual(['Bending of B1']);
    expect(rows.find((r) => r.id === 'rafters')!.failing).toEqual([]);
  });
  it('says why a choice cannot be built', () => {
    const refusing: DeriveProject = (p) =>
      p === gableProject ? derive(p) : { results: [], issues: [{ severity: 'error', message: 'too steep' }] };
    const rows = compareChoices(gableProject, refusing, { priceList: inventedPrices });
    expect(rows.slice(1).every((r) => r.refused === 'too steep')).toBe(true);
  });
});
