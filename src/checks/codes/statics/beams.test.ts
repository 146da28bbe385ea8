import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../../base/trace.js';
import {
  cantileverPoint,
  cantileverUniform,
  continuousUniform,
  overhangPoint,
  overhangUniform,
  simplePoint,
  simpleUniform,
} from './index.js';

const positive = (max: number) => fc.double({ min: 0.1, max, noNaN: true });

describe('closed forms', () => {
  it('carry all of the load', () => {
    fc.assert(
      fc.property(positive(50), positive(300), positive(100), (w, L, a) => {
        const s = simpleUniform(w, L, 1);
        expect(2 * s.R).toBeCloseTo(w * L, 6);
        const o = overhangUniform(w, L, a, 1);
        expect(o.R1 + o.R2).toBeCloseTo(w * (L + a), 6);
        expect(o.VSpan + o.VOverhang).toBeCloseTo(o.R2, 6);
        // moments about the left support
        expect(o.R2 * L).toBeCloseTo((w * (L + a) ** 2) / 2, 4);
        const p = overhangPoint(w, L, a, 1);
        expect(p.R1 + p.R2).toBeCloseTo(w, 6);
      }),
    );
  });

  it('agree where they meet', () => {
    // a tip of a very stiff span is a cantilever on its own
    expect(overhangPoint(7, 1e-9, 40, 1).tip).toBeCloseTo(cantileverPoint(7, 40, 1).tip, 3);
    const none = overhangUniform(2, 100, 1e-9, 1);
    expect(none.MSpan).toBeCloseTo(simpleUniform(2, 100, 1).M, 3);
    expect(cantileverUniform(2, 10, 1)).toEqual({ R: 20, M: -100, tip: 2500 });
    // midspan load: PL/4 and PL³/48EI
    const p = simplePoint(10, 100, 50, 1000);
    expect([p.M, p.deflection]).toEqual([250, expect.closeTo((10 * 100 ** 3) / 48000, 6)]);
    // symmetric about midspan
    expect(simplePoint(10, 100, 20, 1).deflection).toBeCloseTo(simplePoint(10, 100, 80, 1).deflection, 9);
  });

  it('superpose: many point loads become the uniform load', () => {
    let M = 0;
    const n = 400;
    for (let i = 0; i < n; i++) M += momentAt(i, n);
    expect(M / simpleUniform(1, 100, 1).M).toBeCloseTo(1, 4);
    /** Moment at midspan of one of n loads of 100/n lb. */
    function momentAt(i: number, count: number): number {
      const a = ((i + 0.5) * 100) / count;
      const { R1, R2 } = simplePoint(100 / count, 100, a, 1);
      return a > 50 ? R1 * 50 : R2 * 50;
    }
  });

  it('record what they used', () => {
    const rec = makeRecorder();
    simpleUniform(2, 100, 1e6, rec);
    overhangUniform(2, 100, 20, 1e6, rec);
    simplePoint(2, 100, 20, 1e6, rec);
    expect(rec.lines.length).toBe(5);
  });
});

describe('continuous beams', () => {
  it('carry all of the load, for any pattern', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(0, 1, 2.5), { minLength: 1, maxLength: 8 }), positive(200), (w, L) => {
        const c = continuousUniform(w, L);
        const total = w.reduce<number>((a, b) => a + b, 0) * L;
        expect(c.reactions.reduce((a, b) => a + b, 0)).toBeCloseTo(total, 6);
        // moments about the left end
        const moment = w.reduce<number>((a, x, i) => a + x * L * (i + 0.5) * L, 0);
        expect(c.reactions.reduce((a, R, i) => a + R * i * L, 0)).toBeCloseTo(moment, 3);
        for (const list of [c.spanMoments, c.deflectionsTimesEI])
          for (const x of list) expect(x).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('is one simple span for one span', () => {
    const c = continuousUniform([3], 100);
    const s = simpleUniform(3, 100, 1);
    expect(c.reactions[0]).toBeCloseTo(s.R, 9);
    expect(c.spanMoments[0]).toBeCloseTo(s.M, 9);
    expect(c.deflectionsTimesEI[0]! / s.deflection).toBeCloseTo(1, 9);
  });

  it('is symmetric', () => {
    const a = continuousUniform([2, 1, 0], 90);
    const b = continuousUniform([0, 1, 2], 90);
    a.reactions.forEach((R, i) => {
      expect(R).toBeCloseTo(b.reactions[3 - i]!, 9);
    });
  });
});
