import { describe, expect, it } from 'vitest';
import { bounds, faceNormal, heightAbove, planeThrough, volume } from '../../base/geometry/index.js';
import { area } from '../../base/plane.js';
import type { Project } from '../../project/model.js';
import type { Piece, Solid } from '../model.js';
import { place } from '../place.js';
import { change, gableProject, shedProject } from '../testing.js';
import { hipProject } from '../testing-hip.js';
import { rakeProject, rakeTrussProject } from '../testing-rake.js';
import { convexParts } from './convex.js';
import { piecesOf } from './index.js';

const draw = (p: Project): Piece[] => piecesOf(place(p).value!, p);
const sum = (pieces: readonly Piece[]): number => pieces.reduce((t, p) => t + volume(p.solid), 0);

/** Highest any corner stands over any face: not above zero for a convex solid whose faces look outward. */
function bulge(s: Solid): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const face of s.faces) {
    const plane = planeThrough(s.vertices[face[0]!]!, faceNormal(s, face));
    for (const v of s.vertices) most = Math.max(most, heightAbove(plane, v));
  }
  return most;
}

const withSteps = change(shedProject, {
  patio: {
    steps: [
      {
        outline: [
          { x: -40, y: 0 },
          { x: 40, y: 0 },
          { x: 40, y: 24 },
          { x: -40, y: 24 },
        ],
        risers: 2,
        top: -1,
        state: 'new',
        path: '/patio/steps/0',
      },
    ],
  },
});
const hipped = change(gableProject, {
  house: { roofs: (old) => [{ ...old[0]!, kind: 'hip' as const }] },
  cover: { attachment: 'free-standing' },
});
const ell = [
  { x: -132, y: 0 },
  { x: 132, y: 0 },
  { x: 132, y: 100 },
  { x: 20, y: 100 },
  { x: 20, y: 192 },
  { x: -132, y: 192 },
];
const elled = change(gableProject, { patio: { slabs: (old) => [{ ...old[0]!, outline: ell }] } });
const common = change(gableProject, {
  cover: {
    roofs: (old) => [{ ...old[0]!, framing: { ...old[0]!.framing, kind: 'common-truss', bottomPitch: 0 } as never }],
  },
});

describe.each([
  ['gable', gableProject],
  ['shed', shedProject],
  ['steps', withSteps],
  ['hip', hipped],
  ['L slab', elled],
  ['common truss', common],
  ['hip cover', hipProject],
  ['rakes of rafters', rakeProject],
  ['rakes of trusses', rakeTrussProject],
] as const)('%s', (_, project) => {
  const pieces = draw(project);
  it('is made of convex solids whose faces look outward', () => {
    for (const p of pieces) {
      expect(volume(p.solid), p.part).toBeGreaterThan(0);
      expect(bulge(p.solid), p.part).toBeLessThan(1e-6);
    }
  });
  it('shows every member, footing, slab, opening and surface', () => {
    const structure = place(project).value!;
    const parts = new Set(pieces.map((p) => p.part));
    const named = [structure.members, structure.footings, structure.surfaces, structure.housePlanes].flatMap((list) =>
      list.map((x) => x.id),
    );
    for (const id of [...named, ...structure.walls.map((w) => w.id), ...project.house.openings.map((o) => o.mark)])
      expect(parts).toContain(id);
  });
});

describe('single parts', () => {
  const gable = draw(gableProject);
  const shed = draw(shedProject);
  const of = (pieces: readonly Piece[], part: string): Piece[] => pieces.filter((p) => p.part === part);

  it('cuts openings out of walls', () => {
    // Rear wall 528 long to the plate 97 from −10, gable triangle 528 x 110 / 2, less door 96 x 80, windows 60 x 48 and 48 x 38;
    // 6 in thick, mitred at both ends: each mitre takes half of 6 x 6 per inch of height (107 at the corners).
    const face = 528 * 107 + (528 * 110) / 2 - 96 * 80 - 60 * 48 - 48 * 38;
    const mitres = (2 * (6 * 6 * 107)) / 2;
    const wall = of(gable, 'HW1').filter((p) => p.role === 'wall');
    // The gable triangle thins out at the corners, where the mitre takes a sliver: integral of (5/12)·t·(6 − t) over 0 to 6, twice.
    const slivers = 2 * (5 / 12) * 36;
    expect(sum(wall)).toBeCloseTo(face * 6 - mitres - slivers, 3);
  });

  it('gives rafters plumb ends and a level seat', () => {
    const rafter = of(shed, 'RF1-05');
    expect(rafter).toHaveLength(3);
    // Whole: 139.25 in of run x plumb depth x 1.5, less the notch triangle 5.5 x 5.5/6 / 2.
    const plumb = (9.25 * Math.sqrt(37)) / 6;
    expect(sum(rafter)).toBeCloseTo((139.25 * plumb - (5.5 * 5.5) / 12) * 1.5, 6);
    const low = Math.min(...rafter.map((p) => bounds(p.solid).max.y));
    expect(Math.max(...rafter.map((p) => bounds(p.solid).max.y))).toBeCloseTo(140.75, 9);
    expect(low).toBeCloseTo(123.25, 9);
  });

  it('draws built-up beams ply by ply', () => {
    const beam = of(shed, 'B1');
    expect(beam.filter((p) => p.material === 'wood')).toHaveLength(3);
    expect(beam.filter((p) => p.material === 'sheathing')).toHaveLength(2);
    // 5.5 x 11.25 x 240 in all.
    expect(sum(beam)).toBeCloseTo(5.5 * 11.25 * 240, 6);
  });

  it('draws piers as sixteen-sided prisms on their pads', () => {
    const [pad, pier] = of(gable, 'F1');
    expect(volume(pad!.solid)).toBeCloseTo(900 * 12, 6);
    expect(pier!.solid.faces).toHaveLength(18);
    expect(bounds(pier!.solid).max.z).toBeCloseTo(-5.25, 9);
    expect(bounds(pier!.solid).min.z).toBeCloseTo(-35.25 + 12, 9);
  });

  it('keeps trusses inside their outline', () => {
    const chord = of(gable, 'T1-03');
    const box = chord.map((p) => bounds(p.solid));
    expect(Math.min(...box.map((b) => b.min.x))).toBeCloseTo(-126.75, 9);
    expect(Math.max(...box.map((b) => b.max.x))).toBeCloseTo(126.75, 9);
    // Peak 5.5 + 110.75/3 over the bearing at 100; nothing but the tails is under the bearing.
    expect(Math.max(...box.map((b) => b.max.z))).toBeCloseTo(105.5 + 110.75 / 3, 9);
    expect(Math.min(...box.filter((b) => b.min.x > -110 && b.max.x < 110).map((b) => b.min.z))).toBeGreaterThanOrEqual(
      100 - 1e-9,
    );
    for (const b of box) expect(b.max.y - b.min.y).toBeCloseTo(1.5, 9);
  });

  it('covers the roof with two slopes meeting at the ridge', () => {
    const covering = gable.filter((p) => p.material === 'covering');
    expect(covering).toHaveLength(2);
    expect(bounds(covering[0]!.solid).max.x).toBeCloseTo(0, 9);
    expect(bounds(covering[1]!.solid).min.x).toBeCloseTo(0, 9);
    // 0.25 in square to a slope of 126.75·√10/3 x 180.
    expect(sum(covering)).toBeCloseTo(((2 * 126.75 * Math.sqrt(10)) / 3) * 180 * 0.25, 6);
  });

  it('slopes slabs and steps down', () => {
    const slab = of(gable, 'S1')[0]!;
    expect(volume(slab.solid)).toBeCloseTo(264 * 192 * 4, 6);
    expect(bounds(slab.solid).max.z).toBe(-5);
    expect(bounds(slab.solid).min.z).toBeCloseTo(-5 - 192 / 48 - 4, 9);
    const treads = draw(withSteps).filter((p) => p.role === 'step');
    expect(treads.map((p) => bounds(p.solid).max.z)).toEqual([-1, expect.closeTo((-1 - 7.5) / 2, 9)]);
  });

  it('hangs gutters outside the fascia', () => {
    const gutter = gable.find((p) => p.part === 'R1-right-gutter')!;
    expect(bounds(gutter.solid).min.x).toBeCloseTo(126.75 + 1.5, 9);
  });
});

describe('convex parts', () => {
  it('keeps a convex outline whole, whichever way it runs', () => {
    expect(
      convexParts([
        { x: 0, y: 0 },
        { x: 0, y: 1 },
        { x: 1, y: 1 },
        { x: 1, y: 0 },
      ]),
    ).toHaveLength(1);
  });
  it('cuts an L in two', () => {
    const parts = convexParts(ell);
    expect(parts).toHaveLength(2);
    expect(parts.reduce((t, p) => t + area(p), 0)).toBeCloseTo(area(ell), 6);
  });
});
