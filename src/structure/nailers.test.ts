/** The nailer at the house wall against what a tape would find: by hand from pitch, plane and board size. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { derive, drawingInput } from '../derive.js';
import { nailerLevel, nailerUnderside, placeNailer } from './nailers.js';
import { tieLevels } from './rules/tie-level.js';

const examples = resolve(import.meta.dirname, '../../examples');
const inputOf = (name: string) => drawingInput(derive(readFileSync(join(examples, name, 'project.json'), 'utf8')))!;
const gable = inputOf('01-gable-scissor-kept-slab');
const shed = inputOf('05-l-shape-two-roofs');
const nailerOf = ({ project, structure }: typeof gable) =>
  placeNailer(project.cover.houseTies![0]!, project, structure)!;

describe('nailer under a gable', () => {
  const [left, right] = nailerOf(gable).pieces;
  it('is two pieces that meet under the ridge and rise 4/12, 3 ft over the 9 ft from the end fastener', () => {
    expect(nailerOf(gable).pieces).toHaveLength(2);
    // Board ends 2 in past the fasteners at 9 ft.
    expect(left!.from.x).toBeCloseTo(-110, 9);
    expect(left!.to.x).toBeCloseTo(0, 9);
    expect(right!.to.x).toBeCloseTo(110, 9);
    expect(left!.to.z).toBeCloseTo(right!.from.z, 9);
    expect(left!.to.z - left!.from.z).toBeCloseTo(110 / 3, 9);
    // A plan reviewer's own reckoning: 11'-10 3/8" at the ridge.
    expect(left!.to.z).toBeCloseTo(142.375, 1);
  });
  it('has cut lengths from long point to long point: run / cos + depth · tan', () => {
    expect(left!.length).toBeCloseTo(110 * Math.sqrt(10 / 9) + 5.5 / 3, 9);
  });
  it('stands square to the wall: nothing to bevel', () => expect(left!.bevel).toBeCloseTo(0, 9));
});

describe('nailer under a shed that falls along the wall', () => {
  it('rises 1/12 under the sheathing, whose top is 8 ft 0 3/16 in up at the end fastener over B1', () => {
    const [p, ...more] = nailerOf(shed).pieces;
    expect(more).toEqual([]);
    // 13 ft 6 in between the end fasteners and 2 in past each.
    expect(p!.to.x - p!.from.x).toBeCloseTo(166, 6);
    expect(p!.to.z - p!.from.z).toBeCloseTo(166 / 12, 6);
    // A plan reviewer read the roof plane, top of the 19/32 in sheathing, at 8'-0 3/16"; a tape tells 1/16 in.
    const under = 96.1875 - (19 / 32) * Math.sqrt(1 + 1 / 144);
    expect(Math.abs(p!.from.z + 2 / 12 - under)).toBeLessThan(1 / 16);
    const low = nailerUnderside(nailerOf(shed), -1000, 1000);
    expect(low).toBeCloseTo(p!.from.z - 7.25 * Math.sqrt(1 + 1 / 144), 6);
  });
});

describe('a height stated beside a nailer', () => {
  const told = (level: number | undefined) => {
    const [t] = gable.project.cover.houseTies!;
    const cover = { ...gable.project.cover, houseTies: [{ ...t!, level }] };
    return tieLevels({ project: { ...gable.project, cover }, structure: gable.structure, roofs: [], site: {} });
  };
  it('is told where it is not that of the sheathing', () => {
    expect(told(102).map((i) => [i.code, i.severity, i.path])).toEqual([
      ['tie-level-off-deck', 'warning', '/cover/houseTies/0/level'],
    ]);
  });
  it('is let be where it agrees or is left out', () => {
    expect(told(nailerLevel(nailerOf(gable)))).toEqual([]);
    expect(told(undefined)).toEqual([]);
  });
});
