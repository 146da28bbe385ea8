/** Rows of `choices.connections`, good and bad. */
import { describe, expect, it } from 'vitest';
import { read } from './read.js';
import { edit, errorsOf } from './testing.js';

const PATTERN = '{ "alongGrain": 2, "acrossGrain": 1, "spacingAlong": "3 in", "end": "4 in", "edge": "2-3/4 in" }';
const BOLTS = `{ "kind": "bolts", "takes": ["up"], "size": "bolt-1-2", "axis": "crosswise", "plates": { "material": "steel", "count": 2, "end": "2 in", "thickness": "0.25 in", "width": "4 in", "Fy": "36000 psi", "Fu": "58000 psi" }, "upper": ${PATTERN}, "lower": ${PATTERN} }`;
const TOE = '{ "kind": "toe-nails", "takes": ["lengthwise", "crosswise"], "size": "common-16d", "count": 4 }';
const ROW = `{ "serves": ["J1", "beam-to-post"], "made": "dry", "parts": [${BOLTS}, ${TOE}] }`;

const file = (...rows: readonly string[]) =>
  edit('"standoff": "1 in",', `"standoff": "1 in", "connections": [${rows.join(', ')}],`);
const row = (from: string, to: string) => errorsOf(file(edit(from, to, ROW)));

describe('choices.connections', () => {
  it('may be left out', () => expect(read(edit('', '')).value!.choices.connections).toEqual([]));

  it('arrives in inches and psi, blanks filled in', () => {
    const r = read(file(ROW));
    expect(r.issues).toEqual([]);
    expect(r.value!.choices.connections[0]).toMatchObject({
      serves: ['J1', 'beam-to-post'],
      madeDry: true,
      path: '/choices/connections/0',
      parts: [
        {
          kind: 'bolts',
          washer: 0,
          plates: { thickness: 0.25, Fu: 58000 },
          upper: { spacingAlong: 3, spacingAcross: 0, edge: 2.75 },
        },
        { kind: 'toe-nails', count: 4 },
      ],
    });
  });

  const BAD: readonly (readonly [string, string, string, string, string])[] = [
    ['a kind nobody knows', '"toe-nails"', '"glue"', 'not-one-of', '/parts/1/kind'],
    ['a size that is not sold', '"bolt-1-2"', '"bolt-9-16"', 'not-one-of', '/parts/0/size'],
    ['a direction held twice', '["lengthwise", "crosswise"]', '["up"]', 'contradiction', '/parts/1/takes/0'],
    ['a direction nobody knows', '["up"]', '["sideways"]', 'not-one-of', '/parts/0/takes/0'],
    ['a mark twice', '"beam-to-post"', '"J1"', 'contradiction', '/serves/1'],
    ['no word on moisture', ' "made": "dry",', '', 'missing', '/made'],
    ['several fasteners without spacing', '"spacingAlong": "3 in", ', '', 'missing', '/parts/0/upper/spacingAlong'],
    ['steel nobody makes', '"58000 psi"', '"580000 psi"', 'out-of-range', '/parts/0/plates/Fu'],
  ];
  for (const [what, from, to, code, at] of BAD) {
    it(`refuses ${what}`, () =>
      expect(row(from, to)).toContainEqual(expect.objectContaining({ code, path: `/choices/connections/0${at}` })));
  }

  it('refuses a joint that a product serves already', () => {
    const product =
      '{ "serves": ["J1"], "product": "tie", "count": 1, "down": "none", "up": "600 lb", "along": "none", "across": "none", "duration": 1.6, "species": "any", "G": 0.5, "source": "report" }';
    const both = edit('"standoff": "1 in",', `"standoff": "1 in", "joints": [${product}], "connections": [${ROW}],`);
    expect(errorsOf(both)).toMatchObject([{ code: 'contradiction', path: '/choices/connections/0/serves/0' }]);
  });

  it('knows how long a nail is', () => {
    const nails = BOLTS.replace('"bolts"', '"nails"').replace('"bolt-1-2"', '"common-10d", "length": "3-1/2 in"');
    expect(errorsOf(file(ROW.replace(BOLTS, nails)))).toMatchObject([
      { code: 'contradiction', path: '/choices/connections/0/parts/0/length', expected: expect.stringContaining('3"') },
    ]);
    expect(errorsOf(file(ROW.replace(BOLTS, nails.replace('3-1/2 in', '3 in'))))).toEqual([]);
  });

  it('asks lapped members to share their fasteners, and wood plates for a solid section', () => {
    const bare = ROW.replace(/"plates": \{[^}]*\}, /, '').replace(
      '"lower": { "alongGrain": 2',
      '"lower": { "alongGrain": 3',
    );
    expect(errorsOf(file(bare))).toMatchObject([
      { code: 'contradiction', path: '/choices/connections/0/parts/0/lower' },
    ]);
    const wood = ROW.replace(
      /"plates": \{[^}]*\}/,
      '"plates": { "material": "wood", "count": 2, "end": "4 in", "section": "nothing" }',
    );
    expect(errorsOf(file(wood))).toMatchObject([
      { code: 'not-one-of', path: '/choices/connections/0/parts/0/plates/section' },
    ]);
  });
});
