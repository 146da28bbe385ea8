/** Whatever layout is written, the answer is a finite number and the trace can be read. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { makeRecorder } from '../../../base/trace.js';
import { length } from '../../../base/vec.js';
import type {
  Bolts,
  ConnectionPart,
  ConnectionPlates,
  ConnectionWay,
  DrivenDowels,
} from '../../../project/connections.js';
import { change, gableProject } from '../../../structure/testing.js';
import { bar, contextFor, joint, joist, NONE, postBar, v } from '../../testing.js';
import { actionsOf } from '../actions.js';
import { jointProducts } from '../products.js';
import { placeOf, takenBy, takesOf, waysOf } from './place.js';
import { kindOf } from './registry.js';

const inches = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pattern = fc.record({
  alongGrain: fc.integer({ min: 1, max: 4 }),
  acrossGrain: fc.integer({ min: 1, max: 3 }),
  spacingAlong: inches(0.5, 6),
  spacingAcross: inches(0.5, 6),
  end: inches(0.25, 60),
  edge: inches(0.25, 12),
});
const count = fc.constantFrom(1 as const, 2 as const);
const plates: fc.Arbitrary<ConnectionPlates | undefined> = fc.oneof(
  fc.constant(undefined),
  fc.record({ material: fc.constant('wood' as const), count, end: inches(0.25, 6), section: fc.constant('fascia') }),
  fc.record({
    material: fc.constant('steel' as const),
    count,
    end: inches(0.25, 6),
    thickness: inches(0.03, 0.5),
    width: inches(0.75, 8),
    Fy: fc.constant(33000),
    Fu: fc.constant(45000),
  }),
);
const takes = fc.constant<readonly ConnectionWay[]>(['up', 'down', 'lengthwise', 'crosswise']);
const common = {
  takes,
  axis: fc.constantFrom('lengthwise' as const, 'crosswise' as const, 'plumb' as const),
  plates,
  upper: pattern,
  lower: pattern,
  upperThickness: fc.option(inches(0.75, 6), { nil: undefined }),
  lowerThickness: fc.option(inches(0.75, 6), { nil: undefined }),
};
const bolts: fc.Arbitrary<Bolts> = fc.record({
  kind: fc.constant('bolts' as const),
  size: fc.constantFrom('bolt-3-8', 'bolt-1'),
  washer: fc.constantFrom(0, 0.5, 3),
  ...common,
});
const driven: fc.Arbitrary<DrivenDowels> = fc
  .constantFrom(
    ['lag-screws', 'lag-1-4'] as const,
    ['wood-screws', 'wood-screw-10'] as const,
    ['nails', 'common-8d'] as const,
  )
  .chain(([kind, size]) =>
    fc.record({
      kind: fc.constant(kind),
      size: fc.constant(size),
      length: inches(1, 16),
      head: fc.constantFrom('upper' as const, 'lower' as const),
      ...common,
    }),
  );

it('is finite, and its trace holds no holes', () => {
  fc.assert(
    fc.property(
      fc.oneof(bolts, driven),
      inches(-3000, 3000),
      inches(-3000, 3000),
      inches(-3000, 3000),
      fc.boolean(),
      (part: ConnectionPart, x, y, z, madeDry) => {
        const connections = [{ serves: ['J1'], madeDry, parts: [part], path: '/choices/connections/0' }];
        const ctx = contextFor({
          project: change(gableProject, { choices: { ...gableProject.choices, connections } }),
          structure: { members: [bar({ section: joist() }), postBar()], joints: [joint()] },
          joints: { J1: [v(0, 0, -500), NONE, v(x, y, z)] },
        });
        const rec = makeRecorder();
        const f = jointProducts.run({ id: 'J1', path: '' }, ctx, rec);
        for (const n of [f.demand, f.capacity, f.ratio]) expect(Number.isFinite(n) && n >= 0).toBe(true);
        expect(['pass', 'fail']).toContain(f.status);
        for (const l of rec.lines)
          if (l.kind === 'step') {
            expect(Number.isFinite(l.value), `${l.symbol} ${l.substituted}`).toBe(true);
            expect(/NaN|undefined|\?|∞/.test(l.substituted), l.substituted).toBe(false);
          }
      },
    ),
    { numRuns: 400 },
  );
});

it('leaves out only actions that cannot govern', () => {
  const force = fc.tuple(inches(-800, 800), inches(-800, 800), inches(-3000, 3000));
  fc.assert(
    fc.property(
      fc.oneof(bolts, driven),
      fc.array(force, { minLength: 12, maxLength: 12 }),
      (part: ConnectionPart, forces) => {
        const connections = [{ serves: ['J1'], madeDry: true, parts: [part], path: '/choices/connections/0' }];
        const joints = forces.map((_, i) => joint({ id: `J1-${i}` }));
        const ctx = contextFor({
          project: change(gableProject, { choices: { ...gableProject.choices, connections } }),
          structure: { members: [bar(), postBar()], joints },
          joints: Object.fromEntries(forces.map(([x, y, z], i) => [`J1-${i}`, [NONE, NONE, v(x, y, z)]])),
        });
        let most = 0;
        for (const a of actionsOf(ctx, 'J1')!) {
          const place = placeOf(ctx, a.joint, true)!;
          const taken = takenBy(takesOf(part), place, waysOf(place, a, false));
          if (length(taken) >= 0.5)
            most = Math.max(most, kindOf(part).hold(part, place)(taken, a.combination.CD).ratio);
        }
        const f = jointProducts.run({ id: 'J1', path: '' }, ctx);
        // Where the layout breaks a rule and the force would fit, the ratio is the cap that stands for the rule.
        if (f.ratio < 99) expect(f.ratio).toBeCloseTo(Math.min(most, 99), 9);
      },
    ),
    { numRuns: 300 },
  );
});
