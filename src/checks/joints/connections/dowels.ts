/** Bolts, lag screws, wood screws and nails: through plates across the joint, or through lapped members. */

import { formatLength } from '../../../base/quantity/index.js';
import type { Recorder } from '../../../base/trace.js';
import { dot, length, scale, sub, type Vec3 } from '../../../base/vec.js';
import { type Fastener, findFastener } from '../../../catalog/index.js';
import type { Bolts, ConnectionPlates, DrivenDowels } from '../../../project/connections.js';
import { boltTension } from '../../codes/aisc-360-16/index.js';
import { LEAST_PENETRATION, TIP_DIAMETERS } from '../../codes/nds-2018/index.js';
import { say } from '../../codes/say.js';
import { RATIO_CAP } from '../../finding.js';
import { designValue } from '../../members/design.js';
import { TRACE } from '../demands.js';
import type { Held, Hold, PartKind, Place } from './contract.js';
import { type Group, reach, type Strained, strain } from './dowel-group.js';
import { counted, type Dowels, dowelCare, dowelLayout, dowelWords, driven } from './dowel-words.js';
import { memberUse, plateUse } from './member-limits.js';
import { endGrain, isPlumb, memberPiece, type Piece, platePiece, plateSection } from './pieces.js';
import { axisOf } from './place.js';
import { Tally } from './tally.js';
import { crowded } from './washer-room.js';
import { pullOut, together } from './withdrawal.js';

const MORE = 'use more or larger fasteners';
const EDGE = 'set the fasteners farther from the end and the edge the force runs to, or use a deeper piece';

/** Dowel bearing in the main piece and penetration with its tip, inches, of a fastener that goes through `before`. */
function depthIn(
  part: DrivenDowels,
  f: Fastener,
  main: Piece,
  before: number,
): { readonly lm: number; readonly p: number } {
  const p = part.length - before;
  const tip = f.tip ?? TIP_DIAMETERS * f.D;
  return { lm: Math.min(Math.max(p - tip, 0), main.thickness), p: Math.min(p, main.thickness) };
}

interface Made {
  readonly group: Group;
  /** Penetration with the tip; 0 for bolts. */
  readonly p: number;
  /** Fasteners that share a pull along the axis. */
  readonly pulled: number;
}

function make(part: Dowels, f: Fastener, axis: Vec3, main: Piece, side: Piece, sides: 1 | 2, tally: Tally): Made {
  const n = counted(main.pattern);
  const common = { fastener: f, axis, main, side, sides };
  if (!driven(part)) {
    const shear = sides === 2 ? ('double' as const) : ('single' as const);
    return { group: { ...common, shear, lm: main.thickness, n }, p: 0, pulled: n };
  }
  const { lm, p } = depthIn(part, f, main, side.thickness);
  const least = LEAST_PENETRATION[part.kind] * f.D + (part.kind === 'lag-screws' ? (f.tip ?? 0) : 0);
  if (p < least - 1e-9) {
    const need = Math.ceil((side.thickness + least) * 4) / 4;
    tally.fault(
      `${f.name} goes ${formatLength(Math.max(p, 0))} into ${main.name}, at least ${formatLength(least)}: use ${formatLength(need)} long`,
    );
  }
  return { group: { ...common, shear: 'single', lm: Math.max(lm, 1e-3), n: n * sides }, p: Math.max(p, 0), pulled: n };
}

/** Allowable pull on one bolt: the bolt, and its washers on the softest wood they press. */
function boltPull(part: Bolts, f: Fastener, woods: readonly Piece[], rec?: Recorder): number | undefined {
  let value = boltTension(f.D, rec);
  for (const w of woods) {
    if (part.washer <= f.D + 1 / 16) return 0;
    const F = designValue('FcPerp', w.wood!.section, {}, rec);
    if (F === undefined) return undefined;
    const area = (Math.PI / 4) * (part.washer ** 2 - (f.D + 1 / 16) ** 2);
    rec?.step({
      symbol: 'Tw',
      meaning: `allowable pull on one bolt by its washer on ${w.name}`,
      formula: "Fc⊥'·(π/4)·(Dw² − (D + 1/16)²)",
      substituted: `${say(F)}·${say(area)}`,
      value: F * area,
      unit: 'lb',
      clause: 'NDS 2018 3.10.2',
    });
    value = Math.min(value, F * area);
  }
  return value;
}

/** Shear on a group and pull along its axis together. */
function useOf(
  part: Dowels,
  m: Made,
  s: Strained,
  N: number,
  bolt: number | undefined,
  place: Place,
  CD: number,
  tally: Tally,
  rec?: Recorder,
): void {
  const { group } = m;
  for (const fault of s.faults) tally.fault(fault);
  const what = `${group.fastener.name}: ${group.main.name} with ${group.side.name}`;
  const pull = N / m.pulled;
  if (N < TRACE) {
    tally.add(s.ratio, `${what}, shear`, MORE, 'NDS 2018 chapter 12', rec, `${say(s.ratio * s.Z)} / ${say(s.Z)}`);
    return;
  }
  if (!driven(part)) {
    if (bolt === 0)
      tally.fault(`the bolts are pulled along themselves (${Math.ceil(pull)} lb each): give them washers`);
    else
      tally.add(
        bolt && s.ratio + pull / bolt,
        `${what}, shear and pull added (common practice, no source)`,
        MORE,
        'NDS 2018 chapter 12',
        rec,
        `${say(s.ratio * s.Z)} / ${say(s.Z)} + ${say(pull)} / ${say(bolt ?? 0)}`,
      );
    return;
  }
  if (endGrain(group.main, group.axis)) {
    tally.fault(
      `${group.fastener.name} would be pulled from the end grain of ${group.main.name}, which is not relied on`,
    );
    return;
  }
  const Wp = pullOut(part.kind, group, { L: part.length, p: m.p, CD, madeDry: place.madeDry }, rec);
  const V = s.ratio * s.Z;
  const use = Wp <= 0 ? RATIO_CAP : together(part.kind, V, pull, s.Z, Wp, rec);
  const R = Math.hypot(V, pull);
  tally.add(use, `${what}, shear and withdrawal`, MORE, 'NDS 2018 12.4', rec, `${say(R)} / ${say(R / use)}`);
}

function throughPlates(
  part: Dowels,
  plates: ConnectionPlates,
  place: Place,
  force: Vec3,
  CD: number,
  tally: Tally,
  rec?: Recorder,
): void {
  const f = findFastener(part.size)!;
  const axis = axisOf(place, part.axis);
  if (part.axis === 'plumb') {
    tally.fault('plates stand beside the members: their fasteners are level, crosswise or lengthwise');
    return;
  }
  const along = dot(force, axis);
  const V = sub(force, scale(axis, along));
  const N = Math.abs(along);
  const level = Math.hypot(V.x, V.y);
  const pieces = [
    memberPiece(place.upper, axis, part.upper, part.upperThickness),
    memberPiece(place.lower, axis, part.lower, part.lowerThickness),
  ] as const;
  const e = reach(pieces[0]) + reach(pieces[1]);
  if (plates.material === 'steel' && plates.thickness < 0.25 && force.z < -TRACE)
    tally.fault('steel under 1/4 in buckles when it is pressed: leave "down" to wood bearing or use thicker plates');
  if (plates.material === 'steel' && plates.count === 1 && level > TRACE)
    tally.fault('one steel plate is not relied on sideways: use one on each side');
  const wood = plateSection(place, plates);
  let holes = 1;
  for (const [main, over] of [
    [pieces[0], place.upper],
    [pieces[1], place.lower],
  ] as const) {
    const side = platePiece(place, plates, over, main.pattern);
    if (!side) {
      tally.fault('the plates have no section');
      return;
    }
    holes = Math.max(holes, isPlumb(over) ? main.pattern.acrossGrain : main.pattern.alongGrain);
    for (const fault of crowded(part, f, [side], axis)) tally.fault(fault);
    rec?.heading(`${f.name} in ${main.name}`);
    const made = make(part, f, axis, main, side, plates.count, tally);
    const s = strain(made.group, V, level > TRACE ? level * e : 0, CD, place, rec);
    const bolt =
      driven(part) || N < TRACE
        ? 0
        : boltPull(
            part,
            f,
            [side].filter((p) => p.wood),
            rec,
          );
    useOf(part, made, s, N, bolt, place, CD, tally, rec);
    tally.add(
      memberUse(main, axis, V, f.D, CD, rec),
      `${main.name} at its fasteners`,
      EDGE,
      'NDS 2018 3.1.2, 3.4.3.3, E',
      rec,
    );
    tally.add(
      memberUse(side, axis, scale(V, 1 / plates.count), f.D, CD, rec),
      `${side.name} at its fasteners`,
      EDGE,
      'NDS 2018 3.1.2, E',
      rec,
    );
  }
  const load = { T: V.z, inPlane: level, square: N, reach: e, holes, D: f.D };
  const plate = plateUse(plates, wood, load, CD, rec);
  tally.add(
    plate,
    'plates between the two groups: tension and bending added',
    'use thicker or wider ones',
    'NDS 2018 3.8, AISC 360-16 D2',
    rec,
    `sum of the above, ${say(plate ?? 0)}`,
  );
}

/** Spacings that differ by less are the same, seen along a slope or read from a tape. */
const SAME_SPACING = 0.25;

/** Lapped members share their fasteners: what stands along the grain of one stands across the grain of the other. */
function disagree(upper: Piece, lower: Piece): boolean {
  const cos = Math.abs(dot(upper.wood!.grain, lower.wood!.grain));
  if (cos > 0.3 && cos < 0.95) return false;
  const { pattern: u } = upper;
  const { pattern: l } = lower;
  const [along, across] =
    cos <= 0.3
      ? [[l.acrossGrain, l.spacingAcross] as const, [l.alongGrain, l.spacingAlong] as const]
      : [[l.alongGrain, l.spacingAlong] as const, [l.acrossGrain, l.spacingAcross] as const];
  const differs = (n: number, s: number, [m, t]: readonly [number, number]): boolean =>
    n !== m || (n > 1 && Math.abs(s - t) > SAME_SPACING);
  return differs(u.alongGrain, u.spacingAlong, along) || differs(u.acrossGrain, u.spacingAcross, across);
}

function lapped(part: Dowels, place: Place, force: Vec3, CD: number, tally: Tally, rec?: Recorder): void {
  const f = findFastener(part.size)!;
  const axis = axisOf(place, part.axis);
  const upper = memberPiece(place.upper, axis, part.upper, part.upperThickness);
  const lower = memberPiece(place.lower, axis, part.lower, part.lowerThickness);
  const [main, side] = driven(part) && part.head === 'lower' ? [upper, lower] : [lower, upper];
  const along = dot(force, axis);
  if (part.axis === 'plumb' && along < -TRACE)
    tally.fault('plumb fasteners do not hold down: leave "down" to the wood that bears');
  const N = Math.abs(along);
  const V = sub(force, scale(axis, along));
  if (!endGrain(upper, axis) && !endGrain(lower, axis) && disagree(upper, lower))
    tally.fault(
      `${upper.name} and ${lower.name} share their fasteners: as many, at one spacing, along the grain of one as across that of the other`,
    );
  // A driven fastener has its head on one side only.
  for (const fault of crowded(part, f, driven(part) ? [side] : [side, main], axis)) tally.fault(fault);
  rec?.heading(`${f.name}: ${side.name} to ${main.name}`);
  const made = make(part, f, axis, main, side, 1, tally);
  const s = strain(made.group, V, 0, CD, place, rec);
  const bolt = driven(part) || N < TRACE ? 0 : boltPull(part, f, [main, side], rec);
  useOf(part, made, s, N, bolt, place, CD, tally, rec);
  if (endGrain(side, axis))
    tally.fault(`${side.name} would be fastened through its end: turn the fasteners or name a product`);
  for (const p of [main, side])
    tally.add(
      memberUse(p, axis, V, f.D, CD, rec),
      `${p.name} at its fasteners`,
      EDGE,
      'NDS 2018 3.1.2, 3.4.3.3, E',
      rec,
    );
}

function held(part: Dowels, place: Place, force: Vec3, CD: number, rec?: Recorder): Held {
  const tally = new Tally();
  if (length(force) >= TRACE) {
    if (part.plates) throughPlates(part, part.plates, place, force, CD, tally, rec);
    else lapped(part, place, force, CD, tally, rec);
  }
  return tally.held;
}

export const dowels: PartKind<Dowels> = {
  words: dowelWords,
  layout: dowelLayout,
  care: dowelCare,
  hold:
    (part, place): Hold =>
    (force, CD, rec) =>
      held(part, place, force, CD, rec),
};
