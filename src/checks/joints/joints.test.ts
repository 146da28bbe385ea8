import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import { bar, contextFor, joint, joist, NONE, postBar, runFirst, v } from '../testing.js';
import { jointBearing } from './bearing.js';
import { demandText, jointDemands } from './demands.js';
import { forceParts } from './force-parts.js';
import { jointProducts } from './products.js';

const structure = { members: [bar(), postBar()], joints: [joint()] };
const ctx = contextFor({ structure, joints: { J1: [v(0, 0, -3000), v(0, 0, -6000), v(50, 0, 9000)] } });

describe('bearing across the grain', () => {
  it('gains by a short bearing away from the end', () => {
    // R = 9000 on 5.5·5.5: 297.5 psi. Cb = (5.5 + 0.375)/5.5; Fc⊥' = 625·1.06818 = 667.6, no CD. Ratio 0.44565.
    const f = runFirst(jointBearing, ctx);
    expect(f.demand).toBeCloseTo(297.52, 2);
    expect(f.capacity).toBeCloseTo(667.61, 2);
    expect(f.ratio).toBeCloseTo(0.445648, 5);
  });

  it('shows the parts of the force by load case, which add up to it', () => {
    // Governing is D + S: 1·3000 + 1·6000 = 9000 lb down.
    const rec = makeRecorder();
    jointBearing.run(jointBearing.subjects(ctx)[0]!, ctx, rec);
    const R = rec.lines.find((l) => l.kind === 'step' && l.symbol === 'R');
    expect(R).toMatchObject({ substituted: '1·3000 (D) + 1·6000 (S)', value: 9000 });
  });

  it('leaves the parts out where they do not add up to the value', () => {
    const id = ctx.loads.combinations[1]!.id;
    expect(forceParts(ctx, 'J1', id, 9000, (f) => f.z)).toBe('1·3000 (D) + 1·6000 (S)');
    expect(forceParts(ctx, 'J1', id, 8000, (f) => f.z)).toBe('');
    expect(forceParts(ctx, 'J1', 'none of them', 9000, (f) => f.z)).toBe('');
  });

  it('does not gain within 3 in of the end or of a splice', () => {
    const end = joint({
      ties: [
        { part: 'B1', along: 5 },
        { part: 'P1', along: 0 },
      ],
    });
    const force = { J1: [v(0, 0, -3000), NONE, NONE] };
    expect(
      runFirst(jointBearing, contextFor({ structure: { ...structure, joints: [end] }, joints: force })).capacity,
    ).toBe(625);
    const splice = joint({
      id: 'J9',
      mark: 'J9',
      kind: 'beam-splice',
      contact: { length: 0, width: 0 },
      ties: [{ part: 'B1', along: 72 }],
    });
    const spliced = contextFor({ structure: { ...structure, joints: [joint(), splice] }, joints: force });
    expect(runFirst(jointBearing, spliced).capacity).toBe(625);
  });

  it('does not count plywood strips', () => {
    const beam = bar({ section: joist({ plies: 3, b: 4.5, width: 5.5 }) });
    const f = runFirst(
      jointBearing,
      contextFor({
        structure: { ...structure, members: [beam, postBar()] },
        joints: { J1: [v(0, 0, -3000), NONE, NONE] },
      }),
    );
    // 3000/(5.5·4.5)
    expect(f.demand).toBeCloseTo(121.21, 2);
  });
});

describe('joint demands', () => {
  it('gives the largest each way with its combination, and says when there is none', () => {
    const [d] = jointDemands(ctx);
    expect(d).toMatchObject({ mark: 'J1', count: 1, known: true });
    expect(d!.down).toEqual({ value: 9000, joint: 'J1', combination: 'D+S' });
    // 0.6·(−3000) + 0.6·9000 = 3600 up; 0.6·50 = 30 along x.
    expect(d!.up.value).toBeCloseTo(3600, 9);
    expect(d!.up.combination).toBe('0.6D+0.6W');
    expect(d!.alongX.value).toBeCloseTo(30, 9);
    expect(d!.alongY).toEqual({ value: 0, joint: '', combination: '' });
    expect(demandText(d!)).toContain('nothing square to the house');
  });

  it('is not known where a joint has no forces', () => {
    expect(jointDemands(contextFor({ structure }))[0]!.known).toBe(false);
  });

  it('stays open until a product is named', () => {
    const f = runFirst(jointProducts, ctx);
    expect(f.status).toBe('not-evaluated');
    expect(f.demand).toBe(9000);
    expect(f.note).toContain('3600 lb up');
  });

  it('does not ask for a product for trim', () => {
    const trim = contextFor({ structure: { ...structure, joints: [joint({ kind: 'fascia-to-framing' })] } });
    expect(runFirst(jointProducts, trim).status).toBe('not-applicable');
  });
});
