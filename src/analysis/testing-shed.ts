/** A shed made by hand: rafters from a ledger to a beam on posts. */
import type { Vec3 } from '../base/vec.js';
import type { CoverRoof } from '../project/model.js';
import type { RoofPlaced, Strip, Surface } from '../structure/model.js';

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
