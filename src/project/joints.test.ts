/** Rows of `choices.joints`, good and bad. */
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf } from './testing.js';

const ROW = `{ "serves": ["J1", "post-to-footing"], "product": "strap tie, ten 8d nails", "count": 2, "down": "none", "up": "600 lb", "along": "0.5 kN", "across": "200 lb", "duration": 1.6, "species": "Douglas Fir-Larch", "G": 0.5, "source": "report, Table 3" }`;
const SECOND = ROW.replace('"J1", "post-to-footing"', '"J2"');

const file = (...rows: readonly string[]) =>
  edit('"standoff": "1 in",', `"standoff": "1 in", "joints": [${rows.join(', ')}],`);
const row = (from: string, to: string) => errorsOf(file(edit(from, to, ROW)));

describe('choices.joints', () => {
  it('may be left out', () => expect(read(edit('', '')).value!.choices.joints).toEqual([]));

  it('arrives in pounds, unrated directions apart from rated ones', () => {
    const r = read(file(ROW, SECOND));
    expect(r.issues).toEqual([]);
    expect(r.value!.choices.joints).toHaveLength(2);
    expect(r.value!.choices.joints[0]).toEqual({
      serves: ['J1', 'post-to-footing'],
      product: 'strap tie, ten 8d nails',
      count: 2,
      down: undefined,
      up: 600,
      along: expect.closeTo(112.4, 1),
      across: 200,
      duration: 1.6,
      species: 'Douglas Fir-Larch',
      G: 0.5,
      service: 'dry',
      concrete: undefined,
      source: 'report, Table 3',
      path: '/choices/joints/0',
    });
    const on = read(file(edit('"G": 0.5', '"G": 0.5, "service": "wet", "concrete": "2500 psi"', ROW))).value!;
    expect(on.choices.joints[0]).toMatchObject({ service: 'wet', concrete: 2500 });
  });

  const BAD: readonly (readonly [string, string, string, string, string])[] = [
    ['a kind nobody knows', '"post-to-footing"', '"post-to-foting"', 'not-one-of', '/serves/1'],
    ['a part’s mark for a joint’s', '"J1"', '"B1"', 'not-one-of', '/serves/0'],
    ['a joint that holds trim', '"J1"', '"fascia-to-framing"', 'not-one-of', '/serves/0'],
    ['nothing served', '["J1", "post-to-footing"]', '[]', 'out-of-range', '/serves'],
    ['a mark twice', '"post-to-footing"', '"J1"', 'contradiction', '/serves/1'],
    ['a negative load', '"600 lb"', '"-600 lb"', 'out-of-range', '/up'],
    ['zero for "none"', '"600 lb"', '"0 lb"', 'out-of-range', '/up'],
    ['a load without unit', '"600 lb"', '"600"', 'bad-quantity', '/up'],
    ['a direction left out', ' "down": "none",', '', 'missing', '/down'],
    ['no load duration', ' "duration": 1.6,', '', 'missing', '/duration'],
    ['a duration beyond connections', '"duration": 1.6', '"duration": 2', 'out-of-range', '/duration'],
    ['half a piece', '"count": 2', '"count": 1.5', 'out-of-range', '/count'],
    ['no piece', '"count": 2', '"count": 0', 'out-of-range', '/count'],
    ['no gravity', ' "G": 0.5,', '', 'missing', '/G'],
    ['no source', '"report, Table 3"', '""', 'missing', '/source'],
  ];
  for (const [what, from, to, code, at] of BAD) {
    it(`refuses ${what}`, () => expect(row(from, to)).toMatchObject([{ code, path: `/choices/joints/0${at}` }]));
  }

  it('suggests the kind meant', () =>
    expect(row('"post-to-footing"', '"post-to-foting"')[0]!.expected).toContain('did you mean "post-to-footing"'));

  it('refuses two rows for one joint, and a row without any rating', () => {
    expect(errorsOf(file(ROW, ROW)).map((i) => [i.code, i.path])).toEqual([
      ['contradiction', '/choices/joints/1/serves/0'],
      ['contradiction', '/choices/joints/1/serves/1'],
    ]);
    const unrated = ROW.replace('600 lb', 'none').replace('0.5 kN', 'none').replace('200 lb', 'none');
    expect(errorsOf(file(unrated))).toMatchObject([{ code: 'contradiction', path: '/choices/joints/0' }]);
  });
});
