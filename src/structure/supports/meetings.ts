import type { Meeting } from '../joints.js';
import { atLedger, type Kit, onBeam } from '../kit.js';
import type { JointKind, WallPlaced } from '../model.js';
import { woodAcross } from '../sections.js';
import type { BeamPart } from './beams.js';
import { endMeetings } from './ends.js';
import { fastenerGroups } from './ledgers.js';
import type { LaidRoof, Supports } from './place.js';
import { shareOfPost } from './shared-posts.js';

/** Every place where parts meet, in the order the load comes down. */
export function meetingsOf(
  roofs: readonly LaidRoof[],
  supports: Supports,
  walls: readonly WallPlaced[],
  kit: Kit,
): Meeting[] {
  return [
    ...roofs.flatMap((r) => framingMeetings(r, supports, kit)),
    ...ledgerMeetings(supports, walls, kit),
    ...beamMeetings(supports, walls, kit),
    ...roofs.flatMap(trimMeetings),
  ];
}

/** The piece of a beam line at a distance along it. */
const partAt = (parts: readonly BeamPart[], along: number): BeamPart =>
  parts.find((p) => along <= p.to) ?? parts[parts.length - 1]!;

function framingMeetings(r: LaidRoof, supports: Supports, kit: Kit): Meeting[] {
  return r.framed.seats.map((seat): Meeting => {
    const plan = kit.beams.get(seat.support);
    const parts = supports.beamParts.get(seat.support);
    let support = seat.support;
    if (plan && parts) {
      const along = (seat.at.x - plan.line.from.x) * plan.dir.x + (seat.at.y - plan.line.from.y) * plan.dir.y;
      support = partAt(parts, along).member.id;
    }
    return {
      kind: seat.kind,
      at: seat.at,
      parts: [seat.member, support],
      contact: seat.contact,
      path: `${r.roof.path}/framing`,
    };
  });
}

function ledgerMeetings(supports: Supports, walls: readonly WallPlaced[], kit: Kit): Meeting[] {
  const out: Meeting[] = [];
  for (const member of supports.members) {
    const plan = member.role === 'ledger' ? kit.ledgers.get(member.mark) : undefined;
    const wall = plan && walls[plan.spec.wall];
    if (plan === undefined || wall === undefined) continue;
    for (const along of fastenerGroups(plan)) {
      out.push({
        kind: 'ledger-to-house',
        at: { ...atLedger(plan, plan.spec.from + along, plan.line), z: member.start.z },
        parts: [member.id, wall.id],
        contact: { length: 0, width: 0 },
        path: plan.spec.path,
      });
    }
  }
  return out;
}

function beamMeetings(supports: Supports, walls: readonly WallPlaced[], kit: Kit): Meeting[] {
  const held: Meeting[] = [];
  const splices: Meeting[] = [];
  const caps: Meeting[] = [];
  const bases: Meeting[] = [];
  for (const [mark, parts] of supports.beamParts) {
    const plan = kit.beams.get(mark)!;
    const underside = parts[0]!.member.start.z - plan.section.depth / 2;
    held.push(...endMeetings(plan, parts, supports.ends.get(mark) ?? [], walls));
    for (let i = 0; i + 1 < parts.length; i++) {
      const at = { ...onBeam(plan, parts[i]!.to), z: parts[i]!.member.start.z };
      splices.push(meeting('beam-splice', at, [parts[i]!.member.id, parts[i + 1]!.member.id], plan.line.path));
    }
    const shared = (plan.line.shared ?? []).map((s) => ({ mark: s.post, at: s.at, path: plan.line.path }));
    for (const spec of [...plan.line.posts, ...shared]) {
      const post = supports.postParts.get(spec.mark);
      if (post === undefined) continue;
      const half = post.member.section.width / 2;
      const across = woodAcross(plan.section, post.member.section.depth);
      const at = { ...onBeam(plan, spec.at), z: underside };
      for (const part of parts) {
        // A piece bears on as much of the post as it covers; two pieces meeting on a post share it.
        const length = Math.min(part.to, spec.at + half) - Math.max(part.from, spec.at - half);
        if (length <= 0) continue;
        caps.push({
          ...meeting('beam-to-post', at, [part.member.id, spec.mark], spec.path),
          contact: { length, width: across },
        });
      }
      if (!('footingMark' in spec)) continue;
      bases.push({
        ...meeting('post-to-footing', post.member.start, [spec.mark, spec.footingMark], spec.path),
        contact: { length: post.member.section.d, width: post.member.section.b },
      });
    }
  }
  return [...splices, ...shareCorners(caps, supports), ...bases, ...held];
}

/** Contact of the caps on posts that more than one beam line stands on: each beam has its share of the post's top. */
function shareCorners(caps: readonly Meeting[], supports: Supports): Meeting[] {
  const beams = new Map([...supports.beamParts.values()].flat().map((p) => [p.member.id, p.member]));
  return caps.map((cap) => {
    const mine = beams.get(cap.parts[0]!)!;
    const others = caps.flatMap((c) => {
      const m = c.parts[1] === cap.parts[1] ? beams.get(c.parts[0]!) : undefined;
      return m === undefined || m.mark === mine.mark ? [] : [m];
    });
    const post = supports.postParts.get(cap.parts[1]!)?.member;
    if (others.length === 0 || post === undefined) return cap;
    const { width } = cap.contact;
    // The share is of the whole width of the beam: its strips bear nothing.
    const wood = (shareOfPost(mine, others, post) * mine.section.b) / mine.section.width;
    return { ...cap, contact: { length: wood / width, width } };
  });
}

const meeting = (kind: JointKind, at: Meeting['at'], parts: readonly string[], path: string): Meeting => ({
  kind,
  at,
  parts,
  contact: { length: 0, width: 0 },
  path,
});

const trimMeetings = (r: LaidRoof): Meeting[] =>
  (r.trim?.seats ?? []).map((s) => ({
    kind: s.kind,
    at: s.at,
    parts: [s.member, s.support],
    contact: s.contact,
    path: `${r.roof.path}/finish/fascia`,
  }));
