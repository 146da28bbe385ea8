/** Each check finds the fault it is there for, and nothing on a sheet without it. */
import { describe, expect, it } from 'vitest';
import { sectionMark } from '../../drawings/annotate/marks.js';
import { styleFor } from '../../drawings/annotate/style.js';
import { drawingArea, sheetFrame, stampSpace } from '../../drawings/annotate/title-block.js';
import type { Dimension, LayerName, Primitive, Sheet } from '../../drawings/ir/index.js';
import type { DrawnSet, SheetCheckId } from './contract.js';
import { lengthIn } from './dimensions.js';
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
  stamp: stampSpace('ANSI B'),
  marks: new Set(['B1']),
};

/** The good set with more on one of its sheets. */
const withMore = (id: string, ...items: readonly Primitive[]): DrawnSet => ({
  ...good,
  sheets: good.sheets.map((s) => (s.id === id ? { ...s, items: [...s.items, ...items] } : s)),
});
const scale = text(2, 3, '1/4" = 1\'-0"', 'G-ANNO-TITL');
const stray: Primitive = { kind: 'line', layer: 'S-BEAM', pen: 'new', a: { x: 3, y: 3 }, b: { x: 30, y: 3 } };

/** A dimension `from` to `to` along x, model inches of the sheet itself, on a line `level` above y = 2. */
const dim = (from: number, to: number, level: number, words: string): Dimension => ({
  kind: 'dimension',
  layer: 'S-ANNO-DIMS',
  a: { x: from, y: 2 },
  b: { x: to, y: 2 },
  angle: 0,
  base: { x: 0, y: 2 },
  offset: level,
  value: to - from,
  text: words,
  height: 0.1,
});
const mark = sectionMark({
  a: { x: 3, y: 7 },
  b: { x: 6, y: 7 },
  look: 1,
  number: '1',
  sheet: 'S-601',
  layer: 'A-ANNO-SYMB',
  style: styleFor('ANSI B'),
});
const leaderLine = (x0: number, y0: number, x1: number, y1: number): Primitive => ({
  kind: 'line',
  layer: 'S-ANNO-NOTE',
  pen: 'leader',
  a: { x: x0, y: y0 },
  b: { x: x1, y: y1 },
});
const crowd = Array.from({ length: 90 }, (_, i) => text(1, 1 + 0.1 * i, 'M'.repeat(120), 'G-ANNO-NOTE', 0.1));

const faulty: Readonly<Record<SheetCheckId, readonly DrawnSet[]>> = {
  'inside-frame': [withMore('S-102', text(16.9, 5, 'too far right')), withMore('S-102', stray)],
  'texts-apart': [withMore('S-102', text(4.05, 5.02, 'over it'))],
  'leaders-apart': [withMore('S-102', leaderLine(6, 6, 9, 9), leaderLine(6, 9, 9, 6))],
  'text-height': [withMore('S-102', text(8, 5, 'tiny', 'G-ANNO-NOTE', 0.06))],
  'marks-on-plans': [{ ...good, marks: new Set(['B1', 'P1']) }],
  'marks-in-schedules': [{ ...good, marks: new Set(['B1', 'P1']) }, withMore('S-102', text(8, 5, 'J9', 'S-ANNO-SYMB'))],
  index: [
    { ...good, sheets: [...good.sheets, sheet('S-602')] },
    { ...good, sheets: [sheet('G-001', ...index('G-001', 'S-601', 'S-102')), ...good.sheets.slice(1)] },
  ],
  callouts: [withMore('S-102', text(8, 5, 'see S-999'))],
  'scale-bars': [withMore('S-102', scale)],
  'view-marks': [withMore('S-102', ...mark)],
  legible: [withMore('S-102', ...crowd)],
  'dimensions-true': [
    withMore('S-102', dim(2, 8, 0.5, '7"')),
    withMore('S-102', dim(2, 8, 0.5, '5 ¾"')),
    withMore('S-102', dim(2, 8, 0.5, 'equal')),
  ],
  'dimensions-close': [
    withMore('S-102', dim(2, 4, 0.5, '2"'), dim(4, 8, 0.5, '4 ¹⁄₁₆"'), dim(2, 8, 1, '6"')),
    withMore('S-102', dim(2, 4, 0.5, '51 mm'), dim(4, 8, 0.5, '102 mm'), dim(2, 8, 1, '152 mm')),
  ],
  'one-size': [{ ...good, sheets: [...good.sheets, { ...sheet('S-602'), size: 'ARCH D' }] }],
  'stamp-clear': [
    withMore('S-102', text(15, 9, 'in the way')),
    withMore('S-102', { kind: 'line', layer: 'S-BEAM', pen: 'new', a: { x: 3, y: 9 }, b: { x: 16, y: 9 } }),
  ],
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
      for (const f of faults) expect(f.sheet).toMatch(/^(?:[GCSAE]-|AD)\d{3}$/);
    }
  });
});

it('reads closed-up runs of marks as every mark in them', () => {
  const set = { ...withMore('S-601', text(6, 5, 'P1–P4')), marks: new Set(['P2', 'P3']) };
  expect(SHEET_CHECKS['marks-in-schedules'].run(set)).toEqual([]);
});

it('judges a set by all of them', () => {
  expect(Object.values(judgeSheets(good)).flat()).toEqual([]);
});

it('takes a string that adds up, whatever it measures to within a sixteenth', () => {
  const closed = withMore('S-102', dim(2, 4.02, 0.5, '2"'), dim(4.02, 8, 0.5, '4"'), dim(2, 8, 1, '6"'));
  for (const id of ['dimensions-true', 'dimensions-close'] as const) expect(SHEET_CHECKS[id].run(closed)).toEqual([]);
});

it.each([
  [`12'-6 ½"`, 150.5],
  [`3 @ 2'-0" = 6'-0"`, 72],
  ["rear setback 15.00'", 180],
  ['6 ¹⁵⁄₁₆" clear', 6.9375],
  ['3810 mm', 150],
  ['19.050 m', 750],
])('reads the length in %s', (words, inches) => expect(lengthIn(words)?.value).toBeCloseTo(inches, 6));

it('finds a mark whose view is there', () => {
  const view = { ...text(2, 4, '1', 'G-ANNO-TITL'), role: 'view-number' };
  const set = withMore('S-102', ...mark);
  const sheets = set.sheets.map((s) => (s.id === 'S-601' ? { ...s, items: [...s.items, view] } : s));
  expect(SHEET_CHECKS['view-marks'].run({ ...set, sheets })).toEqual([]);
});

it('takes leaders that meet at one place, and a leader over any other line', () => {
  const other = { ...leaderLine(6, 9, 9, 6), pen: 'new' } as Primitive;
  for (const second of [leaderLine(6, 6, 9, 7), other])
    expect(SHEET_CHECKS['leaders-apart'].run(withMore('S-102', leaderLine(6, 6, 9, 9), second))).toEqual([]);
});
