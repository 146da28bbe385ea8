/** A hip roof: planes tiled, lengths by the usual figures, loads down jacks and hips to the soil, equal on equal sides. */
import { describe, expect, it } from 'vitest';
import { area, clipConvex } from '../base/plane.js';
import { buildLoads } from '../loads/index.js';
import type { HipRoof, Project } from '../project/model.js';
import { place } from '../structure/place.js';
import { change } from '../structure/testing.js';
import { hipProject } from '../structure/testing-hip.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';

function run(p: Project) {
  const placed = place(p);
  const structure = placed.value!;
  expect(structure, placed.issues.map((i) => `${i.code} ${i.path} ${i.message}`).join(', ')).toBeDefined();
  const loads = buildLoads(p, structure).value!;
  const { value, issues } = analyse(p, structure, loads);
  expect(value!.failure).toBeUndefined();
  expect(issues).toEqual([]);
  return { structure, loads, effects: value! };
}

const { structure, loads, effects } = run(hipProject);
const lengthOf = (mark: string): number => structure.members.find((m) => m.mark === mark)!.length;
const caseOf = (id: string): number => loads.cases.findIndex((c) => c.id === id);

describe('planes', () => {
  it('are two trapezoids and two triangles over the whole plan', () => {
    expect(structure.surfaces.map((s) => s.outline.length).sort()).toEqual([3, 3, 4, 4]);
    // 173.5 + 2 · 16 across, 245.5 + 2 · 16 along, on the slope.
    const sum = structure.surfaces.reduce((t, s) => t + area(s.outline) * Math.cos(s.slope), 0);
    expect(sum).toBeCloseTo(205.5 * 277.5, 6);
  });

  it('are tiled by the strips of rafters, jacks and hips', () => {
    for (const s of structure.surfaces) {
      const strips = structure.members.flatMap((m) => m.strips.filter((k) => k.surface === s.id));
      const high = Math.max(...s.outline.map((p) => p.y));
      const sum = strips.reduce((t, k) => {
        const cut = clipConvex(s.outline, [
          { x: k.u0, y: 0 },
          { x: k.u1, y: 0 },
          { x: k.u1, y: high },
          { x: k.u0, y: high },
        ]);
        return t + (cut.length < 3 ? 0 : area(cut));
      }, 0);
      expect(sum, s.id).toBeCloseTo(area(s.outline), 6);
      const cuts = strips.map((k) => [k.u0, k.u1] as const).sort((a, b) => a[0] - b[0]);
      for (let i = 1; i < cuts.length; i++) expect(cuts[i]![0]).toBeCloseTo(cuts[i - 1]![1], 9);
    }
  });

  it('meet in the hips: the peak of every plane lies at one height', () => {
    const peaks = structure.surfaces.map((s) => s.origin.z + s.v.z * Math.max(...s.outline.map((p) => p.y)));
    for (const z of peaks) expect(z).toBeCloseTo(peaks[0]!, 9);
  });
});

describe('lengths', () => {
  // Figures of the framing square, 4 in 12: common 12.649 in a foot of run, hip 17.436, jacks differ by 25.298 at 24 in.
  it('of the common rafter: 12.649 in a foot of run, and its plumb cut', () => {
    expect(lengthOf('RF1')).toBeCloseTo((102.75 / 12) * 12.649 + 9.25 / 3, 2);
  });
  it('of the hip: 17.436 in a foot of the common run, and its plumb cut', () => {
    expect(lengthOf('HR1')).toBeCloseTo((102.75 / 12) * 17.436 + (9.25 * 4) / 17, 1);
  });
  it('of jacks: each 25.298 shorter than the next at 24 in spacing', () => {
    const jacks = [...new Set(structure.members.filter((m) => m.mark.startsWith('JK')).map((m) => m.mark))];
    // 78 3/4, 54 3/4 and 30 3/4 in from the eaves' corner; the next would stand on the beam.
    expect(jacks.length).toBe(3);
    const lengths = jacks.map(lengthOf).sort((a, b) => a - b);
    expect(lengths[1]! - lengths[0]!).toBeCloseTo(25.298, 3);
    expect(lengths[2]! - lengths[1]!).toBeCloseTo(25.298, 3);
    // Longest: one spacing short of the common, half the hip's 45-degree thickness short, half its own past the centre line.
    const run = 102.75 - 24 - 3.5 / Math.SQRT2 + 0.75;
    expect(lengths[2]!).toBeCloseTo((run / 12) * 12.649 + 9.25 / 3, 2);
  });
  it('ends every hip where the ridge beam ends, its corners in the slopes', () => {
    for (const m of structure.members.filter((q) => q.role === 'hip')) {
      expect(Math.abs(m.end.x)).toBeLessThan(1e-9);
      expect([144, 216].some((y) => Math.abs(m.end.y - y) < 1e-9)).toBe(true);
    }
  });
});

describe('forces', () => {
  it('balance in every case by the second road', () => {
    for (const b of effects.balance) {
      expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
    }
  });

  it('come to the footings as live load over the whole plan', () => {
    const i = caseOf('Lr');
    const psf = loads.cases[i]!.areas[0]!.psf;
    const sum = [...effects.footings.values()].reduce((t, f) => t + f.force[i]!.z, 0);
    expect(Math.abs(sum)).toBeCloseTo((psf * 205.5 * 277.5) / 144, 3);
  });

  it('pass every hip without loss: jacks, own weight and corner down, two joints up', () => {
    for (const hip of structure.members.filter((m) => m.role === 'hip')) {
      for (const id of ['D', 'Lr']) {
        const i = caseOf(id);
        const up = structure.joints.filter((j) => j.ties[0]!.part === hip.id);
        const on = structure.joints.filter((j) => j.ties[1]!.part === hip.id && j.kind === 'jack-to-hip');
        const jacks = on.reduce((t, j) => t + effects.joints.get(j.id)!.force[i]!.z, 0);
        const held = up.reduce((t, j) => t + effects.joints.get(j.id)!.force[i]!.z, 0);
        const corner = hip.strips.reduce((t, k) => {
          const s = structure.surfaces.find((q) => q.id === k.surface)!;
          const w = k.u1 - k.u0;
          // A triangle under 45 degrees on plan.
          const load = loads.cases[i]!.areas.find((a) => a.surface === s.id)!;
          const onSlope = load.acts === 'plan' ? 1 : 1 / Math.cos(s.slope);
          const edges = loads.cases[i]!.edges.filter((e) => e.surface === s.id).reduce((e, q) => e + q.weight * w, 0);
          return t + (load.psf * onSlope * (w * w)) / 2 / 144 + edges;
        }, 0);
        const own = id === 'D' ? hip.section.weight * Math.hypot(102.75, 102.75, 102.75 / 3) : 0;
        expect(held, `${hip.id} ${id}`).toBeCloseTo(jacks - corner - own, 6);
      }
    }
  });

  it('bend the hip as its jacks do by hand: moment at the middle jack by plain statics', () => {
    const hip = structure.members.find((m) => m.role === 'hip')!;
    const i = caseOf('Lr');
    const e = effects.members.get(hip.id)!;
    const most = Math.max(...e.m[i]!);
    // By the joints' vertical forces and plan distances: corner reaction times its arm, less what stands between.
    const joint = (j: { id: string; at: { x: number; y: number } }) => ({
      q: Math.hypot(j.at.x - hip.start.x, j.at.y - hip.start.y),
      z: effects.joints.get(j.id)!.force[i]!.z,
    });
    const corner = joint(structure.joints.find((j) => j.ties[0]!.part === hip.id && j.at.z < 101)!);
    const jacks = structure.joints.filter((j) => j.kind === 'jack-to-hip' && j.ties[1]!.part === hip.id);
    const dir = {
      x: (hip.end.x - hip.start.x) / 102.75 / Math.SQRT2,
      y: (hip.end.y - hip.start.y) / 102.75 / Math.SQRT2,
    };
    const along = (j: (typeof jacks)[number]) => (j.at.x - hip.start.x) * dir.x + (j.at.y - hip.start.y) * dir.y;
    const w = hip.strips[0]!.u1 - hip.strips[0]!.u0;
    const psf = loads.cases[i]!.areas[0]!.psf;
    const cornerLoad = (psf * w * w) / 144;
    // Centre of each corner triangle: two thirds of w from one eave and one third up, so w·(2/3 + 1/3)/√2 along the hip.
    const cornerAt = w / Math.SQRT2;
    const at = (x: number): number =>
      -corner.z * (x - corner.q) -
      cornerLoad * (x - cornerAt) +
      jacks.filter((j) => along(j) < x).reduce((t, j) => t + effects.joints.get(j.id)!.force[i]!.z * (x - along(j)), 0);
    const byHand = Math.max(...jacks.map((j) => at(along(j))));
    expect(byHand).toBeGreaterThan(0);
    // Stations of the span stand up to a 24th of it from the jack.
    expect(most).toBeLessThanOrEqual(byHand + 1e-6);
    expect(most).toBeGreaterThan(0.97 * byHand);
  });

  it('are the same at all four corners, whose surroundings are the same', () => {
    const i = caseOf('Lr');
    const corners = ['F1', 'F3', 'F4', 'F6'].map((f) => effects.footings.get(f)!.force[i]!.z);
    for (const z of corners) expect(z).toBeCloseTo(corners[0]!, 6);
    const peaks = ['F7', 'F8'].map((f) => effects.footings.get(f)!.force[i]!.z);
    expect(peaks[1]!).toBeCloseTo(peaks[0]!, 6);
  });
});

describe('the same roof turned', () => {
  it('with its ridge along x hands the same forces down', () => {
    const swap = (p: { x: number; y: number }) => ({ x: p.y, y: p.x });
    const turned = change(hipProject, {
      cover: {
        beams: (old) => old.map((b) => ({ ...b, from: swap(b.from), to: swap(b.to) })),
        roofs: (old) => old.map((r) => ({ ...r, ridge: 'x' }) as HipRoof),
      },
    });
    const other = run(turned);
    for (const id of ['D', 'Lr']) {
      const [i, k] = [caseOf(id), other.loads.cases.findIndex((c) => c.id === id)];
      for (const [f, v] of effects.footings)
        expect(other.effects.footings.get(f)!.force[k]!.z, `${f} ${id}`).toBeCloseTo(v.force[i]!.z, 6);
    }
    for (const b of other.effects.balance) expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
  });
  it('and with rafters at odd spacing still balances, opposite rafters opposite', () => {
    const odd = change(hipProject, {
      cover: { roofs: (old) => old.map((r) => ({ ...r, framing: { ...r.framing, spacing: 17 } }) as HipRoof) },
    });
    const { structure: s, effects: e } = run(odd);
    for (const b of e.balance) expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
    const at = (surface: string) =>
      s.members
        .filter((m) => m.mark === 'RF1' && m.strips[0]!.surface === surface)
        .map((m) => m.start.y.toFixed(6))
        .sort();
    expect(at('R1-left')).toEqual(at('R1-right'));
    expect(at('R1-left').length).toBe(6);
  });
});

describe('what is refused', () => {
  const code = (p: Project): string[] => place(p).issues.map((i) => i.code);
  const roofs = (more: Partial<HipRoof>): Project =>
    change(hipProject, { cover: { roofs: (old) => old.map((r) => ({ ...r, ...more }) as HipRoof) } });
  it('an attached hip, hips of trusses, a missing corner post, a peak without a ridge', () => {
    expect(code(change(hipProject, { cover: { attachment: 'attached' } }))).toContain('hip-attached');
    const truss = { ...hipProject.cover.roofs[0]!.framing, kind: 'common-truss' } as never;
    expect(code(roofs({ framing: truss }))).toContain('framing-unsupported');
    const beams = hipProject.cover.beams;
    const without = beams.map((b) => (b.mark === 'B4' ? { ...b, shared: b.shared!.slice(1) } : b));
    expect(code(change(hipProject, { cover: { beams: without } }))).toContain('hip-corner-without-post');
    const shifted = beams.map((b) => (b.mark === 'B5' ? { ...b, to: { x: 0, y: 200 } } : b));
    expect(code(change(hipProject, { cover: { beams: shifted } }))).toContain('ridge-beam-off-ridge');
  });
  it('wind, which no figure gives for a hip: outside the program, so that no set is issued', () => {
    expect(loads.outside.some((o) => o.about === 'wind on R1')).toBe(true);
    expect(loads.cases.some((c) => c.kind === 'W' && c.areas.length > 0)).toBe(false);
  });
  it('a hip much deeper than the rafters, whose seat would cut too deep', () => {
    const deep = change(hipProject, {
      choices: { sections: (old) => ({ ...old, hip: { ...old.hip!, size: '4x12' } as never }) },
    });
    expect(code(deep)).toContain('seat-too-deep');
  });
});
