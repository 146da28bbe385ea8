import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive } from '../derive.js';
import { contextOf } from './derived.js';
import { trussOrders } from './truss-order.js';

const file = readFileSync(
  join(resolve(import.meta.dirname, '../..'), 'examples/01-gable-scissor-kept-slab/project.json'),
  'utf8',
);
const orders = (text: string) => trussOrders(contextOf(derive(text))!);

describe('the order of trusses', () => {
  it('lists each mark with count, loads and our own reactions', () => {
    const [end, inner] = orders(file);
    expect(end).toMatchObject({ mark: 'T2', count: 2, gableEnd: true });
    expect(inner).toMatchObject({
      mark: 'T1',
      count: 6,
      gableEnd: false,
      spacing: 24,
      live: 20,
      snow: 0,
      bottomDead: 0,
    });
    expect(inner!.wind).toMatchObject({ speed: 100, exposure: 'B' });
    // Live: 20 psf on 2 ft by half of 18 ft 5 1/2 in and two overhangs of 16 in: 422 lb; dead comes to it.
    const live = (20 * 2 * (221.5 / 2 + 16)) / 12;
    expect(inner!.down).toBeGreaterThan(live);
    expect(inner!.down).toBeLessThan(1.7 * live);
  });

  it('puts a ceiling on the bottom chord', () => {
    const [, inner] = orders(file.replace('"ceiling": ""', '"ceiling": "gypsum-1-2"'));
    const [, bare] = orders(file);
    expect(inner!.topDead).toBeCloseTo(bare!.topDead, 9);
    expect(inner!.bottomDead).toBeGreaterThan(1);
  });
});
