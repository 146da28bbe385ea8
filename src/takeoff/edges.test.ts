import { describe, expect, it } from 'vitest';
import { place } from '../structure/index.js';
import { gableProject, shedProject } from '../structure/testing.js';
import { hipProject } from '../structure/testing-hip.js';
import { type EdgeKind, lengthOf, type RoofEdge, roofEdges } from './edges.js';

const edges = (p: Parameters<typeof place>[0]): RoofEdge[] => roofEdges(place(p, {}).value!);
const count = (list: readonly RoofEdge[], kind: EdgeKind): number => list.filter((e) => e.kind === kind).length;

describe('roofEdges', () => {
  it('a gable against the house: two eaves, a ridge, two rakes in the open and two against the wall', () => {
    const e = edges(gableProject);
    expect([count(e, 'eave'), count(e, 'ridge'), count(e, 'rake'), count(e, 'wall-side')]).toEqual([2, 1, 2, 2]);
    // The ridge is as long as an eave, and a rake is the slope of half the width.
    const [eave] = e.filter((x) => x.kind === 'eave');
    expect(lengthOf(e, 'ridge')).toBeCloseTo(eave!.length, 6);
  });
  it('a shed on a ledger: one eave, its top against the wall', () => {
    const e = edges(shedProject);
    expect([count(e, 'eave'), count(e, 'wall-top'), count(e, 'rake'), count(e, 'ridge')]).toEqual([1, 1, 2, 0]);
  });
  it('a hip: four eaves, four hips of one length, a ridge, no rake', () => {
    const e = edges(hipProject);
    expect([count(e, 'eave'), count(e, 'hip'), count(e, 'ridge'), count(e, 'rake')]).toEqual([4, 4, 1, 0]);
    const hips = e.filter((x) => x.kind === 'hip').map((x) => x.length);
    for (const h of hips) expect(h).toBeCloseTo(hips[0]!, 6);
    // Plan of a hip at 45 degrees: run along both axes; the length follows from run and pitch.
    const { pitch } = hipProject.cover.roofs[0]!;
    const half = e.find((x) => x.kind === 'eave' && x.surface.includes('near'))!.length / 2;
    expect(hips[0]).toBeCloseTo(half * Math.sqrt(2 + Math.tan(pitch) ** 2), 3);
  });
});
