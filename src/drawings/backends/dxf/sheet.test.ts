import { describe, expect, it } from 'vitest';
import type { Primitive, Sheet, Viewport } from '../../ir/index.js';
import { dxfModelPlan, dxfOf } from './sheet.js';
import { real, turn } from './tags.js';

const layer = 'S-FRAM';
const tag = (text: string, x: number): Primitive => ({
  kind: 'symbol',
  layer: 'S-ANNO-SYMB',
  at: { x, y: 50 },
  mark: text,
  items: [
    { kind: 'circle', layer: 'S-ANNO-SYMB', center: { x: 0, y: 0 }, radius: 0.15, pen: 'symbol', fill: 'paper' },
    {
      kind: 'text',
      layer: 'S-ANNO-SYMB',
      at: { x: 0, y: 0 },
      content: text,
      height: 0.1,
      align: 'center',
      valign: 'middle',
    },
  ],
});

const view = (items: readonly Primitive[], more: Partial<Viewport> = {}): Viewport => ({
  name: 'view',
  at: { x: 6, y: 6 },
  from: { x: 50, y: 50 },
  scale: 1 / 24,
  items,
  ...more,
});

const sheet = (viewports: readonly Viewport[], items: readonly Primitive[] = []): Sheet => ({
  id: 'S-101',
  title: 'Test',
  discipline: 'S',
  size: 'ARCH A',
  viewports,
  items,
  scaleNote: '',
});

type Groups = readonly (readonly [number, string])[];

/** Entities of a section with their groups, in order. */
function entities(text: string, section = 'ENTITIES'): { type: string; g: Groups }[] {
  const lines = text.split('\r\n');
  const out: { type: string; g: [number, string][] }[] = [];
  let on = '';
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const [code, value] = [Number(lines[i]), lines[i + 1]!];
    if (code === 2 && lines[i - 1] === 'SECTION') on = value;
    if (code === 0) out.push({ type: value, g: on === section ? [] : [[-1, '']] });
    else out.at(-1)!.g.push([code, value]);
  }
  return out.filter((e) => e.g[0]?.[0] !== -1 && !/SECTION|ENDSEC/.test(e.type));
}
const get = (e: { g: Groups }, code: number): number => Number(e.g.find(([c]) => c === code)![1]);
const pick = (text: string, type: string, section = 'ENTITIES') =>
  entities(text, section).filter((e) => e.type === type);

describe('numbers', () => {
  it('are plain decimals', () => {
    expect([1, -0, 1e-9, -2.5e-7, 0.1 + 0.2, 1 / 3, 1e6].map(real)).toEqual([
      '1.0',
      '0.0',
      '0.0',
      '0.0',
      '0.3',
      '0.333333',
      '1000000.0',
    ]);
    expect([0, Math.PI / 2, -Math.PI / 2, 2 * Math.PI, 5 * Math.PI].map(turn)).toEqual([0, 90, 270, 0, 180]);
  });
});

describe('a view', () => {
  it('stands at full scale, its arcs in degrees and counter-clockwise', () => {
    const text = dxfOf(
      sheet([
        view([
          { kind: 'line', layer, pen: 'new', a: { x: 10, y: 20 }, b: { x: 130, y: 20 } },
          {
            kind: 'arc',
            layer,
            pen: 'hidden',
            center: { x: 40, y: 40 },
            radius: 36,
            start: -Math.PI / 2,
            end: Math.PI,
          },
          {
            kind: 'polyline',
            layer,
            pen: 'property',
            closed: true,
            points: [
              { x: 0, y: 0 },
              { x: 9, y: 0 },
              { x: 9, y: 9 },
            ],
          },
        ]),
      ]),
    );
    const [line] = pick(text, 'LINE');
    expect([10, 20, 11, 21].map((c) => get(line!, c))).toEqual([10, 20, 130, 20]);
    const [arc] = pick(text, 'ARC');
    expect([10, 20, 40, 50, 51].map((c) => get(arc!, c))).toEqual([40, 40, 36, 270, 180]);
    expect(arc!.g.find(([c]) => c === 6)![1]).toBe('EW-HIDDEN');
    expect(get(arc!, 370)).toBe(25);
    const [ring] = pick(text, 'LWPOLYLINE');
    // Closed, and dashes run on through the corners.
    expect([get(ring!, 90), get(ring!, 70), get(ring!, 370)]).toEqual([3, 129, 70]);
    // The file's linetype scale is the view's: 24 units a paper inch, so the entity needs none of its own.
    expect(text).toContain('$LTSCALE\r\n 40\r\n24.0\r\n');
    expect(arc!.g.some(([c]) => c === 48)).toBe(false);
    const [, window] = pick(text, 'VIEWPORT');
    expect(get(window!, 45) / get(window!, 41)).toBeCloseTo(24, 6);
  });

  it('letters in paper inches grown to the drawing, turned about the baseline', () => {
    const text = dxfOf(
      sheet([
        view([
          {
            kind: 'text',
            layer,
            at: { x: 50, y: 50 },
            content: 'up',
            height: 0.125,
            angle: Math.PI / 2,
            valign: 'top',
            align: 'right',
          },
        ]),
      ]),
    );
    const [t] = pick(text, 'TEXT');
    expect([40, 50, 72, 11, 21].map((c) => get(t!, c))).toEqual([3, 90, 2, 53, 50]);
  });

  it('writes a text too long for one value as a paragraph, in pieces', () => {
    const content = `{${'α·β, '.repeat(60)}} end`;
    const text = dxfOf(sheet([], [{ kind: 'text', layer, at: { x: 2, y: 3 }, content, height: 0.1 }]));
    expect(pick(text, 'TEXT')).toEqual([]);
    const [m] = pick(text, 'MTEXT');
    const pieces = m!.g.filter(([c]) => c === 3 || c === 1);
    // 488 bytes with the braces' own signs.
    expect(pieces.map(([c]) => c)).toEqual([3, 1]);
    expect(pieces.map(([, v]) => v).join('')).toBe(`\\{${'α·β, '.repeat(60)}\\} end`);
    // Attached left in the middle of its height.
    expect([10, 20, 71].map((c) => get(m!, c))).toEqual([2, 3.05, 4]);
  });

  it('is cut at its window, lettering of the sheet aside', () => {
    const window = { x: 0, y: 0, w: 100, h: 100 };
    const text = dxfOf(
      sheet([
        view(
          [
            { kind: 'line', layer, pen: 'new', a: { x: -50, y: 20 }, b: { x: 150, y: 20 } },
            { kind: 'line', layer, pen: 'new', a: { x: -50, y: 120 }, b: { x: 150, y: 120 } },
            { kind: 'circle', layer, pen: 'new', center: { x: 100, y: 50 }, radius: 10 },
            {
              kind: 'polyline',
              layer,
              closed: true,
              fill: 'poche',
              points: [
                { x: 90, y: 0 },
                { x: 120, y: 0 },
                { x: 120, y: 10 },
                { x: 90, y: 10 },
              ],
            },
            tag('F9', 130),
          ],
          { window, over: [tag('F1', 104)] },
        ),
      ]),
    );
    expect(pick(text, 'LINE').map((l) => [get(l, 10), get(l, 11)])).toEqual([[0, 100]]);
    expect(pick(text, 'CIRCLE')).toEqual([]);
    for (const [c, v] of pick(text, 'LWPOLYLINE')[0]!.g) if (c === 10) expect(Number(v)).toBeLessThanOrEqual(100.001);
    const fill = pick(text, 'HATCH')[0]!.g;
    expect(Math.max(...fill.filter(([c]) => c === 10).map(([, v]) => Number(v)))).toBe(100);
    expect(pick(text, 'INSERT').map((i) => get(i, 10))).toEqual([104]);
  });

  it('moves beside the view before it along x only, by whole feet', () => {
    const line: Primitive = { kind: 'line', layer, pen: 'new', a: { x: 0, y: 7 }, b: { x: 100, y: 7 } };
    const text = dxfOf(sheet([view([line]), view([line], { at: { x: 6, y: 3 } })]));
    const [a, b] = pick(text, 'LINE');
    expect(get(a!, 10)).toBe(0);
    expect(get(b!, 10)).toBeGreaterThan(100);
    expect(get(b!, 10) % 12).toBe(0);
    expect(get(b!, 20)).toBe(7);
  });
});

describe('symbols, masks and fills', () => {
  it('shares one block between equal tags', () => {
    const text = dxfOf(sheet([view([tag('F1', 10), tag('F1', 60), tag('F2', 90)])]));
    const inserts = pick(text, 'INSERT');
    expect(inserts.map((i) => get(i, 10))).toEqual([10, 60, 90]);
    expect(inserts.every((i) => get(i, 41) === 24)).toBe(true);
    const names = inserts.map((i) => i.g.find(([c]) => c === 2)![1]);
    expect(new Set(names).size).toBe(2);
    expect(names[0]).toBe(names[1]);
    expect(pick(text, 'TEXT', 'BLOCKS').map((t) => t.g.find(([c]) => c === 1)![1])).toEqual(['F1', 'F2']);
    // The circle clears what it stands on before it is drawn.
    const order = entities(text, 'BLOCKS').map((e) => e.type);
    expect(order.indexOf('WIPEOUT')).toBeLessThan(order.indexOf('CIRCLE'));
    // The mark is carried with the entity.
    expect(inserts[2]!.g.filter(([c]) => c >= 1000)).toEqual([
      [1001, 'EAVEWRIGHT'],
      [1000, 'mark F2'],
    ]);
  });

  it('puts lettering that clears its ground after everything else', () => {
    const text = dxfOf(
      sheet([
        view([
          { kind: 'text', layer, at: { x: 50, y: 50 }, content: 'ridge', height: 0.1, mask: true },
          { kind: 'line', layer, pen: 'new', a: { x: 0, y: 51 }, b: { x: 100, y: 51 } },
        ]),
      ]),
    );
    expect(entities(text).map((e) => e.type)).toEqual(['LINE', 'WIPEOUT', 'TEXT', 'VIEWPORT', 'VIEWPORT']);
  });

  it('fills circles with two half circles, greys with true colour, black with the colour of the pen', () => {
    const ring = [
      { x: 1, y: 1 },
      { x: 2, y: 1 },
      { x: 2, y: 2 },
    ];
    const text = dxfOf(
      sheet(
        [],
        [
          { kind: 'circle', layer, center: { x: 3, y: 4 }, radius: 0.5, fill: 'ink' },
          { kind: 'polyline', layer, points: ring, fill: 'tint' },
        ],
      ),
    );
    const [dot, wash] = pick(text, 'HATCH');
    expect(dot!.g.filter(([c]) => c === 42).map(([, v]) => v)).toEqual(['1.0', '1.0']);
    expect(get(dot!, 62)).toBe(7);
    expect(get(wash!, 420)).toBe(0xededed);
    expect(get(wash!, 73)).toBe(1);
  });
});

describe('a dimension', () => {
  const d: Primitive = {
    kind: 'dimension',
    layer: 'S-ANNO-DIMS',
    a: { x: 0, y: 0 },
    b: { x: 90.4375, y: 12 },
    angle: 0,
    base: { x: 0, y: 0 },
    offset: -0.5,
    value: 90.4375,
    text: `7'-6 ⁷⁄₁₆"`,
    height: 0.125,
    noExtensionB: true,
  };

  it('is a true one: points, value, text, style, override and block', () => {
    const text = dxfOf(sheet([view([d])]));
    const [e] = pick(text, 'DIMENSION');
    expect([13, 23, 14, 24, 42, 50].map((c) => get(e!, c))).toEqual([0, 0, 90.4375, 12, 90.4375, 0]);
    // The dimension line stands half a paper inch below: 12 inches at this scale.
    expect([get(e!, 10), get(e!, 20)]).toEqual([90.4375, -12]);
    expect(e!.g.find(([c]) => c === 1)![1]).toBe(`7'-6 7/16"`);
    expect(e!.g.filter(([c]) => c >= 1000)).toEqual([
      [1001, 'ACAD'],
      [1000, 'DSTYLE'],
      [1002, '{'],
      [1070, '76'],
      [1070, '1'],
      [1002, '}'],
    ]);
    // Lines of the block: one extension, the dimension line, two ticks.
    expect(pick(text, 'LINE', 'BLOCKS')).toHaveLength(4);
    const style = entities(text, 'TABLES').filter((r) => r.type === 'DIMSTYLE');
    expect(style.map((s) => [get(s, 40), get(s, 140)])).toContainEqual([24, 0.125]);
  });
});

describe('plans together', () => {
  it('keeps what two plans share once, and takes only views that are plans', () => {
    const wall: Primitive = { kind: 'line', layer: 'A-WALL', pen: 'new', a: { x: 0, y: 0 }, b: { x: 100, y: 0 } };
    const note: Primitive = { kind: 'text', layer: 'S-ANNO-NOTE', at: { x: 5, y: 5 }, content: 'note', height: 0.1 };
    const first = sheet([view([wall], { plan: true, over: [note] })]);
    const second = { ...sheet([view([wall], { plan: true, over: [note] }), view([wall, wall])]), id: 'S-102' };
    const text = dxfModelPlan([first, second])!;
    expect(pick(text, 'LINE')).toHaveLength(1);
    const names = pick(text, 'TEXT').map((t) => t.g.find(([c]) => c === 8)![1]);
    expect(names).toEqual(['S-ANNO-NOTE-S101', 'S-ANNO-NOTE-S102']);
    const off = entities(text, 'TABLES').filter((r) => r.type === 'LAYER' && get(r, 62) < 0);
    expect(off.map((l) => l.g.find(([c]) => c === 2)![1])).toEqual(['S-ANNO-NOTE-S102']);
  });

  it('is nothing without a plan', () => {
    expect(dxfModelPlan([sheet([])])).toBeUndefined();
  });
});
