import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '../base/plane.js';
import { parseBearing } from '../base/quantity/index.js';
import type { Vec2 } from '../base/vec.js';
import { type Course, type Project, read, starter, type Yard } from '../project/index.js';
import { measureLot, surveyLot } from './index.js';

const base = read(starter('gable-attached')).value!;
const FT = 12;

type Row = readonly [bearing: string, feet: number, yard: Yard, name: string];

function course([bearing, feet, yard, name]: Row, i: number): Course {
  const b = parseBearing(bearing);
  if (!b.ok) throw new Error(b.message);
  return { azimuth: b.value, distance: feet * FT, yard, name, path: `/lot/courses/${i}` };
}

/** A project on another lot; the house is 44 ft by 30 ft, its patio wall on y = 0. */
function on(
  rows: readonly Row[],
  east: number,
  north: number,
  outward: string,
  more: Partial<Project['lot']> = {},
): Project {
  const b = parseBearing(outward);
  if (!b.ok) throw new Error(b.message);
  const lot = {
    ...base.lot,
    courses: rows.map(course),
    origin: { east: east * FT, north: north * FT },
    outward: b.value,
    ...more,
  };
  return { ...base, lot };
}

const basis = (p: Project, zoning: Partial<Project['basis']['zoning']>): Project => ({
  ...p,
  basis: { ...p.basis, zoning: { ...p.basis.zoning, ...zoning } },
});

const rectangle = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  { x: x0 * FT, y: y0 * FT },
  { x: x1 * FT, y: y0 * FT },
  { x: x1 * FT, y: y1 * FT },
  { x: x0 * FT, y: y1 * FT },
];

/** 100 ft square from its south-west corner, counter-clockwise; house origin at its middle, patio to the north. */
const SQUARE: readonly Row[] = [
  ['due east', 100, 'front', 'south'],
  ['due north', 100, 'right', 'east'],
  ['due west', 100, 'rear', 'north'],
  ['due south', 100, 'left', 'west'],
];
const square = on(SQUARE, 50, 50, 'due north');

/**
 * A five-sided lot with corners, feet east and north of the point of beginning:
 *   A (0, 0)  B (120, -35)  C (168, 20)  D (148, 119)  E (36, 134)
 * so the courses are AB (120, -35), BC (48, 55), CD (-20, 99), DE (-112, 15), EA (-36, -134). Their lengths by
 * Pythagoras: 125, 73, 101, 113 whole, EA = sqrt(36² + 134²) = sqrt(19252) = 138.752. Their bearings from
 * tan = departure / latitude, to the second: 120/35 → 73°44'23", 48/55 → 41°06'44", 20/99 → 11°25'16",
 * 112/15 → 82°22'19", 36/134 → 15°02'16".
 * Area by coordinates, twice: (120·20 + 168·35) + (168·119 - 148·20) + (148·134 - 36·119)
 *   = 8280 + 17032 + 15548 = 40860, so 20430 sq ft. Perimeter 550.752 ft.
 */
const FIVE: readonly Row[] = [
  ['S 73°44\'23" E', 125, 'front', 'AB'],
  ['N 41°06\'44" E', 73, 'right', 'BC'],
  ['N 11°25\'16" W', 101, 'right', 'CD'],
  ['N 82°22\'19" W', 113, 'rear', 'DE'],
  ['S 15°02\'16" W', 138.752, 'left', 'EA'],
];
const FIVE_CORNERS = [
  [0, 0],
  [120, -35],
  [168, 20],
  [148, 119],
  [36, 134],
] as const;
const five = on(FIVE, 85, 55, 'due north');

const OPPOSITE: Readonly<Record<string, string>> = { N: 'S', S: 'N', E: 'W', W: 'E' };
/** The same boundary walked the other way round. */
const mirrored = (rows: readonly Row[]): Row[] =>
  [...rows].reverse().map(([b, d, y, n]) => [b.replace(/^[NS]|[EW]$/g, (c) => OPPOSITE[c]!), d, y, n]);

const survey = (p: Project) => {
  const s = surveyLot(p);
  if (!s.value) throw new Error(JSON.stringify(s.issues));
  return s.value;
};

describe('a square lot, closed form', () => {
  const s = survey(square);
  it('has its corners where they are, and closes exactly', () => {
    expect(s.corners).toEqual(rectangle(-50, -50, 50, 50));
    expect(s.closure).toEqual({ error: 0, perimeter: 4800, ratio: 0, azimuth: 0 });
    expect(s.area).toBeCloseTo(1200 * 1200, 6);
    expect(s.north).toBeCloseTo(Math.PI / 2, 12);
  });
  it('measures posts, eaves and house to every line', () => {
    const p = basis(square, { referenceEdge: { ...base.basis.zoning.referenceEdge, value: 'post' } });
    const r = measureLot(p, s, {
      posts: [
        { x: -108, y: 180 },
        { x: 108, y: 180 },
      ],
      eaves: [rectangle(-11, 0, 11, 17)],
    });
    const at = (name: string) => r.distances.find((d) => d.line === name)!;
    // North line at y = 600 in: posts 600 - 180, eave 600 - 204, house wall on y = 0.
    expect(at('north')).toMatchObject({
      yard: 'rear',
      toPost: 420,
      toEave: 396,
      toHouse: 600,
      governing: 420,
      required: 300,
    });
    // East line at x = 600 in: posts 600 - 108, eave 600 - 132, house corner at 22 ft.
    expect(at('east')).toMatchObject({ toPost: 492, toEave: 468, toHouse: 336, nearestPost: { x: 108, y: 180 } });
    expect(at('south')).toMatchObject({ toEave: 600, toHouse: 240 });
  });
  it('draws setback lines parallel inside, from side to side', () => {
    const rear = s.setbacks.find((l) => l.line === 'north')!;
    expect([rear.start.y, rear.end.y]).toEqual([300, 300]);
    expect([rear.start.x, rear.end.x].sort((a, b) => a - b)).toEqual([-600, 600]);
    expect(s.setbacks.map((l) => l.required)).toEqual([360, 120, 300, 120]);
  });
  it('keeps an easement as a strip of the lot', () => {
    const e = survey(on(SQUARE, 50, 50, 'due north', { easements: [{ name: 'utility', course: 2, width: 90 }] }))
      .easements[0]!;
    expect(Math.abs(signedArea(e.outline))).toBeCloseTo(1200 * 90, 6);
    expect(Math.min(...e.outline.map((q) => q.y))).toBeCloseTo(510, 6);
  });
  it('turns with the house: patio to the east puts north on the left', () => {
    const east = survey(on(SQUARE, 50, 50, 'due east'));
    // y runs east and x south, so the south-west corner is x +50, y -50, and north is -x.
    expect(east.corners[0]).toEqual({ x: 600, y: -600 });
    expect(east.north).toBeCloseTo(Math.PI, 12);
  });
});

describe('a five-sided lot, own arithmetic', () => {
  const s = survey(five);
  it('has the corners of the sketch within an eighth of an inch', () => {
    s.corners.forEach((c, i) => {
      expect(Math.abs(c.x - (FIVE_CORNERS[i]![0] - 85) * FT)).toBeLessThan(1 / 8);
      expect(Math.abs(c.y - (FIVE_CORNERS[i]![1] - 55) * FT)).toBeLessThan(1 / 8);
    });
  });
  it('has its area and perimeter, and closes better than 1 in 50,000', () => {
    expect(Math.abs(s.area / 144 - 20430)).toBeLessThan(0.5);
    expect(s.closure.perimeter / FT).toBeCloseTo(550.752, 6);
    expect(s.closure.ratio).toBeLessThan(1 / 50_000);
    expect(surveyLot(five).issues).toEqual([]);
  });
  it('measures a point to a skew line by the line’s own equation', () => {
    // Distance of (90, 65) ft to AB through (0, 0) and (120, -35): |90·35 + 65·120| / 125 = 10950 / 125 = 87.6 ft.
    const q = { x: 5 * FT, y: 10 * FT };
    const d = measureLot(five, s, { posts: [q], eaves: [] }).distances.find((l) => l.line === 'AB')!;
    expect(d.toPost / FT).toBeCloseTo(87.6, 1);
  });
  it('keeps setback lines at their distance and inside the lot', () => {
    for (const l of s.setbacks) {
      const line = s.lines.find((k) => k.name === l.line)!;
      for (const q of [l.start, l.end]) {
        const off = (q.x - line.start.x) * line.inward.x + (q.y - line.start.y) * line.inward.y;
        expect(off).toBeCloseTo(l.required, 6);
      }
      for (const k of s.lines) {
        const m = { x: (l.start.x + l.end.x) / 2, y: (l.start.y + l.end.y) / 2 };
        expect((m.x - k.start.x) * k.inward.x + (m.y - k.start.y) * k.inward.y).toBeGreaterThan(0);
      }
    }
    expect(s.setbacks.length).toBe(5);
  });
});

describe('the other sense', () => {
  for (const [name, rows, east, north] of [
    [
      'square',
      SQUARE.map(
        ([b, ...r]) =>
          [
            {
              'due east': 'N 90° E',
              'due north': 'N 0°00\'00" E',
              'due west': 'N 90° W',
              'due south': 'S 0°00\'00" W',
            }[b]!,
            ...r,
          ] as Row,
      ),
      50,
      50,
    ],
    ['five', FIVE, 85, 55],
  ] as const) {
    it(`gives the ${name} lot the same inward sides, area and distances`, () => {
      const cover = { posts: [{ x: 30, y: 200 }], eaves: [rectangle(-11, 0, 11, 17)] };
      const there = on(rows, east, north, 'due north');
      const back = on(mirrored(rows), east, north, 'due north');
      const [a, b] = [survey(there), survey(back)];
      expect(Math.sign(signedArea(a.corners))).toBe(-Math.sign(signedArea(b.corners)));
      expect(b.area / 144).toBeCloseTo(a.area / 144, 1);
      const [ra, rb] = [measureLot(there, a, cover), measureLot(back, b, cover)];
      for (const d of ra.distances) {
        const e = rb.distances.find((q) => q.line === d.line)!;
        expect(Math.abs(e.toPost - d.toPost)).toBeLessThan(1 / 8);
        expect(Math.abs(e.toEave - d.toEave)).toBeLessThan(1 / 8);
        const [m, n] = [a, b].map((s) => s.lines.find((l) => l.name === d.line)!.inward);
        expect(m!.x).toBeCloseTo(n!.x, 3);
        expect(m!.y).toBeCloseTo(n!.y, 3);
      }
    });
  }
});

describe('the house axes do not care where north is', () => {
  it('turning every bearing by the same angle leaves the corners alone (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), (turn) => {
        const sin = Math.sin(turn);
        const cos = Math.cos(turn);
        const { east, north } = five.lot.origin;
        const lot = {
          ...five.lot,
          courses: five.lot.courses.map((c) => ({ ...c, azimuth: c.azimuth + turn })),
          outward: five.lot.outward + turn,
          origin: { east: east * cos + north * sin, north: north * cos - east * sin },
        };
        const s = survey({ ...five, lot });
        survey(five).corners.forEach((c, i) => {
          expect(s.corners[i]!.x).toBeCloseTo(c.x, 4);
          expect(s.corners[i]!.y).toBeCloseTo(c.y, 4);
        });
      }),
    );
  });
});

describe('coverage', () => {
  const s = survey(square);
  const house = 44 * 30 * 144;
  it('counts ground once where outlines overlap, whichever way they run', () => {
    // 20 by 16 and 20 by 16 overlapping in 10 by 8: 320 + 320 - 80 = 560 sq ft. The second runs clockwise.
    const eaves = [rectangle(-10, 0, 10, 16), rectangle(0, 8, 20, 24).reverse()];
    const c = measureLot(square, s, { posts: [], eaves }).coverage;
    expect(c.basis).toBeCloseTo(1200 * 1200, 6);
    expect(c.existing).toBeCloseTo(house, 3);
    expect(c.proposed).toBeCloseTo(house + 560 * 144, 3);
    expect(c.rows.map((r) => r.state)).toEqual(['existing', 'new']);
    expect(c.rows.reduce((a, r) => a + r.area, 0)).toBeCloseTo(c.proposed, 6);
  });
  it('leaves out what lies under the house already, and buildings that do not count', () => {
    const p = on(SQUARE, 50, 50, 'due north', {
      buildings: [
        { name: 'shed', outline: rectangle(30, 30, 38, 40), counts: true },
        { name: 'trellis', outline: rectangle(-40, 30, -30, 40), counts: false },
      ],
    });
    const c = measureLot(p, s, { posts: [], eaves: [rectangle(-10, -2, 10, 10)] }).coverage;
    expect(c.existing).toBeCloseTo(house + 80 * 144, 3);
    expect(c.rows.at(-1)!.area).toBeCloseTo(200 * 144, 3);
  });
  it('of the rear yard counts only what stands behind the house', () => {
    const p = basis(square, { coverageOf: 'rear-yard' });
    const c = measureLot(p, s, { posts: [], eaves: [rectangle(-10, 0, 10, 16)] }).coverage;
    expect(c.basis).toBeCloseTo(1200 * 600, 3);
    expect(c.existing).toBeCloseTo(0, 3);
    expect(c.proposed).toBeCloseTo(320 * 144, 3);
  });
});

describe('what is wrong with a lot', () => {
  const codes = (p: Project) => surveyLot(p).issues.map((i) => `${i.severity} ${i.code} ${i.path}`);
  const longer = (feet: number): Row[] => SQUARE.map((r, i) => (i === 0 ? [r[0], r[1] + feet, r[2], r[3]] : r));
  it('a bearing mistyped does not close', () => {
    const rows = SQUARE.map((r, i): Row => (i === 1 ? ['N 10° E', r[1], r[2], r[3]] : r));
    expect(codes(on(rows, 50, 50, 'due north'))).toEqual(['error lot-not-closed /lot/courses']);
    expect(surveyLot(on(rows, 50, 50, 'due north')).value).toBeUndefined();
  });
  it('limits are 1 in 2,000 and 1 in 200 of the perimeter', () => {
    // 0.19 ft in 400.19 is 1 in 2106; 0.21 in 400.21 is 1 in 1906; 1.99 in 401.99 is 1 in 202; 2.02 in 402.02 is 1 in 199.
    expect(codes(on(longer(0.19), 50, 50, 'due north'))).toEqual([]);
    expect(codes(on(longer(0.21), 50, 50, 'due north'))).toEqual(['warning lot-closure-doubtful /lot/courses']);
    expect(codes(on(longer(1.99), 50, 50, 'due north'))).toEqual(['warning lot-closure-doubtful /lot/courses']);
    expect(codes(on(longer(2.02), 50, 50, 'due north'))).toEqual(['error lot-not-closed /lot/courses']);
    expect(survey(on(longer(0.21), 50, 50, 'due north')).closure.error).toBeCloseTo(0.21 * FT, 6);
    expect(survey(on(longer(0.21), 50, 50, 'due north')).closure.azimuth).toBeCloseTo(1.5 * Math.PI, 6);
  });
  it('lines that cross', () => {
    const rows: Row[] = [
      ['N 45° E', 100 * Math.SQRT2, 'front', 'a'],
      ['due south', 100, 'right', 'b'],
      ['N 45° W', 100 * Math.SQRT2, 'rear', 'c'],
      ['due south', 100, 'left', 'd'],
    ];
    expect(codes(on(rows, 50, 50, 'due north'))).toEqual(['error lot-crosses /lot/courses']);
  });
  it('a house off the lot, a shed across the line', () => {
    expect(codes(on(SQUARE, 10, 50, 'due north'))).toEqual(['error house-outside-lot /lot/origin']);
    const shed = { buildings: [{ name: 'shed', outline: rectangle(45, 30, 55, 40), counts: true }] };
    expect(codes(on(SQUARE, 50, 50, 'due north', shed))).toEqual([
      'warning building-outside-lot /lot/buildings/0/outline',
    ]);
  });
  it('rear-yard coverage without a rear line', () => {
    const rows = SQUARE.map((r): Row => [r[0], r[1], r[2] === 'rear' ? 'left' : r[2], r[3]]);
    expect(codes(basis(on(rows, 50, 50, 'due north'), { coverageOf: 'rear-yard' }))).toEqual([
      'error no-rear-line /basis/zoning/coverageOf',
    ]);
  });
  it('a post past the line measures negative', () => {
    const d = measureLot(square, survey(square), { posts: [{ x: 0, y: 612 }], eaves: [] }).distances;
    expect(d.find((l) => l.line === 'north')!.toPost).toBeCloseTo(-12, 9);
  });
});
