import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildLoads } from '../loads/index.js';
import { read } from '../project/index.js';
import { place } from '../structure/place.js';
import { analyse, BALANCE_LIMIT, footingEnvelope, jointEnvelope } from './index.js';

const EXAMPLES = ['01-gable-scissor-kept-slab', '02-shed-snow-two-storey'];

describe.each(EXAMPLES)('example %s from file to forces', (name) => {
  const text = readFileSync(new URL(`../../examples/${name}/project.json`, import.meta.url), 'utf8');
  const project = read(text).value!;
  const structure = place(project).value!;
  const loads = buildLoads(project, structure).value!;
  const out = analyse(project, structure, loads);
  const effects = out.value!;

  it('works out every part', () => {
    expect(effects.failure).toBeUndefined();
    expect(out.issues).toEqual([]);
    for (const m of structure.members) {
      if (m.role === 'beam' || m.role === 'post' || m.role === 'rafter')
        expect(effects.members.has(m.id), m.id).toBe(true);
    }
    for (const j of structure.joints) {
      if (j.kind !== 'beam-splice' && j.kind !== 'fascia-to-framing') expect(effects.joints.has(j.id), j.id).toBe(true);
    }
    for (const f of structure.footings) expect(effects.footings.has(f.id), f.id).toBe(true);
  });

  it('closes the balance of every case', () => {
    for (const b of effects.balance) {
      expect(b.errorApplied, b.case).toBeLessThan(BALANCE_LIMIT);
      expect(b.errorReactions, b.case).toBeLessThan(BALANCE_LIMIT);
    }
  });

  it('presses and lifts every footing and framing joint under some combination', () => {
    for (const f of structure.footings) {
      const e = footingEnvelope(effects, f.id, loads.combinations)!;
      expect(e.down.value).toBeGreaterThan(0);
      expect(Number.isFinite(e.up.value)).toBe(true);
    }
    for (const j of structure.joints) {
      const e = jointEnvelope(effects, j.id, loads.combinations);
      if (e && /^(rafter|truss)/.test(j.kind)) expect(e.up.value, j.id).toBeGreaterThan(0);
    }
  });
});

describe('variants of the shed example placed and closed', () => {
  const text = readFileSync(new URL('../../examples/02-shed-snow-two-storey/project.json', import.meta.url), 'utf8');
  const project = read(text).value!;
  const { cover } = project;
  const roof = cover.roofs[0]!;
  const low = cover.beams[0]!;
  if (roof.kind !== 'shed') throw new Error('the example is a shed');

  const closes = (changed: typeof cover): void => {
    const p = { ...project, cover: changed };
    const structure = place(p).value!;
    const loads = buildLoads(p, structure).value!;
    const out = analyse(p, structure, loads);
    expect(out.value!.failure).toBeUndefined();
    expect(out.issues).toEqual([]);
    expect(Math.max(...out.value!.balance.map((b) => b.errorApplied))).toBeLessThan(BALANCE_LIMIT);
  };

  it('a beam spliced over its middle post', () => {
    closes({ ...cover, beams: [{ ...low, splices: [120] }] });
  });

  it('a high beam in place of the ledger: free-standing, rafters on two beams', () => {
    const posts = low.posts.map((p, i) => ({ ...p, mark: `P${i + 11}`, footingMark: `F${i + 11}` }));
    const high = { ...low, mark: 'B2', from: { ...low.from, y: 14 }, to: { ...low.to, y: 14 }, posts };
    const free = { ...roof, high: { beam: 'B2' }, highOverhang: 5 };
    closes({ ...cover, attachment: 'free-standing', ledgers: [], beams: [low, high], roofs: [free] });
  });
});
