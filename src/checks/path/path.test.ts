import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive } from '../../derive.js';
import type { Structure } from '../../structure/model.js';
import { JOINT_TRAITS } from '../joints/kinds.js';
import { pathBreaks } from './breaks.js';
import { loadPath, SOIL } from './graph.js';

const root = resolve(import.meta.dirname, '../../..');
const EXAMPLES = ['01-gable-scissor-kept-slab', '02-shed-snow-two-storey'];
const derived = (name: string) => {
  const d = derive(readFileSync(resolve(root, 'examples', name, 'project.json'), 'utf8'));
  return { project: d.project!, structure: d.structure! };
};
const without = (s: Structure, joint: string): Structure => ({ ...s, joints: s.joints.filter((j) => j.id !== joint) });

describe.each(EXAMPLES)('load path of %s', (name) => {
  const { project, structure } = derived(name);

  it('is closed as placed', () => {
    expect(pathBreaks(project, structure)).toEqual([]);
  });

  it('leads from every roof surface to the soil', () => {
    const path = loadPath(structure);
    for (const surface of structure.surfaces) {
      const seen = new Set<string>();
      const open = [surface.id];
      while (open.length > 0) {
        const id = open.pop()!;
        if (seen.has(id)) continue;
        seen.add(id);
        for (const link of path.below.get(id) ?? []) open.push(link.lower);
      }
      expect(seen.has(SOIL), surface.id).toBe(true);
    }
  });

  it('breaks when any one joint that carries is taken out, and says at which part', () => {
    const carrying = structure.joints.filter((j) => JOINT_TRAITS[j.kind].carries);
    expect(carrying.length).toBeGreaterThan(10);
    for (const joint of carrying) {
      const breaks = pathBreaks(project, without(structure, joint.id));
      expect(breaks.length, `${joint.id} taken out`).toBeGreaterThan(0);
      const parts = joint.ties.map((t) => t.part);
      expect(
        breaks.some((b) => parts.includes(b.part)),
        `${joint.id} taken out: ${breaks.map((b) => b.why).join('; ')}`,
      ).toBe(true);
    }
  });

  it('breaks when a footing is taken away', () => {
    const footing = structure.footings[0]!;
    const gone = { ...structure, footings: structure.footings.slice(1) };
    expect(
      pathBreaks(project, gone)
        .map((b) => b.why)
        .join('; '),
    ).toMatch(/no way down to the soil/);
    expect(footing.id).not.toBe('');
  });
});
