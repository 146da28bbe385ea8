import { expect, it } from 'vitest';
import { SUITE_OF_TOPIC, WOOD } from './helpers/wood-published.js';

it('gives every published wood check to a suite', () => {
  expect(WOOD.filter((p) => SUITE_OF_TOPIC[p.topic] === undefined).map((p) => p.id)).toEqual([]);
  expect(WOOD.length).toBe(226);
  expect(new Set(WOOD.map((p) => p.id)).size).toBe(226);
});

it('names the place each published number comes from', () => {
  for (const p of WOOD) {
    expect(p.source.length, p.id).toBeGreaterThan(5);
    expect(p.where.length, p.id).toBeGreaterThan(5);
    expect(['read', 'memory'], p.id).toContain(p.provenance);
  }
});
