import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Issue } from '../base/issue.js';
import { locate, projectJsonSchema, read } from './index.js';
import { BETWEEN_SLIPS } from './slips-between.testing.js';
import { VALUE_SLIPS } from './slips-of-values.testing.js';
import { starter } from './starter/index.js';
import { edit, errorsOf, placeOf, whole } from './testing.js';

const root = resolve(import.meta.dirname, '../..');
const EXAMPLES = ['01-gable-scissor-kept-slab', '02-shed-snow-two-storey'].map((n) => ({
  name: n,
  text: readFileSync(join(root, 'examples', n, 'project.json'), 'utf8'),
}));

describe('the examples', () => {
  for (const { name, text } of EXAMPLES) {
    it(`${name} reads without an error`, () => {
      const r = read(text);
      expect(r.issues.filter((i) => i.severity !== 'note')).toEqual([]);
      expect(r.value?.questions).toEqual([]);
    });
  }
});

describe('what is read', () => {
  it('arrives in base units, each choice resolved', () => {
    let text = edit(
      '"speed": "unknown"',
      '"speed": { "value": "100 mph", "from": "county sheet" }',
      starter('gable-attached'),
    );
    text = edit('"elevation": "0 ft"', '"elevation": "1150 ft"', text);
    text = edit('"coverageLimit": "unknown"', '"coverageLimit": { "value": "40 %", "from": "counter" }', text);
    text = edit('"left": "unknown"', '"left": { "value": "2.286 m", "from": "counter" }', text);
    const p = read(text).value!;
    expect(p.basis.wind.speed).toEqual({ value: 100, state: 'given', from: 'county sheet', path: '/basis/wind/speed' });
    expect(p.basis.wind.elevation).toBe(13800);
    expect(p.basis.zoning.coverageLimit.value).toBeCloseTo(0.4, 12);
    expect(p.basis.zoning.setbacks.left.value).toBeCloseTo(90, 9);
    expect(p.basis.codes).toEqual({
      id: '2018',
      residential: 'IRC 2018',
      building: 'IBC 2018',
      loads: '7-16',
      wood: 'NDS 2018',
      concrete: 'ACI 318-14',
    });
    expect(p.lot.courses.map((c) => c.azimuth)).toEqual([Math.PI / 2, 0, 1.5 * Math.PI, Math.PI]);
    expect(p.house.walls[0]).toMatchObject({
      name: 'rear',
      start: { x: -264, y: 0 },
      end: { x: 264, y: 0 },
      plate: 97,
      stories: 1,
    });
    expect(p.house.walls[3]!.end).toEqual({ x: -264, y: 0 });
    expect(p.house.openings.map((o) => o.wall)).toEqual([0, 0, 2]);
    expect(p.patio.slabs[0]!.fall).toBeCloseTo(0.25 / 12, 12);
    const roof = p.cover.roofs[0]!;
    expect(roof.pitch).toBeCloseTo(Math.atan(4 / 12), 12);
    expect(roof.pitchText).toBe('4/12');
    expect(roof.framing).toMatchObject({ kind: 'common-truss', weight: 6, heel: 5.5, spacing: 16, bottomPitch: 0 });
    expect(p.cover.beams[1]!.posts[1]).toMatchObject({ mark: 'P4', at: 162, path: '/cover/beams/1/posts/1' });
    expect(p.choices.sections.beam).toMatchObject({ kind: 'glulam', width: 5.5, depth: 12 });
    expect(p.choices.footings.pier).toMatchObject({ kind: 'pier-on-pad', bottom: 54, fc: 3000 });
    const shed = read(whole()).value!;
    expect(shed.cover.roofs[0]).toMatchObject({ kind: 'shed', high: { ledger: 'L1' }, from: -119.25, highOverhang: 0 });
    expect(shed.cover.ledgers[0]).toMatchObject({ mark: 'L1', wall: 0, from: -120, to: 120 });
  });

  it('code editions named one by one are the bundle they make', () => {
    const codes =
      '{ "residential": "2021", "building": "IBC 2021", "loads": "ASCE 7-16", "wood": "NDS 2018", "concrete": "318-19" }';
    expect(read(edit('"codes": "2018"', `"codes": ${codes}`)).value!.basis.codes.id).toBe('2021');
  });
});

describe('schema/project.v1.schema.json', () => {
  it('is current; if not, run npx tsx scripts/schema.ts', () => {
    const kept: unknown = JSON.parse(readFileSync(join(root, 'schema/project.v1.schema.json'), 'utf8'));
    expect(kept).toEqual(JSON.parse(JSON.stringify(projectJsonSchema())));
  });

  it('describes every key, and gives an example of every leaf', () => {
    const bare: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties } = node as { properties?: Record<string, Record<string, unknown>> };
      for (const [key, v] of Object.entries(properties ?? {})) {
        if (typeof v.description !== 'string') bare.push(`${path}/${key}: description`);
        const leaf = ['string', 'number', 'integer', 'boolean'].includes(String(v.type));
        if (leaf && !Array.isArray(v.examples) && v.const === undefined && key !== '$schema')
          bare.push(`${path}/${key}: example`);
      }
      for (const [k, v] of Object.entries(node)) walk(v, `${path}/${k}`);
    };
    walk(projectJsonSchema(), '');
    expect(bare).toEqual([]);
  });
});

describe('one slip gives its code, place and remedy', () => {
  for (const s of [...VALUE_SLIPS, ...BETWEEN_SLIPS]) {
    it(`${s.code} at ${s.path}`, () => {
      const text = edit(s.from, s.to);
      const hit = errorsOf(text).find((i) => i.code === s.code && i.path === s.path);
      expect(hit, JSON.stringify(errorsOf(text), null, 1)).toBeDefined();
      expect({ line: hit!.line, column: hit!.column }).toEqual(placeOf(text, s.at, s.nth));
      expect(hit!.expected).toMatch(s.expected);
      if (s.found !== undefined) expect(hit!.found).toBe(s.found);
      expect(read(text).value).toBeUndefined();
    });
  }
});

describe('gable beams', () => {
  const gable = starter('gable-attached');
  const slip = (from: string, to: string): readonly Issue[] => errorsOf(edit(from, to, gable));
  it('take marks as written', () => expect(read(gable).value!.cover.roofs[0]).toMatchObject({ beams: ['B1', 'B2'] }));
  it('named right before left', () =>
    expect(slip('"beams": ["B1", "B2"]', '"beams": ["B2", "B1"]')).toMatchObject([
      {
        code: 'beams-order',
        path: '/cover/roofs/0/beams',
        expected: '["B1", "B2"]',
        ...placeOf(gable, '["B1", "B2"]'),
      },
    ]));
  it('of unequal extent', () =>
    expect(slip('"from": ["9 ft", "0 ft 6 in"]', '"from": ["9 ft", "0 ft 8 in"]')).toMatchObject([
      { code: 'beams-unequal', ...placeOf(gable, '["B1", "B2"]') },
    ]));
  it('skew to the ridge', () =>
    expect(slip('"to": ["9 ft", "14 ft 6 in"]', '"to": ["9 ft 11 in", "14 ft 6 in"]')).toMatchObject([
      { code: 'beams-not-parallel', path: '/cover/roofs/0/beams/1', ...placeOf(gable, '"B2"], "ridge"') },
    ]));
  it('one beam twice', () =>
    expect(slip('"beams": ["B1", "B2"]', '"beams": ["B1", "B1"]')).toMatchObject([{ code: 'contradiction' }]));
  it('frames past the beams', () =>
    expect(slip('"to": "14 ft 3 in"', '"to": "15 ft 9 in"').map((i) => i.code)).toEqual([
      'frame-off-bearing',
      'frame-off-bearing',
    ]));
  it('a bottom chord as steep as the roof', () =>
    expect(slip('"kind": "common-truss",', '"kind": "scissor-truss", "bottomPitch": "4/12",')).toMatchObject([
      { code: 'contradiction', path: '/cover/roofs/0/framing/bottomPitch' },
    ]));
});

describe('walls', () => {
  it('counter-clockwise are told so, at the list', () => {
    let text = edit('"start": ["22 ft", "0 ft"]', '"start": ["-22 ft", "-30 ft"]');
    text = edit('"start": ["-22 ft", "-30 ft"]', '"start": ["22 ft", "0 ft"]', text, 2);
    expect(errorsOf(text).find((i) => i.code === 'walls-order')).toMatchObject({
      path: '/house/walls',
      ...placeOf(text, '[\n      { "name": "rear"'),
    });
  });
});

describe('what is not a project', () => {
  it('another object, a list, an empty text', () => {
    expect(errorsOf('{ "name": "x" }')).toMatchObject([{ code: 'not-a-project', path: '', line: 1, column: 1 }]);
    expect(errorsOf('\n  [1, 2]')).toMatchObject([{ code: 'not-a-project', line: 2, column: 3 }]);
    expect(errorsOf('')).toMatchObject([{ code: 'syntax', line: 1, column: 1 }]);
    expect(errorsOf('{ "eavewright": "1" }')).toMatchObject([
      { code: 'wrong-type', path: '/eavewright', line: 1, column: 17 },
    ]);
  });
});

describe('all problems at once', () => {
  it('slips in several parts and of several sorts are reported together, in file order', () => {
    let text = edit('"frost": "unknown"', '"frost": 12');
    text = edit('"section": "beam"', '"section": "beem"', text);
    text = edit('"mark": "P2"', '"mark": "P1"', text);
    text = edit('"pitch": "2/12"', '"pitch": "steep"', text);
    text = edit('"service": "dry" },\n      "post"', '"servise": "dry" },\n      "post"', text);
    text = edit('"kind": "glulam"', '"plies": 1, "kind": "glulam"', text);
    const codes = errorsOf(text).map((i) => i.code);
    expect(codes).toEqual([
      'wrong-type',
      'dangling-reference',
      'duplicate-mark',
      'bad-quantity',
      'missing',
      'unknown-key',
      'unknown-key',
    ]);
    const lines = errorsOf(text).map((i) => i.line!);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    for (const i of errorsOf(text)) expect(i.message).toMatch(/^.*[.!?]$/);
  });
});

describe('answers of the office', () => {
  const read1 = (to: string) => read(edit('"frost": "unknown"', `"frost": ${to}`));
  it('unknown becomes a placeholder and a question', () => {
    const p = read(whole()).value!;
    expect(p.basis.frost).toEqual({ value: 48, state: 'unknown', from: '', path: '/basis/frost' });
    expect(p.questions.find((q) => q.path === '/basis/frost')).toEqual({
      path: '/basis/frost',
      text: 'What is the frost depth here?',
      meanwhile: '48 in',
    });
    expect(p.basis.zoning.setbacks['street-side'].state).toBe('assumed');
    expect(read1('{ "value": "unknown", "from": "" }').value!.basis.frost.state).toBe('unknown');
  });
  it('a bare value is taken, with a note that it has no source', () => {
    const r = read1('"30 in"');
    expect(r.value!.basis.frost).toEqual({ value: 30, state: 'given', from: '', path: '/basis/frost' });
    expect(r.issues).toMatchObject([
      {
        code: 'no-source',
        severity: 'note',
        path: '/basis/frost',
        ...placeOf(edit('"frost": "unknown"', '"frost": "30 in"'), '"30 in"'),
      },
    ]);
  });
  it('with a source it is simply given', () =>
    expect(read1('{ "value": "30 in", "from": "counter" }').issues).toEqual([]));
  it('zero frost is an answer', () =>
    expect(read1('{ "value": "0 in", "from": "counter" }').value!.basis.frost.value).toBe(0));
});

describe('what may be left out is listed as an assumption', () => {
  const CASES: readonly (readonly [string, string, string])[] = [
    ['      "elevation": "0 ft",\n', '/basis/wind/elevation', 'sea level'],
    ['"headroom": "6 ft 8 in"', '/basis/zoning/headroom', '6\'-8"'],
    ['"standoff": "1 in",', '/choices/standoff', '1"'],
    ['"deflection": { "live": 360, "total": 240 },', '/choices/deflection', 'L/360'],
  ];
  for (const [piece, path, says] of CASES) {
    it(path, () => {
      const r = read(edit(piece, ''));
      expect(r.issues).toEqual([]);
      expect(r.value!.assumptions.some((a) => a.path === path && a.text.includes(says))).toBe(true);
    });
  }
});

describe('a fascia no section describes', () => {
  it('is listed as plain lumber', () => {
    const p = read(edit('"fascia": { "kind"', '"trim": { "kind"')).value!;
    expect(p.assumptions.find((a) => a.path === '/choices/sections/fascia')?.text).toContain('2x10');
    expect(read(whole()).value!.assumptions.map((a) => a.path)).toEqual(['/basis/rainfall', '/cover/beams/0/splices']);
  });
});

describe('locate', () => {
  it('finds the value, or its nearest ancestor, and keeps a place that is known', () => {
    const text = whole();
    const at = (path: string): Issue => ({ code: 'x', severity: 'error', path, message: '' });
    const [a, b, c, d] = locate(text, [
      at('/cover/beams/0/posts/1/at'),
      at('/cover/beams/0/posts/9/at'),
      { ...at('/job'), line: 7, column: 7 },
      at(''),
    ]);
    expect({ line: a!.line, column: a!.column }).toEqual(placeOf(text, '"10 ft", "section"'));
    expect(a!.found).toBe('"10 ft"');
    expect({ line: b!.line, column: b!.column }).toEqual(placeOf(text, '"posts"'));
    expect(c).toMatchObject({ line: 7, column: 7 });
    expect(d).toMatchObject({ line: 1, column: 1 });
  });
  it('leaves issues alone when the text cannot be read', () =>
    expect(locate('{', [{ code: 'x', severity: 'error', path: '/a', message: '' }])[0]!.line).toBeUndefined());
});
