/** Each check finds the fault it is there for, and nothing on a sheet without it. */
import { describe, expect, it } from 'vitest';
import { drawingArea, sheetFrame } from '../../drawings/annotate/title-block.js';
import type { LayerName, Primitive, Sheet } from '../../drawings/ir/index.js';
import type { DrawnSet, SheetCheckId } from './contract.js';
import { judgeSheets, SHEET_CHECKS } from './registry.js';

const text = (x: number, y: number, content: string, layer: LayerName = 'G-ANNO-NOTE', height = 0.1): Primitive => ({
  kind: 'text',
  layer,
  at: { x, y },
  content,
  height,
});
/** A large outline, so that a sheet counts as used. */
const sketch: Primitive = {
  kind: 'polyline',
  layer: 'S-DETL',
  pen: 'new',
  closed: true,
  points: [
    { x: 1, y: 1 },
    { x: 12, y: 1 },
    { x: 12, y: 10 },
    { x: 1, y: 10 },
  ],
};
const sheet = (id: string, ...items: readonly Primitive[]): Sheet => ({
  id,
  title: id,
  discipline: 'S',
  size: 'ANSI B',
  scaleNote: '',
  viewports: [],
  items: [sketch, ...items],
});

const tag = text(4, 5, 'B1', 'S-ANNO-SYMB');
const index = (...ids: readonly string[]): Primitive[] => ids.map((id, i) => text(2, 8 - 0.3 * i, id));
const all = ['G-001', 'S-102', 'S-601'];
const good: DrawnSet = {
  sheets: [sheet('G-001', ...index(...all)), sheet('S-102', tag), sheet('S-601', text(2, 5, 'B1'))],
  frame: sheetFrame('ANSI B'),
  area: drawingArea('ANSI B'),
  marks: new Set(['B1']),
};

/** The good set with more on one of its sheets. */
const withMore = (id: string, ...items: readonly Primitive[]): DrawnSet => ({
  ...good,
  sheets: good.sheets.map((s) => (s.id === id ? { ...s, items: [...s.items, ...items] } : s)),
});
const scale = text(2, 3, '1/4" = 1\'-0"', 'G-ANNO-TITL');
const stray: Primitive = { kind: 'line', layer: 'S-BEAM', pen: 'new', a: { x: 3, y: 3 }, b: { x: 30, y: 3 } };

const faulty: Readonly<Record<SheetCheckId, readonly DrawnSet[]>> = {
  'inside-frame': [withMore('S-102', text(16.9, 5, 'too far right')), withMore('S-102', stray)],
  'texts-apart': [withMore('S-102', text(4.05, 5.02, 'over it'))],
  'text-height': [withMore('S-102', text(8, 5, 'tiny', 'G-ANNO-NOTE', 0.06))],
  'marks-on-plans': [{ ...good, marks: new Set(['B1', 'P1']) }],
  'marks-in-schedules': [{ ...good, marks: new Set(['B1', 'P1']) }, withMore('S-102', text(8, 5, 'J9', 'S-ANNO-SYMB'))],
  index: [
    { ...good, sheets: [...good.sheets, sheet('S-602')] },
    { ...good, sheets: [sheet('G-001', ...index('G-001', 'S-601', 'S-102')), ...good.sheets.slice(1)] },
  ],
  callouts: [withMore('S-102', text(8, 5, 'see S-999'))],
  bubbles: [
    withMore('S-102', text(8, 5.2, '3', 'S-ANNO-SYMB'), text(8, 5, 'S-601', 'S-ANNO-SYMB')),
    withMore('S-102', text(8, 5, 'S-601', 'S-ANNO-SYMB')),
  ],
  'scale-bars': [withMore('S-102', scale)],
  used: [{ ...good, sheets: [...good.sheets.slice(0, 2), { ...sheet('S-601'), items: [text(2, 5, 'B1')] }] }],
};

describe.each(Object.keys(SHEET_CHECKS) as SheetCheckId[])('%s', (id) => {
  it('finds no fault in a set without one', () => {
    expect(SHEET_CHECKS[id].run(good)).toEqual([]);
  });

  it('finds its fault, and names the sheet', () => {
    for (const set of faulty[id]) {
      const faults = SHEET_CHECKS[id].run(set);
      expect(faults.length).toBeGreaterThan(0);
      for (const f of faults) expect(f.sheet).toMatch(/^[GCSA]-\d{3}$/);
    }
  });
});

it('reads closed-up runs of marks as every mark in them', () => {
  const set = { ...withMore('S-601', text(6, 5, 'P1–P4')), marks: new Set(['P2', 'P3']) };
  expect(SHEET_CHECKS['marks-in-schedules'].run(set)).toEqual([]);
});

it('accepts a bubble whose number is a view title of the sheet it names', () => {
  const bubble = [text(8, 5.2, '3', 'S-ANNO-SYMB'), text(8, 5, 'S-601', 'S-ANNO-SYMB')].map(
    (t): Primitive => ({ ...t, align: 'center' }) as Primitive,
  );
  const { sheets } = withMore('S-102', ...bubble);
  const number = text(2, 7, '3', 'G-ANNO-TITL', 0.13);
  const set = { ...good, sheets: sheets.map((s) => (s.id === 'S-601' ? { ...s, items: [...s.items, number] } : s)) };
  expect(SHEET_CHECKS.bubbles.run(set)).toEqual([]);
});

it('judges a set by all of them', () => {
  expect(Object.values(judgeSheets(good)).flat()).toEqual([]);
});
