/** Random roofs of the newer kinds: whatever is placed without errors closes in every case against the project's own numbers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import type { CoverRoof, Project } from '../project/model.js';
import { place } from '../structure/place.js';
import { change } from '../structure/testing.js';
import { lProject, mirroredL } from '../structure/testing-l.js';
import { ridgeProject, tiedProject } from '../structure/testing-ridge.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';

/** False when the roof could not be placed; its reasons are other tests' affair. */
function closes(p: Project): boolean {
  const placed = place(p);
  if (!placed.value || placed.issues.some((i) => i.severity === 'error')) return false;
  const loads = buildLoads(p, placed.value).value!;
  const { value, issues } = analyse(p, placed.value, loads);
  expect(issues).toEqual([]);
  expect(value!.failure).toBeUndefined();
  for (const b of value!.balance) {
    expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
    expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
  }
  for (const m of value!.members.values())
    for (const row of [...m.m, ...m.n, ...m.sag]) expect(row.every(Number.isFinite)).toBe(true);
  return true;
}

const shape = fc.record({
  pitch: fc.integer({ min: 2, max: 9 }),
  spacing: fc.constantFrom(12, 16, 24),
  eave: fc.integer({ min: 0, max: 20 }),
  rake: fc.integer({ min: 0, max: 12 }),
  snow: fc.constantFrom(0, 20, 45),
});

const shaped = (p: Project, s: { pitch: number; spacing: number; eave: number; rake: number; snow: number }): Project =>
  change(p, {
    basis: { snow: { ground: (g) => ({ ...g, value: s.snow }) } },
    cover: {
      roofs: (old) =>
        old.map(
          (r): CoverRoof => ({
            ...r,
            pitch: Math.atan(s.pitch / 12),
            pitchText: `${s.pitch}/12`,
            eave: s.eave,
            rake: s.rake,
            framing: { ...r.framing, spacing: s.spacing },
          }),
        ),
    },
  });

/** Runs a property and sees to it that it was not empty. */
function holds<T>(arbitrary: fc.Arbitrary<T>, project: (t: T) => Project): void {
  let placed = 0;
  fc.assert(
    fc.property(arbitrary, (t) => {
      if (closes(project(t))) placed++;
    }),
    { numRuns: 24, seed: 20260 },
  );
  expect(placed).toBeGreaterThan(5);
}

describe('random roofs close', () => {
  it('on a ridge beam', () => holds(shape, (s) => shaped(ridgeProject, s)));

  it('with ties at any height the rules allow', () => {
    const tied = fc.tuple(shape, fc.integer({ min: 0, max: 20 }));
    holds(tied, ([s, height]) =>
      change(shaped(tiedProject, s), {
        cover: {
          roofs: (old) =>
            old.map(
              (r) =>
                ({
                  ...r,
                  framing: { ...r.framing, ties: { ...(r.framing as { ties: object }).ties, height } },
                }) as CoverRoof,
            ),
        },
      }),
    );
  });

  it('two sheds in an L, and the same in a mirror', () => {
    const flat = shape.map((s) => ({ ...s, pitch: 1 + (s.pitch % 3), eave: 0 }));
    holds(flat, (s) => shaped(lProject, s));
    holds(flat, (s) => mirroredL(shaped(lProject, s)));
  });
});
