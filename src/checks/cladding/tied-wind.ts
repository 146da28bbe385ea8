/**
 * Component wind on rafters that meet at a ridge board with a tie below: what the tie adds to the bending of a rafter, and
 * the lift of the pair at its two feet, as of one rigid body. Both slopes are taken loaded alike.
 */
import { isOutOfScope, type OutOfScope } from '../../loads/codes/asce7/index.js';
import type { Joint, Member, Structure, Surface } from '../../structure/model.js';
import { effectiveArea, type LoadedLength, liftAt, liftParts, type TieLift } from './framing-wind.js';
import { componentPressure, type WindSource } from './zone-wind.js';

interface Pair {
  readonly tie: Joint;
  readonly foot: Joint;
  readonly board: Member;
}

const lower = (s: Structure, kind: Joint['kind'], upper: string): Joint | undefined =>
  s.joints.find((j) => j.kind === kind && j.ties[0]!.part === upper);

function pairOf(structure: Structure, rafter: string): Pair | undefined {
  const tie = structure.joints.find((j) => j.kind === 'tie-to-rafter' && j.ties[1]!.part === rafter);
  const foot = lower(structure, 'rafter-to-beam', rafter);
  const ridge = lower(structure, 'rafter-to-ridge', rafter);
  const board = ridge && structure.members.find((m) => m.id === ridge.ties[1]!.part);
  return tie && foot && board ? { tie, foot, board } : undefined;
}

/** The rafter across the ridge from one, by the tie they share. */
function mateOf(structure: Structure, member: Member, tie: Joint): Member | undefined {
  const other = structure.joints.find(
    (j) => j.kind === 'tie-to-rafter' && j.ties[0]!.part === tie.ties[0]!.part && j.ties[1]!.part !== member.id,
  );
  return other && structure.members.find((m) => m.id === other.ties[1]!.part);
}

/** How a tie bends its rafter; places along the rafter, inches. */
export interface TieBending {
  /** Where the rafter's span ends: the hinge, half a ridge board past its end. */
  readonly hinge: number;
  moment(x: number): number;
}

/**
 * Moment the tie makes in a rafter at `x` under 1 lb/in square to both slopes, lb·in: its tension from moments about the
 * hinge, its part square to the rafter as a load between foot and hinge. Undefined for a rafter without a tie.
 */
export function tieMoment(structure: Structure, member: Member, load: LoadedLength): TieBending | undefined {
  const pair = pairOf(structure, member.id);
  if (!pair) return undefined;
  const run = Math.hypot(member.end.x - member.start.x, member.end.y - member.start.y);
  const rise = member.end.z - member.start.z;
  const length = Math.hypot(run, rise);
  const [cos, sin] = [run / length, rise / length];
  const f = pair.foot.ties[0]!.along;
  const t = pair.tie.ties[1]!.along;
  const h = length + pair.board.section.width / 2 / cos;
  const S = load.to - load.from;
  const about = S * cos * (h - f) * cos - S * (h - (load.from + load.to) / 2);
  const square = (about / ((h - t) * sin)) * sin;
  const moment = (x: number): number => {
    if (t >= f)
      return x <= f ? 0 : x <= t ? (square * (h - t) * (x - f)) / (h - f) : (square * (t - f) * (h - x)) / (h - f);
    return x <= t ? 0 : x <= f ? -square * (x - t) : (-square * (f - t) * (h - x)) / (h - f);
  };
  return { hinge: h, moment };
}

/** Lift of a tied pair at one rafter's foot, by moments about the other rafter's; undefined for a rafter without a tie. */
export function pairLift(
  ctx: WindSource,
  member: Member,
  foot: Joint,
  surfaces: ReadonlyMap<string, Surface>,
): TieLift | OutOfScope | undefined {
  const pair = pairOf(ctx.structure, member.id);
  const mate = pair && mateOf(ctx.structure, member, pair.tie);
  const far = mate && lower(ctx.structure, 'rafter-to-beam', mate.id);
  const spacing = ctx.project.cover.roofs.find((r) => r.mark === member.roof)?.framing.spacing;
  if (!mate || !far || member.roof === undefined || spacing === undefined) return undefined;
  const length = Math.hypot(
    member.end.x - member.start.x,
    member.end.y - member.start.y,
    member.end.z - member.start.z,
  );
  const area = effectiveArea(length - foot.ties[0]!.along, spacing);
  const pressure = componentPressure(ctx, member.roof, 'minus', area);
  if (pressure === undefined || isOutOfScope(pressure)) return pressure;
  const both = { ...member, strips: [...member.strips, ...mate.strips] };
  return {
    up: [liftAt(foot, far, both, surfaces, pressure)],
    area,
    pressure,
    parts: () => liftParts(foot, far, both, surfaces, pressure),
  };
}
