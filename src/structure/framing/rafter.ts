/**
 * Rafters of one slope, or of two that meet on a ridge beam, each on a level seat over a beam and, at the high end, on a
 * second seat or in a hanger.
 *
 * Seat rule: the bottom edge meets the beam's top corner on the uphill side; from there the seat runs level over the whole
 * beam and ends in a plumb heel cut at the downhill face. The notch, square to the axis, is seat width × sin(slope); it may
 * be a quarter of the depth (NDS 2018 4.4.3, end notches). On a beam two slopes share, each has half of its width and ends
 * in a plumb cut at its centre line.
 *
 *        ___----
 *   ___--    __--      |  uphill face of the beam: notch starts at nothing
 *  |      _-|_____     |
 *  |___---   [beam]    heel: plumb, at the downhill face
 *
 * A ledger's top is flush with the rafter's top edge where they meet. Rafters on a ridge board end at its faces (ties.ts).
 */
import type { CoverRoof } from '../../project/model.js';
import { toHouse } from '../axes.js';
import { LEAST_BEARING, SLACK } from '../constants.js';
import { error, warning } from '../issues.js';
import type { Kit } from '../kit.js';
import type { Member, Section } from '../model.js';
import type { Bearing, Profile } from '../roofs/contract.js';
import { degrees, inches, serial } from '../text.js';
import type { Framed, FrameInput, Framing, Seat } from './contract.js';
import type { Slope } from './slope.js';
import { placeTies } from './ties.js';

/** Most that shims may fill between an end rafter and the outlookers, inches. Common practice, no source. */
const SHIM = 0.5;

export const rafter: Framing<'rafter'> = {
  frame({ roof, choice, profile, number, strips, kit }: FrameInput<'rafter'>): Framed | undefined {
    const section = kit.section(choice.section, `${roof.path}/framing/section`);
    const { ties } = choice;
    if (profile.legs.length > 1 && profile.ridge === undefined && ties === undefined) return noRidge(roof, kit);
    if (ties !== undefined && (profile.legs.length < 2 || profile.ridge !== undefined)) return noTies(roof, kit);
    if (section === undefined) return undefined;
    const board = ties && kit.section(ties.ridgeBoard, `${roof.path}/framing/ties/ridgeBoard`);
    if (ties && board === undefined) return undefined;
    const slopes = slopesOf(roof, profile, section, board?.width ?? 0);
    const end = endSection(roof, section, kit);
    if (end === undefined || !fits(roof, slopes, end, kit)) return undefined;

    const mark = `RF${number('RF')}`;
    const endMark = end === section ? mark : `RF${number('RF')}`;
    const counts = new Map<string, number>();
    const tails: Member[][] = [];
    const seats: Seat[] = [];
    for (const slope of slopes) {
      const row: Member[] = [];
      for (const [i, l] of profile.stations.entries()) {
        const atEnd = i === 0 || i === profile.stations.length - 1;
        const own = atEnd ? endMark : mark;
        const count = (counts.get(own) ?? 0) + 1;
        counts.set(own, count);
        const id = `${own}-${serial(count)}`;
        const made = rafterAt(roof, profile, slope, { section: atEnd ? end : section, full: section }, l);
        row.push({ ...made, id, mark: own, strips: strips[i]!.filter((s) => s.surface === slope.leg.surface) });
        for (const b of bearingsOf(slope)) seats.push(seatAt(profile, slope, b, section, l, id));
      }
      tails.push(row);
    }
    const tied = ties && board && placeTies({ roof, ties, board, section, profile, slopes, tails, number, kit });
    if (ties && tied === undefined) return undefined;
    return {
      members: [...tails.flat(), ...(tied?.members ?? [])],
      seats: [...seats, ...(tied?.seats ?? [])],
      tails,
      tops: new Map(
        slopes.flatMap((s) => [
          [s.low.part, s.lowTop] as const,
          ...(s.high ? [[s.high.part, s.highTop] as const] : []),
        ]),
      ),
      eaves: slopes.map((s) => s.topEdge(s.leg.eave)),
      plumb: section.d / Math.cos(roof.pitch),
    };
  },
};

/**
 * Section of the end rafters. Under outlookers it is shallower, so that they pass over it with their upper sides in the plane
 * of the other rafters' top edges; its bottom edge and seats are those of the others.
 */
function endSection(roof: CoverRoof, section: Section, kit: Kit): Section | undefined {
  const rake = roof.rakeFraming;
  if (rake === undefined) return section;
  const at = `${roof.path}/rakeFraming/endFrame`;
  const look = kit.section(rake.section, `${roof.path}/rakeFraming/section`);
  const end = rake.endFrame === undefined ? undefined : kit.section(rake.endFrame, at);
  if (look === undefined || (rake.endFrame !== undefined && end === undefined)) return undefined;
  const room = section.d - (rake.lay === 'flat' ? look.b : look.d);
  if (end !== undefined && end.b === section.b && end.d <= room + SLACK && end.d >= room - SHIM) return end;
  kit.issues.push(
    error(
      'end-frame-under-outlookers',
      at,
      'The outlookers pass over the end rafters, which must be shallower by their thickness.',
      {
        subject: roof.mark,
        found: end?.label ?? 'no "endFrame"',
        expected: `a section as wide as the rafters, ${inches(Math.max(0, room - SHIM))} to ${inches(room)} deep`,
      },
    ),
  );
  return undefined;
}

function noRidge(roof: CoverRoof, kit: Kit): undefined {
  kit.issues.push(
    error(
      'framing-unsupported',
      `${roof.path}/framing/kind`,
      'Rafters that meet at a ridge push the beams apart unless a ridge beam carries their upper ends or ties hold their feet.',
      {
        subject: roof.mark,
        found: roof.framing.kind,
        expected: '"ridgeBeam" with the mark of a beam under the ridge, "ties" on the framing, or "common-truss"',
      },
    ),
  );
  return undefined;
}

function noTies(roof: CoverRoof, kit: Kit): undefined {
  const message =
    'Ties belong under two slopes that meet on a ridge board; here beams or a ledger carry both ends of the rafters.';
  kit.issues.push(
    error('ties-without-thrust', `${roof.path}/framing/ties`, message, {
      subject: roof.mark,
      expected: 'no "ties", or a gable without "ridgeBeam"',
    }),
  );
  return undefined;
}

const bearingsOf = (s: Slope): Bearing[] => (s.high ? [s.low, s.high] : [s.low]);

function slopesOf(roof: CoverRoof, profile: Profile, section: Section, board: number): Slope[] {
  const tan = Math.tan(roof.pitch);
  const plumb = section.d / Math.cos(roof.pitch);
  return profile.legs.map((leg, k) => {
    const s = leg.top > leg.eave ? 1 : -1;
    const low = profile.bearings[k]!;
    const two = profile.legs.length > 1;
    const high = two ? profile.ridge?.[k] : profile.bearings[1];
    const uphill = (b: Bearing): number => b.seat.at + (s * b.seat.width) / 2;
    // The bearing whose height is given: the high one of a single slope, the eave beams of two.
    const fixed =
      two || high === undefined
        ? { a: uphill(low), z: roof.bearing + plumb }
        : high.kind === 'ledger'
          ? { a: high.at, z: roof.bearing }
          : { a: uphill(high), z: roof.bearing + plumb };
    const topEdge = (a: number): number => fixed.z + s * (a - fixed.a) * tan;
    const over = (b: Bearing): number => topEdge(uphill(b)) - plumb;
    const [lowTop, highTop] = two ? [roof.bearing, high ? over(high) : 0] : [over(low), roof.bearing];
    const end = leg.top - (s * board) / 2;
    return { leg, s, low, high, end, lowTop, highTop, topEdge, uphill };
  });
}

/** Seats deep enough to bear and shallow enough to leave the rafter whole; a ledger as deep as the rafter's end. */
function fits(roof: CoverRoof, slopes: readonly Slope[], section: Section, kit: Kit): boolean {
  const plumb = section.d / Math.cos(roof.pitch);
  const { high } = slopes[0]!;
  for (const b of bearingsOf(slopes[0]!)) {
    if (b.kind === 'ledger') continue;
    const notch = b.seat.width * Math.sin(roof.pitch);
    if (notch <= section.d / 4 + SLACK) continue;
    kit.issues.push(
      error(
        'seat-too-deep',
        `${roof.path}/framing/section`,
        `The seat over ${b.part} would notch the rafter ${inches(notch)} deep: more than a quarter of its depth (NDS 2018 4.4.3).`,
        {
          subject: roof.mark,
          found: inches(notch),
          expected: `at most ${inches(section.d / 4)}: a deeper rafter, a narrower beam or a lower pitch`,
        },
      ),
    );
    return false;
  }
  if (high?.kind === 'ledger' && high.section.depth < plumb - SLACK)
    kit.issues.push(
      warning(
        'ledger-too-shallow',
        `${roof.path}/framing/section`,
        `The plumb end of the rafter (${inches(plumb)}) is deeper than ledger ${high.part} (${inches(high.section.depth)}).`,
        {
          subject: high.part,
          expected: 'a ledger at least as deep as the rafter end',
        },
      ),
    );
  const keys = slopes.length > 1 ? ['beams', 'ridgeBeam'] : ['low', 'high'];
  for (const [i, b] of bearingsOf(slopes[0]!).entries())
    if (b.kind === 'beam' && b.seat.width < LEAST_BEARING)
      kit.issues.push(
        error('bearing-too-short', `${roof.path}/${keys[i]}`, `The rafters bear on ${inches(b.seat.width)} of beam.`, {
          subject: b.part,
          expected: '1 1/2" or more (IRC 2018 R802.6)',
        }),
      );
  return true;
}

function rafterAt(
  roof: CoverRoof,
  profile: Profile,
  slope: Slope,
  { section, full }: { readonly section: Section; readonly full: Section },
  l: number,
): Omit<Member, 'id' | 'mark' | 'strips'> {
  const { leg, s, low, high, end, topEdge } = slope;
  const [tan, cos, sin] = [Math.tan(roof.pitch), Math.cos(roof.pitch), Math.sin(roof.pitch)];
  // The axis lies half its own depth over the bottom edge that all rafters share.
  const half = (full.d - section.d / 2) / cos;
  const seats = bearingsOf(slope).filter((b) => b.kind === 'beam');
  const run = Math.abs((high?.seat.at ?? end) - low.seat.at);
  return {
    role: 'rafter',
    section,
    start: toHouse(profile.axes, leg.eave, l, topEdge(leg.eave) - half),
    end: toHouse(profile.axes, end, l, topEdge(end) - half),
    up: toHouse(profile.axes, -s * sin, 0, cos),
    length: Math.abs(end - leg.eave) / cos + section.d * tan,
    state: 'new',
    roof: roof.mark,
    notch: Math.max(...seats.map((b) => b.seat.width * sin)),
    cuts: [
      `plumb cut ${degrees(roof.pitch)} both ends`,
      ...seats.map(
        (b) => `seat ${inches(b.seat.width)} level, heel ${inches(b.seat.width * tan)} plumb, over ${b.part}`,
      ),
    ],
    unbraced: {
      top: section !== full ? roof.rakeFraming!.spacing : roof.finish.sheathing !== '' ? 0 : run / cos,
      bottom: run / cos,
    },
    path: `${roof.path}/framing`,
  };
}

function seatAt(profile: Profile, slope: Slope, b: Bearing, section: Section, l: number, member: string): Seat {
  const hung = b.kind === 'ledger';
  const top = slope.topEdge(hung ? b.at : slope.uphill(b));
  const plumb = slope.topEdge(slope.uphill(slope.low)) - slope.lowTop;
  return {
    kind: hung ? 'rafter-to-ledger' : 'rafter-to-beam',
    member,
    support: b.part,
    at: toHouse(profile.axes, b.seat.at, l, hung ? top - plumb / 2 : top - plumb),
    contact: hung ? { length: 0, width: 0 } : { length: b.seat.width, width: section.b },
  };
}
