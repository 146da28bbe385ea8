/**
 * The sheets of random covers: every dimension string closes, no two texts touch, and every other sheet check holds that can
 * hold a set back; how full a sheet is, is advice. Each
 * second cover is drawn in ANSI B, the others in ARCH D. The calculation sheets, running text that takes as long as all
 * others together, are drawn for every twentieth cover only; marks that point to them are followed there.
 */
import { describe, expect, it } from 'vitest';
import { drawParts, PERMIT_SET } from '../../src/drawings/sheets/set.js';
import { drawingInput, type SheetSize } from '../../src/index.js';
import { sheetFindings } from '../../src/review/sheets/registry.js';
import { drawnSet } from '../../src/review/sheets/set.js';
import { draws, KINDS, type Worked } from './covers.js';

const COVERS_DRAWN = 200;
const EACH = Math.ceil(COVERS_DRAWN / KINDS.length);

function faultsOf(d: Worked, n: number): string[] {
  const size: SheetSize = n % 2 === 0 ? 'ARCH D' : 'ANSI B';
  const whole = n % 20 === 0;
  const input = drawingInput(d)!;
  const parts = whole ? PERMIT_SET : PERMIT_SET.filter((p) => p.kind.file !== 'calculations');
  const sheets = drawParts(input, size, parts);
  expect(sheets.length).toBeGreaterThan(8);
  return sheetFindings(drawnSet(sheets, input.structure))
    .filter((f) => !f.advice && (whole || f.check !== 'callouts'))
    .map((f) => `${size}, ${f.sheet}: ${f.check}: ${f.what}`);
}

describe.each(KINDS)('sheets of random covers: %s', (kind) => {
  it('every string closes, no two texts touch, every other rule of the sheets holds', () => {
    const bad = draws(kind, EACH).flatMap(({ name, d }, n) => faultsOf(d, n).map((f) => `${name}: ${f}`));
    expect(bad).toEqual([]);
  });
});
