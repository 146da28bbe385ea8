import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../checks/contract.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { Dimension, Tools } from './model.js';
import { searchSizes } from './search.js';

/** A make-believe project: a number for each dimension, worked with by rules written here. */
type Fake = Project & { readonly v: Readonly<Record<string, number>> };
const fake = (v: Record<string, number>): Project => ({ v }) as unknown as Project;
const values = (p: Project): Readonly<Record<string, number>> => (p as Fake).v;

const dimension = (id: string, sizes: readonly number[]): Dimension => ({
  id,
  title: id,
  options: sizes.map((size) => ({ label: String(size), apply: (p) => fake({ ...values(p), [id]: size }) })),
  concerns: (subject) => subject === id,
});

const result = (subject: string): CheckResult =>
  ({
    id: `strength:${subject}`,
    title: 'Strength',
    subject,
    status: 'fail',
    mandatory: true,
  }) as unknown as CheckResult;

function tools(
  need: (v: Readonly<Record<string, number>>) => Readonly<Record<string, number>>,
): Tools & { calls: number } {
  const t = {
    calls: 0,
    place: () => ({}) as Structure,
    cost: (p: Project) => Object.values(values(p)).reduce((s, x) => s + x, 0),
    derive: (p: Project) => {
      t.calls++;
      const v = values(p);
      const asked = need(v);
      return {
        structure: {} as Structure,
        issues: [],
        results: Object.keys(asked).flatMap((k) => (v[k]! < asked[k]! ? [result(k)] : [])),
      };
    },
  };
  return t;
}

const TEN = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

describe('searchSizes', () => {
  it('finds the cheapest of ten thousand combinations by working out a few dozen', () => {
    const t = tools(() => ({ a: 4, b: 7, c: 2, d: 9 }));
    const found = searchSizes(
      fake({ a: 10, b: 10, c: 10, d: 10 }),
      ['a', 'b', 'c', 'd'].map((id) => dimension(id, TEN)),
      t,
    );
    expect(found.combinations).toBe(10_000);
    expect(found.best!.choices.map((c) => c.option)).toEqual(['4', '7', '2', '9']);
    expect(found.best!.cost).toBe(22);
    expect(found.derived).toBeLessThan(40);
    expect(t.calls).toBe(found.derived + 1);
  });
  it('agrees with trying everything where heavier parts ask more of what is below', () => {
    // The post must carry the beam: what it needs grows with the beam's own size.
    const need = (v: Readonly<Record<string, number>>) => ({
      beam: 3,
      post: Math.ceil(v.beam! / 2),
      pad: Math.ceil((v.beam! + v.post!) / 3),
    });
    const t = tools(need);
    const sizes = [1, 2, 3, 4, 5, 6];
    const found = searchSizes(
      fake({ beam: 6, post: 6, pad: 6 }),
      ['beam', 'post', 'pad'].map((id) => dimension(id, sizes)),
      t,
    );
    let least = Number.POSITIVE_INFINITY;
    for (const beam of sizes)
      for (const post of sizes)
        for (const pad of sizes) {
          const v = { beam, post, pad };
          const asked = need(v);
          if (beam >= asked.beam && post >= asked.post && pad >= asked.pad) least = Math.min(least, beam + post + pad);
        }
    expect(found.best!.cost).toBe(least);
  });
  it('shows for each choice why the next cheaper one does not do', () => {
    const found = searchSizes(
      fake({ a: 5, b: 5 }),
      [dimension('a', TEN), dimension('b', TEN)],
      tools(() => ({ a: 3, b: 1 })),
    );
    expect(found.steps).toEqual([{ dimension: 'a', option: '2', fails: ['Strength of a'] }]);
  });
  it('takes a cheaper option after all when a passing-over was too hasty', () => {
    // Big beams make the post fail: with b = 1 the post fails only beside a beam of 1, which comes first.
    const need = (v: Readonly<Record<string, number>>) => ({ a: 2, b: v.a === 1 ? 9 : 1 });
    const found = searchSizes(
      fake({ a: 9, b: 9 }),
      [dimension('a', [1, 2, 9]), dimension('b', [1, 5, 9])],
      tools(need),
    );
    expect(found.best!.choices.map((c) => c.option)).toEqual(['2', '1']);
  });
  it('says so when nothing passes, and when the limit ends the search', () => {
    const none = searchSizes(
      fake({ a: 1 }),
      [dimension('a', [1, 2])],
      tools(() => ({ a: 5 })),
    );
    expect(none.best).toBeUndefined();
    expect(none.finished).toBe(true);
    const cut = searchSizes(
      fake({ a: 1 }),
      [dimension('a', TEN)],
      tools(() => ({ a: 9 })),
      3,
    );
    expect(cut.best).toBeUndefined();
    expect(cut.finished).toBe(false);
  });
  it('leaves out what cannot be placed or priced', () => {
    const t = { ...tools(() => ({ a: 1 })), cost: (p: Project) => (values(p).a === 1 ? undefined : values(p).a!) };
    const found = searchSizes(fake({ a: 3 }), [dimension('a', [1, 2, 3])], t);
    expect(found.combinations).toBe(2);
    expect(found.best!.choices[0]!.option).toBe('2');
  });
});
