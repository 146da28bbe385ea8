/** Kinds of roofs written as a user writes them: read, placed, loaded, analysed, checked and drawn from the text of a file. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet } from '../../src/index.js';

const example = (name: string): string =>
  readFileSync(resolve(import.meta.dirname, `../../examples/${name}/project.json`), 'utf8');
const gable = example('01-gable-scissor-kept-slab');
const shed = example('02-shed-snow-two-storey');

const replaced = (text: string, from: string | RegExp, to: string | ((...m: string[]) => string)): string => {
  const out = typeof to === 'string' ? text.replace(from, to) : text.replace(from, to);
  expect(out, String(from)).not.toBe(text);
  return out;
};

const LUMBER =
  '"species": "Douglas Fir-Larch", "grade": "No. 2", "treatment": "none", "incised": false, "service": "dry"';
const SECTIONS = `"sections": {
      "rafter": { "kind": "solid", "size": "2x10", ${LUMBER} },
      "tie": { "kind": "solid", "size": "2x6", ${LUMBER} },
      "ridge": { "kind": "solid", "size": "2x12", ${LUMBER} },`;
const FRAMING = /"framing": \{[^{}]*(\{[^{}]*\}[^{}]*)*\}/;

const tied = replaced(
  replaced(gable, '"sections": {', SECTIONS),
  FRAMING,
  `"framing": {
          "kind": "rafter", "spacing": "24 in", "section": "rafter",
          "ties": { "section": "tie", "height": "2 in", "ridgeBoard": "ridge", "nail": "common-16d", "nails": 8 }
        }`,
);

const ridge = replaced(
  replaced(
    replaced(gable, '"sections": {', SECTIONS),
    FRAMING,
    '"ridgeBeam": "B3", "framing": { "kind": "rafter", "spacing": "24 in", "section": "rafter" }',
  ),
  /\n {4}\],\n {4}"ledgers": \[\]/,
  `,
      {
        "mark": "B3",
        "from": ["0 ft", "0 ft 3 in"],
        "to": ["0 ft", "14 ft 9 in"],
        "section": "beam",
        "posts": [
          { "mark": "P5", "at": "1 ft 9 in", "section": "post", "footing": "pier", "footingMark": "F5" },
          { "mark": "P6", "at": "13 ft 6 in", "section": "post", "footing": "pier", "footingMark": "F6" }
        ]
      }
    ],
    "ledgers": []`,
);

function all(text: string) {
  const d = derive(text);
  expect(d.issues.filter((i) => i.severity === 'error')).toEqual([]);
  expect(d.effects?.failure).toBeUndefined();
  for (const r of d.results) expect(Number.isFinite(r.ratio), r.id).toBe(true);
  const sheets = drawSet(drawingInput(d)!);
  expect(JSON.stringify(sheets)).not.toMatch(/NaN|Infinity|undefined/);
  return { ...d, sheets };
}
const of = (d: ReturnType<typeof all>, id: string) => d.results.find((r) => r.id === id);
/** Every result of these checks, or the one named, passes. */
const pass = (d: ReturnType<typeof all>, ...ids: string[]) => {
  for (const id of ids) {
    const found = d.results.filter((r) => r.id === id || r.check === id);
    expect(found.length, id).toBeGreaterThan(0);
    for (const r of found) expect(r.status, `${r.id}: ${r.note}`).toBe('pass');
  }
};

describe('a gable of rafters', () => {
  it('with ties below a ridge board', () => {
    const d = all(tied);
    pass(d, 'load-balance', 'frame-solved', 'tie-combined:TI1', 'tie-heel:TI1', 'rafter-combined:RF1');
    expect(of(d, 'tie-heel:TI1')!.mandatory).toBe(true);
    expect(of(d, 'wind-components:RF1')!.status).toBe('pass');
    const text = JSON.stringify(d.sheets);
    for (const mark of ['TI1', 'RB1', 'RF1']) expect(text).toContain(mark);
  });

  it('asks more of the nails the fewer they are', () => {
    const [many, few] = [all(tied), all(replaced(tied, '"nails": 8', '"nails": 4'))];
    expect(of(few, 'tie-heel:TI1')!.ratio / of(many, 'tie-heel:TI1')!.ratio).toBeCloseTo(2, 9);
    expect(of(few, 'tie-heel:TI1')!.demand).toBeCloseTo(of(many, 'tie-heel:TI1')!.demand, 9);
  });

  it('on a ridge beam', () => {
    const d = all(ridge);
    pass(d, 'load-balance', 'frame-solved', 'beam-bending:B3', 'rafter-bending:RF1');
    expect(of(d, 'tie-heel:TI1')).toBeUndefined();
    // The ridge beam carries more than an eave beam: it takes a share of both slopes.
    expect(of(d, 'beam-bending:B3')!.demand).toBeGreaterThan(of(d, 'beam-bending:B1')!.demand);
  });

  it('with neither is refused', () => {
    const bare = replaced(tied, /,\s*"ties": \{[^{}]*\}/, '');
    expect(derive(bare).issues.map((i) => i.code)).toContain('framing-unsupported');
  });
});

const corner = replaced(
  replaced(
    replaced(
      shed,
      /("ledgers": \[\s*)\{/,
      '$1{ "mark": "L2", "wall": "right", "from": "-16 ft", "to": "-6 ft", "section": "ledger" },\n      {',
    ),
    /("beams": \[\s*)\{/,
    `$1{
        "mark": "B2", "from": ["28 ft 6 in", "-16 ft"], "to": ["28 ft 6 in", "-6 ft"], "section": "beam",
        "posts": [
          { "mark": "P8", "at": "6 in", "section": "post", "footing": "pad", "footingMark": "F8" },
          { "mark": "P9", "at": "9 ft 6 in", "section": "post", "footing": "pad", "footingMark": "F9" }
        ]
      },
      {`,
  ),
  /("roofs": \[\s*)(\{\s*"mark": "R1",[\s\S]*?\n {6}\})(\s*\]\s*\n {2}\})/,
  (_: string, open: string, roof: string, close: string) =>
    `${open}${roof},\n      ${roof
      .replace('"R1"', '"R2"')
      .replace('"L1"', '"L2"')
      .replace('"B1"', '"B2"')
      .replace(/"from": "[^"]*"/, '"fall": "+x", "from": "-15 ft 11 in"')
      .replace(/"to": "[^"]*"/, '"to": "-6 ft 1 in"')}${close}`,
);

describe('two sheds round a corner of the house', () => {
  it('one falling to the yard, one sideways', () => {
    const d = all(corner);
    pass(d, 'load-balance', 'frame-solved', 'lot-coverage');
    expect(d.structure!.roofs.map((r) => [r.mark, r.ridgeAxis])).toEqual([
      ['R1', 'x'],
      ['R2', 'y'],
    ]);
    // Each roof has its section; two that fit share a sheet.
    expect(d.sheets.filter((s) => /^Sections?$/.test(s.title)).flatMap((s) => s.viewports).length).toBe(2);
    // Plan areas add up: the roofs do not overlap.
    const one = all(shed).lot!.coverage.rows.find((r) => r.name === 'Patio cover')!.area;
    expect(d.lot!.coverage.rows.find((r) => r.name === 'Patio cover')!.area).toBeGreaterThan(one + 100 * 144);
  });
});
