/**
 * A cover and the same seen in a mirror (x → −x): every check answers alike for the part in the same place, whatever marks
 * the two give it. Marks are matched by where the parts stand.
 */
import { describe, expect, it } from 'vitest';
import type { Member, Structure } from '../../src/index.js';
import { mirrored, wholeBays } from '../../src/structure/random.testing.js';
import { draws, KINDS, type Worked, worked } from './covers.js';

const TOLERANCE = 1e-6;
const near = (x: number): number => Math.round(x * 1e3) / 1e3 + 0;

const placeOf = (m: Member, sign: 1 | -1): string => {
  const ends = [m.start, m.end].map((q) => `${near(sign * q.x)},${near(q.y)},${near(q.z)}`).sort();
  return `${m.role} ${ends.join(' ')}`;
};

/** Marks and ids of one structure that each mark or id of the other may be called. */
function names(a: Structure, b: Structure): ReadonlyMap<string, ReadonlySet<string>> {
  const out = new Map<string, Set<string>>();
  const pair = (x: string, y: string): void => void (out.get(x) ?? out.set(x, new Set()).get(x)!).add(y);
  const match = <T>(
    from: readonly T[],
    to: readonly T[],
    at: (t: T, sign: 1 | -1) => string,
    ids: (t: T) => string[],
  ) => {
    const there = new Map(to.map((t) => [at(t, -1), t]));
    for (const t of from) {
      const twin = there.get(at(t, 1));
      expect(twin, `nothing stands in the mirror of ${ids(t)[0]}: ${at(t, 1)}`).toBeDefined();
      const [mine, theirs] = [ids(t), ids(twin!)];
      for (const [i, id] of mine.entries()) pair(id, theirs[i]!);
    }
  };
  match(a.members, b.members, placeOf, (m) => [m.id, m.mark]);
  match(
    a.footings,
    b.footings,
    (f, sign) => `${near(sign * f.at.x)},${near(f.at.y)}`,
    (f) => [f.id, f.mark],
  );
  const partOf = (s: Structure): ReadonlyMap<string, string> => new Map(s.members.map((m) => [m.id, m.role]));
  const roles = [partOf(a), partOf(b)];
  match(
    a.joints,
    b.joints,
    (j, sign) => {
      const mine = roles[sign === 1 ? 0 : 1]!;
      const parts = j.ties.map((t) => mine.get(t.part) ?? '').join('-');
      return `${j.kind} ${parts} ${near(sign * j.at.x)},${near(j.at.y)},${near(j.at.z)}`;
    },
    (j) => [j.id, j.mark],
  );
  return out;
}

function compare(name: string, a: Worked, b: Worked): void {
  const called = names(a.structure, b.structure);
  const there = new Map(b.results.map((r) => [r.id, r]));
  expect(b.results.length, name).toBe(a.results.length);
  expect(b.issues.map((i) => i.code).sort(), name).toEqual(a.issues.map((i) => i.code).sort());
  for (const r of a.results) {
    // A subject is a mark, an id, or words with one in front: `B1 start`.
    const [head, ...rest] = r.subject.split(' ');
    const twins = [...(called.get(head!) ?? [head!])].map((n) => there.get(`${r.check}:${[n, ...rest].join(' ')}`));
    const best = twins.find((t) => t && Math.abs(t.ratio - r.ratio) <= TOLERANCE * Math.max(1, r.ratio)) ?? twins[0];
    expect(best, `${name}: ${r.id} has no twin`).toBeDefined();
    expect(best!.status, `${name}: ${r.id} is ${r.note}, ${best!.id} is ${best!.note}`).toBe(r.status);
    expect(
      Math.abs(best!.ratio - r.ratio) / Math.max(1, Math.abs(r.ratio)),
      `${name}: ${r.id} ${r.ratio} (${r.combination}), ${best!.id} ${best!.ratio} (${best!.combination})`,
    ).toBeLessThanOrEqual(TOLERANCE);
  }
}

describe.each(KINDS)('%s in a mirror', (kind) => {
  it('gets the same answers', () => {
    for (const { name, d } of draws(kind, 3, wholeBays)) {
      const twin = worked(mirrored(d.project));
      expect(twin, `${name}: the mirrored project is refused`).toBeDefined();
      compare(name, d, twin!);
    }
  });
});
