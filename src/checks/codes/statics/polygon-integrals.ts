/** Integrals of 1, x, y, x², xy, y² over a polygon by Green's theorem, and clipping to a half-plane. Closed forms, no quadrature. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface AreaIntegrals {
  readonly A: number;
  readonly Sx: number;
  readonly Sy: number;
  readonly Sxx: number;
  readonly Sxy: number;
  readonly Syy: number;
}

/** Over a counter-clockwise polygon; an empty one gives zeros. Statics. */
export function areaIntegrals(polygon: readonly Point[]): AreaIntegrals {
  let A = 0;
  let Sx = 0;
  let Sy = 0;
  let Sxx = 0;
  let Sxy = 0;
  let Syy = 0;
  for (let i = 0; i < polygon.length; i += 1) {
    const p = polygon[i]!;
    const q = polygon[(i + 1) % polygon.length]!;
    const cross = p.x * q.y - q.x * p.y;
    A += cross / 2;
    Sx += (cross * (p.x + q.x)) / 6;
    Sy += (cross * (p.y + q.y)) / 6;
    Sxx += (cross * (p.x * p.x + p.x * q.x + q.x * q.x)) / 12;
    Syy += (cross * (p.y * p.y + p.y * q.y + q.y * q.y)) / 12;
    Sxy += (cross * (p.x * q.y + 2 * p.x * p.y + 2 * q.x * q.y + q.x * p.y)) / 24;
  }
  return { A, Sx, Sy, Sxx, Sxy, Syy };
}

/** Part of a convex polygon where a + b·x + c·y ≥ 0. Statics. */
export function clipPositive(polygon: readonly Point[], a: number, b: number, c: number): readonly Point[] {
  const out: Point[] = [];
  for (let i = 0; i < polygon.length; i += 1) {
    const p = polygon[i]!;
    const q = polygon[(i + 1) % polygon.length]!;
    const fp = a + b * p.x + c * p.y;
    const fq = a + b * q.x + c * q.y;
    if (fp >= 0) out.push(p);
    if (fp >= 0 !== fq >= 0) {
      const t = fp / (fp - fq);
      out.push({ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
    }
  }
  return out;
}
