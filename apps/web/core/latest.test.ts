import { describe, expect, it } from 'vitest';
import { latest } from './latest.js';

describe('latest', () => {
  it('runs one at a time and keeps only the last wish made meanwhile', async () => {
    const ran: number[] = [];
    const gates: (() => void)[] = [];
    const run = latest(async (n: number) => {
      ran.push(n);
      await new Promise<void>((go) => gates.push(go));
      return n;
    });
    const first = run(1);
    const second = run(2);
    const third = run(3);
    expect(await second).toBeUndefined();
    gates[0]!();
    expect(await first).toBe(1);
    await new Promise((r) => setTimeout(r));
    gates[1]!();
    expect(await third).toBe(3);
    expect(ran).toEqual([1, 3]);
  });
  it('goes on after a fault', async () => {
    const run = latest(async (n: number) => {
      if (n === 1) throw new Error('no');
      return n;
    });
    await expect(run(1)).rejects.toThrow('no');
    expect(await run(2)).toBe(2);
  });
});
