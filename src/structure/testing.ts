/**
 * Two complete projects as the reader gives them, modelled on the two examples but fixed, so that hand numbers stand:
 * `gableProject` (attached gable, scissor trusses on glulam beams, kept slab) and `shedProject` (ledger, rafters, built-up
 * beam). For tests of this and later stages; `change` copies one with parts replaced.
 */

import type { Inches } from '../base/units.js';
import type {
  BeamLine,
  CodeBundle,
  House,
  HouseWall,
  Office,
  Opening,
  Project,
  WallBuild,
  Yard,
} from '../project/model.js';

const FT = 12;

export const given = <T>(value: T, from = 'county design criteria sheet', path = ''): Office<T> => ({
  value,
  state: 'given',
  from,
  path,
});

const CODES: CodeBundle = {
  id: '2018',
  residential: 'IRC 2018',
  building: 'IBC 2018',
  loads: '7-16',
  wood: 'NDS 2018',
  concrete: 'ACI 318-14',
};

const setbacks = (front: number, rear: number, side: number): Record<Yard, Office<Inches>> => ({
  front: given(front),
  rear: given(rear),
  left: given(side),
  right: given(side),
  'street-side': given(side),
});

type Corner = readonly [name: string, x: number, y: number];

const wallsOf = (corners: readonly Corner[], plate: number, stories: number, build: WallBuild): HouseWall[] =>
  corners.map(([name, x, y], i) => {
    const [, nx, ny] = corners[(i + 1) % corners.length]!;
    return { name, start: { x, y }, end: { x: nx, y: ny }, plate, stories, build, path: `/house/walls/${i}` };
  });

type Hole = readonly [
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

const openingsOf = (holes: readonly Hole[]): Opening[] =>
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

type Post = readonly [mark: string, at: number, footing: string, footingMark: string];

const beam = (
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

const rectangle = (x0: number, y0: number, x1: number, y1: number) => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

const DRY = { treatment: 'none', incised: false, service: 'dry' } as const;
const TREATED = { treatment: 'above-ground', incised: true, service: 'dry' } as const;
const DFL = 'Douglas Fir-Larch';

const gableHouse: House = {
  stories: 1,
  rooms: [],
  equipment: [],
  walls: wallsOf(
    [
      ['rear', -22 * FT, 0],
      ['right', 22 * FT, 0],
      ['front', 22 * FT, -38 * FT],
      ['left', -22 * FT, -38 * FT],
    ],
    97,
    1,
    {
      name: 'stucco',
      studSize: '2x4',
      studSpacing: 16,
      cladding: 'stucco',
      claddingThickness: 0.875,
      sheathing: '1/2 in panel',
      verified: given(true, 'opened at the hose bib, studs found at 16 in', '/house/builds/stucco/verified'),
    },
  ),
  openings: openingsOf([
    ['D1', 'sliding-door', 0, 18 * FT, 8 * FT, 0, 80, 'family room', false],
    ['W1', 'window', 0, 7 * FT, 5 * FT, 32, 80, 'bedroom 2', true],
    ['W2', 'window', 0, 33 * FT, 4 * FT, 42, 80, 'kitchen', false],
    ['W3', 'window', 1, 10 * FT, 4 * FT, 36, 80, 'bedroom 3', true],
    ['D2', 'door', 2, 20 * FT, 3 * FT, 0, 80, 'entry', false],
  ]),
  roofs: [
    {
      kind: 'gable',
      min: { x: -22 * FT, y: -38 * FT },
      max: { x: 22 * FT, y: 0 },
      ridge: 'y',
      pitch: Math.atan(5 / 12),
      plate: 97,
      overhang: 18,
      rake: 2,
      covering: 'asphalt-shingle',
      path: '/house/roofs/0',
    },
  ],
};

export const gableProject: Project = {
  version: 1,
  job: {
    title: 'Gabled patio roof',
    address: '118 Saltbush Lane, Dry Fork',
    owner: 'M. Tarrow',
    parcel: '0417-22-118',
    preparedBy: 'the owner',
    date: '2026-03-02',
    units: 'us',
    sheetSize: 'ARCH D',
    scope: 'New gabled roof on four posts over the existing rear patio slab. No change inside the house.',
  },
  basis: {
    codes: CODES,
    riskCategory: 'II',
    wind: { speed: given(100), exposure: given('B'), topographic: given(1), elevation: 1150 * FT, flow: 'both' },
    snow: {
      ground: given(0),
      exposure: { value: 'partially', state: 'assumed', from: '', path: '/basis/snow/exposure' },
    },
    roofLive: { minimum: given(20), patioAppendix: given(false), reduce: false },
    seismic: { category: given('B') },
    frost: given(12),
    soil: { bearing: given(1500), lateral: given(100), density: 100, description: 'stiff sandy clay' },
    zoning: {
      coverageLimit: given(0.4),
      coverageOf: 'lot',
      setbacks: setbacks(25 * FT, 15 * FT, 90),
      referenceEdge: given('eave'),
      heightLimit: given(16 * FT),
      headroom: 80,
    },
    criteria: [],
  },
  lot: {
    courses: (
      [
        [90, 84, 'front', 'south line'],
        [0, 125, 'right', 'east line'],
        [270, 84, 'rear', 'north line'],
        [180, 125, 'left', 'west line'],
      ] as const
    ).map(([degrees, feet, yard, name], i) => ({
      azimuth: (degrees * Math.PI) / 180,
      distance: feet * FT,
      yard,
      name,
      path: `/lot/courses/${i}`,
    })),
    origin: { east: 42 * FT, north: 66 * FT },
    outward: 0,
    easements: [{ name: 'utility easement', course: 2, width: 90 }],
    buildings: [{ name: 'shed', outline: rectangle(26 * FT, 38 * FT, 34 * FT, 46 * FT), counts: true }],
    items: [],
    street: { name: 'Saltbush Lane', course: 0 },
    paving: [],
    utilities: [],
    drainage: [],
    datum: '',
  },
  house: gableHouse,
  patio: {
    grade: { atHouse: -10, fall: 1 / 48 },
    slabs: [
      {
        mark: 'S1',
        state: 'existing',
        outline: rectangle(-11 * FT, 0, 11 * FT, 16 * FT),
        thickness: 4,
        topAtHouse: -5,
        fall: 1 / 48,
        path: '/patio/slabs/0',
      },
    ],
    steps: [],
    existing: [],
  },
  cover: {
    attachment: 'attached',
    use: 'recreation',
    lateral: { x: 'house', y: 'house' },
    beams: [
      beam(
        0,
        'B1',
        [-9 * FT, 6],
        [-9 * FT, 15 * FT],
        [
          ['P1', 6, 'pier', 'F1'],
          ['P2', 162, 'pier', 'F2'],
        ],
      ),
      beam(
        1,
        'B2',
        [9 * FT, 6],
        [9 * FT, 15 * FT],
        [
          ['P3', 6, 'pier', 'F3'],
          ['P4', 162, 'pier', 'F4'],
        ],
      ),
    ],
    ledgers: [],
    roofs: [
      {
        mark: 'R1',
        kind: 'gable',
        beams: ['B1', 'B2'],
        ridge: 'y',
        from: 9,
        to: 177,
        pitch: Math.atan(4 / 12),
        pitchText: '4/12',
        bearing: 100,
        eave: 16,
        rake: 6,
        framing: {
          kind: 'scissor-truss',
          spacing: 24,
          chord: '2x4',
          heel: 5.5,
          bottomPitch: Math.atan(2 / 12),
          weight: 6,
          wood: { species: DFL, grade: 'No. 2', ...DRY },
        },
        finish: {
          covering: 'asphalt-shingle',
          underlayment: 'felt-30',
          sheathing: 'osb-7/16',
          ceiling: '',
          allowance: 1,
          fascia: '2x6',
          gutter: true,
        },
        path: '/cover/roofs/0',
      },
    ],
  },
  choices: {
    standoff: 1,
    joints: [],
    connections: [],
    deflection: { live: 360, total: 240 },
    sections: {
      beam: { kind: 'glulam', combination: '24F-V4', width: 5.5, depth: 12, treatment: 'none', service: 'dry' },
      post: { kind: 'solid', size: '6x6', species: DFL, grade: 'No. 1', ...TREATED },
      fascia: { kind: 'solid', size: '2x6', species: DFL, grade: 'No. 2', ...DRY },
    },
    footings: {
      pier: {
        kind: 'pier-on-pad',
        diameter: 16,
        width: 30,
        thickness: 12,
        bottom: 30,
        top: 0,
        fc: 2500,
        steel: '(3) #4 each way in pad; (4) #4 vertical with #3 ties at 10 in in pier',
      },
    },
  },
  prices: [],
  log: { revisions: [], approvals: [] },
  assumptions: [],
  questions: [],
};

const shedHouse: House = {
  stories: 2,
  rooms: [],
  equipment: [],
  walls: wallsOf(
    [
      ['rear', -18 * FT, 0],
      ['right', 18 * FT, 0],
      ['front', 18 * FT, -28 * FT],
      ['left', -18 * FT, -28 * FT],
    ],
    218,
    2,
    {
      name: 'lap',
      studSize: '2x6',
      studSpacing: 16,
      cladding: 'lap-siding',
      claddingThickness: 0.625,
      sheathing: '7/16 in panel',
      verified: given(
        true,
        'band joist seen from the basement stair, 2x10 floor framing',
        '/house/builds/lap/verified',
      ),
    },
  ),
  openings: openingsOf([
    ['D1', 'french-door', 0, 186, 60, 0, 82, 'dining room', false],
    ['W1', 'window', 0, 84, 60, 36, 82, 'kitchen', false],
    ['W2', 'window', 0, 288, 60, 30, 82, 'living room', false],
    ['W3', 'window', 0, 96, 48, 156, 202, 'bedroom 1', true],
    ['W4', 'window', 0, 288, 48, 156, 202, 'bedroom 2', true],
    ['D2', 'door', 2, 192, 36, 0, 82, 'hall', false],
  ]),
  roofs: [
    {
      kind: 'gable',
      min: { x: -18 * FT, y: -28 * FT },
      max: { x: 18 * FT, y: 0 },
      ridge: 'x',
      pitch: Math.atan(7 / 12),
      plate: 218,
      overhang: 12,
      rake: 10,
      covering: 'asphalt-shingle',
      path: '/house/roofs/0',
    },
  ],
};

const DEGREE = Math.PI / 180;

export const shedProject: Project = {
  ...gableProject,
  job: {
    title: 'Shed patio roof',
    address: '9 Larkspur Court, Upper Tamarack',
    owner: 'J. and P. Winslade',
    parcel: '72-0093-09',
    preparedBy: 'J. Winslade',
    date: '2026-04-18',
    units: 'us',
    sheetSize: 'ARCH D',
    scope: 'New shed roof on a ledger and three posts over a new patio slab at the rear door.',
  },
  basis: {
    codes: CODES,
    riskCategory: 'II',
    wind: { speed: given(110), exposure: given('C'), topographic: given(1), elevation: 2400 * FT, flow: 'both' },
    snow: { ground: given(40), exposure: given('partially', 'house and trees on two sides') },
    roofLive: { minimum: given(20), patioAppendix: given(false), reduce: false },
    seismic: { category: given('B') },
    frost: given(42),
    soil: { bearing: given(2000), lateral: given(150), density: 105, description: 'silty sand' },
    zoning: {
      coverageLimit: given(0.3),
      coverageOf: 'lot',
      setbacks: setbacks(30 * FT, 25 * FT, 10 * FT),
      referenceEdge: given('post'),
      heightLimit: given(15 * FT),
      headroom: 80,
    },
    criteria: [],
  },
  lot: {
    courses: (
      [
        [268.5, 96, 'front', 'north line'],
        [178.5, 148, 'right', 'west line'],
        [88.5, 96, 'rear', 'south line'],
        [358.5, 148, 'left', 'east line'],
      ] as const
    ).map(([degrees, feet, yard, name], i) => ({
      azimuth: degrees * DEGREE,
      distance: feet * FT,
      yard,
      name,
      path: `/lot/courses/${i}`,
    })),
    origin: { east: -50 * FT, north: -68 * FT },
    outward: 178.5 * DEGREE,
    easements: [{ name: 'drainage easement', course: 2, width: 120 }],
    buildings: [],
    items: [],
    street: { name: 'Larkspur Court', course: 0 },
    paving: [],
    utilities: [],
    drainage: [],
    datum: '',
  },
  house: shedHouse,
  patio: {
    grade: { atHouse: -14, fall: 1 / 48 },
    slabs: [
      {
        mark: 'S1',
        state: 'new',
        outline: rectangle(-11 * FT, 0, 11 * FT, 12 * FT),
        thickness: 4,
        topAtHouse: -7,
        fall: 1 / 48,
        path: '/patio/slabs/0',
      },
    ],
    steps: [],
    existing: [],
  },
  cover: {
    attachment: 'attached',
    use: 'recreation',
    lateral: { x: 'house', y: 'house' },
    beams: [
      beam(
        0,
        'B1',
        [-120, 126],
        [120, 126],
        [
          ['P1', 6, 'pad', 'F1'],
          ['P2', 120, 'pad-middle', 'F2'],
          ['P3', 234, 'pad', 'F3'],
        ],
      ),
    ],
    ledgers: [{ mark: 'L1', wall: 0, from: -120, to: 120, section: 'ledger', path: '/cover/ledgers/0' }],
    roofs: [
      {
        mark: 'R1',
        kind: 'shed',
        high: { ledger: 'L1' },
        low: 'B1',
        from: -119.25,
        to: 119.25,
        pitch: Math.atan(2 / 12),
        pitchText: '2/12',
        bearing: 119,
        eave: 12,
        rake: 8,
        highOverhang: 0,
        framing: { kind: 'rafter', spacing: 16, section: 'rafter' },
        finish: {
          covering: 'standing-seam-metal',
          underlayment: 'self-adhering',
          sheathing: 'osb-19/32',
          ceiling: '',
          allowance: 1,
          fascia: '2x8',
          gutter: true,
        },
        path: '/cover/roofs/0',
      },
    ],
  },
  choices: {
    standoff: 1,
    joints: [],
    connections: [],
    deflection: { live: 360, total: 240 },
    sections: {
      beam: {
        kind: 'built-up',
        plies: 3,
        ply: '2x12',
        spacers: 2,
        spacerThickness: 0.5,
        fastening: 'two rows 16d at 12 in each face',
        species: DFL,
        grade: 'No. 1',
        ...DRY,
      },
      post: { kind: 'solid', size: '6x6', species: DFL, grade: 'No. 1', ...TREATED },
      rafter: { kind: 'solid', size: '2x10', species: DFL, grade: 'No. 2', ...DRY },
      ledger: { kind: 'solid', size: '2x12', species: DFL, grade: 'No. 2', ...TREATED },
      fascia: { kind: 'solid', size: '2x8', species: DFL, grade: 'No. 2', ...DRY },
    },
    footings: {
      pad: {
        kind: 'pier-on-pad',
        diameter: 12,
        width: 28,
        thickness: 12,
        bottom: 48,
        top: 2,
        fc: 3000,
        steel: '(3) #4 each way in pad; (4) #4 vertical in pier',
      },
      'pad-middle': {
        kind: 'pier-on-pad',
        diameter: 12,
        width: 36,
        thickness: 12,
        bottom: 48,
        top: 2,
        fc: 3000,
        steel: '(4) #4 each way in pad; (4) #4 vertical in pier',
      },
    },
  },
};

/**
 * The gable with its two beams held by the house instead of a second pair of posts: B1 runs into the wall over a new post
 * inside it, B2 is fixed to the wall's face. Built-up beams, three 2x with two 1/2 in strips: 5-1/2 in wide.
 */
export const houseEndsProject: Project = {
  ...gableProject,
  house: { ...gableHouse, openings: gableHouse.openings.filter((o) => o.mark !== 'W1') },
  cover: {
    ...gableProject.cover,
    beams: [
      {
        ...beam(0, 'B1', [-9 * FT, -3.5], [-9 * FT, 15 * FT], [['P1', 177.5, 'pier', 'F1']]),
        ends: {
          start: {
            kind: 'post-in-wall',
            wall: 0,
            mark: 'P3',
            section: 'wall-post',
            foot: {
              kind: 'foundation',
              top: -1.5,
              verified: given(true, 'footing dug up beside the wall, 12 in wide'),
            },
            verified: given(true, 'drywall opened in the family room, no wires'),
            path: '/cover/beams/0/ends/start',
          },
        },
      },
      {
        ...beam(1, 'B2', [9 * FT, 0], [9 * FT, 15 * FT], [['P2', 174, 'pier', 'F2']]),
        ends: {
          start: {
            kind: 'on-wall',
            wall: 0,
            into: 'post',
            verified: given(true, 'two studs and a 4x4 seen through the opened wall'),
            path: '/cover/beams/1/ends/start',
          },
        },
      },
    ],
    roofs: gableProject.cover.roofs.map((r) => ({ ...r, bearing: 93, from: 9, to: 177 })),
  },
  choices: {
    ...gableProject.choices,
    sections: {
      ...gableProject.choices.sections,
      beam: {
        kind: 'built-up',
        plies: 3,
        ply: '2x12',
        spacers: 2,
        spacerThickness: 0.5,
        fastening: 'two rows 16d at 12 in each face',
        species: DFL,
        grade: 'No. 1',
        ...DRY,
      },
      'wall-post': { kind: 'solid', size: '4x6', species: DFL, grade: 'No. 1', ...DRY },
    },
  },
};

/** Shapes of `T` with any part replaced; arrays are replaced whole or changed item by item through a function. */
export type Change<T> = T extends readonly (infer _)[]
  ? T | ((old: T) => T)
  : T extends object
    ? { readonly [K in keyof T]?: Change<T[K]> } | ((old: T) => T)
    : T;

/** A copy with the given parts replaced; functions receive the old value. */
export function change<T>(old: T, by: Change<T>): T {
  if (typeof by === 'function') return (by as (o: T) => T)(old);
  if (by === null || typeof by !== 'object' || Array.isArray(by) || typeof old !== 'object' || old === null)
    return by as T;
  const out: Record<string, unknown> = { ...(old as Record<string, unknown>) };
  for (const [key, value] of Object.entries(by)) out[key] = change(out[key] as never, value as never);
  return out as T;
}
