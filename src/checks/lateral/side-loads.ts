/**
 * Side load of each roof as the house meets it: where it acts, the line of the house that holds it, and what that line
 * receives under every combination. Worked out once for the same context.
 *
 * The roof runs out from the house as a deep level beam held along one side only. Positive `square` and `couple` pull
 * away from the wall; a positive couple turns clockwise seen from above, so it pulls at the left (−x) end.
 */
import type { Vec2, Vec3 } from '../../base/vec.js';
import type { Combination } from '../../loads/model.js';
import type { RoofPlaced, WallPlaced } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';

/** A place where side load arrives, per load case, lb. */
export interface SidePoint {
  readonly at: Vec2;
  readonly force: readonly Vec3[];
  /** Beam that hands it over. */
  readonly beam?: string;
  /** It is what a restraint of the frame holds there, not a single seat of framing. */
  readonly restraint?: boolean;
}

/** One stretch of the house that holds a roof: a tie or a ledger. */
export interface HouseSeat {
  readonly mark: string;
  readonly kind: 'tie' | 'ledger';
  readonly wall: WallPlaced;
  readonly from: number;
  readonly to: number;
  readonly path: string;
}

/** All stretches that hold one roof, as one line along the wall. */
export interface HouseLine {
  readonly seats: readonly HouseSeat[];
  /** Wall line, centre and whole length of the stretches, in; second moment of that length about its centre, in³. */
  readonly y: number;
  readonly centre: number;
  readonly length: number;
  readonly second: number;
  /** Farthest end of a stretch from the centre, in. */
  readonly reach: number;
}

export interface RoofSide {
  readonly roof: RoofPlaced;
  /** What the roof carries to the house, in the directions that name the house (the others are zero). */
  readonly points: readonly SidePoint[];
  /** What goes straight into a ledger without crossing the roof. */
  readonly direct: readonly SidePoint[];
  /** Everything the framing of this roof puts sideways on what carries it. */
  readonly all: readonly SidePoint[];
  /** Undefined when nothing on the house is named to hold this roof. */
  readonly line: HouseLine | undefined;
  /** Set when the line cannot be one line: stretches on different walls. */
  readonly split: boolean;
  /** Set when it is held by a wall square to the rear one, whose line lies along y: this program works out none. */
  readonly turned: boolean;
}

const lengthOf = (s: HouseSeat): number => s.to - s.from;

function lineOf(seats: readonly HouseSeat[]): HouseLine | undefined {
  const first = seats[0];
  if (!first) return undefined;
  const length = seats.reduce((sum, s) => sum + lengthOf(s), 0);
  if (length <= 0) return undefined;
  const centre = seats.reduce((sum, s) => sum + (lengthOf(s) * (s.from + s.to)) / 2, 0) / length;
  let second = 0;
  let reach = 0;
  for (const s of seats) {
    second += ((s.to - centre) ** 3 - (s.from - centre) ** 3) / 3;
    reach = Math.max(reach, Math.abs(s.from - centre), Math.abs(s.to - centre));
  }
  return { seats, y: first.wall.start.y, centre, length, second, reach };
}

function workOut(ctx: CheckContext): readonly RoofSide[] {
  const { structure, effects, project } = ctx;
  const { lateral } = project.cover;
  const members = new Map(structure.members.map((m) => [m.id, m]));
  const walls = new Map(structure.walls.map((w) => [w.id, w]));
  const held = { x: lateral.x === 'house', y: lateral.y === 'house' };
  const only = (f: Vec3): Vec3 => ({ x: held.x ? f.x : 0, y: held.y ? f.y : 0, z: 0 });
  // Wall behind each ledger.
  const behind = new Map<string, WallPlaced>();
  for (const j of structure.joints) {
    const wall = walls.get(j.ties.at(-1)?.part ?? '');
    const upper = j.ties[0]?.part;
    if (wall && upper !== undefined) behind.set(upper, wall);
  }
  // Framing seats of each roof, and the roofs each beam carries.
  const seatsOf = new Map<string, { at: Vec2; force: readonly Vec3[]; lower: string; beam: string }[]>();
  const roofsOf = new Map<string, Set<string>>();
  for (const j of structure.joints) {
    const upper = members.get(j.ties[0]?.part ?? '');
    const lower = j.ties.at(-1)?.part ?? '';
    const force = effects.joints.get(j.id)?.force;
    if (upper?.roof === undefined || upper.strips.length === 0 || !force || !members.has(lower)) continue;
    const list = seatsOf.get(upper.roof) ?? [];
    list.push({ at: j.at, force, lower, beam: lower });
    seatsOf.set(upper.roof, list);
    const roofs = roofsOf.get(lower) ?? new Set<string>();
    roofs.add(upper.roof);
    roofsOf.set(lower, roofs);
  }
  return structure.roofs.map((roof): RoofSide => {
    const all = seatsOf.get(roof.mark) ?? [];
    const points: SidePoint[] = [];
    const direct: SidePoint[] = [];
    const ledgers = new Set<string>();
    for (const s of all) {
      if (!behind.has(s.lower)) continue;
      const member = members.get(s.lower)!;
      if (member.role !== 'ledger') continue;
      ledgers.add(s.lower);
      direct.push({ at: s.at, force: s.force.map(only) });
    }
    const beams = new Set(all.map((s) => s.lower).filter((b) => !ledgers.has(b)));
    for (const beam of beams) {
      // A beam of one roof hands over what its restraints hold; one shared by roofs, what each roof puts on it.
      const restraint = roofsOf.get(beam)!.size === 1;
      const from = restraint ? effects.restraints.filter((r) => r.beam === beam) : all.filter((s) => s.lower === beam);
      for (const p of from) points.push({ at: p.at, force: p.force.map(only), beam, restraint });
    }
    const seats: HouseSeat[] = [];
    for (const t of project.cover.houseTies ?? []) {
      const wall = structure.walls[t.wall];
      if (t.roof === roof.mark && wall)
        seats.push({ mark: t.mark, kind: 'tie', wall, from: t.from, to: t.to, path: t.path });
    }
    for (const id of ledgers) {
      const m = members.get(id)!;
      const [from, to] = m.start.x < m.end.x ? [m.start.x, m.end.x] : [m.end.x, m.start.x];
      seats.push({ mark: m.mark, kind: 'ledger', wall: behind.get(id)!, from, to, path: m.path });
    }
    const split = seats.some((s) => s.wall !== seats[0]!.wall);
    const turned = seats.some((s) => Math.abs(s.wall.out.y) < 0.5);
    return { roof, points, direct, all, line: split || turned ? undefined : lineOf(seats), split, turned };
  });
}

const made = new WeakMap<CheckContext, readonly RoofSide[]>();

/** Side load of every roof, in the structure's order. */
export function roofSides(ctx: CheckContext): readonly RoofSide[] {
  const known = made.get(ctx);
  if (known) return known;
  const sides = workOut(ctx);
  made.set(ctx, sides);
  return sides;
}

export const sideOf = (ctx: CheckContext, roof: string): RoofSide | undefined =>
  roofSides(ctx).find((s) => s.roof.mark === roof);

/** Sums over places, per load case: force along the wall and square to it, lb, and couple about (`centre`, `y`), lb·in. */
export interface CaseSums {
  readonly along: Float64Array;
  readonly square: Float64Array;
  readonly couple: Float64Array;
}

/** The couple alone, where a chord is asked at many places along it. */
export function coupleOf(points: readonly SidePoint[], cases: number, centre: number, y: number): Float64Array {
  const couple = new Float64Array(cases);
  for (const p of points) {
    const lever = p.at.y - y;
    const aside = p.at.x - centre;
    for (let c = 0; c < cases; c++) {
      const f = p.force[c];
      if (f) couple[c] = couple[c]! + f.x * lever - f.y * aside;
    }
  }
  return couple;
}

export function caseSums(points: readonly SidePoint[], cases: number, centre: number, y: number): CaseSums {
  const along = new Float64Array(cases);
  const square = new Float64Array(cases);
  for (const p of points) {
    for (let c = 0; c < cases; c++) {
      const f = p.force[c];
      if (!f) continue;
      along[c] = along[c]! + f.x;
      square[c] = square[c]! + f.y;
    }
  }
  return { along, square, couple: coupleOf(points, cases, centre, y) };
}

/** Σ factor · value of a combination. */
export function under(combination: Combination, values: Float64Array): number {
  let sum = 0;
  for (const t of combination.terms) sum += t.factor * values[t.case]!;
  return sum;
}

/** What one tie or ledger hands to the house under each combination (index as in `loads.combinations`). */
export interface HouseTieDemand {
  readonly mark: string;
  readonly kind: 'tie' | 'ledger';
  readonly wall: WallPlaced;
  readonly roofs: readonly string[];
  /** Extent along the house x axis, in. */
  readonly from: number;
  readonly to: number;
  /** Along the wall (+x), and square to it (+y pulls away from the wall), lb, spread evenly over the length. */
  readonly along: Float64Array;
  readonly square: Float64Array;
  /**
   * Couple about the middle of this stretch, lb·in, spread as pull and push that grow straight with the distance:
   * per inch of length, −couple·(x − middle)·12/length³. Positive pulls at the left end.
   */
  readonly couple: Float64Array;
}

const demandsMade = new WeakMap<CheckContext, readonly HouseTieDemand[]>();

/**
 * Side demands of every tie and ledger: what the roof carries to the house and what reaches a ledger directly, shared
 * over the whole line of a roof. Gravity and uplift of a ledger are not in these.
 */
export function houseTieDemands(ctx: CheckContext): readonly HouseTieDemand[] {
  const known = demandsMade.get(ctx);
  if (known) return known;
  const { combinations, cases } = ctx.loads;
  const out = new Map<string, HouseTieDemand>();
  for (const { roof, line, points, direct } of roofSides(ctx)) {
    if (!line) continue;
    const sums = caseSums([...points, ...direct], cases.length, line.centre, line.y);
    for (const seat of line.seats) {
      const length = seat.to - seat.from;
      const middle = (seat.from + seat.to) / 2;
      const before = out.get(seat.mark);
      const along = before?.along ?? new Float64Array(combinations.length);
      const square = before?.square ?? new Float64Array(combinations.length);
      const couple = before?.couple ?? new Float64Array(combinations.length);
      combinations.forEach((combination, k) => {
        const M = under(combination, sums.couple) / line.second;
        along[k] = along[k]! + (under(combination, sums.along) * length) / line.length;
        // The straight distribution over the whole line, seen by this stretch: its mean and its own couple.
        square[k] =
          square[k]! + (under(combination, sums.square) * length) / line.length - M * (middle - line.centre) * length;
        couple[k] = couple[k]! + (M * length ** 3) / 12;
      });
      const roofs = [...(before?.roofs ?? []), roof.mark];
      const { mark, kind, wall, from, to } = seat;
      out.set(seat.mark, { mark, kind, wall, roofs, from, to, along, square, couple });
    }
  }
  const demands = [...out.values()];
  demandsMade.set(ctx, demands);
  return demands;
}
