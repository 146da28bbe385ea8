import { expect, it } from 'vitest';
import { footingOf, footingsOf, jointMarks, jointsAt, jointsOf, memberOf, membersOf, standsOn } from './lookup.js';
import { place } from './place.js';
import { gableProject } from './testing.js';

const s = place(gableProject, {}).value!;

it('finds what a search of the whole structure finds', () => {
  for (const m of s.members) {
    expect(memberOf(s, m.id)).toBe(m);
    expect(membersOf(s, m.mark)).toEqual(s.members.filter((o) => o.mark === m.mark));
    expect(jointsAt(s, m.id)).toEqual(s.joints.filter((j) => j.ties.some((t) => t.part === m.id)));
  }
  for (const j of s.joints) expect(jointsOf(s, j.mark)).toEqual(s.joints.filter((o) => o.mark === j.mark));
  expect([...jointMarks(s).values()].flat()).toHaveLength(s.joints.length);
  for (const f of s.footings) {
    expect(footingOf(s, f.id)).toBe(f);
    expect(footingsOf(s, f.mark)).toEqual(s.footings.filter((o) => o.mark === f.mark));
  }
});

it('names the post on a footing', () => {
  for (const f of s.footings) expect(standsOn(s, f.id)?.role).toBe('post');
});

it('has nothing for names that are not there', () => {
  expect(memberOf(s, 'P99')).toBeUndefined();
  expect(footingOf(s, 'F99')).toBeUndefined();
  expect(standsOn(s, 'F99')).toBeUndefined();
  expect([membersOf(s, 'P99'), footingsOf(s, 'F99'), jointsOf(s, 'J99'), jointsAt(s, 'P99')].flat()).toEqual([]);
});
