/** Posts on slabs, footings beside the house, anchor bolts: rules and hand calculations. */
import { describe, expect, it } from 'vitest';
import type { Office, Project } from '../../project/model.js';
import type { WallPlaced } from '../../structure/model.js';
import { gableProject } from '../../structure/testing.js';
import { bar, contextFor, joint, NONE, pad, postBar, runFirst, v } from '../testing.js';
import { anchor } from './anchor.js';
import { houseFooting } from './house-footing.js';
import { footingShear } from './plain-concrete.js';
import { footingSize, frostDepth, postFoot } from './sizes.js';
import { slabPost } from './slab-post.js';
import { soilBearing } from './soil-bearing.js';
import { footingUplift } from './uplift.js';

type V = ReturnType<typeof v>;
const said = <T>(value: T, state: Office<T>['state'] = 'given'): Office<T> => ({
  value,
  state,
  from: 'office',
  path: '/x',
});
const foot = joint({
  id: 'J2',
  mark: 'J2',
  kind: 'post-to-footing',
  ties: [
    { part: 'P1', along: 0 },
    { part: 'F1', along: 0 },
  ],
});
const ctxOf = (
  project: Project,
  force: readonly V[],
  change: Parameters<typeof pad>[0] = {},
  more: { walls?: readonly WallPlaced[]; moment?: readonly V[]; treatment?: 'none' | 'ground-contact' } = {},
) => {
  const post = postBar();
  return contextFor({
    project,
    structure: {
      footings: [pad(change)],
      members: [bar(), { ...post, section: { ...post.section, treatment: more.treatment ?? 'none' } }],
      joints: [foot],
      walls: more.walls ?? [],
    },
    footings: { F1: { force, moment: more.moment ?? [NONE, NONE, NONE] } },
  });
};

const appendix = (adopted: Office<boolean>, frost: number): Project => ({
  ...gableProject,
  basis: {
    ...gableProject.basis,
    frost: said(frost) as Project['basis']['frost'],
    roofLive: { ...gableProject.basis.roofLive, patioAppendix: adopted },
  },
});
const ON_SLAB = {
  onSlab: { slab: 'S1', thickness: 4 },
  size: 5.5,
  bearingArea: 30.25,
  padThickness: 4,
  concrete: 0,
  soilOver: 0,
  top: -12,
  bottom: -16,
};

describe('post on the slab', () => {
  const load = [v(0, 0, 300), v(0, 0, 400), v(0, 0, 5000)];
  it('up to 750 lb of live and dead load, wind apart', () => {
    const f = runFirst(slabPost, ctxOf(appendix(said(true), 0), load, ON_SLAB));
    expect(f).toMatchObject({ status: 'pass', demand: 700, capacity: 750, combination: 'D+S' });
    expect(runFirst(slabPost, ctxOf(appendix(said(true), 0), [v(0, 0, 400), v(0, 0, 400), NONE], ON_SLAB)).status).toBe(
      'fail',
    );
  });
  it.each([
    ['without the appendix', appendix(said(false), 0), ON_SLAB, 'fail'],
    ['with frost', appendix(said(true), 12), ON_SLAB, 'fail'],
    ['on a thin slab', appendix(said(true), 0), { ...ON_SLAB, onSlab: { slab: 'S1', thickness: 3 } }, 'fail'],
    ['with no answer yet', appendix(said(false, 'unknown'), 0), ON_SLAB, 'not-evaluated'],
    ['with a footing', appendix(said(true), 0), {}, 'not-applicable'],
  ] as const)('%s', (_name, project, change, status) => {
    expect(runFirst(slabPost, ctxOf(project, load, change)).status).toBe(status);
  });
  it('not under side force, and held down by nothing', () => {
    const ok = appendix(said(true), 0);
    expect(runFirst(slabPost, ctxOf(ok, [v(20, 0, 300), NONE, NONE], ON_SLAB)).status).toBe('fail');
    expect(runFirst(footingUplift, ctxOf(ok, [NONE, NONE, v(0, 0, -10)], ON_SLAB)).status).toBe('fail');
  });
  it('asks no footing’s questions of it', () => {
    const ctx = ctxOf(appendix(said(true), 0), load, ON_SLAB);
    for (const check of [soilBearing, frostDepth, footingSize, footingShear])
      expect(runFirst(check, ctx).status, check.id).toBe('not-applicable');
  });
});

describe('wood in the ground', () => {
  const embedded = { foot: -28, width: 18, diagonal: 7.78, cast: true, backfill: 'concrete' } as const;
  it('must be treated for it', () => {
    expect(runFirst(postFoot, ctxOf(gableProject, [], { embedded })).status).toBe('fail');
    expect(runFirst(postFoot, ctxOf(gableProject, [], { embedded }, { treatment: 'ground-contact' })).status).toBe(
      'not-applicable',
    );
  });
  it('stands on 8 in of concrete or none', () => {
    const plug = { ...embedded, cast: false, backfill: 'sand', foot: -30 } as const;
    const f = runFirst(footingSize, ctxOf(gableProject, [], { embedded: plug, padThickness: 0, round: true }));
    expect(f).toMatchObject({ status: 'fail', demand: 8, capacity: 6 });
  });
});

describe('beside the house', () => {
  // Wall along y = −60; the pad's corner circle reaches 16.97 in, the house footing 6: 60 − 16.97 − 6 = 37.03 in clear.
  const wall: WallPlaced = {
    id: 'HW1',
    name: 'rear',
    start: { x: -200, y: -60 },
    end: { x: 200, y: -60 },
    out: { x: 0, y: 1 },
    base: -12,
    plate: 97,
    openings: [],
    path: '/house/walls/0',
  };
  const house = (bottom: number): Project => ({
    ...gableProject,
    house: { ...gableProject.house, footing: { bottom: said(bottom), projection: said(6) } as never },
  });
  const clear = 60 - 12 * Math.SQRT2 - 6;
  it('clears the deeper footing at 45 degrees', () => {
    // This footing is 24 in deep, the house 12: 12 in deeper over 37.
    const f = runFirst(houseFooting, ctxOf(house(12), [], {}, { walls: [wall] }));
    expect(f.demand).toBeCloseTo(12, 9);
    expect(f.capacity).toBeCloseTo(clear, 9);
    expect(f.status).toBe('pass');
    const deep = runFirst(houseFooting, ctxOf(house(12), [], { bottom: -72 }, { walls: [wall] }));
    expect(deep.status).toBe('fail');
    expect(deep.note).toContain('undermine');
    const shallow = runFirst(houseFooting, ctxOf(house(80), [], {}, { walls: [wall] }));
    expect(shallow.status).toBe('fail');
    expect(shallow.note).toContain('press on the house wall');
  });
  it('between 30 and 45 degrees a professional names the soil', () => {
    expect(runFirst(houseFooting, ctxOf(house(12), [], { bottom: -24 - clear * 0.8 }, { walls: [wall] })).status).toBe(
      'outside-scope',
    );
  });
  it('on top of it fails; unknown is not evaluated; not given is to be verified', () => {
    expect(runFirst(houseFooting, ctxOf(house(12), [], { at: { x: 0, y: -50 } }, { walls: [wall] })).status).toBe(
      'fail',
    );
    const open = {
      ...gableProject,
      house: { ...gableProject.house, footing: { bottom: said(12, 'unknown'), projection: said(6) } as never },
    };
    expect(runFirst(houseFooting, ctxOf(open, [], {}, { walls: [wall] })).status).toBe('not-evaluated');
    const f = runFirst(houseFooting, ctxOf(gableProject, [], {}, { walls: [wall] }));
    expect(f.status).toBe('not-applicable');
    expect(f.note).toContain('verify on site');
  });
});

describe('anchor bolt', () => {
  const bolted = (embedment: number, bolt = 0.625): Project => ({
    ...gableProject,
    choices: { ...gableProject.choices, anchors: { pad: { bolt, embedment, fu: 58000, fy: 36000 } as never } },
  });
  // Strength combinations of the fixture hold no wind: a lifting dead case stands in, 1.4·1000 = 1400 lb.
  const lift = [v(0, 0, -1000), NONE, NONE];
  const tall = { top: 0, pierDiameter: 12 };
  it('breaks out of a 12 in pier', () => {
    // c = 12/(2√2) = 4.2426: hef = 2.8284; Nb = 24·50·2.8284^1.5 = 5708.2; φ 0.7: 3995.7. Steel 9831, head 6356.
    const f = runFirst(anchor, ctxOf(bolted(8), lift, tall));
    expect(f.capacity).toBeCloseTo(0.7 * 24 * 50 * (12 / (2 * Math.SQRT2) / 1.5) ** 1.5, 6);
    expect(f.demand).toBeCloseTo(1400, 9);
    expect(f.ratio).toBeCloseTo(1400 / f.capacity, 9);
  });
  it('pulls its head out of a wide pad', () => {
    const f = runFirst(anchor, ctxOf(bolted(8), lift));
    expect(f.capacity).toBeCloseTo(0.7 * 8 * 0.454 * 2500, 6);
  });
  it('does not arise, does not fit, is no known size, holds no moment', () => {
    expect(runFirst(anchor, ctxOf(gableProject, lift)).status).toBe('not-applicable');
    expect(runFirst(anchor, ctxOf(bolted(10), lift)).status).toBe('fail');
    expect(runFirst(anchor, ctxOf(bolted(8, 0.6), lift)).status).toBe('not-evaluated');
    expect(runFirst(anchor, ctxOf(bolted(8), lift, {}, { moment: [v(5000, 0, 0), NONE, NONE] })).status).toBe(
      'outside-scope',
    );
  });
});
