/**
 * The DXF files of each example as a designer's program meets them: read by two independent readers, and compared with the sheets
 * they were made from. What a reader does not know (one leaves out hatches, both leave out wipeouts) is counted from the tags.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Rect } from '../../src/drawings/ir/index.js';
import { derive, drawingInput, drawSet, dxfModelPlan, dxfOf, SHEET_SIZES } from '../../src/index.js';
import {
  countBy,
  dimensionsOf,
  expected,
  FIRST_KNOWS,
  inside,
  kindOf,
  only,
  plain,
  pointsOf,
  read,
  SECOND_KNOWS,
  soundFile,
  soundNames,
  spaced,
  textsOf,
} from './dxf-reading.js';
import { root } from './golden.js';

const drawn = readdirSync(join(root, 'examples'))
  .sort()
  .flatMap((name) => {
    const input = drawingInput(derive(readFileSync(join(root, 'examples', name, 'project.json'), 'utf8')));
    return input ? [{ name, input }] : [];
  });

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
          const written = countBy(entities.map(kindOf));
          const { exact, windowed } = expected(sheet);
          if (windowed) {
            const cut = ['LINE', 'DIMENSION', 'INSERT', 'TEXT', 'VIEWPORT'];
            expect(only(written, cut)).toEqual(only(exact, cut));
          } else expect(written).toEqual(exact);
          expect(only(countBy(first.entities.map(kindOf)), FIRST_KNOWS)).toEqual(only(written, FIRST_KNOWS));
          expect(only(countBy(second.entities.map(kindOf)), SECOND_KNOWS)).toEqual(only(written, SECOND_KNOWS));
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
            // A house cut by a break line is measured to the break; value and text are true to the corner beyond it.
            const broken = / to corner$/.test(said.text!);
            // Chains round to a sixteenth so that the parts add up to the whole.
            if (broken) expect(said.actualMeasurement!).toBeGreaterThan(measured);
            else expect(Math.abs(measured - said.actualMeasurement!)).toBeLessThanOrEqual(1 / 16 + 1e-6);
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
      soundNames(raws, /-[ACSED]\d{3}$/);
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
      const ids = ['C-101', 'S-101', 'S-102', 'S-103', 'S-104', 'AD101', 'A-101', 'A-121', 'E-101'];
      expect(plans.map((s) => s.id)).toEqual(ids.filter((id) => sheets.some((s) => s.id === id)));
      expect(plans.length).toBeGreaterThanOrEqual(7);
      const sheetOf = (layer: string): string => /-([A-Z]\d{3})$/.exec(layer)?.[1] ?? '';
      // Enlarged views and details beside a plan are none, and stay on their sheet.
      const planDims = (s: (typeof sheets)[number]) =>
        s.viewports.filter((v) => v.plan).flatMap((v) => (v.over ?? []).filter((p) => p.kind === 'dimension'));
      const dims = countBy(model.filter((e) => e.type === 'DIMENSION').map((e) => sheetOf(e.layer)));
      // The joint plan names joints and measures nothing.
      const measured = plans.filter((s) => planDims(s).length > 0);
      expect(dims).toEqual(
        Object.fromEntries(measured.map((s) => [s.id.replace('-', '').slice(-4), planDims(s).length])),
      );
      const shown = Object.entries(second.tables.layers).filter(([l, t]) => sheetOf(l) !== '' && t.colorNumber > 0);
      expect([...new Set(shown.map(([l]) => sheetOf(l)))]).toEqual(['S101']);
    });

    it('draws nothing twice on one layer', () => {
      const keys = raws
        .filter((r) => r.section === 'ENTITIES' && /^(LINE|LWPOLYLINE|CIRCLE|HATCH)$/.test(r.type))
        .map((r) => JSON.stringify([r.type, r.pairs.filter(([c]) => c !== 5 && c < 1000)]));
      expect(keys.filter((k, i) => keys.indexOf(k) !== i)).toEqual([]);
    });
  });
}
