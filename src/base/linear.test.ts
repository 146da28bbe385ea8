import { describe, expect, it } from 'vitest';
import { cholesky, inverseCholesky, solveCholesky } from './linear.js';

describe('symmetric systems', () => {
  // Textbook matrix with a whole factor: L = [[2,0,0],[6,1,0],[-8,5,3]].
  const a = Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98);
  it('factors', () => {
    const c = cholesky(a, 3);
    expect(c.ok && [...c.lower]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
  });
  it('solves and inverts', () => {
    const c = cholesky(a, 3);
    if (!c.ok) throw new Error('no factor');
    const x = solveCholesky(c, Float64Array.of(4 * 1 + 12 * 2 - 16 * 3, 12 + 74 - 129, -16 - 86 + 294));
    [1, 2, 3].forEach((v, i) => {
      expect(x[i]).toBeCloseTo(v, 9);
    });
    const inverse = inverseCholesky(c);
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) {
        let sum = 0;
        for (let k = 0; k < 3; k++) sum += a[i * 3 + k]! * inverse[k * 3 + j]!;
        expect(sum).toBeCloseTo(i === j ? 1 : 0, 9);
      }
  });
  it('names the row that hangs on those before it', () => {
    expect(cholesky(Float64Array.of(1, 2, 2, 4), 2)).toEqual({ ok: false, row: 1 });
    expect(cholesky(Float64Array.of(0, 0, 0, 1), 2)).toEqual({ ok: false, row: 0 });
  });
});
