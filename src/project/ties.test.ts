/** Entries of `cover.houseTies` and what belongs to a diaphragm under `finish.nailing`, good and bad. */
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf, whole } from './testing.js';

const TIE = `{ "mark": "H1", "roof": "R1", "wall": "rear", "from": "-9 ft", "to": "9 ft", "nailer": "ledger", "fastener": { "kind": "screw", "diameter": "0.242 in", "length": "5 in", "spacing": "16 in" }, "into": "studs", "verified": "unknown" }`;

const file = (tie: string, text?: string) => edit('"roofs": [', `"houseTies": [${tie}],\n    "roofs": [`, text, 2);
const tie = (from: string, to: string) => errorsOf(file(edit(from, to, TIE)));

describe('cover.houseTies', () => {
  it('may be left out', () => expect(read(whole()).value!.cover.houseTies).toEqual([]));

  it('arrives in inches, with what was assumed listed and what is unknown asked', () => {
    const r = read(file(TIE));
    expect(r.issues.filter((i) => i.severity === 'error')).toEqual([]);
    const p = r.value!;
    expect(p.cover.houseTies).toEqual([
      {
        mark: 'H1',
        roof: 'R1',
        wall: 0,
        from: -108,
        to: 108,
        level: undefined,
        nailer: 'ledger',
        fastener: { kind: 'screw', diameter: 0.242, length: 5, spacing: 16, rows: 1 },
        into: 'studs',
        gap: 0.5,
        G: 0.42,
        verified: { value: false, state: 'unknown', from: '', path: '/cover/houseTies/0/verified' },
        path: '/cover/houseTies/0',
      },
    ]);
    expect(p.assumptions.map((a) => a.path)).toEqual(
      expect.arrayContaining(['gap', 'G', 'level', 'fastener/rows'].map((key) => `/cover/houseTies/0/${key}`)),
    );
    expect(p.questions.map((q) => q.path)).toContain('/cover/houseTies/0/verified');
  });

  it.each([
    ['a roof that is not there', '"R1"', '"R9"', 'dangling-reference', '/roof'],
    ['a wall that is not there', '"rear"', '"reer"', 'dangling-reference', '/wall'],
    ['a nailer that is not there', '"nailer": "ledger"', '"nailer": "nailr"', 'dangling-reference', '/nailer'],
    ['a mark taken already', '"H1"', '"B1"', 'duplicate-mark', ''],
    ['a tie that ends before it begins', '"9 ft"', '"-10 ft"', 'contradiction', '/to'],
    ['a tie past the wall', '"9 ft"', '"90 ft"', 'tie-off-wall', '/to'],
    ['a wall that does not face the patio', '"rear"', '"right"', 'tie-wall-direction', '/wall'],
    ['a backing nobody knows', '"studs"', '"soffit"', 'not-one-of', '/into'],
    ['no word of who looked', ', "verified": "unknown"', '', 'missing', '/verified'],
  ])('refuses %s', (_, from, to, code, at) => {
    const found = tie(from, to);
    expect(found.map((i) => i.code)).toContain(code);
    if (at !== '') expect(found.map((i) => i.path)).toContain(`/cover/houseTies/0${at}`);
  });
});

describe('finish.nailing', () => {
  const nailed = (more: string) =>
    read(
      edit(
        '"gutter": true',
        `"gutter": true, "nailing": { "nail": "common-8d", "edge": "6 in", "field": "12 in"${more} }`,
      ),
    );
  it('keeps what makes a diaphragm', () => {
    const r = nailed(', "boundary": "4 in", "blocked": true, "heel": { "nail": "common-10d", "count": 4 }');
    expect(r.value!.cover.roofs[0]!.finish.nailing).toEqual({
      nail: 'common-8d',
      edge: 6,
      field: 12,
      boundary: 4,
      blocked: true,
      heel: { nail: 'common-10d', count: 4 },
    });
  });
  it('reads without it', () => expect(nailed('').value!.cover.roofs[0]!.finish.nailing?.heel).toBeUndefined());
  it('refuses half a nail', () =>
    expect(nailed(', "heel": { "nail": "common-8d", "count": 2.5 }').issues.map((i) => i.code)).toContain(
      'out-of-range',
    ));
});

describe('sideLoad of a wall of the house', () => {
  const stated = (square: string) => {
    const front = '"start": ["-22 ft", "0 ft"],';
    return edit(
      front,
      `${front} "sideLoad": { "along": { "value": "900 lb", "from": "letter" }, "square": ${square} },`,
    );
  };

  it('may be left out, and is then not known', () => {
    expect(read(whole()).value!.house.walls.every((w) => w.sideLoad === undefined)).toBe(true);
  });

  it('arrives in pounds and pounds per inch, with who said so', () => {
    const wall = read(stated('{ "value": "120 plf", "from": "letter" }')).value!.house.walls[0]!;
    expect(wall.sideLoad).toEqual({
      along: { value: 900, state: 'given', from: 'letter', path: '/house/walls/0/sideLoad/along' },
      square: { value: 10, state: 'given', from: 'letter', path: '/house/walls/0/sideLoad/square' },
      path: '/house/walls/0/sideLoad',
    });
  });

  it('is asked for where it is unknown, and counts as nothing meanwhile', () => {
    const p = read(stated('"unknown"')).value!;
    expect(p.house.walls[0]!.sideLoad!.square).toMatchObject({ value: 0, state: 'unknown' });
    expect(p.questions.map((q) => q.path)).toContain('/house/walls/0/sideLoad/square');
  });
});
