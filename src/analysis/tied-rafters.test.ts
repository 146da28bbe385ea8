/** Rafters with ties below a ridge board: hand statics, the frame solver as a second opinion, every case closed. */
import { describe, expect, it } from 'vitest';
import { distance } from '../base/vec.js';
import { buildLoads } from '../loads/index.js';
import type { Project } from '../project/model.js';
import { place } from '../structure/place.js';
import { change } from '../structure/testing.js';
import { tiedProject } from '../structure/testing-ridge.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';
import { type FrameModel, factorFrame, makeSamples, sampleElement, solveCase } from './solver/index.js';

function run(p: Project) {
  const placed = place(p);
  const structure = placed.value!;
  expect(structure, placed.issues.map((i) => `${i.code} ${i.path} ${i.found} ${i.expected}`).join('; ')).toBeDefined();
  const loads = buildLoads(p, structure).value!;
  const { value, issues } = analyse(p, structure, loads);
  expect(issues).toEqual([]);
  expect(value!.failure).toBeUndefined();
  for (const b of value!.balance) {
    expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
    expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
  }
  return { structure, loads, effects: value! };
}

const ties = (by: object): Project =>
  change(tiedProject, {
    cover: {
      roofs: (old) =>
        old.map(
          (r) =>
            ({ ...r, framing: { ...r.framing, ties: { ...(r.framing as { ties: object }).ties, ...by } } }) as typeof r,
        ),
    },
  });

const roof = tiedProject.cover.roofs[0]!;

describe('ties below a ridge board', () => {
  const { structure, loads, effects } = run(tiedProject);
  const c = effects.cases.indexOf('Lr');
  const left = structure.members.filter((m) => m.role === 'rafter')[2]!;
  const tie = structure.members.find((m) => m.role === 'tie' && Math.abs(m.start.y - left.start.y) < 4)!;
  const board = structure.members.find((m) => m.role === 'ridge')!;

  it('places a tie on every pair and a board between them', () => {
    expect(structure.members.filter((m) => m.role === 'tie').length).toBe(
      structure.members.filter((m) => m.role === 'rafter').length / 2,
    );
    expect(left.end.x).toBeCloseTo(board.start.x - board.section.width / 2, 9);
    // The board's upper edge at the rafters' upper corners.
    const corner = left.end.z + left.section.d / Math.cos(roof.pitch) / 2;
    expect(board.start.z + board.section.depth / 2).toBeCloseTo(corner, 9);
  });

  it('roof live load by hand: T·(hinge − tie) = V·a − w·l²/2, no push on the beams', () => {
    const psf = loads.cases[c]!.plan![0]!.psf;
    const w = (psf * 24) / 144;
    const beam = structure.members.find((m) => m.mark === 'B1')!;
    const half = board.start.x - beam.start.x;
    const whole = half + beam.section.width / 2 + roof.eave;
    const axisAt = (x: number) => left.start.z + (x - left.start.x) * Math.tan(roof.pitch);
    const V = w * whole;
    // Load over the board's half thickness hangs on the rafter's end: t/4 farther from the hinge than it lies.
    const extra = (w * board.section.width ** 2) / 8;
    const T = (V * half - (w * whole ** 2) / 2 - extra) / (axisAt(board.start.x) - tie.start.z);
    const tension = Math.max(...effects.members.get(tie.id)!.n[c]!);
    expect(tension).toBeCloseTo(T, 4);
    const foot = structure.joints.find((j) => j.kind === 'rafter-to-beam' && j.ties[0]!.part === left.id)!;
    const f = effects.joints.get(foot.id)!.force[c]!;
    expect(-f.z).toBeCloseTo(V, 6);
    expect(Math.abs(f.x)).toBeLessThan(1e-9);
    const heel = structure.joints.find((j) => j.kind === 'tie-to-rafter' && j.ties[1]!.part === left.id)!;
    expect(effects.joints.get(heel.id)!.force[c]!.x).toBeCloseTo(T, 4);
  });

  it('agrees with the frame solver under snow on one slope alone', () => {
    const snowy = run(change(tiedProject, { basis: { snow: { ground: (g) => ({ ...g, value: 30 }) } } }));
    const k = snowy.effects.cases.indexOf('S·unbalanced-x');
    const zones = snowy.loads.cases[k]!.plan!;
    // A narrow roof: wind toward −x leaves the whole load on the left slope.
    expect(zones.length).toBe(1);
    const at = (d: number) => ({
      x: left.start.x + d * Math.cos(roof.pitch),
      y: 0,
      z: left.start.z + d * Math.sin(roof.pitch),
    });
    const along = (kind: string, end: 0 | 1) =>
      structure.joints.find((j) => j.kind === kind && j.ties[end]!.part === left.id)!.ties[end]!.along;
    const mirror = (p: { x: number; y: number; z: number }) => ({ ...p, x: 2 * board.start.x - p.x });
    const foot = at(along('rafter-to-beam', 0));
    const tied = at(along('tie-to-rafter', 1));
    expect(tied.x).toBeGreaterThan(foot.x);
    const hinge = at(distance(left.start, left.end) + board.section.width / 2 / Math.cos(roof.pitch));
    const nodes = [at(0), foot, tied, hinge, mirror(tied), mirror(foot)];
    const free = { my: true, mz: true };
    const bar = (start: number, end: number) => ({
      start,
      end,
      up: { x: 0, y: 1, z: 0 },
      ...{ E: 1.6e6, G: 1e5, A: 1e4, Iy: 100, Iz: 100, J: 10 },
    });
    const model: FrameModel = {
      nodes,
      elements: [
        bar(0, 1),
        bar(1, 2),
        { ...bar(2, 3), releases: { end: free } },
        bar(3, 4),
        bar(4, 5),
        { ...bar(2, 4), releases: { start: free, end: free } },
      ],
      supports: [
        { node: 1, dx: 'fixed', dy: 'fixed', dz: 'fixed', rx: 'fixed', rz: 'fixed' },
        { node: 5, dy: 'fixed', dz: 'fixed', rx: 'fixed', rz: 'fixed' },
        { node: 3, dy: 'fixed' },
      ],
    };
    const solved = factorFrame(model);
    if (!solved.ok) throw new Error(`mechanism at ${solved.mechanism.node} ${solved.mechanism.freedom}`);
    const down = { x: 0, y: 0, z: -((zones[0]!.psf * 24) / 144) * Math.cos(roof.pitch) };
    const load = { distributed: [0, 1, 2].map((element) => ({ element, startForce: down })) };
    const result = solveCase(solved.frame, load);
    const s = makeSamples(1);
    sampleElement(solved.frame, load, result, 5, [1], s);
    const T = Math.max(...snowy.effects.members.get(tie.id)!.n[k]!);
    expect(T).toBeGreaterThan(100);
    // The load over half the board hangs on the rafter's end here: a twentieth of a pound.
    expect(Math.abs(T - s.n[0]!)).toBeLessThan(0.1);
    // Moment in the loaded rafter midway between tie and hinge.
    const mine = snowy.effects.members.get(left.id)!;
    const span = distance(tied, hinge);
    const where = along('tie-to-rafter', 1) + span / 2;
    const i = mine.stations.findIndex((x) => x >= where - 1e-9);
    const d = (mine.stations[i]! - along('tie-to-rafter', 1)) / 1;
    sampleElement(solved.frame, load, result, 2, [d], s);
    expect(Math.abs(mine.m[k]![i]!) / Math.max(Math.abs(s.my[0]!), Math.abs(s.mz[0]!))).toBeCloseTo(1, 3);
  });

  it('bends the rafters less than the same rafters without the tie only where the tie is low', () => {
    const most = (p: Project) => {
      const r = run(p);
      const rafters = r.structure.members.filter((m) => m.role === 'rafter');
      return Math.max(
        ...rafters.flatMap((m) => [...r.effects.members.get(m.id)!.m[r.effects.cases.indexOf('Lr')]!].map(Math.abs)),
      );
    };
    // A raised tie pulls the rafter inward between its ends: the moment grows with the height.
    expect(most(ties({ height: 12 }))).toBeGreaterThan(most(ties({ height: 4 })));
  });

  it('is refused where ties cannot stand for a ridge beam', () => {
    const codes = (p: Project) => place(p).issues.map((i) => i.code);
    expect(codes(ties({ height: 24 }))).toContain('ties-too-high');
    const flat = change(tiedProject, {
      cover: { roofs: (old) => old.map((r) => ({ ...r, pitch: Math.atan(2 / 12), pitchText: '2/12' })) },
    });
    expect(codes(flat)).toContain('ridge-needs-beam');
    expect(codes(ties({ ridgeBoard: 'tie' }))).toContain('ridge-board-too-shallow');
    const far = change(tiedProject, {
      cover: { roofs: (old) => old.map((r) => ({ ...r, framing: { ...r.framing, spacing: 32 } }) as typeof r) },
    });
    expect(codes(far)).toContain('ties-too-far-apart');
    const onBeam = change(tiedProject, {
      cover: { roofs: (old) => old.map((r) => ({ ...r, ridgeBeam: 'B1' }) as typeof r) },
    });
    expect(codes(onBeam)).toContain('ridge-beam-off-ridge');
  });
});
