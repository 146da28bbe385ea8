/** The frame solver against a general-purpose finite-element program, whose decks and results are kept as data. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { factorFrame, sampleElement, solveCase } from '../../src/analysis/solver/index.js';
import { FRAME_CASES, type FrameCaseData } from './helpers/frame-cases.js';
import { deckOf } from './helpers/frame-deck.js';
import { ourFrame } from './helpers/frame-ours.js';
import type { FrameReference } from './helpers/frame-results.js';
import { verificationSuite } from './record.js';

const suite = verificationSuite('frames');
const DATA = join(dirname(fileURLToPath(import.meta.url)), 'data/frames');
const CLAUSE = 'frame solver: Timoshenko beams in space';
const read = (name: string): string => readFileSync(join(DATA, name), 'utf8');
const reference = (f: FrameCaseData): FrameReference => JSON.parse(read(`${f.name}.json`)) as FrameReference;

/** A number of theirs and ours, and the limits of `rel` and `abs` difference. */
interface Row {
  readonly quantity: string;
  readonly published: number;
  readonly ours: number;
  readonly unit: string;
  readonly rel: number;
  readonly abs: number;
}

const FORCE = 0.001;
const MOVE = 0.005;
/** Values smaller than this part of the largest of their kind in the frame need only agree to that part of it. */
const SMALL = 0.01;
const AXES = ['x', 'y', 'z'] as const;

function rows(f: FrameCaseData, ref: FrameReference, shear?: number): Row[] {
  const { model, load } = ourFrame(f, shear);
  const factored = factorFrame(model);
  if (!factored.ok) throw new Error(`${f.name} can move freely`);
  const { frame } = factored;
  const result = solveCase(frame, load);
  const nodes = Object.keys(f.nodes);
  const planes = f.planar ? [0, 2] : [0, 1, 2];
  const holds = (node: string, d: number): boolean => f.held.some((h) => h.node === node && h.freedoms.includes(d + 1));

  const moves: [string, number, number][] = [];
  for (const [i, name] of nodes.entries())
    for (const d of planes)
      if (!holds(name, d))
        moves.push([`${name}.${AXES[d]}`, ref.displacements[name]![d]!, result.displacements[6 * i + d]!]);
  for (const [e, m] of f.members.entries()) {
    const s = sampleElement(frame, load, result, e, [frame.lengths[e]! / 2]);
    const r = frame.axes.subarray(9 * e, 9 * e + 9);
    for (const d of planes)
      moves.push([
        `middle of ${m.name}.${AXES[d]}`,
        ref.displacements[m.name]![d]!,
        r[d]! * s.dx[0]! + r[3 + d]! * s.dy[0]! + r[6 + d]! * s.dz[0]!,
      ]);
  }

  const reactions: [string, number, number][] = [];
  for (const [name, r] of Object.entries(ref.reactions))
    for (const d of planes)
      if (holds(name, d)) reactions.push([`${name}.${AXES[d]}`, r[d]!, result.reactions[6 * nodes.indexOf(name) + d]!]);

  const forces: [string, number, number][] = [];
  const moments: [string, number, number][] = [];
  for (const s of ref.sections) {
    const e = f.members.findIndex((m) => m.name === s.member);
    const ours = sampleElement(frame, load, result, e, [s.distance]);
    const at = `${s.member} at ${s.distance.toFixed(2)} in`;
    forces.push([`N ${at}`, s.n, ours.n[0]!], [`Vy ${at}`, s.vy, ours.vy[0]!]);
    moments.push([`Mz ${at}`, s.mz, ours.mz[0]!]);
    if (f.planar) continue;
    forces.push([`Vz ${at}`, s.vz, ours.vz[0]!]);
    moments.push([`My ${at}`, s.my, ours.my[0]!]);
  }

  const kind = (name: string, rel: number, unit: string, list: readonly [string, number, number][]): Row[] => {
    const largest = Math.max(...list.map(([, published]) => Math.abs(published)));
    const abs = Number((rel * SMALL * largest).toPrecision(3));
    return list.map(([quantity, published, ours]) => ({
      quantity: `${name} ${quantity}`,
      published,
      ours,
      unit,
      rel,
      abs,
    }));
  };
  return [
    ...kind('displacement', MOVE, 'in', moves),
    ...kind('reaction', FORCE, 'lb', reactions),
    ...kind('force', FORCE, 'lb', forces),
    ...kind('moment', FORCE, 'lb-in', moments),
  ];
}

const outside = (r: Row): boolean => Math.abs(r.ours - r.published) > Math.max(r.abs, r.rel * Math.abs(r.published));

describe.each(FRAME_CASES)('$name', (f) => {
  it('is the frame whose deck was solved', () => expect(read(`${f.name}.inp`)).toBe(deckOf(f).text));

  it('agrees with the finite-element program', () => {
    const ref = reference(f);
    for (const { quantity, published, ours, unit, rel, abs } of rows(f, ref))
      suite.compare({
        id: f.name,
        quantity,
        clause: CLAUSE,
        source: `${ref.program}, a general-purpose finite-element program: ${f.title}`,
        where: `test/verification/data/frames/${f.name}.inp and .json, made by scripts/frame-references.sh`,
        provenance: 'program',
        published,
        ours,
        unit,
        tolerance: { rel, abs, reason: 'agreed limit; the second for a hundredth of the largest in the frame' },
      });
  });
});

it('is fine enough to tell shear areas of 1 and 5/6 of the section apart', () => {
  const noticed = FRAME_CASES.filter((f) => rows(f, reference(f), 5 / 6).some(outside)).map((f) => f.name);
  expect(noticed).toContain('knee-braced-bent');
  expect(noticed).toContain('scissor-truss');
  expect(noticed).toContain('support-settlement');
});

it('says what is not compared', () => {
  suite.leaveOut({
    id: 'space-portal bases',
    clause: CLAUSE,
    source: 'CalculiX, a general-purpose finite-element program',
    reason:
      'the reactions it prints at clamped nodes of beams mix in the moment (a cantilever loaded only across gave a ' +
      'reaction along itself), so the clamped bases are compared by the section forces just above them',
  });
  suite.leaveOut({
    id: 'torsion in rectangles',
    clause: CLAUSE,
    source: 'CalculiX, a general-purpose finite-element program',
    reason:
      'its beams warp as bricks do and are held from warping at joints; only square sections, which do not warp in ' +
      'it, carry torsion in the frames compared',
  });
});
