import { describe, expect, it } from 'vitest';
import { USUAL_BUYING } from '../../project/complete/buying.js';
import type { Project } from '../../project/model.js';
import { place } from '../../structure/index.js';
import { change, gableProject, shedProject } from '../../structure/testing.js';
import { steelOf } from '../cuts/steel.js';
import type { Line } from '../model.js';
import { pourOrders } from '../orders/concrete.js';
import { panelLengths } from '../roofing/metal.js';
import { takeOff } from '../take-off.js';

const lines = (p: Project): readonly Line[] => takeOff(p, place(p, {}).value!).lines;
const find = (list: readonly Line[], words: string): Line => {
  const l = list.find((x) => x.item.includes(words));
  if (!l) throw new Error(`no line ${words} in ${list.map((x) => x.item).join(', ')}`);
  return l;
};
const roofed = (pitch: number, finish: Record<string, unknown> = {}): Project =>
  change(gableProject, {
    cover: {
      roofs: (old) => [{ ...old[0]!, pitch: Math.atan(pitch / 12), finish: { ...old[0]!.finish, ...finish } }],
    },
  });

describe('roofing', () => {
  const p = roofed(5, { covering: 'asphalt-shingle', underlayment: 'felt-15' });
  const s = place(p, {}).value!;
  const roof = s.roofs[0]!;
  const [across, along] = [(roof.max.x - roof.min.x) / 12, (roof.max.y - roof.min.y) / 12];
  const slope = Math.hypot(1, 5 / 12);
  const list = lines(p);

  it('by hand: squares, bundles, starter, caps, nails', () => {
    const area = across * along * slope;
    const shingles = find(list, 'asphalt shingles');
    expect(shingles.net).toBeCloseTo(area / 100, 6);
    expect(shingles.buy.quantity).toBe(Math.ceil((area / 100) * 1.1 * 3 - 1e-6));
    // Eaves along the house's depth on both sides, rakes only at the free end: the other butts the wall.
    expect(find(list, 'starter').net).toBeCloseTo(2 * along + across * slope, 6);
    expect(find(list, 'caps').net).toBeCloseTo(along, 6);
    expect(find(list, 'drip edge').net).toBeCloseTo(2 * along + across * slope, 6);
    expect(find(list, 'roofing nails').net).toBeCloseTo((1.5 * area) / 100, 6);
  });
  it('steps up the wall, one piece every 5 in, and a kick-out at each foot', () => {
    const step = (12 * across * slope) / 5;
    expect(find(list, 'step flashing').net).toBe(Math.ceil(step - 1e-9));
    expect(find(list, 'kick-out').buy.quantity).toBe(2);
  });
  it('underlayment is doubled under 4 in 12 and not at 4 in 12', () => {
    const felt = (pitch: number): Line =>
      find(lines(roofed(pitch, { covering: 'asphalt-shingle', underlayment: 'felt-15' })), 'felt');
    const squares = (pitch: number): number => (across * along * Math.hypot(1, pitch / 12)) / 100;
    expect(felt(4).net).toBeCloseTo(squares(4), 6);
    expect(felt(3.5).net).toBeCloseTo(2 * squares(3.5), 6);
    expect(felt(3.5).note).toContain('Two layers');
    expect(felt(4).note).toBe('');
  });
  it('metal panels are as long as the roof in each strip', () => {
    const triangle = {
      outline: [
        { x: 0, y: 0 },
        { x: 64, y: 0 },
        { x: 0, y: 64 },
      ],
    };
    expect(panelLengths(triangle, 16)).toEqual([65, 49, 33, 17]);
    const rectangle = {
      outline: [
        { x: 0, y: 0 },
        { x: 40, y: 0 },
        { x: 40, y: 99.5 },
        { x: 0, y: 99.5 },
      ],
    };
    expect(panelLengths(rectangle, 16)).toEqual([101, 101, 101]);
  });
});

describe('gutter', () => {
  it('runs along the eaves and comes down to the ground', () => {
    const list = lines(roofed(5, { gutter: true }));
    const s = place(roofed(5), {}).value!;
    const along = (s.roofs[0]!.max.y - s.roofs[0]!.min.y) / 12;
    const gutter = list.find((l) => l.item === 'gutter')!;
    expect(gutter.net).toBeCloseTo(2 * along, 6);
    expect(gutter.buy.quantity).toBe(Math.ceil((2 * along * 1.05) / 10));
    const down = list.find((l) => l.item === 'downspout')!.net;
    expect(down).toBeGreaterThan(2 * 7);
    expect(down).toBeLessThan(2 * 12);
    expect(lines(roofed(5, { gutter: false })).some((l) => l.group === 'gutter')).toBe(false);
  });
});

describe('steel', () => {
  const [footing] = place(gableProject, {}).value!.footings;
  const f = { ...footing!, steel: '(3) #4 each way in pad; (4) #5 vertical with #3 ties at 10 in in pier' };
  it('is read from its words: bars both ways, uprights, ties', () => {
    const { cuts, left } = steelOf(f);
    expect(left).toBe('');
    const by = (item: string) => cuts.filter((c) => c.spec.item === item).map((c) => c.cut.length);
    expect(by('#4 bar')).toEqual(Array(6).fill(f.size - 6));
    expect(by('#5 bar')).toEqual(Array(4).fill(f.top - f.bottom - 5));
    expect(by('#3 bar').length).toBe(Math.floor((f.top - f.bottom - f.padThickness - 2) / 10) + 1);
  });
  it('what it does not know it leaves open, in the take-off too', () => {
    expect(steelOf({ ...f, steel: '(2) #4 hoops welded' }).left).toContain('hoops');
    const p = change(gableProject, {
      choices: { footings: (old) => ({ pier: { ...old.pier!, steel: 'mesh 6x6' } as never }) },
    });
    expect(takeOff(p, place(p, {}).value!).open.some((o) => o.what.includes('mesh 6x6'))).toBe(true);
  });
});

describe('concrete', () => {
  const structure = place(gableProject, {}).value!;
  const order = (concrete: Partial<typeof USUAL_BUYING.concrete>) =>
    pourOrders(
      { ...gableProject, buying: { ...USUAL_BUYING, concrete: { ...USUAL_BUYING.concrete, ...concrete } } },
      structure,
    )[0]!;
  it('gross is net and the allowance; bags and yards hold it, one fewer does not', () => {
    const o = order({});
    expect(o.gross).toBeCloseTo(1.1 * o.net, 9);
    expect(o.net).toBeCloseTo(
      o.parts.reduce((s, p) => s + p.volume, 0),
      9,
    );
    for (const b of o.bags) {
      expect(b.bags * b.holds).toBeGreaterThanOrEqual(o.gross - 1e-6);
      expect((b.bags - 1) * b.holds).toBeLessThan(o.gross);
    }
    expect(o.yards * 27).toBeGreaterThanOrEqual(o.gross);
    expect((o.yards - 0.25) * 27).toBeLessThan(o.gross);
  });
  it('says what the plant’s loads make of it', () => {
    expect(order({}).load).toContain('Ask the plant');
    expect(order({ leastLoad: 10 }).load).toContain('least load of 10');
    expect(order({ leastLoad: 0.5, shortLoad: 10 }).load).toContain('short load');
    expect(order({ leastLoad: 0.5, shortLoad: 0.5 }).load).toContain('No short load');
  });
  it('ready-mix is bought by the quarter yard, bags whole', () => {
    const p = {
      ...gableProject,
      buying: { ...USUAL_BUYING, concrete: { ...USUAL_BUYING.concrete, by: 'ready-mix' as const } },
    };
    const l = find(lines(p), 'ready-mix');
    expect(l.buy.unit).toBe('cu yd');
    expect((4 * l.buy.quantity) % 1).toBe(0);
    expect(find(lines(gableProject), 'lb bag').buy.quantity % 1).toBe(0);
  });
});

describe('stock lengths and waste of the project', () => {
  it('take the place of the usual ones', () => {
    const buying = {
      ...USUAL_BUYING,
      stock: [{ size: '2x10', lengths: [240] }],
      waste: [{ of: 'concrete' as const, fraction: 0.2, from: 'rocky ground' }],
    };
    const list = lines({ ...shedProject, buying });
    for (const l of list.filter((x) => x.item.startsWith('2x10x'))) expect(l.item).toMatch(/^2x10x20 /);
    const mix = find(list, 'lb bag');
    expect(mix.waste).toEqual({ fraction: 0.2, rule: '20 % allowance', source: 'rocky ground' });
  });
  it('wood longer than any board is a special order, told on its line', () => {
    const buying = { ...USUAL_BUYING, stock: [{ size: '2x12', lengths: [96] }] };
    const list = lines({ ...shedProject, buying });
    const special = list.filter((l) => l.item.startsWith('2x12') && l.note.includes('special order'));
    expect(special.length).toBeGreaterThan(0);
  });
  it('glulams are ordered one by one, never two cut from one', () => {
    const t = takeOff(gableProject, place(gableProject, {}).value!);
    const g = t.cuts.find((x) => x.kind === 'engineered')!;
    expect(g.plan.boards.length).toBe(g.cuts.length);
    for (const b of g.plan.boards) expect(b.stock.length - b.cuts[0]!.length).toBeLessThan(12);
  });
});
