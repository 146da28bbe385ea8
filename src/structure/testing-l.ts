/**
 * A house with a wing and a cover of two sheds in an L: R1 hangs on the rear wall and falls along +y, R2 on the side wall
 * of the wing and falls along +x. Beam B2 starts on post P2 of beam B1. For tests.
 */
import type { HouseWall, Project } from '../project/model.js';
import { change, shedProject } from './testing.js';

const CORNERS: readonly (readonly [string, number, number])[] = [
  ['wing', -360, 240],
  ['side', -144, 240],
  ['rear', -144, 0],
  ['right', 216, 0],
  ['front', 216, -336],
  ['left', -360, -336],
];

const walls = (build: HouseWall['build']): HouseWall[] =>
  CORNERS.map(([name, x, y], i) => {
    const [, nx, ny] = CORNERS[(i + 1) % CORNERS.length]!;
    return { name, start: { x, y }, end: { x: nx, y: ny }, plate: 218, stories: 2, build, path: `/house/walls/${i}` };
  });

export const lProject: Project = change(shedProject, {
  house: { walls: (old) => walls(old[0]!.build), openings: [], roofs: [] },
  patio: {
    slabs: (old) => [
      {
        ...old[0]!,
        outline: [
          { x: -144, y: 0 },
          { x: 130, y: 0 },
          { x: 130, y: 240 },
          { x: -144, y: 240 },
        ],
      },
    ],
  },
  cover: {
    beams: ([b1]) => [
      {
        ...b1!,
        posts: b1!.posts.map((p, i) => ({ ...p, at: [6, 102, 234][i]! })),
      },
      {
        ...b1!,
        mark: 'B2',
        from: { x: -18, y: 126 },
        to: { x: -18, y: 238 },
        shared: [{ post: 'P2', at: 0 }],
        posts: [{ ...b1!.posts[0]!, mark: 'P4', footingMark: 'F4', at: 106, path: '/cover/beams/1/posts/0' }],
        path: '/cover/beams/1',
      },
    ],
    ledgers: ([l1]) => [
      { ...l1!, wall: 2 },
      { ...l1!, mark: 'L2', wall: 1, from: 140, to: 238, path: '/cover/ledgers/1' },
    ],
    roofs: ([r1]) => [
      { ...r1!, from: -112, to: 112, eave: 0, finish: { ...r1!.finish, gutter: true } },
      { ...r1!, mark: 'R2', fall: '+x', high: { ledger: 'L2' }, low: 'B2', from: 144, to: 224, path: '/cover/roofs/1' },
    ],
  },
});

/** The same in a mirror: x → −x. */
export function mirroredL(p: Project): Project {
  const flip = <T extends { readonly x: number; readonly y: number }>(q: T): T => ({ ...q, x: 0 - q.x });
  const last = p.house.walls.length - 1;
  return change(p, {
    house: { walls: (old) => [...old].reverse().map((w) => ({ ...w, start: flip(w.end), end: flip(w.start) })) },
    patio: { slabs: (old) => old.map((s) => ({ ...s, outline: [...s.outline].reverse().map(flip) })) },
    cover: {
      beams: (old) => old.map((b) => ({ ...b, from: flip(b.from), to: flip(b.to) })),
      ledgers: (old) =>
        old.map((l) => {
          const w = p.house.walls[l.wall]!;
          const ends = w.start.y === w.end.y ? { from: -l.to, to: -l.from } : {};
          return { ...l, wall: last - l.wall, ...ends };
        }),
      roofs: (old) =>
        old.map((r) => {
          if (r.kind !== 'shed') return r;
          if (r.fall === '+x') return { ...r, fall: '-x' as const };
          if (r.fall === '-x') return { ...r, fall: '+x' as const };
          return { ...r, from: -r.to, to: -r.from };
        }),
    },
  });
}
