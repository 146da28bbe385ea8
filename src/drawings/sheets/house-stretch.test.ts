/** What is measured from a house corner keeps its true value when the corner lies beyond a break line. */
import { expect, it } from 'vitest';
import { deriveProject, drawingInput, drawSet } from '../../index.js';
import { shedProject } from '../../structure/testing.js';
import { houseCorners } from './plan-base.js';

const input = drawingInput(deriveProject(shedProject))!;
const corners = houseCorners(input.structure).map((c) => c.x);
const xs = input.structure.footings.map((f) => f.at.x);

it.each(['ARCH D', 'ANSI B'] as const)('%s', (size) => {
  const plan = drawSet(input, size).find((s) => s.id === 'S-101')!;
  const [house, ...more] = plan.viewports[0]!.over!.flatMap((p) =>
    p.kind === 'dimension' && p.angle === 0 && p.base.y < 0 ? [p] : [],
  ).reduce<number[][]>((rows, d) => [[...(rows[0] ?? []), d.value]], []);
  expect(more).toEqual([]);
  const cut = plan.viewports[0]!.over!.some((p) => p.kind === 'dimension' && p.text?.endsWith(' to corner'));
  expect(cut).toBe(true);
  // The string runs from corner to corner, whatever of it is drawn.
  const low = Math.max(...corners.filter((c) => c <= Math.min(...xs)));
  const high = Math.min(...corners.filter((c) => c >= Math.max(...xs)));
  expect(house!.reduce((sum, v) => sum + v, 0)).toBeCloseTo(high - low, 6);
});
