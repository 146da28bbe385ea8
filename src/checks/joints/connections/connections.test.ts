/** Calculated connections against numbers worked out apart from the program, step by step in the comments. */
import { describe, expect, it } from 'vitest';
import type { ConnectionPart, DrivenDowels } from '../../../project/connections.js';
import type { Member } from '../../../structure/model.js';
import { change, gableProject } from '../../../structure/testing.js';
import { bar, joint, joist, NONE, pad, postBar, timber, v } from '../../testing.js';
import { plates, post, project, row, run, wind } from './testing.js';

describe('bolts through steel plates', () => {
  it('hold a beam down on its post', () => {
    // 3000 lb up. Beam, across grain: Fe⊥ = 6100·0.5^1.45/√0.5 = 3157.6; Z (IIIs, double) = 1027.02; Cg of 2 at 3 in =
    // 0.99180; Z' = 1027.02·1.6·0.99180; 1500/1629.8 = 0.9204. Post, along grain: Z 1651.5, Cg 0.99967: 0.5679. The beam's
    // shear (de 5 in, far from an end): 2/3·272·5.5·5 = 4987, 0.602. Tear-out of the post 2·272·5.5·2 = 5984, 0.501.
    const f = run(row(plates()), wind(0, 0, 3000));
    expect(f.status, f.note).toBe('pass');
    expect(f.ratio).toBeCloseTo(0.92038, 5);
    expect(f.demand).toBeCloseTo(3000, 6);
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: "Vr'", value: expect.closeTo(4986.67, 1) }));
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: "ZRT'", value: expect.closeTo(5984, 6) }));
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: 'Ta', value: expect.closeTo(21556.9, 1) }));
    expect(f.lines.at(-1)).toMatchObject({ symbol: 'ratio', value: f.ratio });
  });

  it('leave down to the wood, and fail where nothing holds', () => {
    expect(run(row(plates()), { joints: { J1: [v(0, 0, -4000), NONE, NONE] } })).toMatchObject({
      status: 'pass',
      ratio: 0,
    });
    const side = run(row(plates()), wind(100, 0, 500));
    expect(side.status).toBe('fail');
    expect(side.note).toContain('nothing holds 100 lb lengthwise');
  });

  it('take each combination at its own load duration', () => {
    // Up under D alone, CD 0.9: 1000 lb: 500/(1027.02·0.9·0.99180) = 0.5454, where wind would give 0.3068.
    const f = run(row(plates()), { joints: { J1: [v(0, 0, 1000), NONE, NONE] } });
    expect(f.combination).toBe('D');
    expect(f.ratio).toBeCloseTo(0.5454, 4);
  });

  it('name what sits too near, and what would fit', () => {
    const lower = { ...plates().lower, end: 1.5 };
    const f = run(row(plates({ lower })), wind(0, 0, 300));
    expect(f.status).toBe('fail');
    expect(f.note).toContain('P1: end distance 1 1/2", at least 1 3/4"');
    const upper = { ...plates().upper, edge: 1.5 };
    expect(run(row(plates({ upper })), wind(0, 0, 300)).note).toContain('B1: edge distance 1 1/2", at least 2"');
    // Half the full end distance is allowed with half the value: 7D = 3.5, 2.625 gives 0.75.
    const near = run(row(plates({ lower: { ...lower, end: 2.625 } })), wind(0, 0, 3000));
    expect(near.lines).toContainEqual(
      expect.objectContaining({ symbol: "Z'", substituted: expect.stringContaining('·0.75·') }),
    );
  });

  it('are turned by a level force, which the group must hold', () => {
    // 600 lb along the beam, 3.5 + 4.5 = 8 in between the groups: M = 4800. Post: 300 + 4800·1/2 = 2700 lb across the grain
    // on one bolt; Z' = 1027.02·1.6: 1.643. Its rows stand 2 in apart, 5D = 2-1/2 in needed.
    const f = run(row(plates({ takes: ['up', 'lengthwise'] })), wind(600, 0, 0));
    expect(f.status).toBe('fail');
    expect(f.ratio).toBeCloseTo(1.643, 3);
    expect(f.note).toContain('P1: spacing of rows 2", at least 2 1/2"');
    const one = { ...plates().upper, acrossGrain: 1 };
    expect(run(row(plates({ takes: ['lengthwise'], upper: one })), wind(60, 0, 0)).note).toContain(
      'one fastener cannot keep',
    );
  });
});

describe('lapped members', () => {
  const lags = (change: Partial<DrivenDowels> = {}): DrivenDowels => ({
    kind: 'lag-screws',
    takes: ['up', 'crosswise'],
    size: 'lag-3-8',
    length: 5,
    head: 'upper',
    axis: 'crosswise',
    plates: undefined,
    upper: { alongGrain: 2, acrossGrain: 1, spacingAlong: 2.5, spacingAcross: 0, end: 12, edge: 6 },
    lower: { alongGrain: 1, acrossGrain: 2, spacingAlong: 0, spacingAcross: 2.5, end: 4, edge: 1.5 },
    upperThickness: undefined,
    lowerThickness: undefined,
    ...change,
  });
  const side = { ...post, members: [bar({ section: joist() }), postBar()] };

  it('hold by lag screws in shear', () => {
    // 300 lb up on two: joist across its grain (Fes 6100·0.5^1.45/√0.375 = 3646), post along it (5600); Dr 0.265, ls 1.5,
    // lm 5 − 1.5 − 7/32; mode IV 142.9; Z' = 142.9·1.6. 150/228.6 = 0.6561.
    const f = run(row(lags()), { ...wind(0, 0, 300), structure: side });
    expect(f.status, f.note).toBe('pass');
    expect(f.ratio).toBeCloseTo(0.6561, 3);
  });

  it('hold by lag screws pulled and sheared together', () => {
    // W = 1800·0.5^1.5·0.375^0.75 = 304.97 lb/in; threads 3 in of 5, less the tip 7/32: 2.78125; W'p = 304.97·1.6·2.78125 =
    // 1357.1. 400 lb out and 300 up on two: V 150, N 200, R 250, α = 53.13°: 1357.1·228.6/(1357.1·0.36 + 228.6·0.64) =
    // 488.6; 250/488.6 = 0.5117, less than shear alone, which stays: the standard's curve.
    const f = run(row(lags()), { ...wind(0, 400, 300), structure: side });
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: "Zα'", value: expect.closeTo(488.6, 0) }));
  });

  it('do not hang on screws pulled from end grain', () => {
    const ledger = bar({ id: 'L1', mark: 'L1', role: 'ledger', section: joist() });
    const rafter: Member = bar({
      id: 'RF1',
      role: 'rafter',
      section: joist(),
      start: v(60, 0, 100),
      end: v(60, 120, 100),
    });
    const ties = [
      { part: 'RF1', along: 0 },
      { part: 'L1', along: 60 },
    ];
    const structure = {
      members: [ledger, rafter],
      joints: [joint({ ties, contact: { length: 0, width: 0 } })],
    };
    const column = { alongGrain: 1, acrossGrain: 2, spacingAlong: 0, spacingAcross: 2.5, end: 12, edge: 3 };
    const through = lags({
      takes: ['down', 'lengthwise'],
      head: 'lower',
      axis: 'lengthwise',
      upper: column,
      lower: column,
    });
    // Down only: Ceg 0.67, CD 0.9, all across grain: Z 129.83, Cg of 2 at 2-1/2 in across the ledger 0.98159 (area
    // 1.5·3D), Z' 76.85 each; 100 lb on two: 0.6506.
    const down = run(row(through), { structure, joints: { J1: [v(0, 0, -100), NONE, NONE] } });
    expect(down.ratio).toBeCloseTo(0.65063, 4);
    const pulled = run(row(through), { ...wind(0, 100, 0), structure });
    expect(pulled.status).toBe('fail');
    expect(pulled.note).toContain('end grain of RF1');
  });

  it('share their fasteners, along one grain as across the other', () => {
    const lower = { ...lags().lower, spacingAcross: 2 };
    const f = run(row(lags({ lower })), { ...wind(0, 0, 30), structure: side });
    expect(f.note).toContain('B1 and P1 share their fasteners');
  });

  it('ask for longer fasteners where they go too shallow', () => {
    const f = run(row(lags({ length: 3 })), { ...wind(0, 0, 30), structure: side });
    expect(f.note).toContain('3/8 in. lag screw goes 1 1/2" into P1');
    expect(f.note).toContain('use 3 1/4" long');
  });
});

describe('toe-nails', () => {
  const rafter: Member = bar({
    id: 'RF1',
    role: 'rafter',
    section: joist(),
    start: v(60, 0, 100),
    end: v(60, 120, 100),
  });
  const ties = [
    { part: 'RF1', along: 60 },
    { part: 'B1', along: 60 },
  ];
  const structure = { members: [bar(), rafter], joints: [joint({ ties })] };
  const nails: ConnectionPart = {
    kind: 'toe-nails',
    takes: ['up', 'lengthwise', 'crosswise'],
    size: 'common-16d',
    count: 3,
  };

  it('hold up by withdrawal and sideways in shear', () => {
    // p = 3.5·cos 30° − 3.5/3 = 1.8644; W'p = 1380·0.5^2.5·0.162·1.8644·0.67·1.6 = 78.99; 120/3/78.99 = 0.5064.
    expect(run(row(nails), { ...wind(0, 0, 120), structure }).ratio).toBeCloseTo(0.5064, 3);
    // With 60 lb sideways: Z' = 140.69·1.6·0.83 = 186.84; α = 63.43°; W'p·Z'/(W'p·cosα + Z'·sinα) = 73.06; 44.72/73.06.
    expect(run(row(nails), { ...wind(60, 0, 120), structure }).ratio).toBeCloseTo(0.6134, 3);
  });

  it('are not pulled from a post’s end', () => {
    const f = run(row(nails), wind(0, 0, 60));
    expect(f.note).toContain('end grain of P1');
  });
});

describe('wood bearing', () => {
  it('is as strong as the weaker member at its angle', () => {
    // 2000 lb level, along the beam's grain (Fc 925·1.6) and across the post's (Fc⊥ 625): on 3.5 x 1.5, 380.95 psi: 0.6095.
    const face: ConnectionPart = { kind: 'bearing', takes: ['lengthwise'], length: 3.5, width: 1.5 };
    expect(run(row(face), wind(2000, 0, 0)).ratio).toBeCloseTo(0.6095, 3);
  });
});

describe('what is not calculated', () => {
  it('is the anchor in concrete and the house', () => {
    const base = joint({
      kind: 'post-to-footing',
      ties: [
        { part: 'P1', along: 0 },
        { part: 'F1', along: 0 },
      ],
    });
    const f = run(row(plates()), {
      ...wind(0, 0, 300),
      structure: { members: [postBar()], joints: [base], footings: [pad()] },
    });
    expect(f).toMatchObject({ status: 'not-evaluated' });
    expect(f.note).toContain('concrete');
  });

  it('is a side load whose system nobody named', () => {
    const open = change(project(row(plates())), {
      cover: { ...gableProject.cover, lateral: { x: 'house', y: 'unknown' } },
    });
    const f = run(row(plates()), { ...wind(0, 0, 300), project: open });
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toContain('So far it fits');
  });

  it('is wood made wet: two rows across the grain lose most of their value', () => {
    const wet = { ...row(plates()), madeDry: false };
    const f = run(wet, wind(0, 0, 1000));
    expect(f.lines).toContainEqual(expect.objectContaining({ symbol: 'CM', value: 0.4 }));
    expect(
      run(wet, {
        ...wind(0, 0, 1000),
        structure: { ...post, members: [bar({ section: timber({ wet: true }) }), postBar()] },
      }).lines,
    ).toContainEqual(expect.objectContaining({ symbol: 'CM', value: 0.7 }));
  });
});
