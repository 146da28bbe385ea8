/** What a dowel passes through: a member or a plate, with its grain and the fasteners laid out in it. */

import { formatLength } from '../../../base/quantity/index.js';
import type { Recorder } from '../../../base/trace.js';
import { dot, type Vec3 } from '../../../base/vec.js';
import type { ConnectionPlates, FastenerPattern } from '../../../project/connections.js';
import type { Member, Section } from '../../../structure/model.js';
import { makeSection } from '../../../structure/sections.js';
import { dowelBearing, FeSteel } from '../../codes/nds-2018/index.js';
import { type Place, UP } from './contract.js';
import { grainOf } from './place.js';

export interface Piece {
  readonly name: string;
  /** Length of dowel that bears in it, inches. */
  readonly thickness: number;
  /** Depth of the piece square to its grain and to the dowel. */
  readonly depth: number;
  readonly pattern: FastenerPattern;
  /** Undefined for steel. */
  readonly wood: { readonly section: Section; readonly grain: Vec3 } | undefined;
  /** Dowel bearing strength of steel, psi. */
  readonly Fe: number;
  /** Axial stiffness modulus, psi. */
  readonly E: number;
}

const E_STEEL = 29e6;

/** The dowel enters the end of the piece, not its side. */
export const endGrain = (p: Piece, axis: Vec3): boolean =>
  p.wood !== undefined && Math.abs(dot(p.wood.grain, axis)) > 0.7;

/** Angle of a force to the grain, radians; a right angle in end grain. */
export function angleTo(p: Piece, axis: Vec3, dir: Vec3): number {
  if (!p.wood) return 0;
  if (endGrain(p, axis)) return Math.PI / 2;
  const c = Math.abs(dot(p.wood.grain, dir));
  // Rounding must not make a small angle of none.
  return c > 1 - 1e-9 ? 0 : Math.acos(c);
}

/** Dowel bearing strength under a force of direction `dir`, psi. */
export const bearingIn = (p: Piece, D: number, axis: Vec3, dir: Vec3, rec?: Recorder): number =>
  p.wood ? dowelBearing(p.wood.section.values.G, D, angleTo(p, axis, dir), false, rec) : p.Fe;

/** A member, entered along `axis`. A sloped member counts as its own section. */
export function memberPiece(m: Member, axis: Vec3, pattern: FastenerPattern, cut: number | undefined): Piece {
  const s = m.section;
  const grain = grainOf(m);
  const alongDepth = Math.abs(dot(m.up, axis)) > 0.7;
  const whole = Math.abs(dot(grain, axis)) > 0.7 ? m.length : alongDepth ? s.d - m.notch : s.b;
  return {
    name: m.id,
    thickness: Math.min(cut ?? whole, whole),
    depth: alongDepth ? s.b : s.d,
    pattern,
    wood: { section: s, grain },
    Fe: 0,
    E: s.values.E,
  };
}

/** Fasteners of a member as the plate across it sees them: its length runs plumb. */
function turned(p: FastenerPattern, plumbGrain: boolean, end: number, width: number): FastenerPattern {
  const along = plumbGrain ? [p.alongGrain, p.spacingAlong] : [p.acrossGrain, p.spacingAcross];
  const across = plumbGrain ? [p.acrossGrain, p.spacingAcross] : [p.alongGrain, p.spacingAlong];
  return {
    alongGrain: along[0]!,
    spacingAlong: along[1]!,
    acrossGrain: across[0]!,
    spacingAcross: across[1]!,
    end,
    edge: (width - (across[0]! - 1) * across[1]!) / 2,
  };
}

export const isPlumb = (m: Member): boolean => Math.abs(grainOf(m).z) > 0.7;

/** A plate's section where it is wood. Reading has made sure that it is a solid one. */
export function plateSection(place: Place, plates: ConnectionPlates): Section | undefined {
  if (plates.material === 'steel') return undefined;
  const choice = place.ctx.project.choices.sections[plates.section];
  if (!choice) return undefined;
  const made = makeSection(choice, { choice: plates.section, path: `/choices/sections/${plates.section}` });
  return made.ok && made.section.plies === 1 ? made.section : undefined;
}

/** The plate beside one member. */
export function platePiece(
  place: Place,
  plates: ConnectionPlates,
  over: Member,
  pattern: FastenerPattern,
): Piece | undefined {
  if (plates.material === 'steel') {
    return {
      name: `${formatLength(plates.thickness)} steel`,
      thickness: plates.thickness,
      depth: plates.width,
      pattern: turned(pattern, isPlumb(over), plates.end, plates.width),
      wood: undefined,
      Fe: FeSteel(plates.thickness, plates.Fu),
      E: E_STEEL,
    };
  }
  const section = plateSection(place, plates);
  return (
    section && {
      name: `plate ${section.label}`,
      thickness: section.b,
      depth: section.d,
      pattern: turned(pattern, isPlumb(over), plates.end, section.d),
      wood: { section, grain: UP },
      Fe: 0,
      E: section.values.E,
    }
  );
}
