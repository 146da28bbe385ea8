import { describe, expect, it } from 'vitest';
import type { GableRoof } from '../../project/model.js';
import { place } from '../place.js';
import { change, gableProject, shedProject } from '../testing.js';
import { overlayProject } from '../testing-overlay.js';
import { cricketArea, cricketShape, crickets } from './crickets.js';
import { flashingRuns } from './flashing.js';

const runs = (p: typeof gableProject, kind: string) => flashingRuns(place(p).value!).filter((r) => r.kind === kind);

describe('flashing runs', () => {
  it('a gable against the wall: step flashing up both slopes, a kick-out at each eave', () => {
    // Frames from 9, rake 6: its edge stands 3 in off the wall. Half width 108 + 2.75 + 16, 4 in 12.
    const step = runs(gableProject, 'step');
    expect(step).toHaveLength(2);
    for (const r of step) expect(r.length).toBeCloseTo(126.75 * Math.hypot(1, 4 / 12), 6);
    const kick = runs(gableProject, 'kick-out');
    expect(kick).toHaveLength(2);
    for (const k of kick) {
      expect(Math.abs(k.from.x)).toBeCloseTo(126.75, 6);
      expect(k.from.z).toBeCloseTo(Math.min(...step.flatMap((r) => [r.from.z, r.to.z])), 6);
    }
    expect(runs(gableProject, 'apron')).toEqual([]);
    expect(runs(gableProject, 'valley')).toEqual([]);
  });

  it('a shed on its ledger: an apron along the wall', () => {
    const apron = runs(shedProject, 'apron');
    expect(apron).toHaveLength(1);
    const s = place(shedProject).value!.surfaces[0]!;
    expect(apron[0]!.length).toBeCloseTo(Math.max(...s.outline.map((p) => p.x)), 6);
    expect(runs(shedProject, 'step')).toEqual([]);
    expect(runs(shedProject, 'drip-edge')).toHaveLength(3);
  });

  it('over the old roof: two valleys, no step flashing; drip edges on eaves and the one rake', () => {
    const valley = runs(overlayProject, 'valley');
    const o = place(overlayProject).value!.overlays![0]!;
    expect(valley.map((r) => r.length)).toEqual([o.shape.valley, o.shape.valley].map((v) => expect.closeTo(v, 6)));
    expect(runs(overlayProject, 'step')).toEqual([]);
    const drip = runs(overlayProject, 'drip-edge');
    // Two eaves in two pieces each, and the two halves of the outer rake.
    expect(drip.filter((r) => r.at === 'eave')).toHaveLength(4);
    expect(drip.filter((r) => r.at === 'rake')).toHaveLength(2);
  });
});

describe('crickets', () => {
  it('by hand: 60 in wide on 4 in 12, its own slopes 6 in 12', () => {
    const s = cricketShape(60, 4 / 12, 6 / 12);
    // Ridge 30 · 6/12 = 15 in high at the wall; it dies 15 / (4/12) = 45 in up the slope.
    expect(s.rise).toBeCloseTo(15, 9);
    expect(s.run).toBeCloseTo(45, 9);
    expect(s.halfWidth).toBeCloseTo(30, 9);
    // Two triangles 30 by 45 on plan.
    expect(cricketArea(s)).toBeCloseTo(30 * 45 * Math.hypot(1, 0.5), 9);
  });

  it('a gable whose ridge runs along the wall drains against it', () => {
    const turned = change(gableProject, {
      cover: {
        beams: (old) => [
          { ...old[0]!, from: { x: -90, y: 20 }, to: { x: 90, y: 20 } },
          { ...old[1]!, from: { x: -90, y: 170 }, to: { x: 90, y: 170 } },
        ],
        roofs: (old) => old.map((r) => ({ ...(r as GableRoof), ridge: 'x' as const, from: -84, to: 84, eave: 12 })),
      },
      house: { roofs: (old) => old.map((r) => ({ ...r, overhang: 0 })) },
    });
    const { value } = place(turned);
    const [c, ...more] = crickets(value!);
    expect(more).toEqual([]);
    expect(c!.wall).toBe('rear');
    expect(c!.width).toBeCloseTo(180, 6);
    expect(c!.shape.run).toBeCloseTo(90, 6);
    expect(c!.fits).toBe(90 <= 75 + 2.75 + 12);
    expect(crickets(place(gableProject).value!)).toEqual([]);
    expect(crickets(place(shedProject).value!)).toEqual([]);
  });
});
