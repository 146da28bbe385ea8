/** Look-up tables over the placed structure, and the joints read as "upper part bears on lower part". */
import type { Footing, Joint, JointKind, Member, Structure, Surface, WallPlaced } from '../structure/model.js';

/** A joint between a part and what it bears on, with the places along both. */
export interface Bearing {
  readonly joint: Joint;
  readonly upper: string;
  readonly upperAlong: number;
  readonly lower: string;
  readonly lowerAlong: number;
}

export interface StructureIndex {
  readonly structure: Structure;
  readonly members: ReadonlyMap<string, Member>;
  readonly surfaces: ReadonlyMap<string, Surface>;
  readonly footings: ReadonlyMap<string, Footing>;
  readonly walls: ReadonlyMap<string, WallPlaced>;
  /** Bearings below a part (it is the upper one), in order along it. */
  readonly below: ReadonlyMap<string, readonly Bearing[]>;
  /** Bearings above a part (it is the lower one), in order along it. */
  readonly above: ReadonlyMap<string, readonly Bearing[]>;
}

/**
 * Joints on which nothing bears: trim, whose weight comes with the surface's edges; the halves of a splice; braces and
 * struts, which join the frame of the posts (bracing.ts); what holds a pair of tied rafters together (tied-rafters.ts);
 * outlookers, whose load the strips of the frames bring (outlookers.ts).
 */
const NO_BEARING: ReadonlySet<JointKind> = new Set<JointKind>([
  'fascia-to-framing',
  'beam-splice',
  'brace-to-beam',
  'brace-to-post',
  'strut-to-post',
  'rafter-to-ridge',
  'tie-to-rafter',
  'outlooker-to-frame',
]);

const push = (map: Map<string, Bearing[]>, key: string, b: Bearing): void => {
  const list = map.get(key);
  if (list) list.push(b);
  else map.set(key, [b]);
};

export function indexStructure(structure: Structure): StructureIndex {
  const below = new Map<string, Bearing[]>();
  const above = new Map<string, Bearing[]>();
  for (const joint of structure.joints) {
    const top = joint.ties[0];
    const bottom = joint.ties.at(-1);
    if (!top || !bottom || top === bottom || NO_BEARING.has(joint.kind)) continue;
    const b = { joint, upper: top.part, upperAlong: top.along, lower: bottom.part, lowerAlong: bottom.along };
    push(below, b.upper, b);
    push(above, b.lower, b);
  }
  for (const list of below.values()) list.sort((p, q) => p.upperAlong - q.upperAlong);
  for (const list of above.values()) list.sort((p, q) => p.lowerAlong - q.lowerAlong);
  return {
    structure,
    members: new Map(structure.members.map((m) => [m.id, m])),
    surfaces: new Map(structure.surfaces.map((s) => [s.id, s])),
    footings: new Map(structure.footings.map((f) => [f.id, f])),
    walls: new Map(structure.walls.map((w) => [w.id, w])),
    below,
    above,
  };
}
