import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../../derive.js';
import { svgOf } from '../backends/svg/index.js';
import { drawOne } from './one.js';
import { drawSet } from './set.js';

const text = readFileSync(join(import.meta.dirname, '../../../examples/05-l-shape-two-roofs/project.json'), 'utf8');

describe('drawOne', () => {
  it('draws every sheet exactly as the whole set does', () => {
    const input = drawingInput(derive(text))!;
    const set = drawSet(input);
    const index = set.map(({ id, title }) => ({ id, title }));
    for (const sheet of set) expect(svgOf(drawOne(input, sheet.id, { index })!), sheet.id).toBe(svgOf(sheet));
    expect(drawOne(input, 'X-999', { index })).toBeUndefined();
  });
});
