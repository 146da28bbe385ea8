/**
 * Ties and ridge board of rafters that meet without a ridge beam. One tie lies beside each pair, its underside `height`
 * above the beams, cut to the rafters' top edges or at the beams' outer faces; the board stands under the ridge.
 */
import type { CoverRoof, RafterTies } from '../../project/model.js';
import { toHouse } from '../axes.js';
import { SLACK } from '../constants.js';
import { error } from '../issues.js';
import type { Kit } from '../kit.js';
import type { Member, Section } from '../model.js';
import type { Profile } from '../roofs/contract.js';
import { degrees, inches, serial } from '../text.js';
import type { FrameNumbers, Seat } from './contract.js';
import type { Slope } from './slope.js';

/** Flattest slope on which a ridge board may stand for a ridge beam (IRC 2018 R802.4.4, recalled; read of the 2006 edition in a builders' journal). */
const FLATTEST = 3 / 12;
/** Highest tie as a share of the ridge's height above the bearings (IRC 2018 R802.5.2, recalled; read of 2006 Table R802.5.1 in a builders' journal). */
const HIGHEST = 1 / 3;
/** Widest spacing of ties (IRC 2018 R802.5.2.2, recalled), inches. */
const FARTHEST = 24;

export interface TieInput {
  readonly roof: CoverRoof;
  readonly ties: RafterTies;
  readonly board: Section;
  readonly section: Section;
  readonly profile: Profile;
  readonly slopes: readonly Slope[];
  /** Rafters of each station, slope by slope. */
  readonly tails: readonly (readonly Member[])[];
  readonly number: FrameNumbers;
  readonly kit: Kit;
}

/** Rules under which rafters, ties and a ridge board work as frames. */
function allowed({ roof, ties, board, section, slopes, kit }: TieInput): boolean {
  const tan = Math.tan(roof.pitch);
  const at = `${roof.path}/framing/ties`;
  const refuse = (code: string, path: string, message: string, found: string, expected: string): boolean => {
    kit.issues.push(error(code, path, message, { subject: roof.mark, found, expected }));
    return false;
  };
  if (tan < FLATTEST - SLACK)
    return refuse(
      'ridge-needs-beam',
      `${roof.path}/pitch`,
      'On so flat a roof the ridge must be a beam that carries the rafters (IRC 2018 R802.4.4, recalled).',
      roof.pitchText,
      '3/12 or steeper with ties, or a "ridgeBeam"',
    );
  const ridge = slopes[0]!.topEdge(slopes[0]!.leg.top) - roof.bearing;
  if (ties.height > ridge * HIGHEST + SLACK)
    return refuse(
      'ties-too-high',
      `${at}/height`,
      'Ties stand in the lower third of the roof; above it the ridge must be a beam (IRC 2018 R802.5.2, recalled).',
      inches(ties.height),
      `at most ${inches(ridge * HIGHEST)}, a third of the ridge's height above the beams, or a "ridgeBeam"`,
    );
  if (roof.framing.spacing > FARTHEST + SLACK)
    return refuse(
      'ties-too-far-apart',
      `${roof.path}/framing/spacing`,
      'Each pair of rafters has a tie, and ties stand no farther apart than two feet (IRC 2018 R802.5.2.2, recalled).',
      inches(roof.framing.spacing),
      `at most ${inches(FARTHEST)}`,
    );
  const cut = section.d / Math.cos(roof.pitch);
  if (board.depth < cut - SLACK)
    return refuse(
      'ridge-board-too-shallow',
      `${at}/ridgeBoard`,
      'The ridge board is not as deep as the plumb end of the rafters (IRC 2018 R802.3, recalled).',
      inches(board.depth),
      `${inches(cut)} or more`,
    );
  return true;
}

export function placeTies(input: TieInput): { members: Member[]; seats: Seat[] } | undefined {
  const { roof, ties, section, profile, slopes, kit } = input;
  const tie = kit.section(ties.section, `${roof.path}/framing/ties/section`);
  if (tie === undefined || !allowed(input)) return undefined;
  const tan = Math.tan(roof.pitch);
  const half = section.d / Math.cos(roof.pitch) / 2;
  const z = roof.bearing + ties.height + tie.d / 2;
  // Where the tie's upper edge meets the rafter's, but not past the beam.
  const tips = slopes.map((s) => {
    const outer = s.low.seat.at - (s.s * s.low.seat.width) / 2;
    const meets = s.leg.top - (s.s * (s.topEdge(s.leg.top) - (z + tie.d / 2))) / tan;
    return s.s > 0 ? Math.max(outer, meets) : Math.min(outer, meets);
  });
  const run = Math.abs(tips[1]! - tips[0]!);
  const held = Math.min(run, ties.braced ?? run);
  const mark = `TI${input.number('TI')}`;
  const members: Member[] = [];
  const seats: Seat[] = [];
  const { stations, axes } = profile;
  for (const [i, l] of stations.entries()) {
    const id = `${mark}-${serial(i + 1)}`;
    // Beside the rafters, on the inner side of the last pair.
    const beside = l + ((i === stations.length - 1 ? -1 : 1) * (section.b + tie.b)) / 2;
    members.push({
      id,
      mark,
      role: 'tie',
      section: tie,
      start: toHouse(axes, tips[0]!, beside, z),
      end: toHouse(axes, tips[1]!, beside, z),
      up: { x: 0, y: 0, z: 1 },
      length: run,
      state: 'new',
      strips: [],
      roof: roof.mark,
      notch: 0,
      cuts: [`ends cut ${degrees(roof.pitch)} to the roof where they pass it`],
      unbraced: { top: held, bottom: held },
      nails: { nail: ties.nail, count: ties.nails },
      path: `${roof.path}/framing/ties`,
    });
    for (const [k, s] of slopes.entries()) {
      // On the rafter's axis.
      const a = s.leg.top - (s.s * (s.topEdge(s.leg.top) - half - z)) / tan;
      const rafter = input.tails[k]![i]!;
      const contact = { length: 0, width: 0 };
      seats.push({ kind: 'tie-to-rafter', member: id, support: rafter.id, at: toHouse(axes, a, l, z), contact });
    }
  }
  const ridge = ridgeBoard(input);
  for (const [k, s] of slopes.entries()) {
    for (const [i, l] of stations.entries()) {
      const at = toHouse(axes, s.end, l, s.topEdge(s.end) - half);
      const contact = { length: 0, width: 0 };
      seats.push({ kind: 'rafter-to-ridge', member: input.tails[k]![i]!.id, support: ridge.id, at, contact });
    }
  }
  return { members: [...members, ridge], seats };
}

/** The board between the rafters' ends, its upper edge at their upper corners, over the whole length of the roof. */
function ridgeBoard({ roof, board, profile, slopes, number }: TieInput): Member {
  const mark = `RB${number('RB')}`;
  const s = slopes[0]!;
  const [l0, l1] = profile.extent;
  const z = s.topEdge(s.end) - board.depth / 2;
  return {
    id: mark,
    mark,
    role: 'ridge',
    section: board,
    start: toHouse(profile.axes, s.leg.top, l0, z),
    end: toHouse(profile.axes, s.leg.top, l1, z),
    up: { x: 0, y: 0, z: 1 },
    length: l1 - l0,
    state: 'new',
    strips: [],
    roof: roof.mark,
    notch: 0,
    cuts: ['square both ends'],
    unbraced: { top: 0, bottom: 0 },
    path: `${roof.path}/framing/ties`,
  };
}
