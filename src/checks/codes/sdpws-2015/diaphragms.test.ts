import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../../base/trace.js';
import {
  allowableUnitShear,
  CANTILEVER,
  cantileverDeflection,
  findCell,
  gravityFactor,
  type Nailed,
  spanAspect,
  TABLE_4_2,
} from './index.js';

/**
 * Allowable shear, plf, as printed in an industry construction guide (form E30V, 2011, Table 38; read): boundary
 * spacing 6, 4, 2-1/2, 2; unblocked case 1, other cases.
 */
const GUIDE: readonly (readonly [string, string, number, 2 | 3, readonly number[]])[] = [
  ['structural-1', '6d', 5 / 16, 2, [185, 250, 375, 420, 165, 125]],
  ['structural-1', '6d', 5 / 16, 3, [210, 280, 420, 475, 185, 140]],
  ['structural-1', '8d', 3 / 8, 2, [270, 360, 530, 600, 240, 180]],
  ['structural-1', '8d', 3 / 8, 3, [300, 400, 600, 675, 265, 200]],
  ['structural-1', '10d', 15 / 32, 2, [320, 425, 640, 730, 285, 215]],
  ['structural-1', '10d', 15 / 32, 3, [360, 480, 720, 820, 320, 240]],
  ['sheathing', '6d', 5 / 16, 2, [170, 225, 335, 380, 150, 110]],
  ['sheathing', '6d', 5 / 16, 3, [190, 250, 380, 430, 170, 125]],
  ['sheathing', '6d', 3 / 8, 2, [185, 250, 375, 420, 165, 125]],
  ['sheathing', '6d', 3 / 8, 3, [210, 280, 420, 475, 185, 140]],
  ['sheathing', '8d', 3 / 8, 2, [240, 320, 480, 545, 215, 160]],
  ['sheathing', '8d', 3 / 8, 3, [270, 360, 540, 610, 240, 180]],
  ['sheathing', '8d', 7 / 16, 2, [255, 340, 505, 575, 230, 170]],
  ['sheathing', '8d', 7 / 16, 3, [285, 380, 570, 645, 255, 190]],
  ['sheathing', '8d', 15 / 32, 2, [270, 360, 530, 600, 240, 180]],
  ['sheathing', '8d', 15 / 32, 3, [300, 400, 600, 675, 265, 200]],
  ['sheathing', '10d', 15 / 32, 2, [290, 385, 575, 655, 255, 190]],
  ['sheathing', '10d', 15 / 32, 3, [325, 430, 650, 735, 290, 215]],
  ['sheathing', '10d', 19 / 32, 2, [320, 425, 640, 730, 285, 215]],
  ['sheathing', '10d', 19 / 32, 3, [360, 480, 720, 820, 320, 240]],
];

const eightPenny: Nailed = {
  grade: 'sheathing',
  thickness: 0.437,
  D: 0.131,
  length: 2.5,
  framing: 1.5,
  blocked: false,
  boundary: 6,
  edge: 6,
};

describe('Table 4.2', () => {
  it.each(GUIDE)('%s %s %s, %s-inch framing: half of the earthquake column is the published allowable', (...g) => {
    const [grade, nail, thickness, framing, allowed] = g;
    const row = TABLE_4_2.find(
      (r) => r.grade === grade && r.nail === nail && r.thickness === thickness && r.framing === framing,
    )!;
    const cells = [...row.blocked, row.case1, row.otherCases];
    // The guide rounds 2-1/2 plf to 5.
    expect(cells.map((c) => Math.abs(c.seismic / 2 - allowed[cells.indexOf(c)]!) <= 2.5)).toEqual(
      cells.map(() => true),
    );
  });

  it('has a row for each of the guide, and no other', () => expect(TABLE_4_2.length).toBe(GUIDE.length));

  it('wind is 1.4 times earthquake, rounded to 5 plf', () => {
    for (const r of TABLE_4_2)
      for (const c of [...r.blocked, r.case1, r.otherCases])
        expect(Math.abs(c.wind - 1.4 * c.seismic)).toBeLessThanOrEqual(5);
  });
});

describe('reading the table', () => {
  it('takes the unblocked value that holds for any layout', () => {
    const f = findCell(eightPenny)!;
    expect(f.cell.seismic).toBe(340);
    expect(f.where).toContain('cases 2 to 6');
  });

  it('takes a blocked column only when the panel edges keep its boundary spacing', () => {
    expect(findCell({ ...eightPenny, blocked: true, boundary: 4 })!.cell.seismic).toBe(510);
    expect(findCell({ ...eightPenny, blocked: true, boundary: 4, edge: 4 })!.cell.seismic).toBe(680);
  });

  it('never uses columns closer than 4 in on 2-inch framing', () => {
    expect(findCell({ ...eightPenny, blocked: true, boundary: 2, edge: 2 })!.cell.seismic).toBe(680);
    expect(findCell({ ...eightPenny, blocked: true, boundary: 2, edge: 2, framing: 2.5 })!.cell.seismic).toBe(1290);
  });

  it('falls to a thinner row or nail that is reached, and to none', () => {
    expect(findCell({ ...eightPenny, thickness: 0.375 })!.cell.seismic).toBe(320);
    expect(findCell({ ...eightPenny, D: 0.113, length: 2.5 })!.row.nail).toBe('6d');
    expect(findCell({ ...eightPenny, edge: 8 })).toBeUndefined();
    expect(findCell({ ...eightPenny, D: 0.1 })).toBeUndefined();
    expect(findCell({ ...eightPenny, thickness: 1.3, length: 2.5 })?.row.nail).toBeUndefined();
  });
});

describe('allowable unit shear', () => {
  const found = findCell(eightPenny)!;
  it('is half of the nominal value by hazard', () => {
    expect(allowableUnitShear(found, 'wind', 1.6, 0.5, '2015')).toBe(237.5);
    expect(allowableUnitShear(found, 'earthquake', 1.6, 0.5, '2015')).toBe(170);
  });
  it('falls with a longer load and lighter wood', () => {
    expect(allowableUnitShear(found, 'other', 1.15, 0.5, '2015')).toBeCloseTo((170 * 1.15) / 1.6, 9);
    expect(allowableUnitShear(found, 'wind', 1.6, 0.42, '2015')).toBeCloseTo(237.5 * 0.92, 9);
    expect(gravityFactor(0.55, '2015')).toBe(1);
  });
  it('of the 2021 edition is its one column over 2.0 and 2.8', () => {
    expect(allowableUnitShear(found, 'wind', 1.6, 0.5, '2021')).toBe(237.5);
    expect(allowableUnitShear(found, 'earthquake', 1.6, 0.5, '2021')).toBeCloseTo(475 / 2.8, 9);
  });
  it('says in the trace what makes the number', () => {
    const rec = makeRecorder();
    allowableUnitShear(found, 'wind', 1.6, 0.42, '2021', rec);
    const last = rec.lines.at(-1)!;
    expect(last.kind === 'step' && last.substituted).toBe('475 / 2 · 0.92');
    expect(last.kind === 'step' && last.clause).toBe('SDPWS 2021 4.1.4');
  });
});

describe('movement of the free end', () => {
  it('is the even load on a cantilever: chords w·L⁴/(8·E·A·d²/2), sheathing w·L²/(2·G·d), in inches and pounds', () => {
    const [v, L, W, E, A, Ga] = [100, 15, 18, 1.6e6, 50, 10];
    const l = 12 * L;
    const d = 12 * W;
    const w = (v * W) / l; // lb/in: v·W pounds over the length
    const bend = (w * l ** 4) / (8 * E * A * (d * d) * 0.5);
    const shear = (w * l ** 2) / (2 * Ga * 1000 * d);
    expect(cantileverDeflection(v, L, W, E, A, Ga, '2015')).toBeCloseTo(bend + shear, 9);
  });
});

it('limits of shape', () => {
  expect(spanAspect(true)).toBe(4);
  expect(spanAspect(false)).toBe(3);
  expect(CANTILEVER).toEqual({ aspect: 1, length: 35 });
});
