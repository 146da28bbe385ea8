/** Products at the joints of a whole project: compared, explained and printed; the examples themselves stay open. */

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput, drawSet, explain, jointDemands, layout, sheetFrame, starter } from '../src/index.js';

/** Invented ratings, large enough for any joint of the starters unless said otherwise. */
const row = (serves: string, more = '"down": "20000 lb"', up = '12000 lb') =>
  `{ "serves": ["${serves}"], "product": "side plates, bolted", "count": 2, ${more}, "up": "${up}", "along": "8000 lb", "across": "8000 lb", "duration": 0.9, "species": "Douglas Fir-Larch", "G": 0.46, "source": "invented for a test, Table 3" }`;

const project = (kind: 'shed-attached' | 'gable-attached', ...rows: readonly string[]) =>
  starter(kind).replace('"standoff": "1 in",', `"standoff": "1 in", "joints": [${rows.join(', ')}],`);

const POST = row('post-to-footing', '"down": "20000 lb", "concrete": "2500 psi"');
const shed = derive(
  project(
    'shed-attached',
    row('rafter-to-beam', '"down": "none"'),
    row('beam-to-post', '"down": "none"', '1 lb'),
    POST,
  ),
);
const marks = (kind: string) => [...new Set(shed.structure!.joints.filter((j) => j.kind === kind).map((j) => j.mark))];
const of = (kind: string) =>
  shed.results.filter((r) => r.check === 'joint-products' && marks(kind).includes(r.subject));

describe('a project with joint products', () => {
  it('reads without an error', () => expect(shed.issues.filter((i) => i.severity === 'error')).toEqual([]));

  it('passes where the ratings fit, since the house is named against side load both ways', () => {
    for (const kind of ['rafter-to-beam', 'post-to-footing']) {
      expect(of(kind).length).toBeGreaterThan(0);
      for (const r of of(kind)) {
        expect(r.status, r.note).toBe('pass');
        expect(r.ratio).toBeGreaterThan(0);
        expect(r.ratio).toBeLessThan(1);
      }
    }
  });

  it('fits so far and stays open where nothing is named', () => {
    const text = project('shed-attached', POST).replace(
      /"lateral": \{[^}]*\}/,
      '"lateral": { "x": "unknown", "y": "house" }',
    );
    const open = derive(text).results.filter(
      (r) => r.check === 'joint-products' && marks('post-to-footing').includes(r.subject),
    );
    for (const r of open) {
      expect(r.status).toBe('not-evaluated');
      expect(r.note).toContain('Side load not included yet: along the house wall');
    }
    expect(open.length).toBeGreaterThan(0);
  });

  it('compares the tie of a rafter with component uplift as well', () => {
    const mark = marks('rafter-to-beam')[0]!;
    const asked = jointDemands(drawingInput(shed)!).find((d) => d.mark === mark)!.up.value;
    const r = of('rafter-to-beam').find((q) => q.subject === mark)!;
    expect(r.demand).toBeCloseTo(asked, 6);
  });

  it('fails where two pounds are to hold a roof down', () => {
    expect(of('beam-to-post').map((r) => r.status)).toEqual(['fail']);
    const r = of('beam-to-post')[0]!;
    expect(r.note).toContain('too weak');
    expect(explain(shed, r.id).at(-1)).toMatchObject({ symbol: 'ratio', value: r.ratio });
  });

  it('leaves the others open as before', () => {
    for (const r of of('rafter-to-ledger')) {
      expect(r.status).toBe('not-evaluated');
      expect(r.note).toContain('no product or calculated connection is named');
    }
  });
});

for (const kind of ['shed-attached', 'gable-attached'] as const) {
  describe(`the schedule of ${kind}`, () => {
    const roof = kind === 'shed-attached' ? 'rafter-to-beam' : 'truss-to-beam';
    const d = derive(project(kind, row(roof, '"down": "none"'), POST));
    it('reminds of the wood a truss plant decides', () => {
      const fits = d.results.filter((r) => r.check === 'joint-products' && r.note.includes('side plates'));
      expect(fits.length).toBeGreaterThan(0);
      expect(fits.some((r) => r.note.includes('sealed truss drawing'))).toBe(roof === 'truss-to-beam');
    });
    for (const size of ['ARCH D', 'ANSI B'] as const) {
      it(`prints name, count and rating, ${size}`, () => {
        const sheets = drawSet(drawingInput(d)!, size);
        const boxes = sheets.filter((s) => s.title.startsWith('Schedules')).flatMap((s) => layout.textBoxes(s));
        const words = boxes.map((b) => b.content).join(' ');
        expect(words).toContain('(2) side plates, bolted: 12,000 lb up');
        expect(words).toContain('open: name');
        for (const s of sheets) {
          expect(layout.outside(layout.textBoxes(s), sheetFrame(size))).toEqual([]);
          expect(layout.overlaps(layout.textBoxes(s))).toEqual([]);
        }
      });
    }
  });
}

describe('scissor trusses fastened at both bearings', () => {
  const file = resolve(import.meta.dirname, '../examples/01-gable-scissor-kept-slab/project.json');
  const text = readFileSync(file, 'utf8');
  const results = (t: string) => {
    const d = derive(t);
    const demands = jointDemands({
      project: d.project!,
      structure: d.structure!,
      loads: d.loads!,
      effects: d.effects!,
    });
    return ['J1', 'J2', 'J3'].map((mark) => ({
      result: d.results.find((r) => r.check === 'joint-products' && r.subject === mark)!,
      demand: demands.find((x) => x.mark === mark)!,
    }));
  };

  it('ask of product and connection the push that the schedule prints', () => {
    for (const { result } of results(text)) expect(result.status).toBe('pass');
    const [j1, j2, j3] = results(text.replace('"slides": "right",', ''));
    for (const { result, demand } of [j1!, j2!]) {
      expect(demand.alongX.value).toBeGreaterThan(1000);
      expect(result.status).toBe('fail');
      expect(result.combination).toMatch(/, bearings held$/);
      // The push alone is more than two ties of 110 lb take.
      expect(result.ratio).toBeGreaterThan(demand.alongX.value / 220 - 1e-9);
    }
    expect(j3!.result.status).toBe('fail');
    expect(j3!.result.note).toMatch(/nothing holds \d+ lb crosswise/);
  });
});
