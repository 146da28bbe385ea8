import type { Structure } from '../../structure/model.js';
import { pierTops, postCuts } from './heights.js';
import { homeBase } from './home.js';
import type { CheckReading, Layout, StakePoint } from './model.js';
import { between, rectanglesOf, triangleIn } from './square.js';
import { letters, rowsOf, stringPlan } from './strings.js';
import { ADVICE, LAYOUT_CAUTIONS } from './words.js';

/** Names that mean the datum of the layout; a footing may not be called so. */
export const HOME = 'HOME';
export const CORNER = 'CORNER';
export const BENCHMARK = 'BM';

/** How the placed structure is set out on the ground. Data only; nothing here is an estimate. */
export function layoutOf(structure: Structure): Layout {
  const home = homeBase(structure);
  // Footings under the house wall are found from inside the wall, not by strings.
  const inWall = new Set(structure.joints.filter((j) => j.kind === 'beam-to-wall-post').map((j) => j.ties[1]?.part));
  const wallPosts = new Set(
    structure.joints
      .filter((j) => j.kind === 'post-to-footing' && inWall.has(j.ties[0]?.part))
      .map((j) => j.ties[1]?.part),
  );
  const footings = structure.footings.filter((f) => !wallPosts.has(f.id));
  const { strings, boards, level } = stringPlan(structure, footings, home.at);
  const local = (x: number, y: number) => ({ along: x - home.at.x, out: y - home.at.y });
  const wallPoints = rowsOf(footings, 'x').map(
    (row, i): StakePoint => ({
      name: `W${letters(i)}`,
      role: 'wall',
      ...local(row.at, 0),
      note: `mark on the wall line, end of string ${letters(i)}`,
      path: '',
    }),
  );
  const centers = footings.map((f): StakePoint => {
    const cut = structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[1]?.part === f.id);
    return {
      name: f.mark,
      role: 'footing',
      ...local(f.at.x, f.at.y),
      level: f.top,
      note: `center of footing${cut ? ` and post ${cut.ties[0]?.part}` : ''}; level is the top of its concrete`,
      path: f.path,
    };
  });
  const attached = structure.attachment === 'attached';
  const corners = attached ? [...wallPoints, ...centers] : centers;
  const whole = rectanglesOf(corners);
  const rectangles = whole.length > 0 ? whole : rectanglesOf([...wallPoints, ...centers]);
  const inside = new Set(rectangles.flatMap((r) => [r.first.from, r.first.to, r.second.from, r.second.to]));
  const datum: StakePoint[] = [
    { name: HOME, role: 'home', along: 0, out: 0, note: `home base: ${home.words}`, path: '' },
    ...(home.corner
      ? [
          {
            name: CORNER,
            role: 'corner' as const,
            ...local(home.corner.x, 0),
            note: 'right corner of the same wall',
            path: '',
          },
        ]
      : []),
  ];
  const ties = centers.filter((c) => !inside.has(c.name)).flatMap((c) => datum.map((d) => between(d, c)));
  const farthest = (of: 'along' | 'out') => Math.max(0, ...centers.map((c) => Math.abs(c[of])));
  return {
    home: home.at,
    homeWords: home.words,
    benchmark: { level: 0, words: 'finished floor of the house, carried to a mark at home base' },
    stringLevel: level,
    points: [
      ...datum,
      {
        name: BENCHMARK,
        role: 'benchmark',
        along: 0,
        out: 0,
        level: 0,
        note: 'benchmark: level of the finished floor',
        path: '',
      },
      ...wallPoints,
      ...centers,
      ...boards.map(
        (b): StakePoint => ({
          name: b.nail,
          role: 'board',
          along: b.along,
          out: b.out,
          level,
          note: b.onWall ? 'mark on the house wall, string tied to it' : 'nail in the batter board, string level',
          path: '',
        }),
      ),
    ],
    strings,
    boards,
    rectangles,
    ties,
    triangle: triangleIn(farthest('along'), farthest('out')),
    piers: pierTops(structure),
    posts: postCuts(structure),
    readings: readingsOf(centers, datum, rectangles, ties),
    advice: ADVICE,
    cautions: LAYOUT_CAUTIONS,
  };
}

/**
 * Distances that a point needs beside its two offsets, so that one bad reading among them is told from the good ones; found
 * by trial on simulated layouts (asbuilt/snooping.test.ts).
 */
const DISTANCES = 4;

/** What to measure so that every point is fixed and every reading is checked by others. */
function readingsOf(
  centers: readonly StakePoint[],
  datum: readonly StakePoint[],
  rectangles: Layout['rectangles'],
  ties: Layout['ties'],
): readonly CheckReading[] {
  const out: CheckReading[] = [];
  for (const c of centers) {
    out.push({ kind: 'along', from: HOME, to: c.name, value: Math.abs(c.along) });
    out.push({ kind: 'out', from: HOME, to: c.name, value: Math.abs(c.out) });
  }
  const byName = new Map(centers.map((c) => [c.name, c]));
  const said = new Set<string>();
  const distance = (from: string, to: string, value: number) => {
    const key = [from, to].sort().join(' ');
    if (from === to || said.has(key) || value < 1e-6) return;
    said.add(key);
    out.push({ kind: 'distance', from, to, value });
  };
  // Sides: each center to the next one in its row and in its column.
  for (const axis of ['along', 'out'] as const) {
    const across = axis === 'along' ? 'out' : 'along';
    for (const c of centers) {
      const next = centers
        .filter((o) => Math.abs(o[across] - c[across]) <= 1 / 16 && o[axis] > c[axis] + 1 / 16)
        .sort((a, b) => a[axis] - b[axis])[0];
      if (next) distance(c.name, next.name, between(c, next).length);
    }
  }
  for (const r of rectangles)
    for (const d of [r.first, r.second]) if (byName.has(d.from) || byName.has(d.to)) distance(d.from, d.to, d.length);
  for (const t of ties) distance(t.from, t.to, t.length);
  for (const c of centers) {
    const others = centers.filter((o) => o !== c).sort((a, b) => between(a, c).length - between(b, c).length);
    for (const o of [...datum, ...others]) {
      if (out.filter((r) => r.kind === 'distance' && (r.from === c.name || r.to === c.name)).length >= DISTANCES) break;
      distance(o.name, c.name, between(o, c).length);
    }
  }
  return [...out, ...levelReadings(centers)];
}

/**
 * Each pier from the benchmark, and the differences from pier to pier in a ring: two readings of the same height would show
 * a blunder but not which of them it is. Fewer than three piers make no ring: the benchmark is read again.
 */
function levelReadings(centers: readonly StakePoint[]): readonly CheckReading[] {
  const leveled = centers.flatMap((c) => (c.level === undefined ? [] : [{ name: c.name, level: c.level }]));
  const read = (from: string, to: string, value: number): CheckReading => ({ kind: 'level', from, to, value });
  const first = leveled.map((c) => read(BENCHMARK, c.name, c.level));
  if (leveled.length < 3) return [...first, ...first, ...first];
  const ring = leveled.map((c, i) => {
    const next = leveled[(i + 1) % leveled.length]!;
    return read(c.name, next.name, next.level - c.level);
  });
  return [...first, ...ring];
}
