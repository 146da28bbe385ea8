import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive } from '../../derive.js';
import type { Structure } from '../../structure/model.js';
import { place } from '../../structure/place.js';
import { change, houseEndsProject } from '../../structure/testing.js';
import { JOINT_TRAITS } from '../joints/kinds.js';
import { pathBreaks } from './breaks.js';
import { loadPath, SOIL } from './graph.js';

const root = resolve(import.meta.dirname, '../../..');
const read = (name: string) => derive(readFileSync(resolve(root, 'examples', name, 'project.json'), 'utf8'));
/** The example that is broken on purpose stands nowhere. */
const EXAMPLES = readdirSync(resolve(root, 'examples')).filter((name) => read(name).structure !== undefined);
const derived = (name: string) => {
  const d = read(name);
  return { project: d.project!, structure: d.structure! };
};
const without = (s: Structure, joint: string): Structure => ({ ...s, joints: s.joints.filter((j) => j.id !== joint) });

/** Two yard posts under B2 besides its end at the wall. */
function placedEnds() {
  const [b1, b2] = houseEndsProject.cover.beams;
  const [post] = b2!.posts;
  const more = { ...post!, mark: 'P9', footingMark: 'F9', at: 90 };
  const project = change(houseEndsProject, { cover: { beams: [b1!, { ...b2!, posts: [more, post!] }] } });
  return { project, structure: place(project).value! };
}

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

  it('breaks when the house lets go of a beam end it is stated to hold', () => {
    for (const line of project.cover.beams)
      for (const end of [line.ends?.start, line.ends?.end]) {
        if (!end) continue;
        const joint = structure.joints.find((j) => j.path === end.path && j.kind !== 'post-to-house')!;
        const whys = pathBreaks(project, without(structure, joint.id)).filter((b) => b.mark === line.mark);
        expect(whys.map((b) => b.why).join('; ')).toMatch(/held by|not tied to/);
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

it('breaks at a stated beam end though the beam has posts enough', () => {
  const { project, structure } = placedEnds();
  const joint = structure.joints.find((j) => j.kind === 'beam-to-wall')!;
  expect(pathBreaks(project, structure)).toEqual([]);
  const breaks = pathBreaks(project, without(structure, joint.id));
  expect(breaks.map((b) => b.why)).toEqual([
    'B2 is not tied to the house wall at its start, where the file says the house holds it',
  ]);
});
