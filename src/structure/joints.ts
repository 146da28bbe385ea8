/** Joints from the meetings of parts: marks shared by equal ones, numbered along the load path. */
import type { Vec3 } from '../base/vec.js';
import type { Footing, Joint, JointKind, Member, Tie, WallPlaced } from './model.js';
import { serial } from './text.js';

/** Two or more parts that meet; `parts` in the order the load comes down. */
export interface Meeting {
  readonly kind: JointKind;
  readonly at: Vec3;
  readonly parts: readonly string[];
  readonly contact: Joint['contact'];
  readonly path: string;
}

/** Roof first, ground last; trim carries nothing and comes after. */
const ORDER: Readonly<Record<JointKind, number>> = {
  'outlooker-to-frame': -1,
  'jack-to-hip': -0.5,
  'rafter-to-ledger': 0,
  'rafter-to-beam': 1,
  'hip-to-beam': 1.5,
  'hip-to-ridge': 1.6,
  'truss-to-beam': 2,
  'rafter-to-ridge': 2.2,
  'tie-to-rafter': 2.4,
  'ledger-to-house': 3,
  'beam-splice': 4,
  'beam-to-post': 5,
  'beam-to-wall-post': 6,
  'beam-to-wall': 7,
  'strut-to-post': 8,
  'brace-to-beam': 9,
  'brace-to-post': 10,
  'post-to-footing': 11,
  'post-to-house': 12,
  'fascia-to-framing': 13,
};

/**
 * Distance along a member's axis of the point plumb over or under `at` (of a post: level with it), kept on the axis.
 * Forces come down plumb, so this is where they act on the member.
 */
export function alongOf(m: Member, at: Vec3): number {
  const dx = m.end.x - m.start.x;
  const dy = m.end.y - m.start.y;
  const dz = m.end.z - m.start.z;
  const plan = dx * dx + dy * dy;
  const length = Math.sqrt(plan + dz * dz);
  const t =
    plan > dz * dz * 1e-6 ? ((at.x - m.start.x) * dx + (at.y - m.start.y) * dy) / plan : (at.z - m.start.z) / dz;
  return Math.min(1, Math.max(0, t)) * length;
}

export interface Parts {
  readonly members: ReadonlyMap<string, Member>;
  readonly footings: ReadonlyMap<string, Footing>;
  readonly walls: ReadonlyMap<string, WallPlaced>;
}

/** Framing of one mark is alike; beams, posts and footings are alike when their choice is. */
function likeness(part: string, parts: Parts): string {
  const member = parts.members.get(part);
  if (member) return member.roof === undefined ? member.section.choice : member.mark;
  return parts.footings.get(part)?.choice ?? part;
}

const REPEATED: ReadonlySet<JointKind> = new Set(['fascia-to-framing']);

export function makeJoints(meetings: readonly Meeting[], parts: Parts): Joint[] {
  const groups = new Map<string, Meeting[]>();
  for (const m of [...meetings].sort((p, q) => ORDER[p.kind] - ORDER[q.kind])) {
    // Trim is nailed alike to whatever it meets.
    const names = REPEATED.has(m.kind) ? m.parts.slice(0, 1) : m.parts;
    const key = `${m.kind}|${names.map((p) => likeness(p, parts)).join('|')}`;
    const group = groups.get(key);
    if (group) group.push(m);
    else groups.set(key, [m]);
  }
  const joints: Joint[] = [];
  let number = 0;
  for (const group of groups.values()) {
    const mark = `J${++number}`;
    for (const [i, m] of group.entries()) {
      const ties = m.parts.map((part): Tie => {
        const member = parts.members.get(part);
        return { part, along: member ? alongOf(member, m.at) : 0 };
      });
      joints.push({
        id: `${mark}-${serial(i + 1)}`,
        mark,
        kind: m.kind,
        at: m.at,
        ties,
        contact: m.contact,
        path: m.path,
      });
    }
  }
  return joints;
}
