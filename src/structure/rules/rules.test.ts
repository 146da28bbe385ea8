import { describe, expect, it } from 'vitest';
import type { Issue } from '../../base/issue.js';
import type { CoverRoof, Project, ShedRoof } from '../../project/model.js';
import { place, type Site } from '../place.js';
import { type Change, change, gableProject, given, shedProject } from '../testing.js';

const gable = (by: Change<Project>): Project => change(gableProject, by);
const shed = (by: Change<Project>): Project => change(shedProject, by);
/** The only roof with parts replaced. */
const roof = (by: Partial<CoverRoof> | Record<string, unknown>): Change<Project> => ({
  cover: { roofs: (old) => [{ ...old[0]!, ...by } as CoverRoof] },
});
const finish = (by: Record<string, unknown>): Change<Project> => ({
  cover: { roofs: (old) => [{ ...old[0]!, finish: { ...old[0]!.finish, ...by } } as CoverRoof] },
});
const framing = (by: Record<string, unknown>): Change<Project> => ({
  cover: { roofs: (old) => [{ ...old[0]!, framing: { ...old[0]!.framing, ...by } } as CoverRoof] },
});
const beam = (index: number, by: Record<string, unknown>): Change<Project> => ({
  cover: { beams: (old) => old.map((b, i) => (i === index ? { ...b, ...by } : b)) },
});
const post = (index: number, by: Record<string, unknown>): Change<Project> => ({
  cover: {
    beams: (old) =>
      old.map((b, i) => (i === 0 ? { ...b, posts: b.posts.map((p, k) => (k === index ? { ...p, ...by } : p)) } : b)),
  },
});
const section = (name: string, by: Record<string, unknown>): Change<Project> => ({
  choices: { sections: (old) => ({ ...old, [name]: { ...old[name]!, ...by } as never }) },
});
const square = (h: number) => [
  { x: -h, y: -h },
  { x: h, y: -h },
  { x: h, y: h },
  { x: -h, y: h },
];

const PATHS: Record<string, string> = {
  roof: '/cover/roofs/0',
  beam: '/cover/beams/0',
  post: '/cover/beams/0/posts/0',
  ledger: '/cover/ledgers/0',
};

interface Case {
  readonly code: string;
  readonly severity?: Issue['severity'];
  readonly project: Project;
  readonly site?: Site;
  readonly path: string;
  /** Whether the structure can still be shown. */
  readonly shown: boolean;
}

const brick = (p: Project): Change<Project> => ({
  house: { walls: p.house.walls.map((w) => ({ ...w, build: { ...w.build, cladding: 'brick-veneer' as const } })) },
});

const CASES: readonly Case[] = [
  {
    code: 'post-outside-lot',
    project: gableProject,
    site: { lotCorners: square(110) },
    path: PATHS.post!,
    shown: true,
  },
  {
    code: 'roof-outside-lot',
    project: gableProject,
    site: { lotCorners: square(180) },
    path: PATHS.roof!,
    shown: true,
  },
  { code: 'post-off-beam', project: gable(post(1, { at: 200 })), path: '/cover/beams/0/posts/1/at', shown: false },
  { code: 'posts-too-close', project: gable(post(1, { at: 8 })), path: '/cover/beams/0/posts', shown: false },
  {
    code: 'beam-needs-two-posts',
    project: gable(beam(0, { posts: gableProject.cover.beams[0]!.posts.slice(0, 1) })),
    path: '/cover/beams/0/posts',
    shown: false,
  },
  { code: 'beam-without-length', project: gable(beam(0, { to: { x: -108, y: 6 } })), path: PATHS.beam!, shown: false },
  {
    code: 'splice-off-post',
    project: shed(beam(0, { splices: [100] })),
    path: '/cover/beams/0/splices/0',
    shown: false,
  },
  { code: 'splice-off-post', project: shed(beam(0, { splices: [0] })), path: '/cover/beams/0/splices/0', shown: false },
  {
    code: 'truss-wider-than-beams',
    project: gable(beam(0, { to: { x: -100, y: 180 } })),
    path: '/cover/roofs/0/beams',
    shown: false,
  },
  {
    code: 'truss-wider-than-beams',
    project: gable({
      ...beam(0, { section: 'thin' }),
      choices: { sections: (old) => ({ ...old, thin: { ...old.beam!, width: 3.5 } as never }) },
    }),
    path: '/cover/roofs/0/beams',
    shown: false,
  },
  {
    code: 'truss-wider-than-beams',
    project: gable(beam(0, { from: { x: 90, y: 6 }, to: { x: 90, y: 180 } })),
    path: '/cover/roofs/0/beams',
    shown: false,
  },
  { code: 'frames-off-beam', project: gable(roof({ from: 3 })), path: '/cover/roofs/0/from', shown: false },
  { code: 'frames-off-beam', project: gable(roof({ to: 190 })), path: '/cover/roofs/0/to', shown: false },
  { code: 'frames-off-beam', project: shed(roof({ to: 124 })), path: '/cover/roofs/0/to', shown: false },
  {
    code: 'framing-spacing',
    project: gable(framing({ spacing: 60 })),
    path: '/cover/roofs/0/framing/spacing',
    shown: false,
  },
  { code: 'framing-spacing', project: gable(roof({ to: 154 })), path: '/cover/roofs/0/to', shown: false },
  { code: 'framing-spacing', project: gable(roof({ to: 5 })), path: '/cover/roofs/0/to', shown: false },
  {
    code: 'framing-spacing',
    severity: 'warning',
    project: gable(framing({ spacing: 32 })),
    path: '/cover/roofs/0/framing/spacing',
    shown: true,
  },
  {
    code: 'framing-unsupported',
    project: gable(framing({ kind: 'rafter', section: 'beam' })),
    path: '/cover/roofs/0/framing/kind',
    shown: false,
  },
  {
    code: 'framing-unsupported',
    project: shed(roof({ framing: gableProject.cover.roofs[0]!.framing })),
    path: '/cover/roofs/0/framing/kind',
    shown: false,
  },
  { code: 'heel-too-low', project: gable(framing({ heel: 3.5 })), path: '/cover/roofs/0/framing/heel', shown: false },
  {
    code: 'bottom-chord-too-steep',
    project: gable(framing({ bottomPitch: Math.atan(4 / 12) })),
    path: '/cover/roofs/0/framing/bottomPitch',
    shown: false,
  },
  {
    code: 'seat-too-deep',
    project: shed(roof({ pitch: Math.atan(6 / 12), pitchText: '6/12', bearing: 150 })),
    path: '/cover/roofs/0/framing/section',
    shown: false,
  },
  {
    code: 'ledger-too-shallow',
    severity: 'warning',
    project: shed(section('ledger', { size: '2x8' })),
    path: '/cover/roofs/0/framing/section',
    shown: true,
  },
  {
    code: 'low-beam-not-in-front',
    project: shed(beam(0, { from: { x: -120, y: 12 }, to: { x: 120, y: 12 } })),
    path: '/cover/roofs/0/low',
    shown: false,
  },
  {
    code: 'beam-not-across-fall',
    project: shed(beam(0, { to: { x: 120, y: 130 } })),
    path: '/cover/roofs/0/low',
    shown: false,
  },
  { code: 'beam-unknown', project: shed(roof({ low: 'B9' })), path: '/cover/roofs/0/low', shown: false },
  {
    code: 'ledger-unknown',
    project: shed(roof({ high: { ledger: 'L9' } })),
    path: '/cover/roofs/0/high/ledger',
    shown: false,
  },
  {
    code: 'ledger-wall-direction',
    project: shed({ cover: { ledgers: (old) => [{ ...old[0]!, wall: 2 }] } }),
    path: PATHS.ledger!,
    shown: false,
  },
  {
    code: 'ledger-off-wall',
    project: shed({ cover: { ledgers: (old) => [{ ...old[0]!, from: -300 }] } }),
    path: PATHS.ledger!,
    shown: false,
  },
  {
    code: 'wall-unknown',
    project: shed({ cover: { ledgers: (old) => [{ ...old[0]!, wall: 9 }] } }),
    path: PATHS.ledger!,
    shown: false,
  },
  {
    code: 'ledger-without-length',
    project: shed({ cover: { ledgers: (old) => [{ ...old[0]!, to: -130 }] } }),
    path: PATHS.ledger!,
    shown: false,
  },
  {
    code: 'section-unknown',
    project: gable(beam(0, { section: 'girder' })),
    path: '/cover/beams/0/section',
    shown: false,
  },
  {
    code: 'section-unknown',
    project: gable(section('post', { grade: 'No. 9' })),
    path: '/choices/sections/post',
    shown: false,
  },
  {
    code: 'section-unknown',
    project: gable(framing({ chord: '2x' })),
    path: '/cover/roofs/0/framing/chord',
    shown: false,
  },
  {
    code: 'section-unknown',
    project: gable(finish({ fascia: 'board' })),
    path: '/cover/roofs/0/finish/fascia',
    shown: false,
  },
  {
    code: 'footing-unknown',
    project: gable(post(0, { footing: 'raft' })),
    path: '/cover/beams/0/posts/0/footing',
    shown: false,
  },
  {
    code: 'covering-unknown',
    project: gable(finish({ covering: 'thatch' })),
    path: '/cover/roofs/0/finish/covering',
    shown: false,
  },
  {
    code: 'sheathing-unknown',
    project: gable(finish({ sheathing: 'osb-9/16' })),
    path: '/cover/roofs/0/finish/sheathing',
    shown: false,
  },
  {
    code: 'underlayment-unknown',
    project: gable(finish({ underlayment: 'paper' })),
    path: '/cover/roofs/0/finish/underlayment',
    shown: false,
  },
  {
    code: 'ceiling-unknown',
    project: gable(finish({ ceiling: 'silk' })),
    path: '/cover/roofs/0/finish/ceiling',
    shown: false,
  },
  {
    code: 'beam-at-two-heights',
    project: shed({
      cover: {
        roofs: (old) => [old[0]!, { ...old[0]!, mark: 'R2', path: '/cover/roofs/1', pitch: Math.atan(3 / 12) }],
      },
    }),
    path: '/cover/roofs/1',
    shown: false,
  },
  {
    code: 'support-carries-nothing',
    severity: 'warning',
    project: gable({
      cover: { beams: (old) => [...old, { ...old[0]!, mark: 'B3', path: '/cover/beams/2', posts: [] }] },
    }),
    path: '/cover/beams/2',
    shown: true,
  },
  {
    code: 'pad-below-grade',
    project: gable({
      choices: {
        footings: () => ({ pier: { kind: 'square-pad', width: 30, thickness: 12, bottom: 30, fc: 2500, steel: '' } }),
      },
    }),
    path: '/choices/footings/pier/thickness',
    shown: false,
  },
  {
    code: 'footing-shallower-than-pad',
    project: gable({ choices: { footings: (old) => ({ pier: { ...old.pier!, bottom: 10 } }) } }),
    path: '/choices/footings/pier/bottom',
    shown: false,
  },
  {
    code: 'pier-wider-than-pad',
    project: gable({ choices: { footings: (old) => ({ pier: { ...old.pier!, diameter: 40 } as never }) } }),
    path: '/choices/footings/pier/diameter',
    shown: false,
  },
  {
    code: 'footing-without-size',
    project: gable({
      choices: {
        footings: () => ({ pier: { kind: 'round-pier', diameter: 16, bottom: 0, top: 0, fc: 2500, steel: '' } }),
      },
    }),
    path: '/choices/footings/pier/bottom',
    shown: false,
  },
  { code: 'post-too-short', project: gable(roof({ bearing: 15 })), path: PATHS.post!, shown: false },
  { code: 'mark-repeated', project: gable(post(1, { mark: 'P1' })), path: '/cover/beams/0/posts/1/mark', shown: false },
  {
    code: 'pitch-out-of-range',
    project: gable(roof({ pitch: 1.2, pitchText: '31/12' })),
    path: '/cover/roofs/0/pitch',
    shown: false,
  },
  {
    code: 'low-slope-covering',
    project: shed(finish({ covering: 'wood-shingle' })),
    path: '/cover/roofs/0/pitch',
    shown: true,
  },
  {
    code: 'slab-slopes-to-house',
    severity: 'warning',
    project: gable({ patio: { slabs: (old) => [{ ...old[0]!, fall: -0.01 }] } }),
    path: '/patio/slabs/0/fall',
    shown: true,
  },
  {
    code: 'slab-above-floor',
    severity: 'warning',
    project: gable({ patio: { slabs: (old) => [{ ...old[0]!, topAtHouse: 2 }] } }),
    path: '/patio/slabs/0/topAtHouse',
    shown: true,
  },
  {
    code: 'grade-slopes-to-house',
    severity: 'warning',
    project: gable({ patio: { grade: { fall: -0.01 } } }),
    path: '/patio/grade/fall',
    shown: true,
  },
  { code: 'ledger-on-veneer', project: shed(brick(shedProject)), path: '/cover/ledgers/0/wall', shown: true },
  {
    code: 'ledger-on-unverified-wall',
    severity: 'warning',
    project: shed({
      house: {
        walls: shedProject.house.walls.map((w) => ({
          ...w,
          build: { ...w.build, verified: given(false, '', '/house/builds/lap/verified') },
        })),
      },
    }),
    path: '/house/builds/lap/verified',
    shown: true,
  },
  { code: 'post-in-house', project: gable(beam(0, { from: { x: -108, y: -10 } })), path: PATHS.post!, shown: true },
  { code: 'beam-in-wall', project: gable(beam(0, { from: { x: -108, y: -10 } })), path: PATHS.beam!, shown: true },
  {
    code: 'footing-under-house',
    severity: 'warning',
    project: gableProject,
    path: '/choices/footings/pier',
    shown: true,
  },
  {
    code: 'footing-overlap',
    project: gable({ choices: { footings: (old) => ({ pier: { ...old.pier!, width: 240 } as never }) } }),
    path: '/choices/footings/pier',
    shown: true,
  },
  // Wall offset 18 ft from x = −22 ft: the door spans x = −48 to 48; a post at x = −30, 9 in from the wall.
  {
    code: 'post-in-opening-path',
    severity: 'warning',
    project: gable(beam(0, { from: { x: -30, y: 6 }, to: { x: -30, y: 180 } })),
    path: PATHS.post!,
    shown: true,
  },
  {
    code: 'post-narrower-than-beam',
    severity: 'warning',
    project: gable(section('post', { size: '4x4' })),
    path: PATHS.post!,
    shown: true,
  },
  {
    code: 'pier-narrower-than-post',
    severity: 'warning',
    project: gable({ choices: { footings: (old) => ({ pier: { ...old.pier!, diameter: 6 } as never }) } }),
    path: '/choices/footings/pier',
    shown: true,
  },
  // Ledger top at 86: the ledger runs from 74.75 across the heads of doors and windows at 82.
  { code: 'roof-crosses-opening', project: shed(roof({ bearing: 86 })), path: PATHS.ledger!, shown: true },
  // Ledger from 84.75: over the heads, but nearer than 4 in.
  {
    code: 'roof-near-opening',
    severity: 'warning',
    project: shed(roof({ bearing: 96 })),
    path: PATHS.ledger!,
    shown: true,
  },
  // Underside of the top chord at the wall comes down to 60 at the eaves: across the windows.
  { code: 'roof-crosses-opening', project: gable(roof({ bearing: 60 })), path: PATHS.roof!, shown: true },
  {
    code: 'rafter-too-low',
    severity: 'warning',
    project: shed(roof({ bearing: 96 })),
    path: '/cover/roofs/0/bearing',
    shown: true,
  },
  { code: 'beam-too-low', severity: 'warning', project: shed(roof({ bearing: 96 })), path: PATHS.beam!, shown: true },
  // Ridge at 185 + 42: above the gable-end wall, which peaks at 97 + 264·5/12 = 207.
  { code: 'cover-above-wall', project: gable(roof({ bearing: 185 })), path: PATHS.roof!, shown: true },
  // An eave wall instead of a gable end: plate at 97, roof edge above it.
  {
    code: 'cover-above-wall',
    project: gable({ house: { roofs: (old) => [{ ...old[0]!, ridge: 'x' as const }] } }),
    path: PATHS.roof!,
    shown: true,
  },
  { code: 'cover-above-wall', project: shed(roof({ bearing: 230 })), path: PATHS.ledger!, shown: true },
  // House eave 12 in out at 218 − 7 = 211; new roof at the wall just under the plate.
  { code: 'roof-overlaps-house-roof', project: shed(roof({ bearing: 212 })), path: PATHS.roof!, shown: true },
  { code: 'gap-at-wall', severity: 'note', project: gableProject, path: PATHS.roof!, shown: true },
];

describe('bad geometry', () => {
  it.each(CASES.map((c, i) => [`${c.code} (${i})`, c] as const))('%s', (_, c) => {
    const { value, issues } = place(c.project, c.site);
    const hit = issues.find((i) => i.code === c.code && i.path === c.path) ?? issues.find((i) => i.code === c.code);
    expect(hit, `codes met: ${issues.map((i) => i.code).join(', ')}`).toBeDefined();
    expect({ severity: hit!.severity, path: hit!.path }).toEqual({ severity: c.severity ?? 'error', path: c.path });
    expect(value !== undefined).toBe(c.shown);
    expect(hit!.message).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('says nothing of the kind about sound projects', () => {
    expect(place(shedProject, { lotCorners: square(2000) }).issues).toEqual([]);
    expect(place(gableProject, { lotCorners: square(2000) }).issues.filter((i) => i.severity === 'error')).toEqual([]);
  });

  it('tells several faults at once', () => {
    const codes = place(
      shed({ ...beam(0, { section: 'girder' }), patio: { slabs: (old) => [{ ...old[0]!, fall: 0 }] } }),
    ).issues.map((i) => i.code);
    expect(codes).toContain('section-unknown');
    expect(codes).toContain('slab-slopes-to-house');
  });

  it('keeps a shed low enough when the wall above it is free', () => {
    expect(
      place(shed(roof({ bearing: 140 } as Partial<ShedRoof>))).issues.filter((i) => i.severity === 'error'),
    ).toEqual([]);
  });
});
