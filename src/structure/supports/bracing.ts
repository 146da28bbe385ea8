/**
 * Knee braces from posts to their beams, and struts between facing posts with knee braces at both ends. A beam's brace
 * works at the underside of the beam, where the post ends too. A strut's brace is given to the strut's underside; its
 * line of action runs on to the strut's axis, where it is joined in the frame.
 */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { KneeSpec, PostSpec, StrutSpec } from '../../project/model.js';
import { SLACK } from '../constants.js';
import { error } from '../issues.js';
import type { Meeting } from '../joints.js';
import { type BeamPlan, type Kit, onBeam } from '../kit.js';
import type { JointKind, Member } from '../model.js';
import { degrees, inches, serial } from '../text.js';
import { kneeShape } from './knee.js';
import type { Supports } from './place.js';
import type { PostPart } from './posts.js';

export interface Bracing {
  readonly members: readonly Member[];
  readonly meetings: readonly Meeting[];
}

/** Clear post left below a brace, inches. Common practice, no source: under this it is a prop, not a knee brace. */
const LEAST_BELOW = 12;
/** Shortest edge of a brace that can be cut and fastened, inches. Common practice, no source. */
const SHORTEST_EDGE = 6;

class Draft {
  readonly members: Member[] = [];
  readonly meetings: Meeting[] = [];
  private readonly rows = new Map<string, { mark: string; count: number }>();

  constructor(
    readonly kit: Kit,
    private readonly number: (prefix: string) => number,
  ) {}

  /** Equal braces share a mark. */
  name(key: string): { id: string; mark: string } {
    let row = this.rows.get(key);
    if (!row) {
      row = { mark: `KB${this.number('KB')}`, count: 0 };
      this.rows.set(key, row);
    }
    row.count++;
    return { mark: row.mark, id: `${row.mark}-${serial(row.count)}` };
  }

  refuse(code: string, path: string, message: string, subject: string, found: string, expected: string): void {
    this.kit.issues.push(error(code, path, message, { subject, found, expected }));
  }

  meet(kind: JointKind, at: Vec3, parts: readonly string[], path: string): void {
    this.meetings.push({ kind, at, parts, contact: { length: 0, width: 0 }, path });
  }
}

/** Half the size of a post along a level direction; its width lies along its beam. */
function halfAlong(post: Member, dir: Vec2): number {
  const across = Math.abs(post.up.x * dir.x + post.up.y * dir.y);
  return (across > Math.SQRT1_2 ? post.section.depth : post.section.width) / 2;
}

/** Level point on the post's axis at the underside that is braced, and which way the brace leans. */
interface Corner {
  readonly post: Member;
  readonly at: Vec3;
  readonly dir: Vec2;
  /** Member braced, and how far above its underside the brace's line of action is joined to it. */
  readonly braced: string;
  readonly above: number;
}

function placeKnee(d: Draft, corner: Corner, knee: KneeSpec, path: string): void {
  const { post, at, dir } = corner;
  const section = d.kit.section(knee.section, `${path}/section`);
  if (!section) return;
  const half = halfAlong(post, dir);
  const shape = kneeShape({ run: knee.run, rise: knee.rise, half, depth: section.depth });
  const below = at.z - knee.rise - post.start.z;
  if (below < LEAST_BELOW) {
    const most = inches(Math.max(0, at.z - post.start.z - LEAST_BELOW));
    d.refuse(
      'brace-at-foot',
      `${path}/rise`,
      'The brace meets the post at its foot.',
      post.mark,
      inches(knee.rise),
      `${most} or less`,
    );
    return;
  }
  if (shape.shortest < SHORTEST_EDGE) {
    d.refuse(
      'brace-too-short',
      path,
      'Between post and beam nothing is left of this brace.',
      post.mark,
      inches(Math.max(0, shape.shortest)),
      `a shorter edge of ${inches(SHORTEST_EDGE)} or more: a longer run and rise or a thinner brace`,
    );
    return;
  }
  const place = (s: number, z: number): Vec3 => ({ x: at.x + dir.x * s, y: at.y + dir.y * s, z: at.z + z });
  const { id, mark } = d.name(`${knee.section}|${knee.run}|${knee.rise}|${half}`);
  d.members.push({
    id,
    mark,
    role: 'brace',
    section,
    start: place(shape.foot.x, shape.foot.y),
    end: place(knee.run, 0),
    up: { x: dir.x * shape.up.x, y: dir.y * shape.up.x, z: shape.up.y },
    length: shape.length,
    state: 'new',
    strips: [],
    notch: 0,
    cuts: [
      `run ${inches(knee.run)}, rise ${inches(knee.rise)}`,
      `${degrees(shape.bevelAtPost)} off square at the post`,
      `${degrees(shape.bevelAtBeam)} off square at the top`,
    ],
    unbraced: { top: shape.working, bottom: shape.working },
    path,
  });
  d.meet('brace-to-beam', place(knee.run * (1 + corner.above / knee.rise), corner.above), [corner.braced, id], path);
  d.meet('brace-to-post', place(0, -knee.rise), [id, post.id], path);
}

function beamBraces(d: Draft, plan: BeamPlan, supports: Supports, spec: PostSpec, part: PostPart): void {
  const parts = supports.beamParts.get(plan.line.mark)!;
  const seen = new Set<string>();
  for (const brace of spec.braces ?? []) {
    const sign = brace.toward === 'end' ? 1 : -1;
    const along = spec.at + sign * brace.run;
    if (seen.has(brace.toward)) {
      d.refuse(
        'brace-twice',
        brace.path,
        'Two braces lean the same way.',
        spec.mark,
        brace.toward,
        'one toward each end',
      );
      continue;
    }
    seen.add(brace.toward);
    const [low, high] = [Math.min(spec.at, along), Math.max(spec.at, along)];
    const piece = parts.find((p) => p.from <= low + SLACK && p.to >= high - SLACK);
    if (!piece) {
      const room = Math.max(
        0,
        ...parts.map((p) =>
          p.from <= spec.at + SLACK && p.to >= spec.at - SLACK ? (sign > 0 ? p.to - spec.at : spec.at - p.from) : 0,
        ),
      );
      const most = `${inches(room)} or less, or no brace on this side`;
      const says = `The brace runs past the end of beam ${plan.line.mark} or over a splice.`;
      d.refuse('brace-past-beam', `${brace.path}/run`, says, spec.mark, inches(brace.run), most);
      continue;
    }
    const next = plan.line.posts.filter((p) => sign * (p.at - spec.at) > SLACK).sort((p, q) => sign * (p.at - q.at))[0];
    if (next) {
      const other = next.braces?.find((b) => b.toward !== brace.toward)?.run ?? part.member.section.width;
      const room = Math.abs(next.at - spec.at) - other;
      if (brace.run > room + SLACK) {
        const says = `The brace runs into ${next.mark} or its brace.`;
        d.refuse(
          'brace-crosses',
          `${brace.path}/run`,
          says,
          spec.mark,
          inches(brace.run),
          `${inches(Math.max(0, room))} or less`,
        );
        continue;
      }
    }
    const at = { ...onBeam(plan, spec.at), z: part.member.end.z };
    const dir = { x: sign * plan.dir.x, y: sign * plan.dir.y };
    placeKnee(d, { post: part.member, at, dir, braced: piece.member.id, above: 0 }, brace, brace.path);
  }
}

function placeStrut(d: Draft, spec: StrutSpec, supports: Supports): void {
  const from = supports.postParts.get(spec.from)?.member;
  const to = supports.postParts.get(spec.to)?.member;
  const section = d.kit.section(spec.section, `${spec.path}/section`);
  if (!from || !to || !section) return;
  const distance = Math.hypot(to.start.x - from.start.x, to.start.y - from.start.y);
  const line = (mark: string): string | undefined =>
    d.kit.project.cover.beams.find((b) => b.posts.some((p) => p.mark === mark))?.mark;
  if (line(spec.from) === line(spec.to)) {
    const says = 'Both posts stand under one beam, which ties them already.';
    d.refuse('strut-under-beam', spec.path, says, spec.mark, `${spec.from}, ${spec.to}`, 'posts of two beams');
    return;
  }
  const dir = { x: (to.start.x - from.start.x) / distance, y: (to.start.y - from.start.y) / distance };
  const z = Math.min(from.end.z, to.end.z) - section.depth / 2;
  const [a, b] = [halfAlong(from, dir), distance - halfAlong(to, dir)];
  const place = (s: number, level: number): Vec3 => ({
    x: from.start.x + dir.x * s,
    y: from.start.y + dir.y * s,
    z: level,
  });
  d.members.push({
    id: spec.mark,
    mark: spec.mark,
    role: 'strut',
    section,
    start: place(a, z),
    end: place(b, z),
    up: { x: 0, y: 0, z: 1 },
    length: b - a,
    state: 'new',
    strips: [],
    notch: 0,
    cuts: ['square both ends, fitted between the posts'],
    unbraced: { top: b - a, bottom: b - a },
    path: spec.path,
  });
  d.meet('strut-to-post', place(0, z), [spec.mark, from.id], spec.path);
  d.meet('strut-to-post', place(distance, z), [spec.mark, to.id], spec.path);
  if (!spec.braces) return;
  const above = section.depth / 2;
  const path = `${spec.path}/braces`;
  // The lines of action meet the strut's axis a little further in than its underside.
  const reach = spec.braces.run * (1 + above / spec.braces.rise);
  if (2 * reach > b - a + SLACK) {
    const says = `The braces of ${spec.mark} cross each other.`;
    const most = `${inches((b - a) / 2 / (1 + above / spec.braces.rise))} or less`;
    d.refuse('brace-crosses', `${path}/run`, says, spec.mark, inches(spec.braces.run), most);
    return;
  }
  const level = z - above;
  placeKnee(d, { post: from, at: place(0, level), dir, braced: spec.mark, above }, spec.braces, path);
  const back = { x: -dir.x, y: -dir.y };
  placeKnee(d, { post: to, at: place(distance, level), dir: back, braced: spec.mark, above }, spec.braces, path);
}

/** Every brace and strut of the cover, with the places where they meet posts and beams. */
export function placeBracing(supports: Supports, kit: Kit, number: (prefix: string) => number): Bracing {
  const d = new Draft(kit, number);
  for (const plan of kit.beams.values()) {
    if (!supports.beamParts.has(plan.line.mark)) continue;
    for (const spec of plan.line.posts) {
      const part = supports.postParts.get(spec.mark);
      if (part) beamBraces(d, plan, supports, spec, part);
    }
  }
  for (const spec of kit.project.cover.struts ?? []) placeStrut(d, spec, supports);
  return d;
}
