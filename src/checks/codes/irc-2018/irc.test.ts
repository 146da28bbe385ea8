import { describe, expect, it } from 'vitest';
import {
  BAR_COVER,
  IRC_DEFAULT_BEARING,
  ircFootingDepth,
  ircFootingThickness,
  ircFrostExempt,
  patioCoverFaults,
  requiredGradeFall,
  requiredSlabFall,
  SILL_ANCHOR,
  slabMayCarryColumn,
} from './index.js';

describe('footings', () => {
  it('depth and frost', () => {
    expect(ircFootingDepth(0, false)).toBe(12);
    expect(ircFootingDepth(36, false)).toBe(36);
    expect(ircFootingDepth(36, true)).toBe(12);
    expect(ircFrostExempt(true, true, 600 * 144, 120)).toBe(true);
    expect(ircFrostExempt(true, true, 600.1 * 144, 120)).toBe(false);
    expect(ircFrostExempt(true, false, 400 * 144, 120)).toBe(true);
    expect(ircFrostExempt(true, false, 500 * 144, 120)).toBe(false);
    expect(ircFrostExempt(true, true, 600 * 144, 121)).toBe(false);
    expect(ircFrostExempt(false, true, 100 * 144, 100)).toBe(false);
  });

  it('thickness follows the projection', () => {
    expect(ircFootingThickness(2)).toBe(6);
    expect(ircFootingThickness(6)).toBe(6);
    expect(ircFootingThickness(8.5)).toBe(8.5);
  });
});

describe('grading', () => {
  it('6 in in 10 ft, 2 percent on slabs, nothing more beyond', () => {
    expect(requiredGradeFall(60)).toBe(3);
    expect(requiredGradeFall(240)).toBe(6);
    expect(requiredSlabFall(100)).toBe(2);
    expect(requiredSlabFall(240)).toBeCloseTo(2.4, 12);
    expect(requiredSlabFall(-5)).toBe(0);
  });
});

describe('patio cover appendix', () => {
  const open = { length: 200, openArea: 65, area: 100 };
  const shut = { length: 120, openArea: 64.9, area: 100 };
  const x = { height: 144, stories: 1, use: 'outdoor-living', walls: [] } as const;

  it('names every fault', () => {
    expect(patioCoverFaults(x)).toEqual([]);
    expect(patioCoverFaults({ ...x, height: 144.1, stories: 2, use: 'carport' })).toEqual(['height', 'stories', 'use']);
  });

  it('wants the longer wall and one more open', () => {
    expect(patioCoverFaults({ ...x, walls: [open, { ...open, length: 120 }, shut] })).toEqual([]);
    expect(patioCoverFaults({ ...x, walls: [open, shut, shut] })).toEqual(['openness']);
    expect(patioCoverFaults({ ...x, walls: [{ ...shut, length: 300 }, open, open] })).toEqual(['openness']);
    expect(patioCoverFaults({ ...x, walls: [open] })).toEqual([]);
    expect(patioCoverFaults({ ...x, walls: [{ length: 10, openArea: 0, area: 0 }] })).toEqual([]);
  });

  it('lets a slab carry posts under 750 lb without frost', () => {
    expect(slabMayCarryColumn(0, 3.5, 750)).toBe(true);
    expect(slabMayCarryColumn(0, 3.5, 750.1)).toBe(false);
    expect(slabMayCarryColumn(0, 3.49, 700)).toBe(false);
    expect(slabMayCarryColumn(6, 4, 700)).toBe(false);
  });
});

describe('printed limits', () => {
  it('as printed', () => {
    expect(IRC_DEFAULT_BEARING).toBe(1500);
    expect(BAR_COVER).toEqual({ castAgainstEarth: 3, formedNo5AndSmaller: 1.5, formedNo6AndLarger: 2 });
    expect(SILL_ANCHOR).toEqual({ diameter: 0.5, spacing: 72, embedment: 7, maxEnd: 12, minEndDiameters: 7 });
    expect([400, 401].map((ft2) => ircFrostExempt(true, false, ft2 * 144, 120))).toEqual([true, false]);
  });
});
