import { describe, expect, it } from 'vitest';
import { lProject } from '../../structure/testing-l.js';
import { diaphragm } from './diaphragm.js';
import { houseTie } from './house-tie.js';
import { roofSides } from './side-loads.js';
import { swayX, swayY } from './sway.js';
import { ask, worked } from './testing.js';

describe('a cover on two walls of the house', () => {
  const ctx = worked(lProject);

  it('works out the line on the rear wall, and none on the side wall of the wing', () => {
    expect(roofSides(ctx).map((s) => [s.roof.mark, s.line !== undefined, s.turned])).toEqual([
      ['R1', true, false],
      ['R2', false, true],
    ]);
  });

  it('leaves the roof on the side wall to a professional instead of asking for a tie it has', () => {
    expect(ask(diaphragm, ctx, 'R2')).toMatchObject({ status: 'outside-scope' });
    for (const check of [swayX, swayY]) {
      const f = ask(check, ctx);
      expect(f.status, check.id).toBe('outside-scope');
      expect(f.note).toContain('R2 is held by a wall square to the rear one');
    }
    expect(ask(houseTie, ctx).note).not.toContain('R2');
  });
});
