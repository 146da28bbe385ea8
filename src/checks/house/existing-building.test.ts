import { describe, expect, it } from 'vitest';
import { analyse } from '../../analysis/index.js';
import { makeGable, makeShed } from '../../analysis/testing.js';
import { makeRecorder } from '../../base/trace.js';
import { buildLoads } from '../../loads/index.js';
import type { CheckContext } from '../contract.js';
import { LOT } from '../testing.js';
import { existingBuilding } from './existing-building.js';

function contextOf(f: ReturnType<typeof makeShed>, lateral: 'house' | 'fixed-posts'): CheckContext {
  const project = { ...f.project, cover: { ...f.project.cover, lateral: { x: lateral, y: lateral } } };
  const loads = buildLoads(project, f.structure).value!;
  const effects = analyse(project, f.structure, loads).value!;
  return { project, structure: f.structure, loads, effects, lot: LOT };
}

describe('load added to the house', () => {
  it('is the ledger’s gravity load over its length, with the load that would make it 5 percent', () => {
    const ctx = contextOf(makeShed(), 'fixed-posts');
    const rec = makeRecorder();
    const f = existingBuilding.run({ id: 'house', path: '/house' }, ctx, rec);
    expect(f.status).toBe('not-evaluated');
    expect(f.note).toContain('House: verify');
    const step = (symbol: string): number => {
      const line = rec.lines.find((l) => l.kind === 'step' && l.symbol === symbol);
      return line?.kind === 'step' ? line.value : Number.NaN;
    };
    expect(step('w today')).toBeCloseTo(20 * step('w'), 6);
    // By hand: D + S on the wall from the analysed ledger joints, over the distance between the outer ones.
    const i = (id: string): number => ctx.loads.cases.findIndex((c) => c.id === id);
    const on = ctx.structure.joints.filter((j) => ctx.structure.walls.some((w) => w.id === j.ties.at(-1)!.part));
    const down = on.reduce((sum, j) => {
      const q = ctx.effects.joints.get(j.id)!.force;
      return sum - q[i('D')]!.z - q[i('S')]!.z;
    }, 0);
    const xs = on.map((j) => j.at.x);
    const run = Math.max(12, Math.max(...xs) - Math.min(...xs));
    expect(step('w')).toBeGreaterThanOrEqual((12 * down) / run - 1e-6);
    expect(Number.isNaN(step('V'))).toBe(true);
  });

  it('counts side load only where the house holds it', () => {
    const rec = makeRecorder();
    const f = existingBuilding.run({ id: 'house', path: '/house' }, contextOf(makeGable(), 'house'), rec);
    expect(f.note).toContain('side load');
    expect(existingBuilding.run({ id: 'house', path: '/house' }, contextOf(makeGable(), 'fixed-posts')).status).toBe(
      'not-applicable',
    );
  });
});
