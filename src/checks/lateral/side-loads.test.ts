import { describe, expect, it } from 'vitest';
import { combineComponent } from '../../analysis/index.js';
import { chordsOf } from './chords.js';
import { caseSums, houseTieDemands, roofSides, type SidePoint, sideOf } from './side-loads.js';
import { gableWith, shedWith, TIE } from './testing.js';

const point = (x: number, y: number, fx: number, fy: number): SidePoint => ({
  at: { x, y },
  force: [{ x: fx, y: fy, z: 0 }],
});

describe('sums about the house line', () => {
  it('are plain statics', () => {
    // 100 lb along the wall 120 in out; 50 lb away from it 30 in right of the middle, 60 in out.
    const s = caseSums([point(-40, 120, 100, 0), point(30, 60, 0, 50)], 1, 0, 0);
    expect([s.along[0], s.square[0], s.couple[0]]).toEqual([100, 50, 100 * 120 - 50 * 30]);
  });
  it('count from the wall, not from the axis', () => {
    expect(caseSums([point(0, 130, 100, 0)], 1, 0, 10).couple[0]).toBe(100 * 120);
  });
});

describe('a gable tied along its width', () => {
  const ctx = gableWith();
  const [d] = houseTieDemands(ctx);
  it('hands over exactly what its restraints hold', () => {
    expect(d?.mark).toBe('H1');
    ctx.loads.combinations.forEach((c, k) => {
      const x = ctx.effects.sway.reduce((sum, s) => sum + combineComponent(s.force, c, 'x'), 0);
      const y = ctx.effects.sway.reduce((sum, s) => sum + combineComponent(s.force, c, 'y'), 0);
      expect(d!.along[k]).toBeCloseTo(x, 6);
      expect(d!.square[k]).toBeCloseTo(y, 6);
    });
  });
  it('turns by the load along the wall times its distance out', () => {
    ctx.loads.combinations.forEach((c, k) => {
      const M = ctx.effects.restraints.reduce(
        (sum, r) => sum + combineComponent(r.force, c, 'x') * r.at.y - combineComponent(r.force, c, 'y') * r.at.x,
        0,
      );
      expect(d!.couple[k]).toBeCloseTo(M, 4);
    });
    expect(Math.max(...d!.couple)).toBeGreaterThan(10_000);
  });
  it('finds the beams as chords', () => {
    const chords = chordsOf(ctx, ctx.structure.roofs[0]!, 'y')!;
    expect([chords.low.members[0]!.mark, chords.high.members[0]!.mark, chords.apart]).toEqual(['B1', 'B2', 216]);
  });
});

describe('two ties of one roof', () => {
  const left = { ...TIE, to: -24 };
  const right = { ...TIE, mark: 'H2', from: 24 };
  const two = houseTieDemands(gableWith({ cover: { houseTies: [left, right] } }));
  const one = houseTieDemands(gableWith())[0]!;
  it('together take what one takes, force and couple', () => {
    const [a, b] = two;
    one.along.forEach((_, k) => {
      expect(a!.along[k]! + b!.along[k]!).toBeCloseTo(one.along[k]!, 6);
      expect(a!.square[k]! + b!.square[k]!).toBeCloseTo(one.square[k]!, 6);
      // Couple about the middle of the roof: each tie's own, and its pull at its own middle (±66 in).
      const M = a!.couple[k]! + b!.couple[k]! - a!.square[k]! * -66 - b!.square[k]! * 66;
      expect(M).toBeCloseTo(one.couple[k]!, 3);
    });
  });
  it('on different walls make no one line', () => {
    const ctx = gableWith({ cover: { houseTies: [left, { ...right, wall: 1 }] } });
    expect(sideOf(ctx, 'R1')).toMatchObject({ split: true, line: undefined });
  });
});

describe('a shed on its ledger', () => {
  const ctx = shedWith();
  const [d] = houseTieDemands(ctx);
  it('takes the ledger as its line, with all that leaves the roof sideways', () => {
    expect(d).toMatchObject({ mark: 'L1', kind: 'ledger', from: -120, to: 120 });
    ctx.loads.combinations.forEach((c, k) => {
      let x = 0;
      let y = 0;
      for (const r of ctx.effects.restraints) {
        x += combineComponent(r.force, c, 'x');
        y += combineComponent(r.force, c, 'y');
      }
      for (const j of ctx.structure.joints) {
        if (j.kind !== 'ledger-to-house') continue;
        x += combineComponent(ctx.effects.joints.get(j.id)!.force, c, 'x');
        y += combineComponent(ctx.effects.joints.get(j.id)!.force, c, 'y');
      }
      expect(d!.along[k]).toBeCloseTo(x, 5);
      expect(d!.square[k]).toBeCloseTo(y, 5);
    });
  });
  it('has its end rafters as chords', () => {
    const chords = chordsOf(ctx, ctx.structure.roofs[0]!, 'y')!;
    expect(chords.low.members[0]!.role).toBe('rafter');
    expect(chords.apart).toBeCloseTo(238.5, 6);
  });
});

describe('directions that posts hold', () => {
  it('hand nothing to the house', () => {
    const ctx = gableWith({ cover: { lateral: { x: 'knee-braces', y: 'house' } } });
    const [d] = houseTieDemands(ctx);
    expect(Math.max(...d!.along.map(Math.abs))).toBe(0);
    expect(Math.max(...d!.square)).toBeGreaterThan(100);
    expect(roofSides(ctx)[0]!.all.length).toBeGreaterThan(0);
  });
});
