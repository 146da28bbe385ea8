import { describe, expect, it } from 'vitest';
import { change, gableProject } from '../structure/testing.js';
import { apart } from './apart.js';
import { separationsOf } from './separations.js';

const box = (x: number, y: number, w: number, h: number) => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + h },
  { x, y: y + h },
];

describe('distance between outlines', () => {
  it('is square where sides face, slant where corners do', () => {
    expect(apart(box(0, 0, 10, 10), box(30, 2, 5, 5)).distance).toBe(20);
    expect(apart(box(0, 0, 10, 10), box(13, 14, 5, 5)).distance).toBe(5);
    expect(apart(box(30, 2, 5, 5), box(0, 0, 10, 10))).toMatchObject({ a: { x: 30 }, b: { x: 10 } });
  });
  it('is nothing where they overlap, one holds the other, or sides cross without a corner inside', () => {
    expect(apart(box(0, 0, 10, 10), box(5, 5, 10, 10)).distance).toBe(0);
    expect(apart(box(0, 0, 10, 10), box(2, 2, 2, 2)).distance).toBe(0);
    expect(apart(box(0, 4, 20, 2), box(8, -5, 2, 20)).distance).toBe(0);
  });
  it('takes a point as an outline of one corner', () => {
    expect(apart(box(0, 0, 10, 10), [{ x: 13, y: 14 }]).distance).toBe(5);
    expect(apart([{ x: 0, y: 0 }], [{ x: 3, y: 4 }]).distance).toBe(5);
  });
});

describe('separations on the lot', () => {
  const item = (kind: 'well' | 'septic-tank' | 'leach-field', x: number, y: number) => ({
    kind,
    label: kind,
    at: { x, y },
  });
  const project = change(gableProject, {
    lot: { buildings: [], items: [item('well', 600, 0), item('septic-tank', 0, 0), item('leach-field', 0, 900)] },
  });
  const rows = separationsOf(project, [box(100, 0, 100, 100)]);
  const row = (from: string, to: string) => rows.find((r) => r.from === from && r.to === to)!;

  it('holds wells to the distances one county lists: 5, 50 and 100 ft', () => {
    expect(row('well', 'septic-tank')).toMatchObject({ distance: 600, required: { distance: 50 * 12 } });
    expect(row('well', 'leach-field')).toMatchObject({ required: { distance: 100 * 12 } });
    expect(row('well', 'leach-field').distance).toBeCloseTo(Math.hypot(600, 900), 9);
    expect(row('New roof', 'well')).toMatchObject({ distance: 400, newWork: true, required: { distance: 60 } });
  });
  it('asks nothing of the new roof beside a tank, where no figure was read', () => {
    expect(row('New roof', 'septic-tank')).toMatchObject({ distance: 100 });
    expect(row('New roof', 'septic-tank').required).toBeUndefined();
  });
});
