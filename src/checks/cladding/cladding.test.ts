import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { isOutOfScope } from '../../loads/codes/asce7/index.js';
import { buildLoads } from '../../loads/index.js';
import type { Project, RoofFinish } from '../../project/model.js';
import type { Joint, RoofPlaced, Surface } from '../../structure/model.js';
import { place } from '../../structure/place.js';
import { gableProject, shedProject } from '../../structure/testing.js';
import { headPullThrough } from '../codes/nds-2018/index.js';
import type { CheckContext } from '../contract.js';
import { jointDemands } from '../joints/demands.js';
import { bar, contextFor, forcesOf, joint, joist, LOT, NONE, runFirst, v } from '../testing.js';
import { coveringUplift } from './covering-uplift.js';
import { componentTies, effectiveArea, patternMoments, positivePart, tieLift } from './framing-wind.js';
import { sheathingNails } from './sheathing-nails.js';
import { sheathingSpan } from './sheathing-span.js';
import { windComponents } from './wind-components.js';
import { componentPressure } from './zone-wind.js';

const NAILING = { nail: 'common-8d', edge: 6, field: 12 };

/** The shed project with parts of its roof's finish, or its spacing, replaced. */
function shed(finish: Partial<RoofFinish>, spacing?: number): Project {
  const [roof] = shedProject.cover.roofs;
  const framing = { ...roof!.framing, ...(spacing === undefined ? {} : { spacing }) };
  const roofs = [{ ...roof!, framing, finish: { ...roof!.finish, ...finish } }] as Project['cover']['roofs'];
  return { ...shedProject, cover: { ...shedProject.cover, roofs } };
}

function worked(project: Project): CheckContext {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const effects = analyse(project, structure, loads).value!;
  return { project, structure, loads, effects, lot: LOT };
}

/** A level strip of roof, 24 in wide, from y = −24 to y = 120, on bearings at y = 0 and y = 120. */
const roof: RoofPlaced = {
  mark: 'R1',
  surfaces: ['S'],
  meanHeight: 120,
  min: { x: 0, y: -24 },
  max: { x: 240, y: 216 },
  ridgeAxis: 'x',
  slope: 0,
  highestPoint: 120,
  lowestEave: 120,
  attached: false,
  path: '/cover/roofs/0',
};
const surface: Surface = {
  id: 'S',
  mark: 'S',
  roof: 'R1',
  origin: v(0, 0, 105),
  u: v(1, 0, 0),
  v: v(0, 1, 0),
  n: v(0, 0, 1),
  outline: [
    { x: 0, y: -24 },
    { x: 24, y: -24 },
    { x: 24, y: 120 },
    { x: 0, y: 120 },
  ],
  slope: 0,
  downhill: { x: 0, y: -1 },
  layers: [],
  slippery: false,
  sheathed: true,
  thickness: 0,
  shape: 'monoslope',
  edges: [],
  path: '/cover/roofs/0',
};
const rafter = bar({
  id: 'RF1-01',
  mark: 'RF1',
  role: 'rafter',
  section: joist(),
  start: v(12, -24, 100),
  end: v(12, 120, 100),
  strips: [{ surface: 'S', u0: 0, u1: 24 }],
  roof: 'R1',
  unbraced: { top: 0, bottom: 0 },
  path: '/cover/roofs/0/framing',
});
const tie = (id: string, y: number, along: number): Joint =>
  joint({
    id,
    mark: id,
    kind: 'rafter-to-beam',
    at: v(12, y, 95),
    ties: [
      { part: 'RF1-01', along },
      { part: 'B1', along: 12 },
    ],
    path: '/cover/roofs/0/framing',
  });
const level = contextFor({
  project: shed({}),
  structure: { roofs: [roof], surfaces: [surface], members: [rafter], joints: [tie('J1', 0, 24), tie('J2', 120, 144)] },
  members: [
    forcesOf('RF1-01', 3, {
      stations: [0, 24, 84, 144],
      spanOf: [0, 0, 1, 1],
      spans: [
        { from: 0, to: 24, length: 24, kind: 'overhang' },
        { from: 24, to: 144, length: 120, kind: 'span' },
      ],
    }),
  ],
  joints: { J1: [v(0, 0, -100), NONE, NONE], J2: [v(0, 0, -1000), NONE, NONE] },
});

// 110 mph, exposure C, 2400 ft: qh = 0.00256·0.84888·0.85·0.91679·110² = 20.491 psf (7-16 Eq. 26.10-1).
// Level roof, A = 120·40 = 4800 in² between a² = 1296 and 4a² = 5184, zone 3: +1.8, −1.8 (7-16 Fig. 30.7-1).
// p = 20.491·0.85·1.8 = 31.351 psf either way.
const P = 31.351;

describe('component pressure', () => {
  it('takes zone 3, the worse flow, and the row of the effective area', () => {
    expect(componentPressure(level, 'R1', 'plus', 4800)).toBeCloseTo(P, 2);
    expect(componentPressure(level, 'R1', 'minus', 4800)).toBeCloseTo(-P, 2);
    // Up to a²: −3.6 obstructed, worse than −3.3 clear; 20.491·0.85·3.6 = 62.70.
    expect(componentPressure(level, 'R1', 'minus', 100)).toBeCloseTo(-62.7, 1);
    // Over 4a²: 1.2 and −1.2: 20.90.
    expect(componentPressure(level, 'R1', 'minus', 6000)).toBeCloseTo(-20.9, 1);
  });

  it('says in the trace that the zones were not placed', () => {
    const rec = makeRecorder();
    componentPressure(level, 'R1', 'minus', 100, rec);
    expect(rec.lines.some((l) => l.kind === 'step' && l.note?.includes('zone 3'))).toBe(true);
  });

  it('refuses a roof outside the figure, and knows no roof that is not there', () => {
    const squat = { ...level, structure: { ...level.structure, roofs: [{ ...roof, meanHeight: 300 }] } };
    const p = componentPressure(squat, 'R1', 'plus', 100);
    expect(isOutOfScope(p) && p.reason).toContain('h/L');
    expect(componentPressure(level, 'R9', 'plus', 100)).toBeUndefined();
  });
});

describe('hand statics of one member', () => {
  it('integrates what adds and leaves out what relieves', () => {
    expect(positivePart(2, 4, 3)).toBe(9);
    expect(positivePart(-1, 1, 2)).toBe(0.5);
    expect(positivePart(-1, -2, 5)).toBe(0);
  });

  it('keeps span and overhangs apart', () => {
    const load = { from: 0, to: 144, width: 24 };
    // 60·60/2 = 1800; 24²/2 = 288 at the bearing, half of it at midspan; 12²/2 = 72 on the overhang.
    expect(patternMoments(84, 24, 144, load)).toEqual([1800, -144]);
    expect(patternMoments(24, 24, 144, load)).toEqual([0, -288]);
    expect(patternMoments(12, 24, 144, load)).toEqual([0, -72]);
  });

  it('widens the area to a third of the span', () => {
    expect(effectiveArea(120, 16)).toBe(4800);
    expect(effectiveArea(60, 24)).toBe(1440);
  });
});

describe('component wind on a rafter', () => {
  it('bends it by statics', () => {
    // w = 31.351·24/144 = 5.2252 lb/in; M = 0.6·5.2252·1800 = 5643.2; S = 1.5·9.25²/6 = 21.391; fb = 263.8.
    // Fb' = 900·1.6·1.1 = 1584 (one rafter: Cr = 1).
    const f = runFirst(windComponents, level);
    expect(f.status).toBe('pass');
    expect(f.demand).toBeCloseTo(263.8, 1);
    expect(f.capacity).toBeCloseTo(1584, 6);
    expect(f.combination).toMatch(/0\.6W \(C&C zone 3\)$/);
    expect(f.note).toContain('joint schedule');
  });

  it('fails where the rafter is too weak', () => {
    const weak = { ...rafter, section: joist({ d: 2, depth: 2 }) };
    const f = runFirst(windComponents, contextOf(level, { members: [weak] }));
    expect(f).toMatchObject({ status: 'fail' });
  });

  it('lifts its ties, which the joint schedule takes up', () => {
    // J1: influence 1.2 at y = −24 to 0 at y = 120: 0.6·144·24/144 = 14.4 ft²; 451.5 lb; 0.6·451.5 − 60 = 210.9.
    // J2: only y = 0 to 120 adds, 0 to 1: 60·24/144 = 10 ft²; 313.5 lb; 0.6·313.5 − 600 < 0.
    const [a, b] = jointDemands(level);
    expect(a!.known).toBe(true);
    expect(a!.up.value).toBeCloseTo(0.6 * 14.4 * P - 60, 1);
    expect(a!.up.combination).toBe('0.6D+0.6W (C&C zone 3)');
    expect(b!.up).toEqual({ value: 0, joint: '', combination: '' });
  });

  it('leaves the main system’s uplift where that is worse', () => {
    const windy = contextOf(level, {});
    const joints = new Map(level.effects.joints);
    joints.set('J1', { joint: 'J1', force: [v(0, 0, -100), NONE, v(0, 0, 1000)] });
    // 0.6·1000 − 60 = 540 > 210.9.
    const [a] = jointDemands({ ...windy, effects: { ...level.effects, joints } });
    expect(a!.up).toMatchObject({ combination: '0.6D+0.6W' });
    expect(a!.up.value).toBeCloseTo(540, 9);
  });

  it('does not know a tie outside the figure’s range', () => {
    const tall = contextOf(level, { roofs: [{ ...roof, meanHeight: 300 }] });
    expect(jointDemands(tall)[0]!.known).toBe(false);
    expect(runFirst(windComponents, tall).status).toBe('outside-scope');
  });

  it('leaves the inside of a truss to the plant and still counts its ties', () => {
    const ctx = worked(gableProject);
    const f = runFirst(windComponents, ctx);
    expect(f.status).toBe('not-applicable');
    expect(f.note).toContain('plant engineer');
    // Pitched, 18.43°, over 4a²: CN −1.01 clear, −1.51 obstructed; 12.0·0.85·1.51 = 15.4, held at 16 psf (30.2.2).
    // It touches the house above its eave: as an overhang 12.0·0.85·(−0.9 − 0.8) = −17.3 psf governs (27.3.3).
    expect(f.note).toContain('-17.3 psf');
    for (const d of jointDemands(ctx).filter((q) => q.kind === 'truss-to-beam')) {
      expect(d.up.combination, d.mark).toBe('0.6D+0.6W (C&C zone 3)');
    }
  });
});

/** The level context with parts of its structure replaced, and effects of its own so that nothing is remembered. */
function contextOf(ctx: CheckContext, structure: Partial<CheckContext['structure']>): CheckContext {
  return { ...ctx, structure: { ...ctx.structure, ...structure }, effects: { ...ctx.effects } };
}

// The shed at 2/12, 9.462°: obstructed minus −5.1 + 0.9·1.962/7.5 = −4.8645 to a²; p = 20.491·0.85·4.8645 = 84.73 psf.
// Clear plus 3.2 + 0.4·1.962/7.5 = 3.3047; p = 57.56 psf.
describe('sheathing span', () => {
  it('compares the rated loads, raised for the shorter span', () => {
    // 40/20 panel at 16 in: k = 32/16 = 2. Without snow: D + 0.45W + 0.75Lr = 4.7 + 0.45·57.56 + 0.75·20 = 45.6 of 40·2.
    const project = shed({});
    const { snow } = project.basis;
    const bare = { ...project, basis: { ...project.basis, snow: { ...snow, ground: { ...snow.ground, value: 0 } } } };
    const f = runFirst(sheathingSpan, worked(bare));
    expect(f).toMatchObject({ status: 'pass', capacity: 80, combination: 'D+0.45W+0.75Lr (C&C zone 3)' });
    expect(f.demand).toBeCloseTo(45.6, 1);
  });

  it('prints each allowed load as the product it is', () => {
    // 40/20 panel at 16 in: total 40·2 = 80 psf, live 30·2³ = 240 psf.
    const ctx = worked(shed({}));
    const rec = makeRecorder();
    sheathingSpan.run(sheathingSpan.subjects(ctx)[0]!, ctx, rec);
    const step = (symbol: string) => rec.lines.find((l) => l.kind === 'step' && l.symbol === symbol);
    expect(step('wt,allow')).toMatchObject({ substituted: '40 · 2', value: 80 });
    expect(step('wl,allow')).toMatchObject({ substituted: '30 · 2³', value: 240 });
  });

  it('fails under the deepest of the drift: the whole of it lies on the panel beside the wall', () => {
    // The fixture's two-storey wall drifts 39 psf onto 33.6: D + 0.45W + 0.75S = 4.7 + 25.9 + 0.75·(33.6 + 15/16·39.4) = 83.5.
    const f = runFirst(sheathingSpan, worked(shed({})));
    expect(f.status).toBe('fail');
    expect(f.demand).toBeCloseTo(83.5, 0);
  });

  it('fails frames farther apart than the panel spans without edge support', () => {
    const f = runFirst(sheathingSpan, worked(shed({ sheathing: 'osb-3/8' }, 24)));
    expect(f.status).toBe('fail');
    expect(f.note).toContain('20 in');
  });

  it('is open where there is no sheathing', () => {
    expect(runFirst(sheathingSpan, worked(shed({ sheathing: '' }))).status).toBe('not-evaluated');
  });
});

describe('sheathing nails', () => {
  it('pulls a field nail by its tributary area', () => {
    // D = 1.5 + 1.9 on the slope; w = 0.6·84.73 − 0.6·3.4·0.9864 = 48.82; P = 48.82·16·12/144 = 65.1 lb.
    // W = 1380·0.5^2.5·0.131 = 31.96 lb/in; p = 2.5 − 0.594 = 1.906; W' = 31.96·1.906·1.6 = 97.46 lb.
    const f = runFirst(sheathingNails, worked(shed({ nailing: NAILING })));
    expect(f.status).toBe('pass');
    expect(f.demand).toBeCloseTo(65.1, 1);
    expect(f.capacity).toBeCloseTo(97.46, 2);
  });

  it('lets the head of the nail govern in a thin, light panel', () => {
    // Plywood 3/8: 690·π·0.281·0.42²·0.375·1.6 = 64.47 < 31.96·2.125·1.6 = 108.7.
    const f = runFirst(sheathingNails, worked(shed({ nailing: NAILING, sheathing: 'plywood-3/8' })));
    expect(f.capacity).toBeCloseTo(64.47, 1);
  });

  it('fails nails too far apart', () => {
    const f = runFirst(sheathingNails, worked(shed({ nailing: { ...NAILING, field: 24 } })));
    expect(f.status).toBe('fail');
  });

  it('is open without a nailing and refuses fasteners it does not know', () => {
    const open = runFirst(sheathingNails, worked(shed({})));
    expect(open.status).toBe('not-evaluated');
    expect(open.note).toContain('finish.nailing');
    const ring = runFirst(sheathingNails, worked(shed({ nailing: { ...NAILING, nail: 'ring shank 8d' } })));
    expect(ring.status).toBe('outside-scope');
    expect(ring.note).toContain('licensed professional');
  });

  it('changes the head formula past 2.5 head diameters', () => {
    // 690·π·0.281·0.25·0.594 = 90.45; thick: 1725·π·0.281²·0.25 = 106.98, equal at t = 2.5·0.281.
    expect(headPullThrough(0.5, 0.281, 0.594)).toBeCloseTo(90.45, 2);
    expect(headPullThrough(0.5, 0.281, 1)).toBeCloseTo(106.98, 2);
    expect(headPullThrough(0.5, 0.281, 0.7025)).toBeCloseTo(106.98, 2);
  });
});

describe('covering uplift', () => {
  const rated = (uplift: number) =>
    runFirst(coveringUplift, worked(shed({ coveringRating: { uplift, from: 'a test report' } })));

  it('compares 0.6 of the wind with the rating', () => {
    // 0.6·84.73 = 50.84 psf.
    expect(rated(75)).toMatchObject({ status: 'pass', capacity: 75 });
    expect(rated(75).demand).toBeCloseTo(50.84, 2);
    expect(rated(50).status).toBe('fail');
  });

  it('is open without a rating and says what is needed', () => {
    const f = runFirst(coveringUplift, worked(shed({})));
    expect(f).toMatchObject({ status: 'not-evaluated' });
    expect(f.note).toContain('50.8 psf');
  });
});

describe('what a tie’s lift is printed from', () => {
  it('p · area · share of the parts makes up the lift', () => {
    const ctx = worked(shedProject);
    let seen = 0;
    const surfaces = new Map(ctx.structure.surfaces.map((s) => [s.id, s]));
    for (const [id, ties] of componentTies(ctx.structure.joints)) {
      const member = ctx.structure.members.find((m) => m.id === id)!;
      if (ties.length !== 2) continue;
      const lift = tieLift(ctx, member, ties, surfaces);
      if (lift === undefined || 'clause' in lift) throw new Error('in scope');
      lift.up.forEach((up, i) => {
        const sum = lift.parts(i).reduce((t, p) => t + (p.psf * p.area * p.share) / 144, 0);
        expect(sum).toBeCloseTo(up, 9);
        seen++;
      });
    }
    expect(seen).toBeGreaterThan(10);
  });
});
