/** Knee braces, struts and feet of posts as the file writes them. */
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { starter } from './starter/index.js';
import { edit } from './testing.js';

const FILE = starter('gable-free');
const errorsOf = (text: string) => read(text).issues.filter((i) => i.severity === 'error');

describe('the free-standing starter', () => {
  const { cover, choices } = read(FILE).value!;
  it('arrives with its braces in inches, each with its place in the file', () => {
    expect(cover.beams[0]!.posts[0]!.braces).toEqual([
      { toward: 'end', section: 'brace', run: 30, rise: 28, path: '/cover/beams/0/posts/0/braces/0' },
    ]);
    expect(cover.beams[1]!.posts[1]!.braces!.map((b) => b.toward)).toEqual(['start', 'end']);
    expect(cover.struts).toEqual(
      [1, 2, 3].map((i) => ({
        mark: `ST${i}`,
        from: `P${i}`,
        to: `P${i + 3}`,
        section: 'strut',
        braces: { section: 'brace', run: 30, rise: 28 },
        path: `/cover/struts/${i - 1}`,
      })),
    );
  });
  it('leaves the foot and the limit of drift open', () => {
    expect(cover.beams[0]!.posts[0]!.base).toBeUndefined();
    expect(choices.deflection.drift).toBeUndefined();
  });
});

describe('what may be written', () => {
  it('a fixed foot and a limit of drift', () => {
    const fixed = edit('"footingMark": "F1"', '"footingMark": "F1", "base": "fixed"', FILE);
    const p = read(edit('"total": 240', '"total": 240, "drift": 100', fixed)).value!;
    expect(p.cover.beams[0]!.posts[0]!.base).toBe('fixed');
    expect(p.choices.deflection.drift).toBe(100);
  });
  it('a cover without any of it, as before', () => {
    const p = read(starter('shed-attached')).value!;
    expect(p.cover.struts).toBeUndefined();
    expect(p.cover.beams[0]!.posts[0]!.braces).toBeUndefined();
  });
});

describe('what is refused', () => {
  const BAD: readonly (readonly [string, string, string, string, string])[] = [
    [
      'a brace toward nowhere',
      '"toward": "end"',
      '"toward": "up"',
      'not-one-of',
      '/cover/beams/0/posts/0/braces/0/toward',
    ],
    [
      'a brace of no length',
      '"run": "2 ft 6 in"',
      '"run": "0 in"',
      'out-of-range',
      '/cover/beams/0/posts/0/braces/0/run',
    ],
    [
      'a length without unit',
      '"rise": "2 ft 4 in"',
      '"rise": "28"',
      'bad-quantity',
      '/cover/beams/0/posts/0/braces/0/rise',
    ],
    [
      'a section that is not listed',
      '"section": "brace"',
      '"section": "brase"',
      'dangling-reference',
      '/cover/beams/0/posts/0/braces/0/section',
    ],
    ['a strut to no post', '"to": "P4"', '"to": "P9"', 'dangling-reference', '/cover/struts/0/to'],
    [
      'a strut of no section',
      '"section": "strut"',
      '"section": "strutt"',
      'dangling-reference',
      '/cover/struts/0/section',
    ],
    ['a strut with a beam’s mark', '"mark": "ST1"', '"mark": "B1"', 'duplicate-mark', '/cover/struts/0/mark'],
    [
      'a foot nobody knows',
      '"footingMark": "F1"',
      '"footingMark": "F1", "base": "glued"',
      'not-one-of',
      '/cover/beams/0/posts/0/base',
    ],
    [
      'a limit of drift that limits nothing',
      '"total": 240',
      '"total": 240, "drift": 5',
      'out-of-range',
      '/choices/deflection/drift',
    ],
  ];
  for (const [what, from, to, code, path] of BAD)
    it(what, () => expect(errorsOf(edit(from, to, FILE))).toMatchObject([{ code, path }]));
});
