/** Parts that the complete test projects share: walls, openings, beams, words of an office. */

import type { Inches } from '../base/units.js';
import type { BeamLine, CodeBundle, HouseWall, Office, Opening, WallBuild, Yard } from '../project/model.js';

export const FT = 12;

export const given = <T>(value: T, from = 'county design criteria sheet', path = ''): Office<T> => ({
  value,
  state: 'given',
  from,
  path,
});

export const CODES: CodeBundle = {
  id: '2018',
  residential: 'IRC 2018',
  building: 'IBC 2018',
  loads: '7-16',
  wood: 'NDS 2018',
  concrete: 'ACI 318-14',
};

export const setbacks = (front: number, rear: number, side: number): Record<Yard, Office<Inches>> => ({
  front: given(front),
  rear: given(rear),
  left: given(side),
  right: given(side),
  'street-side': given(side),
});

export type Corner = readonly [name: string, x: number, y: number];

export const wallsOf = (corners: readonly Corner[], plate: number, stories: number, build: WallBuild): HouseWall[] =>
  corners.map(([name, x, y], i) => {
    const [, nx, ny] = corners[(i + 1) % corners.length]!;
    return { name, start: { x, y }, end: { x: nx, y: ny }, plate, stories, build, path: `/house/walls/${i}` };
  });

export type Hole = readonly [
  mark: string,
  kind: Opening['kind'],
  wall: number,
  offset: number,
  width: number,
  sill: number,
  head: number,
  room: string,
  escape: boolean,
];

export const openingsOf = (holes: readonly Hole[]): Opening[] =>
  holes.map(([mark, kind, wall, offset, width, sill, head, room, exit], i) => ({
    mark,
    kind,
    wall,
    offset,
    width,
    sill,
    head,
    room,
    escape: exit,
    path: `/house/openings/${i}`,
  }));

export type Post = readonly [mark: string, at: number, footing: string, footingMark: string];

export const beam = (
  index: number,
  mark: string,
  from: readonly [number, number],
  to: readonly [number, number],
  posts: readonly Post[],
): BeamLine => ({
  mark,
  from: { x: from[0], y: from[1] },
  to: { x: to[0], y: to[1] },
  section: 'beam',
  posts: posts.map(([postMark, at, footing, footingMark], k) => ({
    mark: postMark,
    at,
    section: 'post',
    footing,
    footingMark,
    path: `/cover/beams/${index}/posts/${k}`,
  })),
  splices: [],
  path: `/cover/beams/${index}`,
});

export const rectangle = (x0: number, y0: number, x1: number, y1: number) => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

export const DRY = { treatment: 'none', incised: false, service: 'dry' } as const;
export const TREATED = { treatment: 'above-ground', incised: true, service: 'dry' } as const;
export const DFL = 'Douglas Fir-Larch';
