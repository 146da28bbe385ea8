/** Footing steel and the house beside it: bars by hand, and printed as they are placed. */
import { describe, expect, it } from 'vitest';
import { besideHouse } from '../../checks/footings/beside-house.js';
import { laidSteel } from '../../checks/footings/laid-steel.js';
import { deriveProject, drawingInput } from '../../index.js';
import { place } from '../../structure/place.js';
import { gableProject } from '../../structure/testing.js';
import { sheetContext } from './context.js';
import { footingSteelDetails } from './details/footing-steel.js';
import { steelNotes, steelSchedule } from './steel-words.js';

const structure = place(gableProject, {}).value!;
const base = structure.footings[0]!;
const f = {
  ...base,
  embedded: undefined,
  onSlab: undefined,
  round: false,
  size: 36,
  padThickness: 12,
  pierDiameter: 16,
  top: 0,
  bottom: -54,
  fc: 2500,
  steel: '(3) #4 each way in pad; (4) #5 vertical with #3 ties at 10 in in pier',
};

describe('bars as they lie', () => {
  const { mat, uprights, ties } = laidSteel(f);
  it('by hand: 3 in to soil, 2 in at the top, hook of 12 db with a bend of 6 db (ACI 318-14 25.3, recalled)', () => {
    expect(mat).toMatchObject({ count: 3, bar: 4, length: 30, spacing: 14.75 });
    expect(uprights).toMatchObject({ count: 4, bar: 5, ring: 8 - 3 - 0.375 - 0.3125, foot: -51, head: -2, height: 49 });
    expect(uprights!.hook).toMatchObject({ leg: 10, bend: 3.75, room: 9, need: 10.5, fits: true });
    expect(ties).toMatchObject({ bar: 3, count: 5, outside: 10, at: [-2, -12, -22, -32, -42] });
  });
  it('a leg too long for its pad is said, not shortened', () => {
    // Toward the corners, 14 in of reach take 14·cos 45° + 5/16 = 10.21 in to a side: a pad of 26.43 in.
    expect(laidSteel({ ...f, size: 26.3 }).uprights!.hook!.fits).toBe(false);
    expect(laidSteel({ ...f, size: 26.5 }).uprights!.hook!.fits).toBe(true);
  });
  it('without a pad the uprights are straight; words it does not know lay no bar', () => {
    expect(laidSteel({ ...f, padThickness: 0, size: 16, round: true }).uprights!.hook).toBeUndefined();
    expect(laidSteel({ ...f, steel: 'mesh' })).toEqual({ mat: undefined, uprights: undefined, ties: undefined });
  });
});

describe('on the sheets', () => {
  const ctx = sheetContext(drawingInput(deriveProject(gableProject))!, 'ARCH D');
  const placed = ctx.input.structure.footings[0]!;
  const steel = laidSteel(placed);
  it('draws every bar of the plan and names leg, cover and count in detail, schedule and notes', () => {
    const detail = footingSteelDetails(ctx)[0]!;
    const upright = steel.uprights!;
    const dots = detail.views[1]!.items.filter((p) => p.kind === 'circle' && p.role === 'bar');
    expect(dots).toHaveLength(upright.count);
    const text = detail.views[0]!.keys.map((k) => k.text).join(' ');
    expect(text).toContain(`leg ${ctx.len(upright.hook!.leg)}`);
    expect(text).toContain(`(${steel.ties!.count}) #${steel.ties!.bar} rings`);
    expect(JSON.stringify(steelSchedule(ctx))).toContain(`(${upright.count}) #${upright.bar}`);
    expect(steelNotes(ctx)[0]).toContain('A615 grade 60');
  });
});

describe('beside the house', () => {
  const wall = { ...structure.walls[0]!, start: { x: -200, y: 0 }, end: { x: 200, y: 0 } };
  const at = (y: number) =>
    besideHouse({ ...structure, grade: { z0: 0, gx: 0, gy: 0 }, walls: [wall], footings: [{ ...f, at: { x: 0, y } }] });
  it('by hand: 9 in from the wall and 54 in deep needs a house footing 45 in deep', () => {
    expect(at(27)[0]).toMatchObject({ clear: 9, depth: 54, least: 45 });
  });
  it('as far off as it is deep, it is left alone', () => {
    expect(at(18 + 53)).toHaveLength(1);
    expect(at(18 + 54)).toHaveLength(0);
  });
});
