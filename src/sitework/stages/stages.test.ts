import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jointDemands } from '../../checks/joints/demands.js';
import { deriveProject } from '../../derive.js';
import { read, STAGE_IDS } from '../../project/index.js';
import { contextOf } from '../../report/derived.js';
import { STAGES, stageCards } from './index.js';
import { settingOf } from './setting.js';

const cardsOf = (url: string) => {
  const project = read(readFileSync(new URL(url, import.meta.url), 'utf8')).value!;
  const d = deriveProject(project);
  const ctx = contextOf(d)!;
  return {
    project,
    d,
    cards: stageCards({ project, structure: d.structure!, lot: d.lot, demands: jointDemands(ctx) }),
  };
};
const example = (name: string) => cardsOf(`../../../examples/${name}/project.json`);
const len = (v: number) => `${v} in`;

describe('cards', () => {
  it('come in the order of the work, each stage once', () => {
    expect(Object.keys(STAGES)).toEqual([...STAGE_IDS]);
  });
  it('are the ones this project has: no new slab, no slab card', () => {
    expect(example('01-gable-scissor-kept-slab').cards.map((c) => c.id)).not.toContain('slab');
    expect(example('02-shed-snow-two-storey').cards.map((c) => c.id)).toContain('slab');
  });
  it.each([
    '01-gable-scissor-kept-slab',
    '02-shed-snow-two-storey',
    '04-free-gable-knee-braces',
    '05-l-shape-two-roofs',
    '06-gable-over-roof',
  ])('%s: each has lines to tick, a failure with its source and a caution; names of lines are unique', (name) => {
    for (const c of example(name).cards) {
      expect(c.items.length).toBeGreaterThan(3);
      expect(new Set(c.items.map((i) => i.id)).size).toBe(c.items.length);
      expect(c.failures.length).toBeGreaterThan(0);
      for (const f of c.failures) expect(f.source).not.toBe('');
      expect(c.cautions.length).toBeGreaterThan(0);
      for (const t of c.tables) for (const r of t.rows) expect(r).toHaveLength(t.heads.length);
      expect(JSON.stringify(c)).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
  it('carry the project’s own numbers: footings by depth and steel, joints by what they must hold', () => {
    const { cards, d } = example('04-free-gable-knee-braces');
    const footing = cards.find((c) => c.id === 'footing')!.tables[0]!.rows;
    expect(footing[0]!.slice(0, 3)).toEqual([
      'F1, F2, F3, F4, F5, F6',
      '3\'-6" square × 1\'-0", pier 2\'-0" dia.',
      '5\'-0"',
    ]);
    const ties = cards.find((c) => c.id === 'roof-framing')!.tables.find((t) => t.title === 'Ties and hangers')!;
    const demand = jointDemands(contextOf(d)!).find((j) => j.kind === 'truss-to-beam')!;
    const row = ties.rows.find((r) => r[0] === demand.mark)!;
    expect(row[4]).toBe(String(Math.ceil(demand.up.value)));
    expect(Number(row[2])).toBe(d.structure!.joints.filter((j) => j.mark === demand.mark).length);
  });
  it.each([
    '01-gable-scissor-kept-slab',
    '02-shed-snow-two-storey',
    '04-free-gable-knee-braces',
    '05-l-shape-two-roofs',
    '06-gable-over-roof',
  ])('%s: every joint of the structure but the fascia’s stands on one card', (name) => {
    const { cards, d } = example(name);
    const marks = new Set(d.structure!.joints.filter((j) => j.kind !== 'fascia-to-framing').map((j) => j.mark));
    const told = cards.flatMap((c) =>
      c.tables.filter((t) => t.heads[0] === 'Mark' && t.heads[4] === 'Up lb').flatMap((t) => t.rows.map((r) => r[0]!)),
    );
    expect([...told].sort()).toEqual([...marks].sort());
  });
  it('show what the log says of them', () => {
    const { cards } = cardsOf('../../../test/site/as-built.project.json');
    const footing = cards.find((c) => c.id === 'footing')!;
    expect(footing.result).toBe('partial');
    expect(footing.log[0]!.items.map((i) => i.item)).toEqual(['depth', 'clean']);
    expect(cards.find((c) => c.id === 'beams')!.result).toBe('open');
  });
});

describe('setting tolerances of trusses (training cards: 1-1/2 in for 6 ft of height, which is near a fiftieth; 1-1/2 in for 25 ft of length)', () => {
  const shape = { height: 72, span: 300 } as never;
  it('never come out looser than the cards: 72 over 50 is 1.44, rounded down to an eighth', () => {
    expect(settingOf([shape], len).map((t) => t.most)).toEqual(['0.25 in of plan', '1.375 in', '1.5 in']);
  });
});
