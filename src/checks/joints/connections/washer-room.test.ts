/** Washers of calculated connections: discs that must not overlap nor run past the wood. */
import { describe, expect, it } from 'vitest';
import { findFastener } from '../../../catalog/index.js';
import type { Bolts, DrivenDowels, FastenerPattern } from '../../../project/connections.js';
import { bar, timber, v } from '../../testing.js';
import { memberPiece } from './pieces.js';
import { plates, row, run, wind } from './testing.js';
import { crowded } from './washer-room.js';

const axis = v(0, 1, 0);
const PATTERN: FastenerPattern = {
  alongGrain: 2,
  acrossGrain: 1,
  spacingAlong: 2,
  spacingAcross: 0,
  end: 3.5,
  edge: 2.75,
};
/** A 5-1/2 in deep level timber bolted across; washers of 1/2 in. bolts. */
const faults = (washer: number, pattern: Partial<FastenerPattern> = {}): readonly string[] => {
  const m = bar({ section: timber({ b: 3.5, d: 5.5, width: 3.5, depth: 5.5 }) });
  const part: Bolts = { ...plates({ washer }), plates: undefined } as unknown as Bolts;
  return crowded(part, findFastener(part.size)!, [memberPiece(m, axis, { ...PATTERN, ...pattern }, undefined)], axis);
};

describe('room for washers', () => {
  it('is enough where they just touch', () => {
    expect(faults(2)).toEqual([]);
  });

  it('fails washers that overlap, with the distance that would do', () => {
    const [first, ...more] = faults(2.25);
    expect(more).toEqual([]);
    expect(first).toMatch(/2 1\/4.* overlap .*2.* apart: use smaller washers or set the fasteners at least 2 1\/4/);
  });

  it.each([
    ['edge', { edge: 0.875 }],
    ['far edge', { edge: 4.625 }],
    ['end', { end: 0.875 }],
  ] as const)('fails washers past the %s', (_, by) => {
    expect(faults(2, by).join()).toContain('run past its edge');
    expect(faults(1.75, by)).toEqual([]);
  });

  it('counts the corners of a bare head', () => {
    // 1/2 in. bolt: 0.875 in; rows 1.5D = 3/4 in apart, which the standard lets stand, do not leave room for it.
    expect(faults(0, { alongGrain: 1, acrossGrain: 2, spacingAcross: 0.75 }).join()).toContain('heads and washers');
    expect(faults(0, { alongGrain: 1, acrossGrain: 2, spacingAcross: 0.875 })).toEqual([]);
  });

  it('asks nothing of nails', () => {
    const m = bar({ section: timber({ b: 3.5, d: 5.5, width: 3.5, depth: 5.5 }) });
    const nails = { ...plates(), kind: 'nails', size: 'common-10d' } as unknown as DrivenDowels;
    const close = { ...PATTERN, spacingAlong: 0.5 };
    expect(crowded(nails, findFastener('common-10d')!, [memberPiece(m, axis, close, undefined)], axis)).toEqual([]);
  });

  it('fails the joint that is otherwise strong enough', () => {
    const good = run(row(plates()), wind(0, 0, 300));
    expect(good.status, good.note).toBe('pass');
    const bad = run(row(plates({ washer: 2.5 })), wind(0, 0, 300));
    expect(bad).toMatchObject({ status: 'fail' });
    expect(bad.note).toContain('overlap');
  });
});
