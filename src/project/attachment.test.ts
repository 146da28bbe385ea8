/** Beam ends, ledger fasteners and headers as they stand in the file. */
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf, whole } from './testing.js';

const FASTENING = `"fastening": { "kind": "bolt", "diameter": "1/2 in", "length": "5 in", "washer": "2 in", "spacing": "12 in", "rows": ["4 1/4 in", "9 1/4 in"], "into": "band", "through": "7/16 in", "framing": { "species": "Douglas Fir-Larch", "depth": "1 1/2 in", "bottom": "8 ft 11 1/2 in", "top": "9 ft 8 3/4 in" }, "verified": { "value": true, "from": "seen from below" } }`;
const LEDGER = /("ledgers": \[\s*\{[^}]*?)\s*\}/;
const withFastening = (f: string): string => {
  const text = whole();
  if (!LEDGER.test(text)) throw new Error('the starter has no ledger');
  return text.replace(LEDGER, `$1, ${f} }`);
};
const fastened = (from: string, to: string) => errorsOf(withFastening(edit(from, to, FASTENING)));

describe('a ledger’s fasteners', () => {
  it('may be left out', () => expect(read(whole()).value!.cover.ledgers[0]!.fastening).toBeUndefined());

  it('arrive in inches with what was left out listed', () => {
    const r = read(withFastening(FASTENING));
    expect(errorsOf(withFastening(FASTENING))).toEqual([]);
    expect(r.value!.cover.ledgers[0]!.fastening).toMatchObject({
      kind: 'bolt',
      diameter: 0.5,
      rows: [4.25, 9.25],
      through: 0.4375,
      standoff: 0,
      framing: { depth: 1.5, bottom: 107.5, top: 116.75 },
      verified: { value: true, state: 'given', from: 'seen from below' },
      path: '/cover/ledgers/0/fastening',
    });
  });

  it('ask when nobody has looked', () => {
    const text = withFastening(edit('{ "value": true, "from": "seen from below" }', '"unknown"', FASTENING));
    const r = read(text);
    expect(r.value!.cover.ledgers[0]!.fastening!.verified).toMatchObject({ value: false, state: 'unknown' });
    expect(r.value!.questions.map((q) => q.path)).toContain('/cover/ledgers/0/fastening/verified');
  });

  it.each([
    ['"bottom": "8 ft 11 1/2 in", ', '', 'missing', '/cover/ledgers/0/fastening/framing/bottom'],
    ['"8 ft 11 1/2 in"', '"9 ft 10 in"', 'contradiction', '/cover/ledgers/0/fastening/framing/top'],
    ['["4 1/4 in", "9 1/4 in"]', '["9 1/4 in", "4 1/4 in"]', 'contradiction', '/cover/ledgers/0/fastening/rows'],
    ['"bolt"', '"nail"', 'not-one-of', '/cover/ledgers/0/fastening/kind'],
    ['"7/16 in"', '"9 in"', 'out-of-range', '/cover/ledgers/0/fastening/through'],
  ] as const)('%s → %s is refused', (from, to, code, path) => {
    expect(fastened(from, to)).toContainEqual(expect.objectContaining({ code, path }));
  });
});

describe('beam ends', () => {
  const END = `"ends": { "start": { "kind": "on-wall", "wall": "rear", "into": "post", "verified": { "value": true, "from": "opened" } } }, `;
  const POSTS = /"posts": \[/;
  const withEnds = (text: string) => whole().replace(POSTS, `${text}"posts": [`);

  it('may be left out', () => expect(read(whole()).value!.cover.beams[0]!.ends).toBeUndefined());

  it('name their wall by its place in the house', () => {
    const beam = read(withEnds(END)).value!.cover.beams[0]!;
    expect(beam.ends!.start).toMatchObject({
      kind: 'on-wall',
      wall: 0,
      into: 'post',
      path: '/cover/beams/0/ends/start',
    });
  });

  it('must name what is there', () => {
    expect(errorsOf(withEnds(END.replace('"rear"', '"attic"')))).toContainEqual(
      expect.objectContaining({ code: 'dangling-reference', path: '/cover/beams/0/ends/start/wall' }),
    );
    const post = `"ends": { "end": { "kind": "post-in-wall", "wall": "rear", "mark": "P1", "section": "nothing", "foot": { "kind": "footing", "footing": "none", "footingMark": "F9" }, "verified": "unknown" } }, `;
    const found = errorsOf(withEnds(post)).map((i) => `${i.code} ${i.path}`);
    expect(found).toContain('dangling-reference /cover/beams/0/ends/end/section');
    expect(found).toContain('dangling-reference /cover/beams/0/ends/end/foot/footing');
    expect(found.some((f) => f.startsWith('duplicate-mark'))).toBe(true);
  });

  it('are for attached covers', () => {
    const free = edit('"attachment": "attached"', '"attachment": "free-standing"', withEnds(END));
    expect(errorsOf(free)).toContainEqual(
      expect.objectContaining({ code: 'contradiction', path: '/cover/attachment' }),
    );
  });

  it('let one post do, which otherwise is refused', () => {
    const one = (text: string) => text.replace(/("posts": \[\s*\{[^}]*\})[^\]]*\]/, '$1]');
    expect(errorsOf(one(whole())).map((i) => i.code)).toContain('beam-needs-two-posts');
    expect(errorsOf(one(withEnds(END))).map((i) => i.code)).not.toContain('beam-needs-two-posts');
  });
});

describe('a header', () => {
  it('stands with its opening', () => {
    const text = whole().replace(
      /("escape": (?:true|false))/,
      '$1, "header": { "verified": "unknown", "made": { "plies": 2, "size": "2x10", "species": "Douglas Fir-Larch", "grade": "No. 2", "jacks": 1, "existing": "300 plf" } }',
    );
    expect(errorsOf(text)).toEqual([]);
    const r = read(text).value!;
    expect(r.house.openings[0]!.header).toMatchObject({
      made: { existing: 25, jacks: 1 },
      verified: { value: false, state: 'unknown' },
    });
    expect(r.questions.map((q) => q.path)).toContain('/house/openings/0/header/verified');
  });
});
