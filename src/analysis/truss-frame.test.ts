import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import { webLayout } from '../structure/framing/webs.js';
import type { Section, TrussShape } from '../structure/model.js';
import { analyse, makeTruss, solveTruss, thrustSet, trussEffects } from './index.js';
import { indexStructure } from './index-structure.js';
import { type Pair, sidewaysGive } from './side-give.js';
import { factorFrame, solveCase } from './solver/index.js';
import { type Fixture, GABLE, makeGable } from './testing.js';

const SHAPE: TrussShape = {
  kind: 'scissor-truss',
  span: 221.5,
  topPitch: Math.atan(4 / 12),
  bottomPitch: Math.atan(2 / 12),
  heel: 5.5,
  overhang: [16, 16],
  chordDepth: 3.5,
  bearing: 5.5,
  weight: 110,
  height: 42,
};

/** The test gable with scissor trusses in place of its level ones. */
function scissorGable(): Fixture {
  const f = makeGable();
  const members = f.structure.members.map((m) =>
    m.truss ? { ...m, truss: { ...m.truss, kind: 'scissor-truss' as const, bottomPitch: Math.atan(2 / 12) } } : m,
  );
  return { ...f, structure: { ...f.structure, members } };
}

function ready(f: Fixture) {
  const loads = buildLoads(f.project, f.structure).value!;
  const effects = analyse(f.project, f.structure, loads).value!;
  return { project: f.project, structure: f.structure, loads, effects };
}

describe('layouts', () => {
  it('picks the pattern by span and shape', () => {
    const level = { ...SHAPE, kind: 'common-truss' as const, bottomPitch: 0 };
    expect(webLayout(SHAPE, false).pattern).toBe('scissor');
    expect(webLayout({ ...level, span: 120 }, false).pattern).toBe('king-post');
    expect(webLayout({ ...level, span: 240 }, false).pattern).toBe('fink');
    expect(webLayout({ ...level, span: 400 }, false).pattern).toBe('howe');
  });

  it('is a stable plane truss with every pattern: 2 joints − 3 bars when all its joints were pins', () => {
    for (const t of [
      SHAPE,
      { ...SHAPE, bottomPitch: 0, span: 120 },
      { ...SHAPE, bottomPitch: 0, span: 240 },
      { ...SHAPE, bottomPitch: 0, span: 400 },
    ]) {
      const { bars, joints } = webLayout(t, false);
      // Tails are cantilevers of the chord: two joints and two bars that hold by bending, two equations short.
      expect(bars.length - 2).toBe(2 * (joints.length - 2) - 3);
    }
  });

  it('is symmetric about the middle, joints on the chords’ centre lines', () => {
    const { joints } = webLayout(SHAPE, true);
    for (const j of joints) {
      const twin = joints.find((k) => Math.abs(k.x - (SHAPE.span - j.x)) < 1e-9 && Math.abs(k.z - j.z) < 1e-9);
      expect(twin, j.name).toBeDefined();
    }
  });

  it('gives a gable end an upright every 24 in and at the middle', () => {
    const { bars, joints, apex } = webLayout({ ...SHAPE, bottomPitch: 0 }, true);
    const x = bars
      .filter((b) => b.role === 'stud' || (b.role === 'web' && joints[b.from]!.x === joints[b.to]!.x))
      .map((b) => joints[b.from]!.x)
      .sort((p, q) => p - q);
    expect(x).toContain(joints[apex]!.x);
    for (let i = 1; i < x.length; i++) expect(x[i]! - x[i - 1]!).toBeCloseTo(24, 6);
  });
});

describe('a truss frame under the loads of the roof', () => {
  const ctx = ready(scissorGable());
  const all = trussEffects(ctx);

  it('answers for every truss once', () => {
    expect(all.flatMap((t) => t.members).sort()).toEqual(
      ctx.structure.members
        .filter((m) => m.truss)
        .map((m) => m.id)
        .sort(),
    );
  });

  it('opens downward-loaded scissor bearings, and the push closes what opens', () => {
    const d = ctx.effects.cases.indexOf('D');
    for (const t of all) {
      expect(t.spread[d]).toBeGreaterThan(0);
      expect(t.thrust[d]! * t.model.push.spread).toBeCloseTo(t.spread[d]!, 9);
    }
  });

  it('gives the same push as a frame solved with both bearings held', () => {
    const { model } = all[0]!;
    const { frame, layout } = model;
    const held = factorFrame({
      ...frame.model,
      supports: [...frame.model.supports, { node: layout.bearings[1], dx: 'fixed' }],
    });
    if (!held.ok) throw new Error('mechanism');
    const load = { nodal: [{ node: layout.apex, force: { x: 0, y: 0, z: -1000 } }] };
    const direct = solveCase(held.frame, load);
    const a = solveTruss(model, load);
    expect(-direct.reactions[6 * layout.bearings[1]]!).toBeCloseTo(a.spread / model.push.spread, 6);
  });

  it('has a chord force at the middle in balance with the half truss (section cut through apex and foot)', () => {
    // Cut left of the middle: moments about the apex. Bottom chord bar ending at the foot, web ending at the foot.
    const t = all.find((x) => x.members.length > 1) ?? all[0]!;
    const { model } = t;
    const { joints, apex, bearings } = model.layout;
    const load = { nodal: [{ node: apex, force: { x: 0, y: 0, z: -2000 } }] };
    const s = solveTruss(model, load);
    expect(s.held.z).toBeCloseTo(1000, 6);
    expect(s.sliding).toBeCloseTo(1000, 6);
    const foot = joints.findIndex((j) => j.name === 'foot');
    const arm = joints[apex]!.x - joints[bearings[0]]!.x;
    let moment = 1000 * arm;
    model.bars.forEach((bar, e) => {
      const left = joints[bar.from]!.x < joints[apex]!.x - 1e-6 || joints[bar.to]!.x < joints[apex]!.x - 1e-6;
      if (!left || (bar.from !== foot && bar.to !== foot)) return;
      const p = joints[foot]!;
      const q = joints[bar.from === foot ? bar.to : bar.from]!;
      const l = Math.hypot(q.x - p.x, q.z - p.z);
      // Pull of the bar on the left part acts at the foot towards the right half: away from q.
      const fx = (s.n[e]! * (p.x - q.x)) / l;
      moment -= fx * (joints[apex]!.z - p.z);
    });
    // Pinned at apex and foot: besides bar forces only the little shear of the bottom chord crosses the cut.
    expect(Math.abs(moment)).toBeLessThan(2e-3 * 1000 * arm);
  });

  it('hands the beams a balanced pair: what one side receives the other gives', () => {
    const set = thrustSet(ctx)!;
    ctx.effects.cases.forEach((_, c) => {
      const sum = set.restraints.reduce((n, r) => n + r.force[c]!.x, 0);
      const most = Math.max(...set.restraints.map((r) => Math.abs(r.force[c]!.x)), 1);
      expect(Math.abs(sum)).toBeLessThan(1e-6 * most);
    });
    const d = ctx.effects.cases.indexOf('D');
    const total = set.restraints.filter((r) => r.beam === 'B2').reduce((n, r) => n + r.force[d]!.x, 0);
    const given = [...set.push.values()].reduce((n, h) => n + h[d]!, 0);
    expect(total).toBeCloseTo(given, 6);
    expect(given).toBeGreaterThan(0);
  });

  it('gives sideways as a simple beam does: P·a²·b²/(3·E·I·L) on each side', () => {
    const index = indexStructure(ctx.structure);
    const inner = ctx.structure.members.filter((m) => m.truss);
    const pairs = inner.map((m): Pair => {
      const [first, second] = index.below.get(m.id)!;
      return { first: first!, second: second!, across: { x: 1, y: 0, z: 0 } };
    });
    const give = sidewaysGive(index, pairs)!;
    const { values, b, d } = index.members.get('B1')!.section;
    const EI = (values.E * d * b ** 3) / 12;
    const [p, q] = GABLE.posts as [number, number];
    let compared = 0;
    pairs.forEach((pair, i) => {
      const [a, c] = [pair.first.lowerAlong - p, q - pair.first.lowerAlong];
      if (a <= 1 || c <= 1) return;
      compared++;
      expect(give[i]![i]! / ((2 * a ** 2 * c ** 2) / (3 * EI * (q - p)))).toBeCloseTo(1, 6);
    });
    expect(compared).toBeGreaterThan(2);
    // What the truss would open, less what the beams give, is what the push closes.
    const set = thrustSet(ctx)!;
    for (const c of [0, 1]) {
      inner.forEach((m, i) => {
        const t = all.find((x) => x.members.includes(m.id))!;
        const beams = inner.reduce((n, o, j) => n + give[i]![j]! * set.push.get(o.id)![c]!, 0);
        expect(t.model.push.spread * set.push.get(m.id)![c]! + beams).toBeCloseTo(t.spread[c]!, 9);
      });
    }
  });

  it('has no set with held bearings under level bottom chords', () => {
    expect(thrustSet(ready(makeGable()))).toBeUndefined();
  });

  it('refuses nothing for a plain section', () => {
    const section = { b: 1.5, d: 3.5, values: { E: 1.6e6 } } as Section;
    expect(makeTruss(webLayout(SHAPE, true), section)).toBeDefined();
  });
});

describe('a ceiling', () => {
  it('hangs on the bottom chord: more bending there, less above, the same weight on the bearings', () => {
    const f = scissorGable();
    const layers = f.structure.surfaces[0]!.layers;
    const half = layers.map((l, i) => (i === 0 ? { ...l, under: true as const } : l));
    const under = {
      ...f,
      structure: { ...f.structure, surfaces: f.structure.surfaces.map((s) => ({ ...s, layers: half })) },
    };
    const [a, b] = [trussEffects(ready(f))[0]!, trussEffects(ready(under))[0]!];
    const most = (t: typeof a, role: string): number =>
      Math.max(
        ...t.model.bars.flatMap((bar, e) =>
          bar.role === role ? [...t.sliding[0]!.m.subarray(e * 9, e * 9 + 9)].map((m) => Math.abs(m)) : [],
        ),
      );
    expect(most(b, 'bottom')).toBeGreaterThan(most(a, 'bottom'));
    expect(most(b, 'top')).toBeLessThan(most(a, 'top'));
    expect(b.up[0][0]! + b.up[1][0]!).toBeCloseTo(a.up[0][0]! + a.up[1][0]!, 6);
  });
});

describe('reactions of the frame with one bearing sliding', () => {
  it.each([
    ['level', makeGable()],
    ['scissor', scissorGable()],
  ])('are those of the rigid body in every case: %s bottom chord', (_, f) => {
    const ctx = ready(f);
    for (const t of trussEffects(ctx)) {
      const { joints, bearings } = t.model.layout;
      const run = joints[bearings[1]]!.x - joints[bearings[0]]!.x;
      const pair = ctx.structure.joints.filter((j) => j.ties[0]!.part === t.members[0]);
      ctx.effects.cases.forEach((_id, c) => {
        // Wind on gable ends and fascia is put on the joints, not on the trusses.
        if (ctx.loads.cases[c]!.side.length > 0) return;
        // The frame is held at its bottom chord's axis, the rigid body at the bearing below it.
        const turn = (t.sideways[c]! * joints[bearings[0]]!.z) / run;
        const size = Math.abs(t.up[0][c]!) + Math.abs(t.up[1][c]!) + 1;
        const rigid = pair.map((j) => ctx.effects.joints.get(j.id)!.force[c]!);
        expect(Math.abs(t.up[0][c]! - turn + rigid[0]!.z) / size).toBeLessThan(2e-3);
        expect(Math.abs(t.up[1][c]! + turn + rigid[1]!.z) / size).toBeLessThan(2e-3);
        expect(Math.abs(t.sideways[c]! - rigid[0]!.x - rigid[1]!.x) / size).toBeLessThan(1e-6);
      });
    }
  });
});
