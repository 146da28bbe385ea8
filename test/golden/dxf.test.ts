/**
 * The DXF files of each example as a designer's program meets them: read by two independent readers, and compared with the sheets
 * they were made from. What a reader does not know (one leaves out hatches, both leave out wipeouts) is counted from the tags.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type DxfEntity, type DxfFile, parseString } from 'dxf';
import parserModule from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import {
  clipSegment,
  type Dimension,
  LAYERS,
  type Primitive,
  type Rect,
  type Text,
} from '../../src/drawings/ir/index.js';
import { derive, drawingInput, drawSet, dxfModelPlan, dxfOf, SHEET_SIZES, type Sheet } from '../../src/index.js';
import { root } from './golden.js';

const drawn = readdirSync(join(root, 'examples'))
  .sort()
  .flatMap((name) => {
    const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
    return input ? [{ name, input }] : [];
  });

// ---------------------------------------------------------------------------------------------- the file as it is written

type Pair = readonly [code: number, value: string];

function pairsOf(text: string): Pair[] {
  const lines = text.split('\r\n');
  expect(lines.pop()).toBe('');
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!]);
}

interface Raw {
  readonly type: string;
  readonly section: string;
  readonly pairs: readonly Pair[];
}

/** Everything that starts with a group 0, with the section it stands in. */
function rawsOf(pairs: readonly Pair[]): Raw[] {
  const out: { type: string; section: string; pairs: Pair[] }[] = [];
  let section = '';
  pairs.forEach(([code, value], i) => {
    if (code === 0) {
      if (value === 'SECTION') section = pairs[i + 1]![1];
      out.push({ type: value, section, pairs: [] });
    } else out.at(-1)!.pairs.push([code, value]);
  });
  return out;
}

const countBy = (types: readonly string[]): Record<string, number> => {
  const out: Record<string, number> = {};
  for (const t of types) out[t] = (out[t] ?? 0) + 1;
  return out;
};

const only = (counts: Record<string, number>, types: readonly string[]): Record<string, number> =>
  Object.fromEntries(types.map((t) => [t, counts[t] ?? 0]));

/** Letters as both sides must have them, however a fraction or power is set. */
const plain = (s: string): string =>
  s.replace(/\^ ?/g, '').normalize('NFKC').replaceAll('⁄', '/').replace(/\s+/g, ' ').trim();
const spaced = (s: string): string => plain(s.replace(/(\d)([½¼¾⅛⅜⅝⅞]|[¹²³⁴-⁹⁰]+⁄)/g, '$1 $2'));

// -------------------------------------------------------------------------------------------------- what the sheets hold

/** Primitives of a sheet or view with those inside symbols, at any depth. */
const deep = (items: readonly Primitive[]): Primitive[] =>
  items.flatMap((p) => (p.kind === 'symbol' ? [p, ...deep(p.items)] : [p]));

const inside = (p: { readonly x: number; readonly y: number }, r: Rect): boolean =>
  p.x >= r.x - 1e-9 && p.x <= r.x + r.w + 1e-9 && p.y >= r.y - 1e-9 && p.y <= r.y + r.h + 1e-9;

interface Shown {
  readonly items: readonly Primitive[];
  readonly window: Rect | undefined;
}
const partsOf = (s: Sheet): Shown[] => [
  ...s.viewports.flatMap((v) => [
    { items: v.items, window: v.window },
    { items: v.over ?? [], window: undefined },
  ]),
  { items: s.items, window: undefined },
];

/** Entities by type that a sheet must become; of windowed parts only what a window cannot cut in pieces. */
function expected(s: Sheet): { readonly exact: Record<string, number>; readonly windowed: boolean } {
  const counts: Record<string, number> = { VIEWPORT: s.viewports.length + 1 };
  const add = (type: string, n = 1): void => {
    counts[type] = (counts[type] ?? 0) + n;
  };
  for (const { items, window } of partsOf(s))
    for (const p of items) {
      if (p.kind === 'line') {
        if (!window || clipSegment(p.a.x, p.a.y, p.b.x, p.b.y, window)) add('LINE');
      } else if (p.kind === 'dimension') {
        if (!window || inside(p.a, window) || inside(p.b, window)) add('DIMENSION');
      } else if (p.kind === 'symbol') {
        if (!window || inside(p.at, window)) add('INSERT');
      } else if (p.kind === 'text') {
        if (p.content.trim() === '' || (window && !inside(p.at, window))) continue;
        add(p.content.length > 250 ? 'MTEXT' : 'TEXT');
        if (p.mask) add('WIPEOUT');
      } else if (window) continue;
      else if (p.kind === 'hatch') add('HATCH', p.pattern.startsWith('wood-') ? p.loops.length : 1);
      else if (p.kind === 'arc') add('ARC');
      else {
        if (p.fill) add(p.fill === 'paper' ? 'WIPEOUT' : 'HATCH');
        if (p.pen) add(p.kind === 'circle' ? 'CIRCLE' : 'LWPOLYLINE');
      }
    }
  return { exact: counts, windowed: s.viewports.some((v) => v.window) };
}

const dimensionsOf = (s: Sheet): Dimension[] =>
  partsOf(s)
    .flatMap((p) => p.items)
    .filter((p) => p.kind === 'dimension');
const textsOf = (s: Sheet): Text[] =>
  partsOf(s)
    .flatMap((p) => deep(p.items.filter((q) => !(q.kind === 'symbol' && p.window && !inside(q.at, p.window)))))
    .filter((p): p is Text => p.kind === 'text' && p.content.trim() !== '');

const FIRST_KNOWS = ['LINE', 'LWPOLYLINE', 'CIRCLE', 'ARC', 'TEXT', 'MTEXT', 'INSERT', 'DIMENSION'] as const;
const SECOND_KNOWS = [...FIRST_KNOWS, 'HATCH', 'VIEWPORT'] as const;

/** Its types promise an ES module; the package is a CommonJS one whose export is the class itself. */
const DxfParser = parserModule as unknown as new () => { parseSync(text: string): FirstFile };

interface FirstFile {
  readonly entities: readonly First[];
  readonly blocks: Readonly<Record<string, { readonly entities?: readonly First[] }>>;
  readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } };
}

interface First {
  readonly type: string;
  readonly handle: string;
  readonly layer: string;
  readonly text?: string;
  readonly block?: string;
  readonly actualMeasurement?: number;
}

/** Reads with both; a reader that throws fails the test. */
function read(text: string) {
  const first = new DxfParser().parseSync(text);
  const second: DxfFile = parseString(text);
  const raws = rawsOf(pairsOf(text));
  return {
    first,
    second,
    raws,
    entities: raws.filter((r) => r.section === 'ENTITIES' && !/SECTION|ENDSEC/.test(r.type)),
  };
}

/** Points of an entity, in its space. */
function pointsOf(e: DxfEntity): { x: number; y: number }[] {
  const own = e.x !== undefined && e.y !== undefined ? { x: e.x, y: e.y } : undefined;
  if (e.type === 'CIRCLE' && own) {
    return [
      { x: own.x - e.r!, y: own.y - e.r! },
      { x: own.x + e.r!, y: own.y + e.r! },
    ];
  }
  const loops = e.boundary?.loops.flatMap((l) => l.entities.flatMap((x) => x.points)) ?? [];
  const list = [e.start, e.end, e.measureStart, e.measureEnd, ...(e.vertices ?? []), ...loops].filter(
    (p) => p !== undefined,
  );
  return e.type === 'TEXT' || e.type === 'MTEXT' || e.type === 'INSERT' ? [own!] : list;
}

function soundFile(text: string): void {
  const pairs = pairsOf(text);
  expect(pairs.at(-1)).toEqual([0, 'EOF']);
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
  // Reals without exponent, integers whole.
  for (const [code, value] of pairs) {
    if ((code >= 10 && code <= 59) || (code >= 140 && code <= 149)) expect(value).toMatch(/^-?\d+\.\d+$/);
    if ((code >= 60 && code <= 99) || (code >= 170 && code <= 179) || code === 370) expect(value).toMatch(/^-?\d+$/);
    if (code < 10) expect(value.length).toBeLessThanOrEqual(255);
  }
  const handles = pairs.filter(([c]) => c === 5 || c === 105).map(([, v]) => v);
  // The first is the seed of the header.
  const [seed, ...own] = handles;
  expect(new Set(own).size).toBe(own.length);
  expect(Math.max(...own.map((h) => Number.parseInt(h, 16)))).toBeLessThan(Number.parseInt(seed!, 16));
  const known = new Set([...own, '0']);
  // Owners, dictionary entries and references; wipeouts name no image.
  const loose = pairs.filter(([c, v]) => [330, 331, 340, 350, 360, 390].includes(c) && !known.has(v));
  expect(loose).toEqual([]);
}

/** Names that entities use and the tables must hold. */
function soundNames(raws: readonly Raw[], layers: RegExp): void {
  const table = (type: string) =>
    new Set(
      raws.filter((r) => r.section === 'TABLES' && r.type === type).map((r) => r.pairs.find(([c]) => c === 2)![1]),
    );
  const graphic = raws.filter((r) => /ENTITIES|BLOCKS/.test(r.section) && r.pairs.some(([c]) => c === 8));
  const used = (code: number, types: RegExp = /./) =>
    new Set(
      graphic.filter((r) => types.test(r.type)).flatMap((r) => r.pairs.filter(([c]) => c === code).map(([, v]) => v)),
    );
  const missing = (a: Set<string>, b: Set<string>) => [...a].filter((n) => !b.has(n));
  expect(missing(used(8), table('LAYER'))).toEqual([]);
  expect(
    [...table('LAYER')].filter((l) => l !== '0' && l !== 'Defpoints' && !(l.replace(layers, '') in LAYERS)),
  ).toEqual([]);
  expect(missing(used(6), table('LTYPE'))).toEqual([]);
  expect(missing(used(7, /TEXT/), table('STYLE'))).toEqual([]);
  expect(missing(used(3, /^DIMENSION$/), table('DIMSTYLE'))).toEqual([]);
  const blocks = new Set(raws.filter((r) => r.type === 'BLOCK').map((r) => r.pairs.find(([c]) => c === 2)![1]));
  expect(missing(used(2, /^(INSERT|DIMENSION)$/), blocks)).toEqual([]);
  expect([...blocks].sort()).toEqual([...table('BLOCK_RECORD')].sort());
}

it('has two good examples', () => {
  expect(drawn.length).toBeGreaterThanOrEqual(2);
});

for (const { name, input } of drawn) {
  for (const size of ['ARCH D', 'ANSI B'] as const) {
    describe.each(drawSet(input, size).map((sheet) => ({ id: sheet.id, sheet })))(
      `${name}, ${size}, $id`,
      ({ sheet }) => {
        const text = dxfOf(sheet);
        const { first, second, raws, entities } = read(text);
        const paper: Rect = { x: 0, y: 0, ...SHEET_SIZES[size] };

        it('is a sound file whose names all stand in its tables', () => {
          soundFile(text);
          soundNames(raws, /$^/);
        });

        it('holds what the sheet holds, and both readers find all of it that they know', () => {
          const written = countBy(entities.map((e) => e.type));
          const { exact, windowed } = expected(sheet);
          if (windowed) {
            const cut = ['LINE', 'DIMENSION', 'INSERT', 'TEXT', 'MTEXT', 'VIEWPORT'];
            expect(only(written, cut)).toEqual(only(exact, cut));
          } else expect(written).toEqual(exact);
          expect(only(countBy(first.entities.map((e) => e.type)), FIRST_KNOWS)).toEqual(only(written, FIRST_KNOWS));
          expect(only(countBy(second.entities.map((e) => e.type)), SECOND_KNOWS)).toEqual(only(written, SECOND_KNOWS));
        });

        it('stands on layers that both readers know', () => {
          const one = new Set(Object.keys(first.tables.layer.layers));
          const two = new Set(Object.keys(second.tables.layers));
          expect([...one].sort()).toEqual([...two].sort());
          expect(first.entities.filter((e) => !one.has(e.layer)).map((e) => e.layer)).toEqual([]);
          expect(second.entities.filter((e) => !two.has(e.layer)).map((e) => e.layer)).toEqual([]);
        });

        it('gives both readers every text', () => {
          const found = (list: readonly (string | undefined)[]) =>
            list
              .filter((s) => s !== undefined)
              .map(plain)
              .sort();
          const wanted = [...new Set(textsOf(sheet).map((t) => spaced(t.content)))];
          const blocks = Object.values(first.blocks).flatMap((b) => b.entities ?? []);
          const one = new Set(found([...first.entities, ...blocks].map((e) => e.text)));
          const two = new Set(
            found([...second.entities, ...second.blocks.flatMap((b) => b.entities)].map((e) => e.string)),
          );
          expect(wanted.filter((t) => !one.has(t))).toEqual([]);
          expect(wanted.filter((t) => !two.has(t))).toEqual([]);
        });

        it('dimensions what the sheet dimensions: value, text, measured points and a drawn block', () => {
          const dims = dimensionsOf(sheet);
          const one = first.entities.filter((e) => e.type === 'DIMENSION');
          const two = second.entities.filter((e) => e.type === 'DIMENSION');
          const row = (value: number, label: string): string => `${value.toFixed(4)} ${spaced(label)}`;
          expect(one.map((d) => row(d.actualMeasurement!, d.text!)).sort()).toEqual(
            dims.map((d) => row(d.value, d.text)).sort(),
          );
          const byHandle = new Map(one.map((d) => [d.handle, d]));
          for (const d of two) {
            const a = ((d.rotation ?? 0) * Math.PI) / 180;
            const [p, q] = [d.measureStart!, d.measureEnd!];
            const measured = Math.abs((q.x - p.x) * Math.cos(a) + (q.y - p.y) * Math.sin(a));
            const said = byHandle.get(d.handle)!;
            // Chains round to a sixteenth so that the parts add up to the whole.
            expect(Math.abs(measured - said.actualMeasurement!)).toBeLessThanOrEqual(1 / 16 + 1e-6);
            const parts = second.blocks.find((b) => b.name === d.block)!.entities;
            expect(countBy(parts.map((e) => e.type)).LINE).toBeGreaterThanOrEqual(3);
            expect(parts.filter((e) => e.type === 'TEXT').map((e) => e.string)).toEqual([said.text]);
          }
        });

        it('keeps paper on the sheet and every view in its window', () => {
          const views = second.entities
            .filter((e) => e.type === 'VIEWPORT')
            .map((v) => {
              const r = raws.find((x) => x.type === 'VIEWPORT' && x.pairs.some(([c, h]) => c === 5 && h === v.handle))!;
              const h = Number(r.pairs.find(([c]) => c === 45)![1]);
              const w = (h * v.width!) / v.height!;
              const paperRect = {
                x: v.center!.x - v.width! / 2,
                y: v.center!.y - v.height! / 2,
                w: v.width!,
                h: v.height!,
              };
              return { paperRect, model: { x: v.centerDCS!.x - w / 2, y: v.centerDCS!.y - h / 2, w, h } };
            });
          const [, ...windows] = views;
          const near = (r: Rect): Rect => ({ x: r.x - 1e-4, y: r.y - 1e-4, w: r.w + 2e-4, h: r.h + 2e-4 });
          expect(windows.map((v) => v.paperRect).filter((r) => !inside(r, near(paper)))).toEqual([]);
          for (const e of second.entities.filter((x) => x.type !== 'VIEWPORT')) {
            const homes = e.paperSpace ? [paper] : windows.map((v) => v.model);
            const points = pointsOf(e);
            expect(points.length, e.type).toBeGreaterThan(0);
            expect(
              homes.some((r) => points.every((p) => inside(p, near(r)))),
              `${e.type} ${e.layer} ${e.handle}`,
            ).toBe(true);
          }
          // Windows must not look onto each other's ground.
          windows.forEach((a, i) => {
            for (const b of windows.slice(i + 1)) {
              expect(a.model.x + a.model.w <= b.model.x || b.model.x + b.model.w <= a.model.x).toBe(true);
            }
          });
          expect(second.header.insUnits).toBe(1);
        });

        it('comes out the same to the byte a second time', () => {
          expect(dxfOf(sheet)).toBe(text);
        });
      },
    );
  }

  describe(`${name}, plans together`, () => {
    const sheets = drawSet(input);
    const text = dxfModelPlan(sheets)!;
    const { first, second, raws } = read(text);
    const model = second.entities.filter((e) => !e.paperSpace);

    it('is a sound file in inches without paper', () => {
      soundFile(text);
      soundNames(raws, /-[CS]\d{3}$/);
      expect(second.header.insUnits).toBe(1);
      expect(second.entities.filter((e) => e.paperSpace).map((e) => e.type)).toEqual(['VIEWPORT']);
      expect(first.entities.length).toBeGreaterThan(50);
    });

    it('has the lot, the footings and the members where they are placed, in house axes at full scale', () => {
      const near = (a: number, b: number) => Math.abs(a - b) < 1e-5;
      const circles = model.filter((e) => e.type === 'CIRCLE');
      for (const f of input.structure.footings) {
        const own = circles.filter((c) => near(c.x!, f.at.x) && near(c.y!, f.at.y) && c.layer === 'S-FNDN');
        expect(
          own.map((c) => c.r),
          f.mark,
        ).toContainEqual(f.pierDiameter / 2);
      }
      const outline = model.filter((e) => e.type === 'LWPOLYLINE');
      const lot = outline.filter((e) => e.layer === 'C-PROP' && e.closed);
      expect(lot).toHaveLength(1);
      lot[0]!.vertices!.forEach((v, i) => {
        expect(near(v.x, input.lot.corners[i]!.x) && near(v.y, input.lot.corners[i]!.y)).toBe(true);
      });
      // A member's middle in plan is the middle of one of the bars drawn on its layer.
      const middles = (layer: string) =>
        outline
          .filter((e) => e.layer === layer)
          .map((e) => {
            const [xs, ys] = [e.vertices!.map((p) => p.x), e.vertices!.map((p) => p.y)];
            return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
          });
      for (const [layer, roles] of [
        ['S-BEAM', ['beam']],
        ['S-FRAM', ['rafter', 'truss', 'gable-truss']],
      ] as const) {
        const members = input.structure.members.filter((m) => (roles as readonly string[]).includes(m.role));
        const at = middles(layer);
        for (const m of members) {
          const [x, y] = [(m.start.x + m.end.x) / 2, (m.start.y + m.end.y) / 2];
          expect(
            at.some(([u, v]) => near(u!, x) && near(v!, y)),
            `${m.id} ${layer}`,
          ).toBe(true);
        }
        if (layer === 'S-FRAM') expect(members.length).toBeGreaterThan(3);
      }
    });

    it('holds every dimension of the plans, each on the layer of its sheet, and shows those of one', () => {
      const plans = sheets.filter((s) => s.viewports.some((v) => v.plan));
      expect(plans.map((s) => s.id)).toEqual(['C-101', 'S-101', 'S-102', 'S-103']);
      const dims = countBy(model.filter((e) => e.type === 'DIMENSION').map((e) => e.layer.slice(-4)));
      expect(dims).toEqual(Object.fromEntries(plans.map((s) => [s.id.replace('-', ''), dimensionsOf(s).length])));
      const shown = Object.entries(second.tables.layers).filter(([l, t]) => /-[CS]\d{3}$/.test(l) && t.colorNumber > 0);
      expect([...new Set(shown.map(([l]) => l.slice(-4)))]).toEqual(['S101']);
    });

    it('draws nothing twice on one layer', () => {
      const keys = raws
        .filter((r) => r.section === 'ENTITIES' && /^(LINE|LWPOLYLINE|CIRCLE|HATCH)$/.test(r.type))
        .map((r) => JSON.stringify([r.type, r.pairs.filter(([c]) => c !== 5 && c < 1000)]));
      expect(keys.filter((k, i) => keys.indexOf(k) !== i)).toEqual([]);
    });
  });
}
