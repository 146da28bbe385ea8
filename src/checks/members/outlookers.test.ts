/** Outlookers by hand: moment over the end frame, the bay behind, and component wind at their two ties. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { Project } from '../../project/model.js';
import { place } from '../../structure/place.js';
import { change } from '../../structure/testing.js';
import { rakeTrussProject } from '../../structure/testing-rake.js';
import { rakeArea } from '../cladding/rake-wind.js';
import { componentPressure } from '../cladding/zone-wind.js';
import type { CheckContext } from '../contract.js';
import { componentUplifts } from '../joints/component-uplift.js';
import { jointDemands } from '../joints/demands.js';
import { pathBreaks } from '../path/breaks.js';
import { outlookerBending, outlookerShear } from './outlookers.js';

function contextOf(project: Project): CheckContext {
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const effects = analyse(project, structure, loads).value!;
  return { project, structure, loads, effects, lot: undefined as never };
}

const calm = change(rakeTrussProject, { basis: { wind: { speed: (s: object) => ({ ...s, value: 5 }) } } } as never);

describe('an outlooker without wind to speak of', () => {
  const ctx = contextOf(calm);
  const look = ctx.structure.members.find((m) => m.rake)!;
  const [width, cos] = [look.rake!.v1 - look.rake!.v0, Math.cos(ctx.structure.surfaces[0]!.slope)];

  it('bends as a cantilever of 18 in and as a span of 24 in under the same load', () => {
    const subject = outlookerBending.subjects(ctx)[0]!;
    const found = outlookerBending.run(subject, ctx);
    const dead = ctx.loads.cases.findIndex((c) => c.kind === 'D');
    const live = ctx.loads.cases.findIndex((c) => c.kind === 'Lr');
    const layers = ctx.loads.cases[dead]!.areas[0]!.psf / 144;
    const roof = (ctx.loads.cases[live]!.areas[0]!.psf * cos) / 144;
    // Square to the roof: layers and live load on the overhang; the outlooker's own weight past the frame less that behind
    // it; the barge board at its tip; fascia and gutter at the lowest one.
    const barge = ctx.structure.members.find((m) => m.role === 'barge')!;
    const own = look.section.weight * ((16.5 * 16.5) / 2 - (24 * 24) / 2);
    const tip = barge.section.weight * width * (18 - 0.75);
    const edges = ctx.structure.surfaces[0]!.edges.reduce((t, e) => t + e.weight, 0) * 18 * 9;
    const M = cos * (((layers + roof) * width * 18 * 18) / 2 + own + tip + edges);
    const bay = ((2 * M) / 18 ** 2) * (24 ** 2 / 8);
    // Flat: 3 1/2 in wide, 1 1/2 in deep.
    expect(found.demand).toBeCloseTo((Math.max(M, bay) * 6) / (3.5 * 1.5 ** 2), 3);
    expect(found.combination).toMatch(/^D\+Lr/);
    // Douglas Fir-Larch No. 2: 900 psi · CF 1.5 · CD 1.25 (NDS Supplement Table 4A, recalled).
    expect(found.capacity).toBeCloseTo(900 * 1.5 * 1.25, 6);
    expect(found.status).toBe('pass');
  });

  it('tells every step of what it does', () => {
    for (const check of [outlookerBending, outlookerShear]) {
      const rec = makeRecorder();
      const subject = check.subjects(ctx)[0]!;
      const found = check.run(subject, ctx, rec);
      expect(found.ratio).toBeGreaterThan(0);
      expect(JSON.stringify(rec)).not.toMatch(/NaN|Infinity/);
    }
  });

  it('fails under a load it cannot carry, and names what would cure it', () => {
    const heavy = change(calm, {
      cover: { roofs: (old) => old.map((r) => ({ ...r, finish: { ...r.finish, allowance: 400 } })) },
    });
    const ctx = contextOf(heavy);
    const found = outlookerBending.run(outlookerBending.subjects(ctx)[0]!, ctx);
    expect(found.status).toBe('fail');
    expect(found.note).toMatch(/closer, take a larger section, or shorten/);
  });
});

describe('component wind on a rake', () => {
  const ctx = contextOf(rakeTrussProject);
  const look = ctx.structure.members.find((m) => m.rake)!;
  const { rake } = look;

  it('lifts the outer tie by suction and the inner one by pressure from above', () => {
    const plan = (18 * (rake!.v1 - rake!.v0) * Math.cos(ctx.structure.surfaces[0]!.slope)) / 144;
    const p = (sign: 'plus' | 'minus') => componentPressure(ctx, 'R1', sign, rakeArea(rake!)) as number;
    const lifts = componentUplifts(ctx).byJoint;
    const joints = ctx.structure.joints.filter((j) => j.ties[0]!.part === look.id);
    const inner = joints.find((j) => j.ties[0]!.along < 1e-6)!;
    const outer = joints.find((j) => j !== inner)!;
    expect(p('minus')).toBeLessThan(0);
    expect(lifts.get(outer.id)!.wind).toBeCloseTo(-p('minus') * plan * (1 + 9 / 24), 6);
    expect(lifts.get(inner.id)!.wind).toBeCloseTo((p('plus') * plan * 9) / 24, 6);
  });

  it('leaves no joint unknown and no part hanging', () => {
    for (const d of jointDemands(ctx)) if (d.kind === 'outlooker-to-frame') expect(d.known).toBe(true);
    expect(pathBreaks(ctx.project, ctx.structure)).toEqual([]);
  });
});
