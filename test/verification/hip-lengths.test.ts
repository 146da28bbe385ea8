/** Lengths of hip framing as cut, against the figures stamped on a framing square. */
import { expect, it } from 'vitest';
import { place } from '../../src/structure/place.js';
import { hipProject } from '../../src/structure/testing-hip.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('hip-lengths');
const structure = place(hipProject).value!;
/** From the eave to the ridge, on plan. */
const FEET = (173.5 / 2 + 16) / 12;

const TABLE = {
  clause: 'geometry: hip roof of one pitch',
  source: 'rafter table of the framing square, 4 in of rise to 12 of run',
  where: 'the blade of the square, recalled; to be confirmed on one',
  provenance: 'memory',
  unit: 'in',
} as const;

/** Length of a member's axis, from its plumb-cut tail to its upper end. */
function axis(mark: string): number {
  const { start: a, end: b } = structure.members.find((m) => m.mark === mark)!;
  return Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
}

it('common rafter, hip and jacks', () => {
  const rounded = { abs: 0.005, reason: 'stamped to 0.01 in a foot' };
  suite.compare({
    ...TABLE,
    id: 'hip-lengths',
    quantity: 'common rafter, a foot of run',
    published: 12.65,
    ours: axis('RF1') / FEET,
    tolerance: rounded,
  });
  suite.compare({
    ...TABLE,
    id: 'hip-lengths',
    quantity: 'hip, a foot of the common run',
    published: 17.44,
    ours: axis('HR1') / FEET,
    tolerance: rounded,
  });
  const jacks = [...new Set(structure.members.map((m) => m.mark).filter((m) => m.startsWith('JK')))].map(axis);
  const [short, longer] = jacks.sort((a, b) => a - b);
  suite.compare({
    ...TABLE,
    id: 'hip-lengths',
    quantity: 'difference of jacks at 2 ft',
    published: 25.3125,
    ours: longer! - short!,
    tolerance: { abs: 1 / 32, reason: 'stamped as 25 5/16' },
  });
  expect(jacks.length).toBe(3);
});
