/** The letter-size booklet stands by the plan room's rules, all but the index, which is the permit set's. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../../../derive.js';
import { SHEET_CHECKS } from '../../../review/sheets/registry.js';
import { drawnSet } from '../../../review/sheets/set.js';
import { SHEET_SIZES } from '../../ir/index.js';
import { drawSiteBooklet } from './booklet.js';

const examples = resolve(import.meta.dirname, '../../../../examples');

describe.each([
  '01-gable-scissor-kept-slab',
  '02-shed-snow-two-storey',
  '04-free-gable-knee-braces',
  '05-l-shape-two-roofs',
])('%s', (name) => {
  const input = drawingInput(derive(readFileSync(join(examples, name, 'project.json'), 'utf8')))!;
  const sheets = drawSiteBooklet(input);
  const set = drawnSet(sheets, input.structure);

  it('is letter size, numbered among itself, the lot at an engineer’s scale', () => {
    expect(new Set(sheets.map((s) => s.size)).size).toBe(1);
    const { w, h } = SHEET_SIZES[sheets[0]!.size];
    expect([w, h].sort((a, b) => a - b)).toEqual([8.5, 11]);
    expect(sheets[0]!.scaleNote).toMatch(/^1" = [1-6]0'$/);
    expect(sheets.map((s) => s.id)).toEqual(sheets.map((_, i) => `C-10${i + 1}`));
  });

  it.each(['inside-frame', 'texts-apart', 'text-height', 'callouts', 'scale-bars', 'used'] as const)('%s', (id) => {
    expect(SHEET_CHECKS[id].run(set)).toEqual([]);
  });
});
