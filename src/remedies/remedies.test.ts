import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive } from '../derive.js';
import { editText } from '../project/index.js';
import { remediesOf } from './index.js';

const good = readFileSync(join(import.meta.dirname, '../../examples/01-gable-scissor-kept-slab/project.json'), 'utf8');
const weaker = (path: string, value: unknown): string => editText(good, [{ path, value }]).value!;

describe('remedies', () => {
  it('cure a beam that is too shallow, and doing so really makes the check pass', () => {
    const text = weaker('/choices/sections/beam/depth', '6 in');
    const before = derive(text);
    const failed = before.results.filter((r) => r.status === 'fail' && r.check.startsWith('beam-'));
    expect(failed.length).toBeGreaterThan(0);
    const cures = remediesOf(text, before, failed[0]!.id, derive);
    expect(cures.length).toBeGreaterThan(0);
    expect(cures.map((c) => c.edits[0]!.path)).toContain('/choices/sections/beam/depth');
    for (const c of cures) {
      const after = derive(editText(text, c.edits).value!);
      expect(after.results.find((r) => r.id === failed[0]!.id)!.status).toBe('pass');
      expect(c.fixes).toBeGreaterThan(0);
    }
    const ranks = cures.filter((c) => c.breaks === 0).map((c) => c.wood + 12 * c.concrete);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });
  it('cure a footing that is too small', () => {
    const text = weaker('/choices/footings/pier/width', '16 in');
    const before = derive(text);
    const failed = before.results.find((r) => r.status === 'fail' && r.check === 'soil-bearing')!;
    const cures = remediesOf(text, before, failed.id, derive);
    expect(cures.some((c) => c.edits[0]!.path.startsWith('/choices/footings/pier/'))).toBe(true);
    expect(cures.every((c) => c.ratio <= 1)).toBe(true);
  });
  it('has nothing to say of what passes', () => {
    const d = derive(good);
    expect(remediesOf(good, d, d.results.find((r) => r.status === 'pass')!.id, derive)).toEqual([]);
  });
});
