import { describe, expect, it } from 'vitest';
import { PATTERNS, type Pattern, type PatternName } from '../../ir/index.js';
import { diagonalLines, type PatternLine, patternLines } from './hatch.js';

const SQUARE = [
  [
    { x: 0.13, y: 0.21 },
    { x: 3.4, y: 0.21 },
    { x: 3.4, y: 2.8 },
    { x: 0.13, y: 2.8 },
  ],
];

/** How far a point is from being drawn by one of the lines: off its rule, or in a gap. */
function miss(lines: readonly PatternLine[], x: number, y: number): number {
  let best = Infinity;
  for (const l of lines) {
    const [c, s] = [Math.cos(l.angle), Math.sin(l.angle)];
    const u = c * (x - l.base.x) + s * (y - l.base.y);
    const v = -s * (x - l.base.x) + c * (y - l.base.y);
    const row = Math.round(v / l.spacing);
    const off = Math.abs(v - row * l.spacing);
    const period = l.dashes.reduce((a, d) => a + Math.abs(d), 0);
    let gap = 0;
    if (period > 0) {
      let t = (((u - row * l.along) % period) + period) % period;
      gap = Infinity;
      for (const d of l.dashes) {
        if (d >= 0 && t >= -1e-9 && t <= d + 1e-9) gap = 0;
        t -= Math.abs(d);
      }
    }
    best = Math.min(best, off + gap);
  }
  return best;
}

const regular = (Object.keys(PATTERNS) as PatternName[]).filter((n) => {
  const f = (PATTERNS[n] as Pattern).families;
  return f !== undefined && !f.some((x) => x.loose);
});

describe('hatch patterns', () => {
  it('knows most patterns as rules', () => {
    expect(regular.length).toBeGreaterThan(8);
  });

  it.each(regular.flatMap((n) => [0, 0.4].map((turn) => [n, turn] as const)))(
    'rules %s turned by %s where the sheets draw it',
    (name, turn) => {
      const pattern: Pattern = PATTERNS[name];
      const strokes = pattern.strokes(SQUARE, turn, 1.6);
      expect(strokes.length).toBeGreaterThan(5);
      const lines = patternLines(name, 1.6, turn)!;
      for (const s of strokes) expect(miss(lines, (s[0]! + s[2]!) / 2, (s[1]! + s[3]!) / 2)).toBeLessThan(1e-9);
      // And nothing where the sheets leave the paper free: halfway between two rules of the finest family.
      expect(miss(lines, strokes[0]![0]! + 0.0123, strokes[0]![1]! + 0.0077)).toBeGreaterThan(0);
    },
  );

  it('has marks or rules for every pattern but those of one stroke, and dashes that come to rest', () => {
    const strokes = (Object.keys(PATTERNS) as PatternName[]).filter((n) => patternLines(n, 1, 0) === undefined);
    expect(strokes.sort()).toEqual(['insulation-batt', 'wood-block', 'wood-cross', 'wood-end']);
    for (const n of Object.keys(PATTERNS) as PatternName[]) {
      for (const l of patternLines(n, 1, 0) ?? []) {
        expect(l.spacing).toBeGreaterThan(0);
        if (l.dashes.length > 0) {
          expect(l.dashes.some((d) => d < 0)).toBe(true);
          expect(l.dashes.reduce((a, d) => a + Math.abs(d), 0)).toBeGreaterThan(0.02);
        }
      }
    }
  });

  it('closes the strewn triangles: each side ends where the next begins', () => {
    const sides = patternLines('concrete', 1, 0)!.slice(-3);
    const end = (l: PatternLine) => [
      l.base.x + Math.cos(l.angle) * l.dashes[0]!,
      l.base.y + Math.sin(l.angle) * l.dashes[0]!,
    ];
    const [a, b, c] = sides as [PatternLine, PatternLine, PatternLine];
    // First side from the corner to the third's start, second and third meet at the top.
    expect(end(a)[0]).toBeCloseTo(c.base.x, 9);
    expect(end(b)[0]).toBeCloseTo(end(c)[0]!, 9);
    expect(end(b)[1]).toBeCloseTo(end(c)[1]!, 9);
  });

  it('crosses a cut member once each way', () => {
    const loop = [
      { x: 10, y: 20 },
      { x: 15.5, y: 20 },
      { x: 15.5, y: 31.25 },
      { x: 10, y: 31.25 },
    ];
    const [one, two] = diagonalLines(loop, 2) as [PatternLine, PatternLine];
    for (const [l, p] of [
      [one, loop[2]],
      [two, loop[3]],
    ] as const) {
      expect(Math.atan2(p!.y - l.base.y, p!.x - l.base.x)).toBeCloseTo(l.angle, 12);
      // The neighbours stand farther off than the member is long.
      expect(l.spacing).toBeGreaterThan(Math.hypot(5.5, 11.25));
    }
    expect(diagonalLines(loop, 1)).toHaveLength(1);
  });
});
