import { describe, expect, it } from 'vitest';
import type { FootingChoice } from '../../../project/model.js';
import { piecesOf } from '../../pieces/index.js';
import { place } from '../../place.js';
import { change, gableProject } from '../../testing.js';

const HOLE: FootingChoice = {
  kind: 'embedded-post',
  diameter: 18,
  bottom: 54,
  under: 8,
  backfill: 'concrete',
  fc: 2500,
  steel: 'none',
};
const placed = (pier: FootingChoice) =>
  place(change(gableProject, { choices: { ...gableProject.choices, footings: { pier } } }));

describe('a post set in the ground', () => {
  it('runs down into its hole', () => {
    const s = placed(HOLE).value!;
    const f = s.footings[0]!;
    const p = s.members.find((m) => m.id === 'P1')!;
    // Surface −5.25, bottom 54 below, 8 in of concrete under the foot: −51.25.
    expect(p.start.z).toBeCloseTo(-51.25, 9);
    expect(p.length).toBeCloseTo(88 + 51.25, 9);
    expect(f.top).toBeCloseTo(-5.25, 9);
    expect(f.bottom).toBeCloseTo(-59.25, 9);
    expect(f.bearingArea).toBeCloseTo(Math.PI * 81, 9);
    expect(f.concrete).toBeCloseTo(Math.PI * 81 * 54 - 5.5 * 5.5 * 46, 6);
    expect(f.embedded).toMatchObject({ width: 18, cast: true });
    expect(s.joints.find((j) => j.kind === 'post-to-footing')!.at.z).toBeCloseTo(-51.25, 9);
    const drawn = piecesOf(s, change(gableProject, {})).filter((x) => x.part === f.id);
    expect(drawn).toHaveLength(1);
  });
  it('in tamped soil bears on its plug and presses with its own diagonal', () => {
    const f = placed({ ...HOLE, backfill: 'soil' }).value!.footings[0]!;
    expect(f.top).toBeCloseTo(-51.25, 9);
    expect(f.concrete).toBeCloseTo(Math.PI * 81 * 8, 6);
    expect(f.embedded!.width).toBeCloseTo(5.5 * Math.SQRT2, 9);
    const bare = placed({ ...HOLE, backfill: 'soil', under: 0 }).value!.footings[0]!;
    expect(bare.bearingArea).toBeCloseTo(30.25, 9);
    expect(bare.concrete).toBe(0);
  });
  it('does not fit into a narrow or shallow hole', () => {
    expect(placed({ ...HOLE, diameter: 7 }).issues.map((i) => i.code)).toContain('hole-narrower-than-post');
    expect(placed({ ...HOLE, under: 60 }).issues.map((i) => i.code)).toContain('footing-without-size');
  });
});

describe('a post on the slab', () => {
  it('takes thickness and top of the slab there', () => {
    const s = placed({ kind: 'slab', fc: 2500, steel: 'none' }).value!;
    const f = s.footings[0]!;
    const slab = s.slabs[0]!;
    expect(f.onSlab).toEqual({ slab: slab.mark, thickness: slab.thickness });
    expect(f.top).toBeCloseTo(-5.25, 9);
    expect(f.concrete).toBe(0);
    expect(piecesOf(s, change(gableProject, {})).filter((x) => x.part === f.id)).toEqual([]);
  });
  it('needs a slab', () => {
    const bare = change(gableProject, {
      patio: { ...gableProject.patio, slabs: [] },
      choices: { ...gableProject.choices, footings: { pier: { kind: 'slab', fc: 2500, steel: 'none' } } },
    });
    expect(place(bare).issues.map((i) => i.code)).toContain('no-slab-here');
  });
});
