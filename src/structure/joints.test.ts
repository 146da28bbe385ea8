import { describe, expect, it } from 'vitest';
import { alongOf } from './joints.js';
import type { Member } from './model.js';
import { place } from './place.js';
import { gableProject } from './testing.js';

const some = place(gableProject).value!.members[0]!;
const bar = (start: Member['start'], end: Member['end']): Member => ({ ...some, start, end });

describe('place of a joint along a member', () => {
  it('is plumb over the joint on a sloping member', () => {
    // 3-4-5: half way in plan is half way along.
    const m = bar({ x: 0, y: 0, z: 0 }, { x: 40, y: 0, z: 30 });
    expect(alongOf(m, { x: 20, y: 0, z: 5 })).toBeCloseTo(25, 9);
  });
  it('is level with the joint on a post', () => {
    expect(alongOf(bar({ x: 1, y: 2, z: 3 }, { x: 1, y: 2, z: 103 }), { x: 9, y: 9, z: 43 })).toBeCloseTo(40, 9);
  });
  it('stays on the member', () => {
    const m = bar({ x: 0, y: 0, z: 0 }, { x: 100, y: 0, z: 0 });
    expect(alongOf(m, { x: -5, y: 0, z: 0 })).toBe(0);
    expect(alongOf(m, { x: 105, y: 0, z: 0 })).toBe(100);
  });
});
