/**
 * Two small placed structures made by hand for tests, with the project they stand for: a shed (rafters from a ledger to
 * a beam on posts) and a gable (trusses on two beams). Only what loads and analysis read is filled in with care.
 */
import type { Vec2, Vec3 } from '../base/vec.js';
import type { CoverRoof, Office, Project } from '../project/model.js';
import type { Footing, Joint, Member, RoofPlaced, Section, Strip, Structure, Surface } from '../structure/model.js';

const office = <T>(value: T, path: string): Office<T> => ({ value, state: 'given', from: 'test', path });

export interface Fixture {
  readonly project: Project;
  readonly structure: Structure;
}

export interface Site {
  readonly wind: number;
  readonly snow: number;
  readonly live: number;
  readonly exposure: 'B' | 'C' | 'D';
}
export const CALM: Site = { wind: 110, snow: 30, live: 20, exposure: 'C' };

function makeProject(site: Site, cover: Project['cover']): Project {
  const at = '/basis';
  return {
    version: 1,
    job: {
      title: '',
      address: '',
      owner: '',
      parcel: '',
      preparedBy: '',
      date: '',
      units: 'us',
      sheetSize: 'ARCH D',
      scope: '',
    },
    basis: {
      codes: {
        id: '2018',
        residential: 'IRC 2018',
        building: 'IBC 2018',
        loads: '7-16',
        wood: 'NDS 2018',
        concrete: 'ACI 318-14',
      },
      riskCategory: 'II',
      wind: {
        speed: office(site.wind, `${at}/wind/speed`),
        exposure: office(site.exposure, `${at}/wind/exposure`),
        topographic: office(1, `${at}/wind/topographic`),
        elevation: 0,
        flow: 'both',
      },
      snow: { ground: office(site.snow, `${at}/snow/ground`), exposure: office('partially', `${at}/snow/exposure`) },
      roofLive: {
        minimum: office(site.live, `${at}/roofLive/minimum`),
        patioAppendix: office(false, `${at}/roofLive/patioAppendix`),
        reduce: false,
      },
      seismic: { category: office('B', `${at}/seismic/category`) },
      frost: office(12, `${at}/frost`),
      soil: { bearing: office(1500, ''), lateral: office(100, ''), density: 100, description: '' },
      zoning: {
        coverageLimit: office(0.4, ''),
        coverageOf: 'lot',
        setbacks: {
          front: office(0, ''),
          rear: office(0, ''),
          left: office(0, ''),
          right: office(0, ''),
          'street-side': office(0, ''),
        },
        referenceEdge: office('post', ''),
        heightLimit: office(200, ''),
        headroom: 80,
      },
      criteria: [],
    },
    lot: {
      courses: [],
      origin: { east: 0, north: 0 },
      outward: 0,
      easements: [],
      buildings: [],
      items: [],
      street: { name: '', course: 0 },
      paving: [],
      utilities: [],
      drainage: [],
      datum: '',
    },
    house: {
      walls: [
        {
          name: 'rear',
          start: { x: -600, y: 0 },
          end: { x: 600, y: 0 },
          plate: 97,
          stories: 1,
          build: {
            name: 'b',
            studSize: '2x4',
            studSpacing: 16,
            cladding: 'stucco',
            claddingThickness: 0.875,
            sheathing: '',
            verified: office(true, ''),
          },
          path: '/house/walls/0',
        },
      ],
      openings: [],
      roofs: [],
      stories: 1,
      rooms: [],
      equipment: [],
    },
    patio: { slabs: [], steps: [], existing: [], grade: { atHouse: -10, fall: 0 } },
    cover,
    choices: {
      sections: {},
      footings: {
        pad: { kind: 'pier-on-pad', diameter: 12, width: 24, thickness: 12, bottom: 36, top: 2, fc: 2500, steel: '' },
      },
      standoff: 1,
      joints: [],
      connections: [],
      deflection: { live: 360, total: 240 },
    },
    prices: [],
    log: { revisions: [], approvals: [] },
    assumptions: [],
    questions: [],
  };
}

export const GROUND = -10;
const CONCRETE_TOP = GROUND + 2;
const CONCRETE_BOTTOM = GROUND - 36;
const POST_BOTTOM = CONCRETE_TOP + 1;

/** Solid section by its name, dressed size and weight at 35 pcf. */
export function solid(choice: string, b: number, d: number): Section {
  return {
    label: choice,
    choice,
    path: `/choices/sections/${choice}`,
    width: b,
    depth: d,
    b,
    d,
    plies: 1,
    plyWidth: b,
    family: 'sawn-dimension',
    nominal: { thickness: 2, width: 10 },
    species: 'Douglas Fir-Larch',
    grade: 'No. 2',
    sizeClass: 'dimension',
    sizeInTable: false,
    values: {
      Fb: 900,
      FbNeg: 900,
      FbY: 900,
      Ft: 575,
      Fv: 180,
      FcPerp: 625,
      Fc: 1350,
      E: 1.6e6,
      Emin: 580000,
      EminY: 580000,
      G: 0.5,
      source: 'test',
      provenance: 'memory',
    },
    treatment: 'none',
    incised: false,
    wet: false,
    weight: (b * d * 35) / 1728,
  };
}

const BASE = { state: 'new', notch: 0, cuts: [], unbraced: { top: 0, bottom: 0 }, path: '/cover' } as const;
const joint = (id: string, kind: Joint['kind'], at: Vec3, upper: [string, number], lower: [string, number]): Joint => ({
  id,
  mark: id.split('-')[0]!,
  kind,
  at,
  ties: [
    { part: upper[0], along: upper[1] },
    { part: lower[0], along: lower[1] },
  ],
  contact: { length: 0, width: 0 },
  path: '/cover',
});

/** Frame centres: from, every spacing, to. */
function stations(from: number, to: number, spacing: number): number[] {
  const out: number[] = [];
  for (let k = 0; from + k * spacing < to - 1e-6; k++) out.push(from + k * spacing);
  out.push(to);
  return out;
}

const halfway = (at: readonly number[], low: number, high: number): [number, number][] =>
  at.map((x, i) => [i === 0 ? low : (at[i - 1]! + x) / 2, i === at.length - 1 ? high : (x + at[i + 1]!) / 2]);

const LAYERS: Surface['layers'] = [
  { name: 'covering', psf: 2, source: 'test' },
  { name: 'sheathing', psf: 1.5, source: 'test' },
];
const EDGES = (eave: number): Surface['edges'] => [{ name: 'fascia', v: eave, weight: 0.25 }];

function footing(id: string, at: Vec2): Footing {
  return {
    id,
    mark: id,
    kind: 'pier-on-pad',
    at,
    top: CONCRETE_TOP,
    bottom: CONCRETE_BOTTOM,
    surface: GROUND,
    bearingArea: 576,
    size: 24,
    round: false,
    pierDiameter: 12,
    padThickness: 12,
    concrete: 1,
    soilOver: 0,
    fc: 2500,
    steel: '',
    choice: 'pad',
    path: '/cover',
  };
}

interface Parts {
  readonly members: Member[];
  readonly joints: Joint[];
  readonly footings: Footing[];
}

/** A beam with its posts and footings below. */
function placeBeam(
  parts: Parts,
  mark: string,
  from: Vec2,
  to: Vec2,
  top: number,
  beam: Section,
  post: Section,
  at: readonly number[],
): void {
  const z = top - beam.depth / 2;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const up = { x: 0, y: 0, z: 1 };
  parts.members.push({
    ...BASE,
    id: mark,
    mark,
    role: 'beam',
    section: beam,
    start: { ...from, z },
    end: { ...to, z },
    up,
    length,
    strips: [],
  });
  at.forEach((along, i) => {
    const p = { x: from.x + ((to.x - from.x) * along) / length, y: from.y + ((to.y - from.y) * along) / length };
    const id = `P${mark}${i + 1}`;
    const foot = `F${mark}${i + 1}`;
    const underside = top - beam.depth;
    const h = underside - POST_BOTTOM;
    const side = { x: 1, y: 0, z: 0 };
    parts.members.push({
      ...BASE,
      id,
      mark: id,
      role: 'post',
      section: post,
      start: { ...p, z: POST_BOTTOM },
      end: { ...p, z: underside },
      up: side,
      length: h,
      strips: [],
    });
    parts.footings.push(footing(foot, p));
    parts.joints.push(joint(`JP-${id}`, 'beam-to-post', { ...p, z: underside }, [mark, along], [id, h]));
    parts.joints.push(joint(`JF-${id}`, 'post-to-footing', { ...p, z: POST_BOTTOM }, [id, 0], [foot, 0]));
  });
}

const postSpecs = (at: readonly number[], mark: string) =>
  at.map((x, i) => ({
    mark: `P${mark}${i + 1}`,
    at: x,
    section: 'post',
    footing: 'pad',
    footingMark: `F${mark}${i + 1}`,
    path: '/cover',
  }));

function finish(roof: RoofPlaced, surfaces: readonly Surface[], parts: Parts, attached: boolean): Structure {
  return {
    attachment: attached ? 'attached' : 'free-standing',
    roofs: [roof],
    surfaces,
    ...parts,
    slabs: [],
    walls: [
      {
        id: 'wall-1',
        name: 'rear',
        start: { x: -600, y: 0 },
        end: { x: 600, y: 0 },
        out: { x: 0, y: 1 },
        base: 0,
        plate: 97,
        openings: [],
        path: '/house/walls/0',
      },
    ],
    housePlanes: [],
    grade: { z0: GROUND, gx: 0, gy: 0 },
  };
}

export interface ShedSize {
  /** Wall face to centre of the beam, beam length, roof overhangs, rise per run, spacing, post places. */
  readonly depth: number;
  readonly length: number;
  readonly eave: number;
  readonly rake: number;
  readonly pitch: number;
  readonly spacing: number;
  readonly posts: readonly number[];
  readonly site: Site;
}
export const SHED: ShedSize = {
  depth: 126,
  length: 240,
  eave: 12,
  rake: 8,
  pitch: 2 / 12,
  spacing: 16,
  posts: [6, 120, 234],
  site: CALM,
};

const FINISH = { covering: '', underlayment: '', sheathing: '', ceiling: '', allowance: 0, fascia: '', gutter: false };

/** Rafters hung on ledger L1 at the wall y = 0, resting on beam B1; the roof falls along +y. */
export function makeShed(size: Partial<ShedSize> = {}): Fixture {
  const s = { ...SHED, ...size };
  const rafter = solid('rafter', 1.5, 9.25);
  const ledger = solid('ledger', 1.5, 11.25);
  const beam = solid('beam', 5.5, 11.25);
  const post = solid('post', 5.5, 5.5);
  const theta = Math.atan(s.pitch);
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)];
  const plumb = rafter.d / cos;
  // High enough that the low beam clears the ground at any pitch.
  const bearing = 98 + s.depth * s.pitch;
  const highY = ledger.width;
  const eaveY = s.depth + beam.width / 2 + s.eave;
  const topEdge = (y: number): number => bearing - (y - highY) * s.pitch;
  const half = s.length / 2;
  const from = -half + 0.75;
  const to = half - 0.75;
  const parts: Parts = { members: [], joints: [], footings: [] };
  const seatZ = topEdge(s.depth - beam.width / 2) - plumb;
  placeBeam(parts, 'B1', { x: -half, y: s.depth }, { x: half, y: s.depth }, seatZ, beam, post, s.posts);
  parts.members.push({
    ...BASE,
    id: 'L1',
    mark: 'L1',
    role: 'ledger',
    section: ledger,
    start: { x: -half, y: ledger.width / 2, z: bearing - ledger.depth / 2 },
    end: { x: half, y: ledger.width / 2, z: bearing - ledger.depth / 2 },
    up: { x: 0, y: 0, z: 1 },
    length: s.length,
    strips: [],
  });
  for (let x = 8, k = 1; x < s.length; x += 16, k++) {
    parts.joints.push(
      joint(`JL-${k}`, 'ledger-to-house', { x: -half + x, y: 0, z: bearing }, ['L1', x], ['wall-1', 0]),
    );
  }
  const width = to - from + 2 * s.rake;
  const slopeLength = (eaveY - highY) / cos;
  const surface: Surface = {
    id: 'R1',
    mark: 'R1',
    roof: 'R1',
    origin: { x: to + s.rake, y: eaveY, z: topEdge(eaveY) + 1 / cos },
    u: { x: -1, y: 0, z: 0 },
    v: { x: 0, y: -cos, z: sin },
    n: { x: 0, y: sin, z: cos },
    outline: [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: slopeLength },
      { x: 0, y: slopeLength },
    ],
    slope: theta,
    downhill: { x: 0, y: 1 },
    layers: LAYERS,
    slippery: false,
    sheathed: true,
    thickness: 1,
    shape: 'monoslope',
    edges: EDGES(0),
    path: '/cover/roofs/0',
  };
  const at = stations(from, to, s.spacing);
  const strips = halfway(at, from - s.rake, to + s.rake);
  at.forEach((x, i) => {
    const id = `RF1-${i + 1}`;
    const centre = (y: number): Vec3 => ({ x, y, z: topEdge(y) - plumb / 2 });
    const strip: Strip = { surface: 'R1', u0: to + s.rake - strips[i]![1], u1: to + s.rake - strips[i]![0] };
    parts.members.push({
      ...BASE,
      id,
      mark: 'RF1',
      role: 'rafter',
      section: rafter,
      start: centre(eaveY),
      end: centre(highY),
      up: { x: 0, y: sin, z: cos },
      length: slopeLength,
      strips: [strip],
      roof: 'R1',
    });
    parts.joints.push(
      joint(
        `JB-${i + 1}`,
        'rafter-to-beam',
        { x, y: s.depth, z: seatZ },
        [id, (eaveY - s.depth) / cos],
        ['B1', x + half],
      ),
    );
    parts.joints.push(
      joint(`JH-${i + 1}`, 'rafter-to-ledger', { x, y: highY, z: bearing }, [id, slopeLength], ['L1', x + half]),
    );
  });
  const roof: CoverRoof = {
    kind: 'shed',
    mark: 'R1',
    pitch: theta,
    pitchText: '',
    bearing,
    framing: { kind: 'rafter', spacing: s.spacing, section: 'rafter' },
    finish: FINISH,
    eave: s.eave,
    rake: s.rake,
    path: '/cover/roofs/0',
    high: { ledger: 'L1' },
    low: 'B1',
    from,
    to,
    highOverhang: 0,
  };
  const project = makeProject(s.site, {
    attachment: 'attached',
    roofs: [roof],
    beams: [
      {
        mark: 'B1',
        from: { x: -half, y: s.depth },
        to: { x: half, y: s.depth },
        section: 'beam',
        posts: postSpecs(s.posts, 'B1'),
        splices: [],
        path: '/cover',
      },
    ],
    ledgers: [{ mark: 'L1', wall: 0, from: -half, to: half, section: 'ledger', path: '/cover' }],
    lateral: { x: 'house', y: 'house' },
    use: 'recreation',
  });
  const placed: RoofPlaced = {
    mark: 'R1',
    surfaces: ['R1'],
    meanHeight: (topEdge(highY) + topEdge(eaveY)) / 2 - GROUND,
    min: { x: from - s.rake, y: highY },
    max: { x: to + s.rake, y: eaveY },
    ridgeAxis: 'x',
    slope: theta,
    highestPoint: topEdge(highY),
    lowestEave: topEdge(eaveY),
    attached: true,
    path: '/cover/roofs/0',
  };
  return { project, structure: finish(placed, [surface], parts, true) };
}

export interface GableSize {
  /** Between beam centres, beam length, overhangs, rise per run, spacing, post places. */
  readonly span: number;
  readonly length: number;
  readonly eave: number;
  readonly rake: number;
  readonly pitch: number;
  readonly spacing: number;
  readonly posts: readonly number[];
  readonly site: Site;
}
export const GABLE: GableSize = {
  span: 216,
  length: 174,
  eave: 16,
  rake: 6,
  pitch: 4 / 12,
  spacing: 24,
  posts: [6, 162],
  site: CALM,
};

/** Trusses on beams B1 (left) and B2 (right) along y; the ridge runs along y at x = 0. */
export function makeGable(size: Partial<GableSize> = {}): Fixture {
  const s = { ...GABLE, ...size };
  const beam = solid('beam', 5.5, 12);
  const post = solid('post', 5.5, 5.5);
  const chord = solid('2x4', 1.5, 3.5);
  const theta = Math.atan(s.pitch);
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)];
  const bearing = 100;
  const heel = 5.5;
  const y0 = 6;
  const parts: Parts = { members: [], joints: [], footings: [] };
  const x = s.span / 2;
  placeBeam(parts, 'B1', { x: -x, y: y0 }, { x: -x, y: y0 + s.length }, bearing, beam, post, s.posts);
  placeBeam(parts, 'B2', { x, y: y0 }, { x, y: y0 + s.length }, bearing, beam, post, s.posts);
  const from = y0 + 3;
  const to = y0 + s.length - 3;
  const out = x + beam.width / 2 + s.eave;
  const low = bearing + heel - s.eave * s.pitch + 1 / cos;
  const width = to - from + 2 * s.rake;
  const slopeLength = out / cos;
  const surface = (id: string, side: -1 | 1): Surface => ({
    id,
    mark: id,
    roof: 'R1',
    // v up the slope toward the ridge, u = v × n along the eave.
    origin: { x: side * out, y: side > 0 ? from - s.rake : to + s.rake, z: low },
    u: { x: 0, y: side, z: 0 },
    v: { x: -side * cos, y: 0, z: sin },
    n: { x: side * sin, y: 0, z: cos },
    outline: [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: slopeLength },
      { x: 0, y: slopeLength },
    ],
    slope: theta,
    downhill: { x: side, y: 0 },
    layers: LAYERS,
    slippery: false,
    sheathed: true,
    thickness: 1,
    shape: 'pitched',
    edges: EDGES(0),
    path: '/cover/roofs/0',
  });
  const at = stations(from, to, s.spacing);
  const strips = halfway(at, from - s.rake, to + s.rake);
  const perFoot = 6;
  at.forEach((y, i) => {
    const id = `T1-${i + 1}`;
    const [a, b] = strips[i]!;
    const span = s.span + beam.width;
    parts.members.push({
      ...BASE,
      id,
      mark: 'T1',
      role: 'truss',
      section: chord,
      start: { x: -out, y, z: bearing },
      end: { x: out, y, z: bearing },
      up: { x: 0, y: 0, z: 1 },
      length: 2 * out,
      strips: [
        { surface: 'R1-left', u0: to + s.rake - b, u1: to + s.rake - a },
        { surface: 'R1-right', u0: a - from + s.rake, u1: b - from + s.rake },
      ],
      roof: 'R1',
      truss: {
        kind: 'common-truss',
        span,
        topPitch: theta,
        bottomPitch: 0,
        heel,
        overhang: [s.eave, s.eave],
        chordDepth: 3.5,
        bearing: 5.5,
        weight: (perFoot * span) / 12,
        height: 60,
      },
    });
    parts.joints.push(joint(`JA-${i + 1}`, 'truss-to-beam', { x: -x, y, z: bearing }, [id, out - x], ['B1', y - y0]));
    parts.joints.push(joint(`JB-${i + 1}`, 'truss-to-beam', { x, y, z: bearing }, [id, out + x], ['B2', y - y0]));
  });
  const roof: CoverRoof = {
    kind: 'gable',
    mark: 'R1',
    pitch: theta,
    pitchText: '',
    bearing,
    framing: {
      kind: 'common-truss',
      spacing: s.spacing,
      chord: '2x4',
      wood: { species: 'Douglas Fir-Larch', grade: 'No. 2', treatment: 'none', incised: false, service: 'dry' },
      heel,
      bottomPitch: 0,
      weight: perFoot,
    },
    finish: FINISH,
    eave: s.eave,
    rake: s.rake,
    path: '/cover/roofs/0',
    beams: ['B1', 'B2'],
    ridge: 'y',
    from,
    to,
  };
  const line = (mark: string, at: number) => ({
    mark,
    from: { x: at, y: y0 },
    to: { x: at, y: y0 + s.length },
    section: 'beam',
    posts: postSpecs(s.posts, mark),
    splices: [],
    path: '/cover',
  });
  const project = makeProject(s.site, {
    attachment: 'free-standing',
    roofs: [roof],
    beams: [line('B1', -x), line('B2', x)],
    ledgers: [],
    lateral: { x: 'unknown', y: 'unknown' },
    use: 'recreation',
  });
  const ridge = low + slopeLength * sin;
  const placed: RoofPlaced = {
    mark: 'R1',
    surfaces: ['R1-left', 'R1-right'],
    meanHeight: (low + ridge) / 2 - GROUND,
    min: { x: -out, y: from - s.rake },
    max: { x: out, y: to + s.rake },
    ridgeAxis: 'y',
    slope: theta,
    highestPoint: ridge,
    lowestEave: low,
    attached: false,
    path: '/cover/roofs/0',
  };
  return { project, structure: finish(placed, [surface('R1-left', -1), surface('R1-right', 1)], parts, false) };
}
