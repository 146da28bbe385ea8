import { describe, expect, it } from 'vitest';
import { makeShed } from '../../analysis/testing.js';
import type { CheckContext } from '../contract.js';
import { mandatoryFor } from '../mandatory.js';
import { contextFor } from '../testing.js';
import { gutter } from './gutter.js';

function context(rain: number | undefined, has = true): CheckContext {
  const { project, structure } = makeShed();
  const roofs = project.cover.roofs.map((r) => ({ ...r, finish: { ...r.finish, gutter: has } }));
  const rainfall =
    rain === undefined
      ? {}
      : { rainfall: { value: rain, state: 'given' as const, from: 'office', path: '/basis/rainfall' } };
  const lone = structure.roofs.map((r) => ({ ...r, attached: false }));
  return contextFor({
    project: { ...project, basis: { ...project.basis, ...rainfall }, cover: { ...project.cover, roofs } },
    structure: { ...structure, roofs: lone },
  });
}
const run = (ctx: CheckContext) => gutter.run(gutter.subjects(ctx)[0]!, ctx);
// 139.25 in by 254.5 in on plan: 246.1 ft².
const AREA = (139.25 * 254.5) / 144;

describe('gutter', () => {
  it('takes the smallest of the table at the flattest fall: 4 in drains 360 ft² at 4 in/h', () => {
    const f = run(context(4));
    expect(f).toMatchObject({ status: 'pass', capacity: 360 });
    expect(f.demand).toBeCloseTo(AREA, 3);
    expect(f.note).toContain('gutter 4 in wide');
    expect(f.note).toContain('one leader of 3 in');
  });

  it('grows with the rain, then adds leaders', () => {
    // 8 in/h: 4 in drains 180 ft², 5 in 312.5; 50 in/h: 6 in drains 76.8 ft², so four leaders of 61.5 ft².
    expect(run(context(8)).note).toContain('gutter 5 in wide');
    expect(run(context(50)).note).toContain('4 leaders');
    expect(run(context(500)).status).toBe('fail');
  });

  it('takes heavy rain where none is given, and says so', () => {
    expect(run(context(undefined)).note).toContain('no rainfall is given');
  });

  it('is asked only of a roof that has one', () => {
    expect(run(context(4, false)).status).toBe('not-applicable');
    const roof = { kind: 'shed', framing: 'rafter' } as const;
    expect(mandatoryFor('attached', [{ ...roof, gutter: true }]).has('gutter')).toBe(true);
    expect(mandatoryFor('attached', [roof]).has('gutter')).toBe(false);
  });
});
