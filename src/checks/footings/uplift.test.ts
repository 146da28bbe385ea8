/** What holds a shaft down. */
import { describe, expect, it } from 'vitest';
import { explained, stepValue } from '../explained.testing.js';
import { NONE, runFirst, v } from '../testing.js';
import { PIER, said, under } from './pushed.testing.js';
import { footingUplift } from './uplift.js';

describe('uplift of a shaft', () => {
  const lifted = [NONE, NONE, v(0, 0, -1000)];
  it('counts skin friction with a source, its top foot left out', () => {
    const none = runFirst(footingUplift, under(lifted, undefined, PIER)).capacity;
    const ctx = under(lifted, undefined, PIER, { soil: { skinFriction: said(100) } });
    // 100 psf · π · 1 ft · 6.5 ft.
    expect(runFirst(footingUplift, ctx).capacity - none).toBeCloseTo(100 * Math.PI * 6.5, 6);
    const lines = explained(footingUplift, ctx);
    expect(stepValue(lines, 'Rt')).toBeCloseTo(0.6 * stepValue(lines, 'Wc') + stepValue(lines, 'Rf'), 6);
    const bare = under(lifted, undefined, PIER, { soil: { skinFriction: said(100, '') } });
    expect(runFirst(footingUplift, bare).capacity).toBeCloseTo(none, 9);
  });
  it('none beside a pier whose hole was wider than itself', () => {
    const onPad = { pierDiameter: 12 };
    const none = runFirst(footingUplift, under(lifted, undefined, onPad)).capacity;
    const f = runFirst(footingUplift, under(lifted, undefined, onPad, { soil: { skinFriction: said(100) } }));
    expect(f.capacity).toBeCloseTo(none, 9);
  });
  it('tamped backfill hangs on nothing', () => {
    const embedded = { foot: -94, width: 7.78, diagonal: 7.78, cast: false, backfill: 'sand' } as const;
    const f = runFirst(footingUplift, under(lifted, undefined, { ...PIER, embedded }));
    expect(f.capacity).toBe(0);
    expect(f.note).toContain('fill the hole with concrete');
  });
});
