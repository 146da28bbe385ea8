/**
 * Framing of a hip roof: common rafters from the side beams to the ridge beam, one king rafter at each end of the ridge, jack
 * rafters from the beams to the hips, and hips from the corners to the ridge beam's ends.
 *
 * The bottom edges of all rafters meet the beams' tops at their inner corners (rafter.ts). A hip's upper edge is dropped so that
 * its two corners lie in the slopes: half its thickness across, at 45 degrees, times the pitch. Its seat runs from the inner
 * to the outer corner of the beams.
 *
 * Lengths are by the usual figures: a common rafter rises tan on 1, a hip tan on √2; each jack is shorter than the last by
 * the spacing over the cosine; jacks end at the hip's face, half its thickness at 45 degrees short of its centre.
 */
import type { Vec3 } from '../../base/vec.js';
import type { HipRoof } from '../../project/model.js';
import { LEAST_BEARING, SLACK } from '../constants.js';
import { error, warning } from '../issues.js';
import type { Kit } from '../kit.js';
import type { Member, Strip } from '../model.js';
import type { HipFace } from '../roofs/contract.js';
import type { LayInput, Laying } from '../roofs/lay.js';
import { degrees, inches, serial } from '../text.js';
import type { Seat } from './contract.js';
import { at, type Frame, planAt } from './hip-frame.js';
import { planesOf, trimOf } from './hip-planes.js';

/** Least room between a beam and a hip that a jack is put in, inches. Common practice, no source. */
const SHORTEST_JACK = 6;

const ROOT2 = Math.SQRT2;

/** Seat of a hip: how much of the beams' corner it lies on, and the depth of the notch square to its axis. */
function hipSeat(f: Frame): { readonly length: number; readonly notch: number } {
  const tanH = f.tan / ROOT2;
  const cosH = 1 / Math.hypot(1, tanH);
  const drop = (f.hip.b / 2 / ROOT2) * f.tan;
  // How far its bottom edge lies under the beams' tops at their inner corner.
  const extra = f.hip.d / cosH + drop - f.plumb;
  const whole = f.plan.seat * ROOT2;
  return {
    length: extra < 0 ? whole + extra / tanH : whole,
    notch: Math.max(0, (whole * tanH + extra) * cosH),
  };
}

function fits(f: Frame, kit: Kit): boolean {
  const { roof } = f;
  const refuse = (code: string, path: string, message: string, found: string, expected: string): boolean => {
    kit.issues.push(error(code, path, message, { subject: roof.mark, found, expected }));
    return false;
  };
  const seat = f.plan.seat * f.sin;
  if (seat > f.common.d / 4 + SLACK)
    return refuse(
      'seat-too-deep',
      `${roof.path}/framing/section`,
      'The seat over the beams would notch the rafters more than a quarter of their depth (NDS 2018 4.4.3).',
      inches(seat),
      `at most ${inches(f.common.d / 4)}: a deeper rafter, a narrower beam or a lower pitch`,
    );
  const hip = hipSeat(f);
  if (hip.notch > f.hip.d / 4 + SLACK)
    return refuse(
      'seat-too-deep',
      `${roof.path}/hip`,
      'The seat over the corner would notch the hips more than a quarter of their depth (NDS 2018 4.4.3).',
      inches(hip.notch),
      `at most ${inches(f.hip.d / 4)}: a hip little deeper than the rafters, a narrower beam or a lower pitch`,
    );
  if (hip.length < LEAST_BEARING)
    return refuse(
      'bearing-too-short',
      `${roof.path}/hip`,
      'The hips are so shallow that they lie over the corner without bearing on it.',
      inches(Math.max(0, hip.length)),
      'hips as deep as the rafters or little deeper',
    );
  const cut = f.plumb;
  const has = f.hip.d * Math.hypot(1, f.tan / ROOT2);
  if (has < cut - 0.5)
    kit.issues.push(
      warning(
        'hip-shallower-than-jacks',
        `${roof.path}/hip`,
        'The hips are not as deep as the plumb cut of the jacks (IRC 2018 R802.4.3, recalled).',
        {
          subject: roof.mark,
          found: inches(has),
          expected: `${inches(cut)} measured plumb`,
        },
      ),
    );
  return true;
}

/** A rafter's place on its face, and where it ends up the slope. */
interface Spot {
  readonly t: number;
  readonly end: number;
  readonly kind: 'common' | 'king' | 'jack';
}

/** Frames of a face in order along its eave. */
function spotsOf(f: Frame, face: HipFace, hipHalf: number): Spot[] {
  const { width, seat } = f.plan;
  const { spacing } = f.roof.framing;
  const half = width / 2;
  const least = f.roof.eave + seat + SHORTEST_JACK;
  const jacks: number[] = [];
  for (let t = half - spacing; t >= least + hipHalf; t -= spacing) jacks.unshift(t);
  const jack = (t: number): Spot => ({ t, end: Math.min(t, face.length - t) - hipHalf, kind: 'jack' });
  const middle: Spot[] = [];
  const ridge = face.length - width;
  if (ridge < SLACK) middle.push({ t: half, end: half, kind: 'king' });
  else {
    const bays = Math.ceil(ridge / spacing - 1e-9);
    for (let k = 0; k <= bays; k++) middle.push({ t: half + (ridge * k) / bays, end: half, kind: 'common' });
  }
  return [...jacks.map(jack), ...middle, ...[...jacks].reverse().map((t) => jack(face.length - t))];
}

export function layHip(input: LayInput<HipRoof>): Laying | undefined {
  const { roof, profile, kit, number } = input;
  const plan = profile.hip;
  if (plan === undefined || roof.framing.kind !== 'rafter') return undefined;
  const common = kit.section(roof.framing.section, `${roof.path}/framing/section`);
  const hip = kit.section(roof.hip, `${roof.path}/hip`);
  if (common === undefined || hip === undefined) return undefined;
  const [tan, cos, sin] = [Math.tan(roof.pitch), Math.cos(roof.pitch), Math.sin(roof.pitch)];
  const plumb = common.d / cos;
  const topEdge = (s: number): number => roof.bearing + plumb + (s - roof.eave - plan.seat) * tan;
  const f: Frame = { roof, plan, common, hip, tan, cos, sin, topEdge, plumb };
  if (!fits(f, kit)) return undefined;

  const hipHalf = hip.b / ROOT2;
  const marks = { common: `RF${number('RF')}`, hip: `HR${number('HR')}` };
  const jackMarks = new Map<string, string>();
  const counts = new Map<string, number>();
  const serialOf = (mark: string): string => {
    const n = (counts.get(mark) ?? 0) + 1;
    counts.set(mark, n);
    return `${mark}-${serial(n)}`;
  };
  const rafters: Member[] = [];
  const seats: Seat[] = [];
  const tails: Member[][] = [];
  const hipStrips: Strip[][] = [[], [], [], []];
  const toHips: { readonly member: Member; readonly corner: number; readonly at: Vec3 }[] = [];

  for (const [k, face] of plan.faces.entries()) {
    const spots = spotsOf(f, face, hipHalf);
    const edges = [spots[0]!.t / 2, ...spots.slice(1).map((s, i) => (s.t + spots[i]!.t) / 2)];
    edges.push(face.length - spots[0]!.t / 2);
    hipStrips[k]!.push({ surface: face.surface, u0: 0, u1: edges[0]! });
    hipStrips[(k + 1) % 4]!.push({ surface: face.surface, u0: edges[spots.length]!, u1: face.length });
    const row: Member[] = [];
    for (const [i, spot] of spots.entries()) {
      const size = spot.end.toFixed(3);
      if (spot.kind === 'jack' && !jackMarks.has(size)) jackMarks.set(size, `JK${number('JK')}`);
      const mark = spot.kind === 'jack' ? jackMarks.get(size)! : marks.common;
      const strip = { surface: face.surface, u0: edges[i]!, u1: edges[i + 1]! };
      const m = rafterAt(f, face, spot, serialOf(mark), mark, strip);
      row.push(m);
      seats.push({
        kind: 'rafter-to-beam',
        member: m.id,
        support: face.beam,
        at: at(planAt(face, spot.t, roof.eave + plan.seat / 2), roof.bearing),
        contact: { length: plan.seat, width: common.b },
      });
      if (spot.kind === 'jack')
        toHips.push({ member: m, corner: spot.t < face.length / 2 ? k : (k + 1) % 4, at: m.end });
      else seats.push(ridgeSeat(f, face, spot, m));
    }
    rafters.push(...row);
    tails.push(row);
  }
  const hips = plan.faces.map((face, k) => hipAt(f, face, k, serialOf(marks.hip), marks.hip, hipStrips[k]!));
  for (const j of toHips)
    seats.push({
      kind: 'jack-to-hip',
      member: j.member.id,
      support: hips[j.corner]!.id,
      at: j.at,
      contact: { length: 0, width: 0 },
    });
  for (const [k, m] of hips.entries()) {
    const face = plan.faces[k]!;
    const middle = roof.eave + plan.seat / 2;
    seats.push(
      {
        kind: 'hip-to-beam',
        member: m.id,
        support: face.beam,
        at: at(planAt(face, middle, middle), roof.bearing),
        contact: { length: hipSeat(f).length, width: hip.b },
      },
      { kind: 'hip-to-ridge', member: m.id, support: plan.ridge.mark, at: m.end, contact: { length: 0, width: 0 } },
    );
  }
  const ridgeTop = topEdge(plan.width / 2) - plumb;
  const framed = {
    members: [...rafters, ...hips],
    seats,
    tails,
    tops: new Map([
      ...plan.faces.map((face) => [face.beam, roof.bearing] as const),
      [plan.ridge.mark, ridgeTop] as const,
    ]),
    eaves: plan.faces.map(() => topEdge(0)),
    plumb,
  };
  return { framed, planes: planesOf(input, f), trim: trimOf(input, f, tails) };
}

function rafterAt(f: Frame, face: HipFace, spot: Spot, id: string, mark: string, strip: Strip): Member {
  const { roof, common, cos, sin, tan, plan } = f;
  const half = f.plumb / 2;
  const jack = spot.kind === 'jack';
  // A jack's long point stands half its thickness past its centre line along the hip's face.
  const long = spot.end + (jack ? common.b / 2 : 0);
  return {
    id,
    mark,
    role: 'rafter',
    section: common,
    start: at(planAt(face, spot.t, 0), f.topEdge(0) - half),
    end: at(planAt(face, spot.t, spot.end), f.topEdge(spot.end) - half),
    up: { x: -face.inward.x * sin + 0, y: -face.inward.y * sin + 0, z: cos },
    length: long / cos + common.d * tan,
    state: 'new',
    strips: [strip],
    roof: roof.mark,
    notch: plan.seat * sin,
    cuts: [
      jack
        ? `plumb cuts ${degrees(roof.pitch)}; cheek cut on the hip, 45° on plan, long point at ${inches(long / cos)}`
        : `plumb cut ${degrees(roof.pitch)} both ends`,
      `seat ${inches(plan.seat)} level, heel ${inches(plan.seat * tan)} plumb, over ${face.beam}`,
    ],
    unbraced: {
      top: roof.finish.sheathing !== '' ? 0 : spot.end / cos,
      bottom: (spot.end - roof.eave - plan.seat / 2) / cos,
    },
    path: `${roof.path}/framing`,
  };
}

/** Upper end of a common rafter on its half of the ridge beam; of a king rafter in a hanger at the beam's end. */
function ridgeSeat(f: Frame, face: HipFace, spot: Spot, m: Member): Seat {
  const { ridge, width } = f.plan;
  if (spot.kind === 'king')
    return { kind: 'hip-to-ridge', member: m.id, support: ridge.mark, at: m.end, contact: { length: 0, width: 0 } };
  return {
    kind: 'rafter-to-beam',
    member: m.id,
    support: ridge.mark,
    at: at(planAt(face, spot.t, width / 2 - ridge.width / 4), f.topEdge(width / 2) - f.plumb),
    contact: { length: ridge.width / 2, width: f.common.b },
  };
}

/** The hip that starts at the first corner of a face. */
function hipAt(f: Frame, face: HipFace, k: number, id: string, mark: string, strips: readonly Strip[]): Member {
  const { roof, hip, plan } = f;
  const tanH = f.tan / ROOT2;
  const cosH = 1 / Math.hypot(1, tanH);
  const drop = (hip.b / 2 / ROOT2) * f.tan;
  const half = hip.d / cosH / 2;
  const z = (s: number): number => f.topEdge(s) - drop - half;
  const top = plan.width / 2;
  const run = top * ROOT2;
  const d = { x: (face.u.x + face.inward.x) / ROOT2, y: (face.u.y + face.inward.y) / ROOT2 };
  const { length, notch } = hipSeat(f);
  const slope = Math.atan(tanH);
  const span = (top - roof.eave - plan.seat / 2) * ROOT2;
  return {
    id,
    mark,
    role: 'hip',
    section: hip,
    start: at(planAt(face, 0, 0), z(0)),
    end: at(planAt(face, top, top), z(top)),
    up: { x: -d.x * tanH * cosH, y: -d.y * tanH * cosH, z: cosH },
    length: run / cosH + hip.d * tanH,
    state: 'new',
    strips,
    roof: roof.mark,
    notch,
    cuts: [
      `plumb cut ${degrees(slope)} both ends, upper end with two cheek cuts of 45° on plan`,
      `upper edge ${inches(drop)} below the line where the slopes meet`,
      `seat ${inches(length)} level over the corner of ${face.beam} and ${plan.faces[(k + 3) % 4]!.beam}`,
    ],
    unbraced: { top: roof.framing.spacing * ROOT2, bottom: span / cosH },
    path: `${roof.path}/hip`,
  };
}
