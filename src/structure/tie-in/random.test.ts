/** Many slopes, widths and heights: each is either refused with a reason or fits the old roof to a hair. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { volume } from '../../base/geometry/index.js';
import type { GableRoof } from '../../project/model.js';
import { planeAt } from '../house/profile.js';
import { place } from '../place.js';
import { planeHeight } from '../surfaces.js';
import { change } from '../testing.js';
import { overlayProject, overlayWith } from '../testing-overlay.js';
import { overlaySolid } from './pieces.js';

const cover = fc.record({
  rise: fc.integer({ min: 3, max: 9 }),
  old: fc.integer({ min: 2, max: 12 }),
  half: fc.integer({ min: 48, max: 150 }),
  /** New eave over the old roof at the end of the cover's own roof, sixteenths; below zero it must be refused. */
  over: fc.integer({ min: -16, max: 96 }),
  eave: fc.integer({ min: 6, max: 24 }),
  spacing: fc.constantFrom(12, 16, 19.2, 24),
  overhang: fc.integer({ min: 6, max: 20 }),
  depth: fc.integer({ min: 240, max: 480 }),
});

/** Bearing that puts the new eave `over` sixteenths above the old roof there. */
function bearingOf(c: {
  rise: number;
  old: number;
  over: number;
  eave: number;
  spacing: number;
  overhang: number;
}): number {
  const oldEave = 97 + 4 - (c.overhang * c.old) / 12;
  const past = Math.max(0, c.overhang - 24 + c.spacing / 2);
  return oldEave + (past * c.old) / 12 + c.over / 16 - 9 + (c.eave * c.rise) / 12;
}

const projectOf = (c: typeof cover extends fc.Arbitrary<infer T> ? T : never) =>
  change(
    overlayWith(
      { pitch: Math.atan(c.rise / 12), bearing: bearingOf(c), eave: c.eave },
      { spacing: c.spacing, rafter: 'fill', ridge: 'board' },
      { pitch: Math.atan(c.old / 12), overhang: c.overhang, min: { x: -264, y: -c.depth } },
    ),
    {
      cover: {
        beams: (old) =>
          old.map((b, i) => {
            const x = i === 0 ? -c.half : c.half;
            return { ...b, from: { ...b.from, x }, to: { ...b.to, x } };
          }),
        roofs: (old) =>
          old.map((r) => ({
            ...(r as GableRoof),
            framing: { ...(r as GableRoof).framing, heel: 9, bottomPitch: 0 } as never,
          })),
      },
      choices: { sections: (old) => ({ ...old, board: { ...old.ridge!, size: '2x12' } as never }) },
    },
  );

describe('a gable over an old roof, anyhow', () => {
  it('is refused with a reason, or fits', () => {
    let fitted = 0;
    fc.assert(
      fc.property(cover, (c) => {
        const { value, issues } = place(projectOf(c));
        const o = value?.overlays?.[0];
        if (!o) {
          expect(issues.some((i) => i.severity === 'error')).toBe(true);
          return;
        }
        fitted++;
        const old = value!.housePlanes.find((h) => h.id === o.plane)!.outline;
        const top = (p: { x: number; y: number }): number => Math.min(...value!.surfaces.map((s) => planeHeight(s, p)));
        for (const v of o.valleys)
          for (const p of [v.foot, v.head]) {
            expect(p.z).toBeCloseTo(planeAt(old, p), 5);
            expect(p.z).toBeCloseTo(top(p), 5);
          }
        expect(o.fills.reduce((t, f) => t + f.area, 0)).toBeCloseTo(
          o.faces.reduce((t, f) => t + f.planArea, 0),
          4,
        );
        for (const m of o.members) {
          const s = overlaySolid(o, m);
          expect(s, m.id).toBeDefined();
          expect(volume(s!)).toBeGreaterThan(0);
          for (const p of s!.vertices) {
            expect(Number.isFinite(p.x + p.y + p.z)).toBe(true);
            expect(p.z).toBeGreaterThan(planeAt(old, p) - 1e-5);
          }
        }
      }),
      { numRuns: 120, seed: 20260608 },
    );
    // Refusing everything would prove nothing.
    expect(fitted).toBeGreaterThan(20);
  });

  it('stands on rafters on a ridge board with ties as well as on trusses', () => {
    const tied = change(overlayProject, {
      cover: {
        roofs: (old) =>
          old.map((r) => ({
            ...(r as GableRoof),
            framing: {
              kind: 'rafter' as const,
              spacing: 24,
              section: 'main',
              ties: { section: 'fill', height: 0, ridgeBoard: 'board', nail: 'common-16d', nails: 6 },
            },
          })),
      },
      choices: {
        sections: (old) => ({
          ...old,
          main: { ...old.fill!, size: '2x8' } as never,
          board: { ...old.ridge!, size: '2x10' } as never,
        }),
      },
    });
    const { value, issues } = place(tied);
    expect(issues.filter((i) => i.severity === 'error')).toEqual([]);
    expect(value!.overlays![0]!.board.mark).toBe('RB2');
  });
});
