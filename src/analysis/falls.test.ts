/** A shed that falls along x is the shed that falls along y, turned: same parts, same forces, directions turned. */
import { describe, expect, it } from 'vitest';
import type { Vec2 } from '../base/vec.js';
import { buildLoads } from '../loads/index.js';
import type { Project, ShedFall } from '../project/model.js';
import { place } from '../structure/place.js';
import { change, shedProject } from '../structure/testing.js';
import { analyse } from './analyse.js';
import { BALANCE_LIMIT } from './balance.js';
import { footingEnvelope, jointEnvelope } from './effects.js';

/** Level ground and no house roof, so that nothing but the turned parts tells the directions apart. */
const level: Project = change(shedProject, {
  patio: { grade: { fall: 0 }, slabs: (old) => old.map((s) => ({ ...s, fall: 0 })) },
  house: { roofs: [], openings: [] },
  // Whole bays: frames are counted from `from`, which changes ends when the roof is turned.
  cover: { roofs: (old) => old.map((r) => ({ ...r, from: -112, to: 112 })) },
});

const TURNS: Readonly<Record<Exclude<ShedFall, '+y'>, { turn: (p: Vec2) => Vec2; sign: 1 | -1 }>> = {
  '-x': { turn: (p) => ({ x: -p.y, y: p.x }), sign: 1 },
  '+x': { turn: (p) => ({ x: p.y, y: -p.x }), sign: -1 },
};

function turned(p: Project, fall: Exclude<ShedFall, '+y'>): Project {
  const { turn, sign } = TURNS[fall];
  const ends = (r: { from: number; to: number }) =>
    sign > 0 ? { from: r.from, to: r.to } : { from: -r.to, to: -r.from };
  return change(p, {
    house: { walls: (old) => old.map((w) => ({ ...w, start: turn(w.start), end: turn(w.end) })) },
    patio: { slabs: (old) => old.map((s) => ({ ...s, outline: s.outline.map(turn) })) },
    cover: {
      beams: (old) => old.map((b) => ({ ...b, from: turn(b.from), to: turn(b.to) })),
      ledgers: (old) => old.map((l) => ({ ...l, ...ends(l) })),
      roofs: (old) => old.map((r) => (r.kind === 'shed' ? { ...r, ...ends(r), fall } : r)),
    },
  });
}

function run(p: Project) {
  const placed = place(p);
  const structure = placed.value!;
  expect(structure, placed.issues.map((i) => `${i.code} ${i.path}`).join(', ')).toBeDefined();
  const loads = buildLoads(p, structure).value!;
  const { value, issues } = analyse(p, structure, loads);
  expect(issues).toEqual([]);
  expect(value!.failure).toBeUndefined();
  for (const b of value!.balance) expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
  return { structure, loads, effects: value! };
}

describe('a shed turned with its wall', () => {
  const base = run(level);
  for (const fall of ['+x', '-x'] as const) {
    it(`falls along ${fall} with the same parts`, () => {
      const { structure } = run(turned(level, fall));
      const { turn } = TURNS[fall];
      const axes = (members: typeof structure.members, at: (p: Vec2) => Vec2): string[] =>
        members
          .map((m) => {
            const ends = [m.start, m.end].map((q) => {
              const p = at(q);
              return `${p.x.toFixed(6)},${p.y.toFixed(6)},${q.z.toFixed(6)}`.replaceAll('-0.000000', '0.000000');
            });
            return `${m.role} ${ends.sort().join(' – ')} ${m.notch.toFixed(6)}`;
          })
          .sort();
      const same = axes(structure.members, (p) => p);
      expect(same).toEqual(axes(base.structure.members, turn));
      expect(structure.roofs[0]).toMatchObject({ ridgeAxis: 'y' });
    });

    it(`falls along ${fall} with the same forces`, () => {
      const { loads, effects, structure } = run(turned(level, fall));
      expect(loads.cases.length).toBe(base.loads.cases.length);
      for (const f of structure.footings) {
        const a = footingEnvelope(effects, f.id, loads.combinations)!;
        const b = footingEnvelope(base.effects, f.id, base.loads.combinations)!;
        expect(a.down.value, f.id).toBeCloseTo(b.down.value, 4);
        expect(a.up.value, f.id).toBeCloseTo(b.up.value, 4);
      }
      // Pull along the fall on the house: x of the turned roof is y of the first.
      const most = (r: ReturnType<typeof run>, axis: 'x' | 'y'): number =>
        Math.max(
          ...r.structure.joints
            .filter((j) => j.kind === 'ledger-to-house')
            .map((j) => jointEnvelope(r.effects, j.id, r.loads.combinations)![axis].value),
        );
      expect(most({ structure, loads, effects }, 'x')).toBeCloseTo(most(base, 'y'), 4);
      expect(most(base, 'y')).toBeGreaterThan(0);
    });
  }

  it('is refused when its ledger faces another way', () => {
    const wrong = change(turned(level, '+x'), {
      cover: { roofs: (old) => old.map((r) => ({ ...r, fall: '-x' as const })) },
    });
    const { value, issues } = place(wrong);
    expect(value).toBeUndefined();
    expect(issues.find((i) => i.code === 'ledger-across-fall')?.expected).toBe('"fall": "+x"');
  });
});
