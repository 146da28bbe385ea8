/** The growing frame of beams, posts, braces and struts, and how a placed member becomes an element. */
import type { Vec3 } from '../base/vec.js';
import type { Member } from '../structure/model.js';
import type { Bearing } from './index-structure.js';
import { bendingStiffness } from './rafter.js';
import type { EndRelease, FrameElement, Support } from './solver/index.js';

/** Places nearer than this along a beam are one node, inches. */
export const SAME = 1 / 16;
/** G of wood by the usual ratio E/G = 16 (common practice; used in torsion only, which carries no load here). */
const E_OVER_G = 16;

export interface BeamPiece {
  readonly element: number;
  /** Along the beam, inches. */
  readonly from: number;
  readonly to: number;
}

export interface BeamLineModel {
  readonly member: Member;
  readonly length: number;
  readonly pieces: readonly BeamPiece[];
  /** Where it is held: along, node, and the joint it is held by. */
  readonly held: readonly {
    readonly along: number;
    readonly node: number;
    readonly bearing: Bearing;
    readonly on: 'post' | 'house';
  }[];
  /** Framing joints above, with their places. */
  readonly loads: readonly Bearing[];
}

export interface PostModel {
  readonly member: Member;
  /** From the foot up; places are distances from the member's start and may lie beyond its ends. */
  readonly pieces: readonly BeamPiece[];
  readonly top: number;
  readonly base: number;
  readonly length: number;
  /** Joint to the footing. */
  readonly foot: Bearing;
}

/** A brace or strut: pieces as of a post. */
export interface BarModel {
  readonly member: Member;
  readonly pieces: readonly BeamPiece[];
  /** Joints at its two ends, each with the end of the element that meets it; `sense` +1 where the bar is the upper part. */
  readonly ends: readonly {
    readonly joint: string;
    readonly element: number;
    readonly at: 'start' | 'end';
    readonly sense: 1 | -1;
  }[];
}

/** Iy of plies side by side: they slip on each other, so each bends for itself sideways. */
function sidewaysInertia(m: Member): number {
  const { plies, plyWidth, b, d } = m.section;
  return plies > 1 ? (plies * d * plyWidth ** 3) / 12 : (d * b ** 3) / 12;
}

export function elementOf(m: Member, start: number, end: number, up: Vec3): FrameElement {
  const { b, d, values } = m.section;
  const narrow = Math.min(b, d);
  return {
    start,
    end,
    up,
    E: values.E,
    G: values.E / E_OVER_G,
    A: b * d,
    Iz: bendingStiffness(m) / values.E,
    Iy: sidewaysInertia(m),
    J: (narrow ** 3 * Math.max(b, d)) / 3,
  };
}

export const PIN: EndRelease = { my: true, mz: true };

/** Grows the frame's arrays; each beam and post writes its own part. */
export class Draft {
  readonly nodes: Vec3[] = [];
  readonly names: string[] = [];
  readonly elements: FrameElement[] = [];
  readonly supports: Support[] = [];
  readonly postTop = new Map<string, number>();
  /** Beams that meet at each node. */
  readonly beamsAt = new Map<number, string[]>();

  node(at: Vec3, name: string): number {
    this.names.push(name);
    return this.nodes.push(at) - 1;
  }
}

/** A node on a part at a distance from its start. */
export interface Mark {
  along: number;
  node: number;
}
