/** A free-standing hip roof, 14 ft by 20 ft between the beams' centres, its ridge along y on two posts of its own. For tests. */
import type { BeamLine, HipRoof, Project } from '../project/model.js';
import { change, gableProject } from './testing.js';

const DRY = { treatment: 'none', incised: false, service: 'dry' } as const;
const DFL = 'Douglas Fir-Larch';
const first = gableProject.cover.roofs[0]!;

type Posts = readonly (readonly [string, number, string])[];

const line = (
  index: number,
  mark: string,
  from: readonly [number, number],
  to: readonly [number, number],
  posts: Posts,
  shared: readonly (readonly [string, number])[] = [],
): BeamLine => ({
  mark,
  from: { x: from[0], y: from[1] },
  to: { x: to[0], y: to[1] },
  section: 'beam',
  posts: posts.map(([post, at, footingMark], k) => ({
    mark: post,
    at,
    section: 'post',
    footing: 'pier',
    footingMark,
    path: `/cover/beams/${index}/posts/${k}`,
  })),
  ...(shared.length > 0 ? { shared: shared.map(([post, at]) => ({ post, at })) } : {}),
  splices: [],
  path: `/cover/beams/${index}`,
});

const roof: HipRoof = {
  mark: 'R1',
  kind: 'hip',
  beams: ['B1', 'B2'],
  ends: ['B3', 'B4'],
  ridge: 'y',
  ridgeBeam: 'B5',
  hip: 'hip',
  from: 60,
  to: 300,
  rake: 0,
  pitch: Math.atan(4 / 12),
  pitchText: '4/12',
  bearing: 100,
  eave: 16,
  framing: { kind: 'rafter', spacing: 24, section: 'rafter' },
  finish: first.finish,
  path: '/cover/roofs/0',
};

export const hipProject: Project = change(gableProject, {
  patio: { slabs: [], grade: { atHouse: -6, fall: 0 } },
  cover: {
    attachment: 'free-standing',
    lateral: { x: 'none', y: 'none' },
    beams: [
      line(
        0,
        'B1',
        [-84, 57.25],
        [-84, 302.75],
        [
          ['P1', 2.75, 'F1'],
          ['P2', 122.75, 'F2'],
          ['P3', 242.75, 'F3'],
        ],
      ),
      line(
        1,
        'B2',
        [84, 57.25],
        [84, 302.75],
        [
          ['P4', 2.75, 'F4'],
          ['P5', 122.75, 'F5'],
          ['P6', 242.75, 'F6'],
        ],
      ),
      line(
        2,
        'B3',
        [-86.75, 60],
        [86.75, 60],
        [],
        [
          ['P1', 2.75],
          ['P4', 170.75],
        ],
      ),
      line(
        3,
        'B4',
        [-86.75, 300],
        [86.75, 300],
        [],
        [
          ['P3', 2.75],
          ['P6', 170.75],
        ],
      ),
      line(
        4,
        'B5',
        [0, 144],
        [0, 216],
        [
          ['P7', 3, 'F7'],
          ['P8', 69, 'F8'],
        ],
      ),
    ],
    roofs: [roof],
  },
  choices: {
    sections: (old) => ({
      ...old,
      rafter: { kind: 'solid', size: '2x10', species: DFL, grade: 'No. 2', ...DRY },
      hip: { kind: 'solid', size: '4x10', species: DFL, grade: 'No. 1', ...DRY },
    }),
  },
});
