/**
 * Hip roof: four slopes of one pitch over a rectangle of four beams on corner posts, with a ridge beam on posts of its own.
 * Every rafter, jack and hip then has two bearings and pushes nothing outward; a hip on a ridge board would need a ring in
 * tension or ties, which is not worked out and is refused.
 *
 * Plan: the eaves run all round at one distance, the hips at 45 degrees from the corners to the ends of the ridge.
 */
import type { Vec2 } from '../../base/vec.js';
import type { HipRoof } from '../../project/model.js';
import { roofAxes, toHouse, toRoof } from '../axes.js';
import { MEETS } from '../constants.js';
import { layHip } from '../framing/hip.js';
import { error } from '../issues.js';
import { type BeamPlan, type Kit, standsAt } from '../kit.js';
import { inches } from '../text.js';
import type { Bearing, HipFace, HipPlan, Profile } from './contract.js';
import type { RoofShape } from './lay.js';

/** How far a post may stand from the corner it carries, and the ridge beam's end from the hips' peak, inches. */
const AT_CORNER = 0.5;
/** Shortest ridge: a beam on two posts. */
const SHORTEST_RIDGE = 24;

interface Line {
  readonly plan: BeamPlan;
  readonly p: { readonly a: number; readonly l: number };
  readonly q: { readonly a: number; readonly l: number };
}

type Refuse = (code: string, key: string, message: string, found: string, expected: string) => undefined;

const refuser =
  (roof: HipRoof, kit: Kit): Refuse =>
  (code, key, message, found, expected) => {
    kit.issues.push(error(code, `${roof.path}${key}`, message, { subject: roof.mark, found, expected }));
    return undefined;
  };

export const hip: RoofShape<'hip'> = {
  lay: layHip,
  profile(roof, kit): Profile | undefined {
    const refuse = refuser(roof, kit);
    if (kit.project.cover.attachment === 'attached')
      return refuse(
        'hip-attached',
        '/kind',
        'A hip roof is worked out free-standing only.',
        'attached',
        'a gable or shed roof, or a free-standing cover',
      );
    if (roof.framing.kind !== 'rafter' || roof.framing.ties !== undefined)
      return refuse(
        'framing-unsupported',
        '/framing/kind',
        'A hip roof is framed with rafters on a ridge beam; hip trusses, and hips held together by ties, need a licensed professional.',
        roof.framing.kind,
        '"rafter" without "ties"',
      );
    const axes = roofAxes(roof.ridge);
    const line = (mark: string): Line | undefined => {
      const plan = kit.beams.get(mark);
      return plan && { plan, p: toRoof(axes, plan.line.from), q: toRoof(axes, plan.line.to) };
    };
    const sides = roof.beams.map(line);
    const ends = roof.ends.map(line);
    const ridge = line(roof.ridgeBeam);
    for (const [i, mark] of [...roof.beams, ...roof.ends, roof.ridgeBeam].entries())
      if (!kit.project.cover.beams.some((b) => b.mark === mark))
        return refuse(
          'beam-unknown',
          i < 2 ? `/beams/${i}` : i < 4 ? `/ends/${i - 2}` : '/ridgeBeam',
          'The roof names a beam that is not listed.',
          mark,
          'the mark of a beam',
        );
    if (sides.some((s) => !s) || ends.some((s) => !s) || !ridge) return undefined;
    const [left, right] = (sides as Line[]).sort((x, y) => x.p.a - y.p.a) as [Line, Line];
    const [near, far] = (ends as Line[]).sort((x, y) => x.p.l - y.p.l) as [Line, Line];
    const w = left.plan.section.width;
    if ([right, near, far].some((k) => Math.abs(k.plan.section.width - w) > MEETS))
      return refuse(
        'hip-beams-differ',
        '/beams',
        'The four beams differ in width: the slopes would not meet in the hips.',
        [left, right, near, far].map((k) => inches(k.plan.section.width)).join(', '),
        'four beams of one width',
      );
    if (
      [left, right].some((k) => Math.abs(k.p.a - k.q.a) > MEETS) ||
      [near, far].some((k) => Math.abs(k.p.l - k.q.l) > MEETS)
    )
      return refuse(
        'hip-not-rectangular',
        '/beams',
        'The four beams do not make a rectangle along the ridge.',
        roof.ridge,
        '"beams" along the ridge, "ends" square to it',
      );
    const [a0, a1, l0, l1] = [left.p.a, right.p.a, near.p.l, far.p.l];
    for (const [s, a] of [
      [left, a0],
      [right, a1],
    ] as const)
      for (const [e, l] of [
        [near, l0],
        [far, l1],
      ] as const)
        for (const k of [s, e])
          if (!standsNear(k.plan, toHouse(axes, a, l, 0)))
            return refuse(
              'hip-corner-without-post',
              '/beams',
              `Beam ${k.plan.line.mark} has no post where ${s.plan.line.mark} and ${e.plan.line.mark} cross.`,
              'no post',
              'a post listed with one beam and named under "shared" of the other',
            );
    const [W, L] = [a1 - a0 + w, l1 - l0 + w];
    if (L - W < SHORTEST_RIDGE)
      return refuse(
        'hip-without-ridge',
        '/ends',
        'So nearly square a hip roof meets in a peak, which is not worked out here.',
        `${inches(L)} by ${inches(W)}`,
        `at least ${inches(SHORTEST_RIDGE)} longer along the ridge than across it`,
      );
    const mid = (a0 + a1) / 2;
    const peaks = [l0 - w / 2 + W / 2, l1 + w / 2 - W / 2] as const;
    const [r0, r1] = [Math.min(ridge.p.l, ridge.q.l), Math.max(ridge.p.l, ridge.q.l)];
    const off = Math.max(
      Math.abs(ridge.p.a - mid),
      Math.abs(ridge.q.a - mid),
      Math.abs(r0 - peaks[0]),
      Math.abs(r1 - peaks[1]),
    );
    if (off > AT_CORNER)
      return refuse(
        'ridge-beam-off-ridge',
        '/ridgeBeam',
        `Beam ${roof.ridgeBeam} does not run from peak to peak of the hips.`,
        `${inches(off)} off`,
        `a beam along ${roof.ridge} from ${inches(peaks[0])} to ${inches(peaks[1])}`,
      );

    const out = w / 2 + roof.eave;
    const stations = stationsBetween(peaks[0], peaks[1], roof.framing.spacing);
    const on = (k: Line, at: number): Bearing => ({
      part: k.plan.line.mark,
      kind: 'beam',
      at,
      section: k.plan.section,
      seat: { at, width: w },
    });
    const c = [toHouse(axes, a0 - out, l0 - out, 0), toHouse(axes, a1 + out, l1 + out, 0)] as const;
    const min = { x: Math.min(c[0].x, c[1].x), y: Math.min(c[0].y, c[1].y) };
    const max = { x: Math.max(c[0].x, c[1].x), y: Math.max(c[0].y, c[1].y) };
    const plan: HipPlan = {
      faces: facesOf(roof, min, max, (inward) => {
        const r = toRoof(axes, inward);
        const k = Math.abs(r.a) > 0.5 ? (r.a > 0 ? left : right) : r.l > 0 ? near : far;
        return {
          beam: k.plan.line.mark,
          id: k === left ? 'left' : k === right ? 'right' : k === near ? 'near' : 'far',
        };
      }),
      width: W + 2 * roof.eave,
      seat: w,
      ridge: { mark: roof.ridgeBeam, width: ridge.plan.section.width },
    };
    return {
      axes,
      ridgeAxis: roof.ridge,
      bearings: [on(left, a0), on(right, a1)],
      legs: [
        { surface: `${roof.mark}-left`, eave: a0 - out, top: mid },
        { surface: `${roof.mark}-right`, eave: a1 + out, top: mid },
      ],
      stations,
      extent: [l0 - out, l1 + out],
      shape: 'hipped',
      hip: plan,
    };
  },
};

function standsNear(plan: BeamPlan, p: Vec2): boolean {
  const { line, dir } = plan;
  const along = (p.x - line.from.x) * dir.x + (p.y - line.from.y) * dir.y;
  return standsAt(line).some((at) => Math.abs(at - along) <= AT_CORNER);
}

/** Common rafters from peak to peak, evenly and no farther apart than said, so that those of both sides stand opposite. */
function stationsBetween(from: number, to: number, spacing: number): number[] {
  const bays = Math.ceil((to - from) / spacing - 1e-9);
  return Array.from({ length: bays + 1 }, (_, k) => from + ((to - from) * k) / bays);
}

/** The four eaves, counter-clockwise seen from above, each with the way up its slope. */
function facesOf(
  roof: HipRoof,
  min: Vec2,
  max: Vec2,
  name: (inward: Vec2) => { readonly beam: string; readonly id: string },
): HipFace[] {
  const corners: Vec2[] = [min, { x: max.x, y: min.y }, max, { x: min.x, y: max.y }];
  return corners.map((origin, i) => {
    const next = corners[(i + 1) % 4]!;
    const length = Math.hypot(next.x - origin.x, next.y - origin.y);
    const u = { x: (next.x - origin.x) / length, y: (next.y - origin.y) / length };
    const inward = { x: 0 - u.y, y: u.x };
    const { beam, id } = name(inward);
    return { surface: `${roof.mark}-${id}`, beam, origin, u, inward, length };
  });
}
