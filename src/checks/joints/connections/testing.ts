/** One beam on one post and a connection between them, for the tests of calculated connections. */
import { makeRecorder } from '../../../base/trace.js';
import type { Bolts, Connection, ConnectionPart } from '../../../project/connections.js';
import { change, gableProject } from '../../../structure/testing.js';
import { bar, contextFor, type Given, joint, NONE, postBar, v } from '../../testing.js';
import { jointProducts } from '../products.js';

const PATH = '/choices/connections/0';
export const row = (...parts: readonly ConnectionPart[]): Connection => ({
  serves: ['J1'],
  madeDry: true,
  parts,
  path: PATH,
});

/** Side load is named both ways in the gable project. */
export const project = (c: Connection) =>
  change(gableProject, { choices: { ...gableProject.choices, connections: [c] } });
export const post = { members: [bar(), postBar()], joints: [joint()] };

export const run = (c: Connection, g: Given, rec = makeRecorder()) => ({
  ...jointProducts.run({ id: 'J1', path: '' }, contextFor({ project: project(c), structure: post, ...g }), rec),
  lines: rec.lines,
});
/** Cases D, S, W; 0.6D + 0.6W with CD 1.6. */
export const wind = (x: number, y: number, z: number): Given => ({
  joints: { J1: [NONE, NONE, v(x / 0.6, y / 0.6, z / 0.6)] },
});

/** 1/2 in. bolts through two 1/4 x 4 plates: one over the other in the beam, one over the other in the post. */
export const plates = (change: Partial<Bolts> = {}): Bolts => ({
  kind: 'bolts',
  takes: ['up'],
  size: 'bolt-1-2',
  washer: 0,
  axis: 'crosswise',
  plates: { material: 'steel', count: 2, thickness: 0.25, width: 4, end: 2, Fy: 36000, Fu: 58000 },
  upper: { alongGrain: 1, acrossGrain: 2, spacingAlong: 0, spacingAcross: 3, end: 72, edge: 2 },
  lower: { alongGrain: 2, acrossGrain: 1, spacingAlong: 2, spacingAcross: 0, end: 3.5, edge: 2.75 },
  upperThickness: undefined,
  lowerThickness: undefined,
  ...change,
});
