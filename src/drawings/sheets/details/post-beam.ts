/** Beam on post: at a corner, at a beam's end, at a post between; each joint mark and place once. */
import { distance, type Vec3 } from '../../../base/vec.js';
import type { Joint, Member, Structure } from '../../../structure/model.js';
import type { Primitive, Rect } from '../../ir/index.js';
import { see } from '../../views/camera.js';
import type { SheetContext } from '../contract.js';
import { briefly, needText } from '../joint-text.js';
import { dims } from '../parts.js';
import { connectorOver } from './connectors.js';
import type { Detail, DetailView } from './contract.js';
import { broken, facing, nearPicture, planDirection, spot, squareTo } from './picture.js';

/** Model inches shown to each side of the post, below the beam and above it. */
const SIDE = 17;
const BELOW = 15;
const ABOVE = 3;
/** An end this near to the post belongs to the detail. */
const NEAR_END = 20;

interface Seat {
  readonly joint: Joint;
  readonly beam: Member;
  readonly post: Member;
  readonly place: 'corner' | 'splice' | 'end' | 'between';
  /** Splice of the beam over this post. */
  readonly splice?: Joint | undefined;
  /** The other places of the mark that are like it. */
  readonly alike: Vec3[];
}

const partOf = (s: Structure, id: string | undefined): Member | undefined => s.members.find((m) => m.id === id);

const spliceAt = (s: Structure, joint: Joint): Joint | undefined =>
  s.joints.find(
    (j) =>
      j.kind === 'beam-splice' &&
      j.ties.some((t) => t.part === joint.ties[0]?.part) &&
      Math.hypot(j.at.x - joint.at.x, j.at.y - joint.at.y) < 1,
  );

function placeOf(s: Structure, joint: Joint, beam: Member): Seat['place'] {
  const own = planDirection(beam);
  const turned = s.joints.some((j) => {
    if (j === joint || j.kind !== 'beam-to-post' || j.ties.at(-1)?.part !== joint.ties.at(-1)?.part) return false;
    const other = partOf(s, j.ties[0]?.part);
    const d = other && planDirection(other);
    return d !== undefined && Math.abs(d.x * own.x + d.y * own.y) < 0.7;
  });
  if (turned) return 'corner';
  if (spliceAt(s, joint)) return 'splice';
  const along = joint.ties[0]!.along;
  return Math.min(along, distance(beam.start, beam.end) - along) < NEAR_END ? 'end' : 'between';
}

function seats(s: Structure): Seat[] {
  const found = new Map<string, Seat>();
  for (const joint of s.joints) {
    if (joint.kind !== 'beam-to-post') continue;
    const beam = partOf(s, joint.ties[0]?.part);
    const post = partOf(s, joint.ties.at(-1)?.part);
    if (!beam || !post) continue;
    const place = placeOf(s, joint, beam);
    const key = `${joint.mark} ${place}`;
    const before = found.get(key);
    if (before) before.alike.push(joint.at);
    else found.set(key, { joint, beam, post, place, splice: spliceAt(s, joint), alike: [] });
  }
  return [...found.values()];
}

const SHOWN = new Set<Member['role']>(['beam', 'post', 'strut', 'brace']);

/** Along the beam, from outside: beam, post and what holds them. */
function elevation(ctx: SheetContext, seat: Seat, notes: Notes): DetailView {
  const { joint, beam, post, splice } = seat;
  const camera = facing(planDirection(beam));
  const c = spot(camera, joint.at);
  const top = c.y + beam.section.depth;
  // Over a splice the line runs on to both sides.
  const pieces = splice ? ctx.input.structure.members.filter((m) => splice.ties.some((t) => t.part === m.id)) : [beam];
  const stations = pieces.flatMap((m) => [see(camera, m.start).a, see(camera, m.end).a]);
  const ends = [Math.min(...stations), Math.max(...stations)] as const;
  const left = Math.max(c.x - SIDE, Math.min(ends[0] - 2, c.x - post.section.width));
  const right = Math.min(c.x + SIDE, Math.max(ends[1] + 2, c.x + post.section.width));
  const frame: Rect = { x: left, y: c.y - BELOW, w: right - left, h: top + ABOVE - c.y + BELOW };
  const depth = see(camera, joint.at).depth;
  const picture = nearPicture(ctx, {
    camera,
    frame,
    depth: [depth - 8, depth + 8],
    keep: (p) => SHOWN.has(p.role as Member['role']),
  });
  const held = connectorOver(ctx, joint, beam, post, camera);
  const half = post.section.width / 2;
  const end = c.x - ends[0] < ends[1] - c.x ? ends[0] : ends[1];
  const shownEnd = end > left && end < right;
  return {
    name: 'Along the beam',
    frame,
    items: [...picture, ...held.items],
    margin: { left: 5.5, right: 5.5, above: 1, below: shownEnd || held.across.length > 0 ? 9.5 : 6.5 },
    over: (scale): Primitive[] => {
      const common = { scale, layer: 'S-ANNO-DIMS', first: 3.6 * ctx.style.note } as const;
      return [
        ...dims(ctx, {
          ...common,
          side: 'below',
          datum: frame.y,
          tiers: [
            { stations: [c.x - half, ...(splice ? [c.x] : []), c.x + half] },
            ...(shownEnd && !splice ? [{ stations: [end, c.x] }] : []),
          ],
        }).items,
        ...(held.heights.length > 1
          ? dims(ctx, { ...common, side: 'left', datum: left, tiers: [{ stations: held.heights.map((y) => c.y + y) }] })
              .items
          : []),
        ...broken(ctx, { x: c.x - half - 1.5, y: frame.y }, { x: c.x + half + 1.5, y: frame.y }),
        ...[left, right].flatMap((x, i) =>
          (i === 0 ? ends[0] < left : ends[1] > right) ? broken(ctx, { x, y: c.y - 1.5 }, { x, y: top + 1.5 }) : [],
        ),
      ];
    },
    keys: [
      {
        at: { x: c.x + (shownEnd && end > c.x ? -1 : 1) * (half + 4), y: top - beam.section.depth * 0.3 },
        text: notes.beam,
        mark: beam.mark,
        off: { x: 2, y: 4 },
      },
      { at: { x: c.x, y: c.y }, text: notes.bears, mark: joint.mark, off: { x: -5, y: -3 } },
      {
        at: { x: c.x + half * 0.5, y: c.y - (held.heights.length > 1 ? 3 : 2) },
        text: notes.held,
        mark: joint.mark,
        off: { x: 5, y: -2 },
      },
      { at: { x: c.x, y: c.y - BELOW * 0.7 }, text: notes.post, mark: post.mark, off: { x: -5, y: 0 } },
    ],
  };
}

/** Across the beam, cut through the middle of the post. */
function section(ctx: SheetContext, { joint, beam, post, splice }: Seat, notes: Notes): DetailView {
  const camera = facing(squareTo(planDirection(beam)));
  const c = spot(camera, joint.at);
  // Two pieces butt over the middle: the cut goes through one of them.
  const inward = see(camera, { x: (beam.start.x + beam.end.x) / 2, y: (beam.start.y + beam.end.y) / 2, z: 0 }).depth;
  const middle = see(camera, joint.at).depth;
  const depth = splice ? middle + 1.5 * Math.sign(inward - middle) : middle;
  const top = c.y + beam.section.depth;
  const half = Math.max(beam.section.width, post.section.depth) / 2;
  const frame: Rect = { x: c.x - half - 5, y: c.y - BELOW, w: 2 * half + 10, h: top + ABOVE - c.y + BELOW };
  const picture = nearPicture(ctx, {
    camera,
    frame,
    depth: [depth - 10, depth + 10],
    cutAt: depth,
    keep: (p) => p.part === beam.id || p.part === post.id || p.role === 'strut',
  });
  const held = connectorOver(ctx, joint, beam, post, camera);
  const contact = joint.contact.width > 0 ? joint.contact.width : beam.section.width;
  return {
    name: 'Across the beam',
    frame,
    items: [...picture, ...held.items],
    margin: { left: 1.5, right: 6, above: 1, below: 9.5 },
    over: (scale): Primitive[] => {
      const common = { scale, layer: 'S-ANNO-DIMS', first: 3.6 * ctx.style.note } as const;
      return [
        ...dims(ctx, {
          ...common,
          side: 'below',
          datum: frame.y,
          tiers: [
            { stations: [c.x - post.section.depth / 2, c.x + post.section.depth / 2] },
            { stations: [c.x - contact / 2, c.x + contact / 2] },
          ],
        }).items,
        ...dims(ctx, { ...common, side: 'right', datum: frame.x + frame.w, tiers: [{ stations: [c.y, top] }] }).items,
        ...broken(ctx, { x: c.x - half - 1.5, y: frame.y }, { x: c.x + half + 1.5, y: frame.y }),
      ];
    },
    keys: [
      { at: { x: c.x, y: top - beam.section.depth * 0.3 }, text: notes.beam, mark: beam.mark, off: { x: 4, y: 4 } },
      { at: { x: c.x + half, y: c.y - 3 }, text: notes.held, mark: joint.mark, off: { x: 3, y: -3 } },
    ],
  };
}

interface Notes {
  readonly beam: string;
  readonly bears: string;
  readonly held: string;
  readonly post: string;
}

const WHERE: Readonly<Record<Seat['place'], string>> = {
  corner: 'at a corner',
  splice: 'where it is spliced',
  end: 'at its end',
  between: 'between its ends',
};

function detailOf(ctx: SheetContext, seat: Seat): Detail {
  const { joint, beam, post, place, splice } = seat;
  const { len } = ctx;
  const notes: Notes = {
    beam: `${beam.mark}: ${beam.section.label}, top at ${len(beam.start.z + beam.section.depth / 2)} from the floor.`,
    bears: `Beam bears on the post, wood on wood, ${len(joint.contact.length)} x ${len(joint.contact.width)}; ${joint.mark} ${needText(ctx, joint.mark)}.`,
    held: `${joint.mark}: ${briefly(ctx, joint.mark)}. Dashed: place of the connector, its shape is its maker’s.`,
    post: `${post.mark}: ${post.section.label}, cut square after measuring on site.`,
  };
  const dashed = connectorOver(ctx, joint, beam, post, facing(planDirection(beam))).heights.length === 0;
  const own: Notes = dashed ? notes : { ...notes, held: `${joint.mark}: ${briefly(ctx, joint.mark)}.` };
  return {
    id: `post-beam ${joint.mark} ${place}`,
    title: `${beam.mark} on post ${post.mark}, ${WHERE[place]}`,
    views: [elevation(ctx, seat, own), section(ctx, seat, own)],
    words: [
      ...(splice
        ? [
            `${splice.mark}: pieces butt square over the middle of the post, each bearing on its half; ${needText(ctx, splice.mark)}, ${briefly(ctx, splice.mark)}.`,
          ]
        : []),
      'Beams bear on posts, never on bolts alone. Fill every hole the connector’s load counts on; no notch in the beam.',
    ],
    scales: ['3', '1-1/2', '1', '3/4'],
    call: { at: joint.at, alike: seat.alike, radius: 12 },
  };
}

export const postBeamDetails = (ctx: SheetContext): readonly Detail[] =>
  seats(ctx.input.structure).map((s) => detailOf(ctx, s));
