/** Details show what is placed: sizes, fasteners and joints of the model, each called for on the joint plan. */
import { describe, expect, it } from 'vitest';
import { jointDemands } from '../../../checks/joints/demands.js';
import { deriveProject, drawingInput, drawSet, layout } from '../../../index.js';
import type { Connection } from '../../../project/connections.js';
import type { Project } from '../../../project/model.js';
import { change, gableProject, houseEndsProject, shedProject } from '../../../structure/testing.js';
import { rakeProject } from '../../../structure/testing-rake.js';
import { ridgeProject } from '../../../structure/testing-ridge.js';
import type { Dimension, Primitive } from '../../ir/index.js';
import { sheetContext } from '../context.js';
import { idsOf, SHEET_IDS, type SheetContext, type SheetKindId } from '../contract.js';
import { bearingDetails } from './bearing.js';
import { connectorOver } from './connectors.js';
import type { Detail, DetailView } from './contract.js';
import { eaveDetails } from './eave.js';
import { packDetails } from './pack.js';
import { facing, planDirection } from './picture.js';
import { plyDetails } from './plies.js';
import { postBeamDetails } from './post-beam.js';
import { postHoleDetails } from './post-hole.js';
import { rakeDetails } from './rake.js';
import { slabEdgeDetails } from './slab-edge.js';
import { trussBracingDetails } from './truss-bracing.js';

const contextOf = (project: Project): SheetContext => sheetContext(drawingInput(deriveProject(project))!, 'ARCH D');

const isDimension = (p: Primitive): p is Dimension => p.kind === 'dimension';
const measures = (v: DetailView): number[] => (v.over?.(1 / 4) ?? []).filter(isDimension).map((d) => d.value);
const notes = (d: Detail): string => d.views.flatMap((v) => v.keys.map((k) => k.text)).join(' ');

const spliced = change(gableProject, {
  cover: { beams: (old) => old.map((b) => ({ ...b, splices: [b.posts[1]!.at] })) },
});
const sunk = change(gableProject, {
  choices: {
    footings: () => ({
      pier: {
        kind: 'embedded-post',
        diameter: 18,
        bottom: 54,
        under: 8,
        backfill: 'concrete',
        fc: 3000,
        steel: 'none',
      } as never,
    }),
  },
  cover: {
    beams: (old) => old.map((b) => ({ ...b, posts: b.posts.map((q) => ({ ...q, base: 'embedded' as const })) })),
  },
});

describe('beam on post', () => {
  it('has the depth of the beam and the width of the post as its sizes', () => {
    const ctx = contextOf(gableProject);
    const { members } = ctx.input.structure;
    const beam = members.find((m) => m.role === 'beam')!;
    const post = members.find((m) => m.role === 'post')!;
    const [along, across] = postBeamDetails(ctx)[0]!.views;
    expect(measures(across!)).toContain(beam.section.depth);
    expect(measures(along!)).toContain(post.section.width);
  });

  it('shows each half of the post under the pieces of a spliced beam', () => {
    const found = postBeamDetails(contextOf(spliced)).find((d) => d.title.includes('spliced'))!;
    const half = 5.5 / 2;
    expect(measures(found.views[0]!).filter((v) => v === half)).toHaveLength(2);
  });

  it('draws bolts and plates where the calculated connection has them', () => {
    const pattern = { alongGrain: 1, acrossGrain: 1, spacingAlong: 0, spacingAcross: 0 };
    const connection: Connection = {
      serves: ['beam-to-post'],
      madeDry: true,
      path: '/choices/connections/0',
      parts: [
        {
          kind: 'bolts',
          size: 'bolt-1-2',
          washer: 0,
          takes: ['up'],
          axis: 'crosswise',
          upperThickness: undefined,
          lowerThickness: undefined,
          plates: { material: 'steel', count: 2, end: 1.5, thickness: 0.25, width: 3, Fy: 36000, Fu: 58000 },
          upper: { ...pattern, end: 12, edge: 4 },
          lower: { ...pattern, alongGrain: 2, spacingAlong: 2, end: 3.5, edge: 2.75 },
        },
      ],
    };
    const ctx = contextOf(change(gableProject, { choices: { connections: () => [connection] } }));
    const { structure } = ctx.input;
    const joint = structure.joints.find((j) => j.kind === 'beam-to-post')!;
    const member = (i: number) => structure.members.find((m) => m.id === joint.ties.at(i)!.part)!;
    const side = connectorOver(ctx, joint, member(0), member(-1), facing(planDirection(member(0))));
    // One bolt 4 in above the meeting faces, two 3-1/2 and 5-1/2 in below; plates 1-1/2 in past the outer ones.
    expect([...new Set(side.heights)].sort((a, b) => a - b)).toEqual([-7, -5.5, -3.5, 0, 4, 5.5]);
    expect(side.items.filter((p) => p.kind === 'circle')).toHaveLength(3);
    // From the end of the beam the bolts are lines through both plates.
    const d = planDirection(member(0));
    const end = connectorOver(ctx, joint, member(0), member(-1), facing({ x: d.y, y: -d.x }));
    expect(end.items.filter((p) => p.kind === 'line')).toHaveLength(3);
    expect(end.items.filter((p) => p.kind === 'polyline')).toHaveLength(2);
  });
});

describe('other places', () => {
  it('gives the bearing of a frame its seat and the load of every mark that is alike', () => {
    const ctx = contextOf(gableProject);
    const [d] = bearingDetails(ctx);
    const frame = ctx.input.structure.joints.find((j) => j.kind === 'truss-to-beam')!;
    expect(measures(d!.views[0]!)).toContain(frame.contact.length);
    for (const x of jointDemands(ctx.input).filter((q) => q.kind === 'truss-to-beam')) {
      expect(notes(d!)).toContain(x.mark);
      expect(notes(d!)).toContain(Math.ceil(x.down.value).toLocaleString('en-US'));
    }
  });

  it('has both bearings of a rafter under a ridge beam', () => {
    expect(bearingDetails(contextOf(ridgeProject)).map((d) => d.title.includes('high side'))).toEqual([false, true]);
  });

  it('spaces the fasteners of plies as the file says', () => {
    const nails = { fastener: 'common-16d', rows: 2, spacing: 12, edge: 2, end: 3 };
    const project = change(shedProject, {
      choices: { sections: (s) => ({ ...s, beam: { ...s.beam!, plyFastening: nails } as never }) },
    });
    const [d] = plyDetails(contextOf(project));
    expect(measures(d!.views[0]!)).toEqual(expect.arrayContaining([3, 12, 2]));
    expect(d!.views[0]!.items.filter((p) => p.kind === 'circle')).toHaveLength(6);
  });

  it('measures eave and rake from the placed roof', () => {
    const ctx = contextOf(rakeProject);
    const roof = ctx.input.project.cover.roofs[0]!;
    expect(measures(eaveDetails(ctx)[0]!.views[0]!)).toContain(roof.eave);
    expect(measures(rakeDetails(ctx)[0]!.views[0]!)).toContain(roof.rake);
    expect(notes(rakeDetails(ctx)[0]!)).toContain('outlooker');
  });

  it('gives a slab its thickness, and joints only to a new one', () => {
    const edge = (state: 'existing' | 'new') =>
      slabEdgeDetails(contextOf(change(gableProject, { patio: { slabs: (old) => [{ ...old[0]!, state }] } })))[0]!;
    expect(measures(edge('existing').views[0]!)).toContain(4);
    expect(notes(edge('existing'))).not.toContain('Control joints');
    expect(notes(edge('new'))).toContain('Control joints');
  });

  it('shows a post in the ground with the concrete under it', () => {
    expect(measures(postHoleDetails(contextOf(sunk))[0]!.views[0]!)).toEqual(expect.arrayContaining([8, 46, 18]));
  });

  it('leaves the rows on bottom chords to the sealed sheets where there are any', () => {
    const ctx = contextOf(gableProject);
    expect(notes(trussBracingDetails(ctx)[0]!)).toContain('never over 10');
    const paper = { mark: 'T1', bracing: 'one row at the middle' } as never;
    const sealed = { ...ctx.input.project, cover: { ...ctx.input.project.cover, trussPapers: [paper] } };
    const words = notes(trussBracingDetails({ ...ctx, input: { ...ctx.input, project: sealed } })[0]!);
    expect(words).toContain('one row at the middle');
    expect(words).not.toContain('never over 10');
  });
});

describe.each([
  ['gable', gableProject],
  ['shed', shedProject],
  ['rake', rakeProject],
  ['house ends', houseEndsProject],
  ['splice', spliced],
  ['posts in the ground', sunk],
] as const)('sheets of a %s', (_, project) => {
  const input = drawingInput(deriveProject(project))!;
  it.each(['ARCH D', 'ANSI B'] as const)('call for every detail on the joint plan, %s', (size) => {
    const sheets = drawSet(input, size);
    const views = sheets
      .filter((s) => /^(S-53|A-50)/.test(s.id))
      .flatMap((s) =>
        layout
          .textBoxes(s)
          .filter((b) => b.layer === 'G-ANNO-TITL' && /^\d+$/.test(b.content) && b.h > 0.11)
          .map((b) => `${b.content} ${s.id}`),
      );
    const plan = layout.textBoxes(sheets.find((s) => s.id === 'S-104')!).filter((b) => b.layer === 'S-ANNO-SYMB');
    const called = plan
      .filter((b) => /^(S-53|A-50)\d$/.test(b.content))
      .map((b) => {
        const number = plan.find((n) => n !== b && Math.abs(n.x - b.x) < 0.01 && n.y > b.y && n.y - b.y < 0.5)!;
        return `${number.content} ${b.content}`;
      });
    expect(called.sort()).toEqual(views.sort());
  });
});

it('packs details onto few sheets, and numbers them from one on each', () => {
  const ctx = contextOf(gableProject);
  const details = postBeamDetails(ctx);
  const many = Array.from({ length: 9 }, (_, i) => ({ ...details[0]!, id: `post-beam copy ${i}` }));
  const packed = packDetails(ctx, 'Many', many);
  expect(packed.spots.size).toBe(9);
  const first = [...packed.spots.values()].filter((s) => s.sheet === 0).map((s) => s.number);
  expect(first).toEqual(first.map((_, i) => String(i + 1)));
  expect(packDetails(ctx, 'None', []).bodies).toEqual([]);
});

it('moves ids past those that a longer cover has taken', () => {
  const ids = (kinds: readonly SheetKindId[]): string[] => idsOf(kinds.map((k) => SHEET_IDS[k]));
  expect(ids(['cover', 'inspections', 'trusses', 'truss-papers'])).toEqual(['G-001', 'G-002', 'S-502', 'S-503']);
  expect(ids(['cover', 'cover', 'inspections', 'inspections', 'trusses', 'trusses', 'truss-papers'])).toEqual([
    'G-001',
    'G-002',
    'G-003',
    'G-004',
    'S-502',
    'S-503',
    'S-504',
  ]);
});
