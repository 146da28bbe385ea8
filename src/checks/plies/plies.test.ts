import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import type { SectionChoice } from '../../project/model.js';
import type { PlyFastening } from '../../project/ply-fastening.js';
import type { Member } from '../../structure/model.js';
import { change, gableProject } from '../../structure/testing.js';
import { bar, contextFor, joint, joist, NONE, postBar, v } from '../testing.js';
import { plyFastening } from './ply-fastening.js';

const NAILED: PlyFastening = { fastener: 'common-16d', rows: 2, spacing: 12, edge: 2, end: 3 };

function project(
  fastening: PlyFastening | undefined,
  more: Partial<Extract<SectionChoice, { kind: 'built-up' }>> = {},
) {
  const made: SectionChoice = {
    kind: 'built-up',
    plies: 2,
    ply: '2x10',
    spacers: 0,
    spacerThickness: 0,
    fastening: 'two rows 16d',
    species: 'Douglas Fir-Larch',
    grade: 'No. 2',
    treatment: 'none',
    incised: false,
    service: 'dry',
    plyFastening: fastening,
    ...more,
  };
  const sections = { ...gableProject.choices.sections, beam: made, post: made };
  return change(gableProject, { choices: { ...gableProject.choices, sections } });
}

const beam = (plies = 2): Member => bar({ section: joist({ plies, b: 1.5 * plies, width: 1.5 * plies }) });
/** A joist hung on the face, and the beam on a post as wide as itself. */
const hung = joint({
  id: 'J2',
  mark: 'J2',
  contact: { length: 0, width: 0 },
  ties: [
    { part: 'RF1', along: 0 },
    { part: 'B1', along: 60 },
  ],
});
const seat = joint({ contact: { length: 5.5, width: 3 } });

function run(p: ReturnType<typeof project>, joints = [seat, hung], P = 500, m = beam()) {
  const rec = makeRecorder();
  const forces = Object.fromEntries(joints.map((j) => [j.id, [v(0, 0, -P), NONE, NONE]]));
  const ctx = contextFor({ project: p, structure: { members: [m, postBar()], joints }, joints: forces });
  const subject = plyFastening.subjects(ctx)[0]!;
  return { ...plyFastening.run(subject, ctx, rec), lines: rec.lines, subject };
}

describe('plies of a beam', () => {
  it('pass half of what hangs on a face', () => {
    // 500 lb on one of two plies, 250 pass. 9.25 in each way: 2·18.5/12 = 3.083 nails; 16d, G 0.5, mode IV: 140.69·0.9.
    const f = run(project(NAILED));
    expect(f.status, f.note).toBe('pass');
    expect(f.demand).toBeCloseTo(250, 9);
    expect(f.capacity).toBeCloseTo(3.0833 * 140.694 * 0.9, 1);
    expect(f.lines.at(-1)).toMatchObject({ symbol: 'ratio', value: f.ratio });
    expect(run(project(NAILED), [seat, hung], 900).status).toBe('fail');
  });

  it('pass nothing where load comes and goes through all of them', () => {
    const f = run(project(NAILED), [seat]);
    expect(f).toMatchObject({ status: 'pass', unit: 'in', demand: 12, capacity: 32 });
    expect(run(project({ ...NAILED, spacing: 36 }), [seat]).status).toBe('fail');
    expect(run(project({ ...NAILED, rows: 1 }), [seat]).status).toBe('fail');
  });

  it('pass nothing down on a hanger with a seat as wide as the beam, and of uplift a share of the inner ply', () => {
    const hanger = joint({ contact: { length: 0, width: 0 } });
    const row = {
      ...{ serves: [hanger.mark], product: 'hanger', count: 1, down: 1, up: 1, along: 1, across: 1, duration: 1.6 },
      ...{ species: '', G: 0.5, service: 'dry' as const, concrete: undefined, source: '', path: '', seat: true },
    };
    const three = project(NAILED, { plies: 3 });
    const seated = change(three, { choices: { ...three.choices, joints: [row] } });
    expect(run(seated, [hanger], 500, beam(3))).toMatchObject({ status: 'pass', unit: 'in' });
    // 500 lb up into both outer plies alike: a third is the middle one's, half of it from each side.
    expect(run(seated, [hanger], -500, beam(3)).demand).toBeCloseTo(500 / 6, 9);
    // Without the seat it may leave through one ply.
    expect(run(three, [hanger], 500, beam(3)).demand).toBeCloseTo((500 * 2) / 3, 9);
  });

  it('pass what a narrow post leaves out', () => {
    // 2 in of 3 in rest on the post: a third passes.
    const f = run(project(NAILED), [joint({ contact: { length: 5.5, width: 2 } })]);
    expect(f.demand).toBeCloseTo(500 / 3, 6);
  });

  it('lose through a plywood strip, and to nails that are too short', () => {
    const strip = project(NAILED, { spacers: 1, spacerThickness: 0.5 });
    // 79.204 lb (ch12-dowels-gap.test) instead of 140.69.
    expect(run(strip).capacity).toBeCloseTo(3.0833 * 79.204 * 0.9, 1);
    const short = run(project({ ...NAILED, fastener: 'common-8d' }, { spacers: 1, spacerThickness: 0.5 }));
    expect(short).toMatchObject({ status: 'fail' });
    expect(short.note).toContain('use a longer one');
  });

  it('stay open until the file says how, and are no question of solid ones', () => {
    expect(run(project(undefined)).status).toBe('not-evaluated');
    const solid = run(project(NAILED), [seat], 500, bar());
    expect(solid).toMatchObject({ status: 'not-applicable', subject: { id: 'cover' } });
  });
});

describe('plies of a post', () => {
  const column = (plies: number): Member =>
    postBar({ section: joist({ choice: 'post', plies, b: 1.5 * plies, width: 1.5 * plies, depth: 5.5, d: 5.5 }) });
  const rule = (f: PlyFastening, plies = 2) => {
    const ctx = contextFor({
      project: project(f, { ply: '2x6' }),
      structure: { members: [column(plies)], joints: [] },
    });
    return plyFastening.run({ id: 'P1', path: '' }, ctx);
  };

  it('follow the nailing of built-up columns', () => {
    // 10d, D 0.148: ends 15 to 18 D = 2.22 to 2.66, spacing 20D = 2.96 to 6t = 9, edges 5 to 20 D = 0.74 to 2.96; 5.5 > 3·1.5: two
    // rows; length 1.5 + 0.75·1.5 = 2.625.
    const good: PlyFastening = { fastener: 'common-10d', rows: 2, spacing: 8, edge: 1.25, end: 2.5 };
    expect(rule(good).status).toBe('pass');
    expect(rule({ ...good, rows: 1 }).status).toBe('fail');
    expect(rule({ ...good, spacing: 10 }).note).toContain('spacing 10"');
    expect(rule({ ...good, end: 3 }).note).toContain('end distance');
    expect(rule(good, 3).note).toContain('through all plies');
    expect(rule({ ...good, fastener: 'bolt-1-2' }).status).toBe('outside-scope');
  });
});
