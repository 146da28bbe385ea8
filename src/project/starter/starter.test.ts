import { describe, expect, it } from 'vitest';
import { read } from '../read.js';
import { STARTER_KINDS, starter } from './index.js';

describe('starters', () => {
  for (const kind of STARTER_KINDS) {
    it(`${kind} reads without an issue, and asks the office everything it decides`, () => {
      const r = read(starter(kind));
      expect(r.issues).toEqual([]);
      const asked = r.value!.questions.map((q) => q.path);
      for (const path of [
        '/basis/wind/speed',
        '/basis/snow/ground',
        '/basis/frost',
        '/basis/soil/bearing',
        '/basis/seismic/category',
        '/basis/zoning/setbacks/rear',
      ])
        expect(asked).toContain(path);
      expect(r.value!.cover.attachment).toBe(kind.endsWith('attached') ? 'attached' : 'free-standing');
      expect(r.value!.cover.roofs.map((roof) => roof.kind)).toEqual([kind.split('-')[0]]);
    });
  }
  it('takes title, address, owner and date, quotes and all', () => {
    const p = read(
      starter('gable-free', { title: 'The "long" roof', address: '1 A St', owner: 'O\\P', date: '2026-05-06' }),
    ).value!;
    expect(p.job).toMatchObject({ title: 'The "long" roof', address: '1 A St', owner: 'O\\P', date: '2026-05-06' });
  });
});
