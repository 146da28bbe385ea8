/** Any load on any footing: answers stay finite, the trace ends in the same ratio, and turning house and load together changes nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gableProject } from '../../structure/testing.js';
import type { Check } from '../contract.js';
import { explained, stepValue } from '../explained.testing.js';
import { bar, contextFor, joint, pad, postBar, runFirst, v } from '../testing.js';
import { anchor } from './anchor.js';
import { baseBearing } from './base-bearing.js';
import { embedment } from './embedment.js';
import { pierStrength } from './pier.js';
import { footingFlexure, footingShear } from './plain-concrete.js';
import { soilBearing } from './soil-bearing.js';
import { footingOverturning, footingSliding } from './stability.js';
import { footingUplift } from './uplift.js';

const CHECKS: readonly Check[] = [
  soilBearing,
  footingUplift,
  footingOverturning,
  footingSliding,
  embedment,
  footingFlexure,
  footingShear,
  pierStrength,
  baseBearing,
  anchor,
];
const SHAPES = {
  pad: {},
  'pier on pad': { pierDiameter: 12, top: -6, steel: '(4) #5 vertical' },
  pier: { round: true, size: 16, pierDiameter: 16, padThickness: 0, top: -12, bottom: -84, bearingArea: Math.PI * 64 },
} as const;
const foot = joint({
  id: 'J2',
  mark: 'J2',
  kind: 'post-to-footing',
  ties: [
    { part: 'P1', along: 0 },
    { part: 'F1', along: 0 },
  ],
});
const project = {
  ...gableProject,
  choices: { ...gableProject.choices, anchors: { pad: { bolt: 0.625, embedment: 7, fu: 58000, fy: 36000 } as never } },
};

const force = fc.double({ min: -3000, max: 3000, noNaN: true });
const triple = fc.tuple(force, force, force);
const turned = fc.tuple(
  fc.double({ min: -1e5, max: 1e5, noNaN: true }),
  fc.double({ min: -1e5, max: 1e5, noNaN: true }),
);
type Load = { readonly f: readonly [number, number, number]; readonly m: readonly [number, number] };
/** Light loads among them, so that some stand. */
const scale = fc.constantFrom(0.02, 0.1, 1);
const loads = fc
  .tuple(scale, fc.array(fc.record({ f: triple, m: turned }), { minLength: 3, maxLength: 3 }))
  .map(([k, rows]) => rows.map(({ f, m }): Load => ({ f: [k * f[0], k * f[1], k * f[2]], m: [k * m[0], k * m[1]] })));

/** `quarter` turns every load a quarter round the post. */
const under = (rows: readonly Load[], change: Parameters<typeof pad>[0], quarter = false) =>
  contextFor({
    project,
    structure: { footings: [pad(change)], members: [bar(), postBar()], joints: [foot] },
    footings: {
      F1: {
        force: rows.map(({ f: [x, y, z] }) => (quarter ? v(-y, x, z) : v(x, y, z))),
        moment: rows.map(({ m: [x, y] }) => (quarter ? v(-y, x, 0) : v(x, y, 0))),
      },
    },
  });

describe.each(Object.entries(SHAPES))('%s', (_name, change) => {
  it('answers any load with finite numbers that its trace repeats', () => {
    fc.assert(
      fc.property(loads, (rows) => {
        const ctx = under(rows, change);
        for (const check of CHECKS) {
          const f = runFirst(check, ctx);
          for (const x of [f.demand, f.capacity, f.ratio]) expect(Number.isFinite(x), check.id).toBe(true);
          expect(f.ratio).toBeGreaterThanOrEqual(0);
          const lines = explained(check, ctx);
          for (const l of lines)
            if (l.kind === 'step') expect(Number.isFinite(l.value), `${check.id} ${l.symbol}`).toBe(true);
          if (lines.some((l) => l.kind === 'step' && l.symbol === 'ratio'))
            expect(stepValue(lines, 'ratio'), check.id).toBe(f.ratio);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('does not care which way the house faces', () => {
    fc.assert(
      fc.property(loads, (rows) => {
        for (const check of CHECKS) {
          const a = runFirst(check, under(rows, change));
          const b = runFirst(check, under(rows, change, true));
          expect(b.status, check.id).toBe(a.status);
          expect(b.ratio, check.id).toBeCloseTo(a.ratio, 4);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('what stands a larger push stands a smaller one', () => {
    fc.assert(
      fc.property(loads, (rows) => {
        const more = rows.map(
          ({ f: [x, y, z], m: [p, q] }): Load => ({ f: [1.3 * x, 1.3 * y, z], m: [1.3 * p, 1.3 * q] }),
        );
        // The ratios themselves may fall where the base takes over from the soil beside the shaft; the answer may not.
        const stands = (r: readonly Load[]): boolean =>
          [soilBearing, footingOverturning, footingSliding, embedment, pierStrength].every((c) => {
            const { status } = runFirst(c, under(r, change));
            return status === 'pass' || status === 'not-applicable';
          });
        if (stands(more)) expect(stands(rows)).toBe(true);
      }),
      { numRuns: 80 },
    );
  });
});
