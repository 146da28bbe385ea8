/** A gable made by hand: trusses on two beams. */
import type { CoverRoof } from '../project/model.js';
import type { RoofPlaced, Surface } from '../structure/model.js';

import {
  BASE,
  CALM,
  EDGES,
  FINISH,
  type Fixture,
  finish,
  GROUND,
  halfway,
  joint,
  LAYERS,
  makeProject,
  type Parts,
  placeBeam,
  postSpecs,
  type Site,
  solid,
  stations,
} from './testing-parts.js';

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
