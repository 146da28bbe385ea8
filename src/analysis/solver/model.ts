import type { Vec3 } from '../../base/vec.js';

/**
 * Linear-elastic frame in space: what goes in. Any consistent units; the program uses inches, pounds and radians.
 *
 * Sign convention, the only place it is told:
 * - Local axes of an element: x from start to end; y the depth direction, as close to `up` as can be; z = x × y.
 *   A level beam along +x with `up` = +z bends under gravity about its local z, with `Iz` its strong axis.
 * - Loads, displacements and reactions are positive along their axis, moments and rotations by the right-hand rule.
 *   Reactions act on the structure.
 * - End forces of an element are what its nodes do to it, in local axes: [Fx Fy Fz Mx My Mz] at the start, then at the end.
 * - Inner forces at a station are what the part beyond does to the part before it (on the face that looks along +x), in
 *   local axes. So `n` is positive in tension; `mz` is positive when the -y edge is in tension (sagging);
 *   `my` is positive when the +z edge is in tension; stress at (y, z) = n/A - mz·y/Iz + my·z/Iy.
 *   d(mz)/dx = -vy and d(my)/dx = vz. A simple beam under gravity has vy = -wL/2 at its start and +wL/2 at its end.
 */
export interface FrameModel {
  readonly nodes: readonly Vec3[];
  readonly elements: readonly FrameElement[];
  readonly supports: readonly Support[];
}

/** The six freedoms of a node, in global axes: three displacements, three rotations. */
export const FREEDOMS = ['dx', 'dy', 'dz', 'rx', 'ry', 'rz'] as const;
export type Freedom = (typeof FREEDOMS)[number];

export interface FrameElement {
  readonly start: number;
  readonly end: number;
  /** Reference for the depth direction; must not run along the element. */
  readonly up: Vec3;
  readonly E: number;
  readonly G: number;
  readonly A: number;
  /** Second moment of area for bending about local y (sideways). */
  readonly Iy: number;
  /** Second moment of area for bending about local z (loads along the depth). */
  readonly Iz: number;
  /** Torsion constant. */
  readonly J: number;
  /** Shear area for forces along local y; none: no shear flexibility that way. A rectangle has 5/6 of its area. */
  readonly Ay?: number;
  /** Shear area for forces along local z. */
  readonly Az?: number;
  readonly releases?: { readonly start?: EndRelease; readonly end?: EndRelease };
}

/** Inner forces an end cannot pass to its node, in local axes. */
export interface EndRelease {
  readonly axial?: boolean;
  readonly torsion?: boolean;
  readonly my?: boolean;
  readonly mz?: boolean;
}

/**
 * Each freedom is `'fixed'`, a spring of that stiffness to the ground, or (left out) free. Several supports may share a
 * node: springs add up and fixed wins. A node where every element is released needs that rotation fixed here.
 */
export type Support = { readonly node: number } & { readonly [F in Freedom]?: 'fixed' | number };

export interface FrameCase {
  readonly nodal?: readonly NodalLoad[];
  readonly distributed?: readonly DistributedLoad[];
  readonly points?: readonly MemberPointLoad[];
  readonly settlements?: readonly Settlement[];
}

/** Global axes. */
export interface NodalLoad {
  readonly node: number;
  readonly force?: Vec3;
  readonly moment?: Vec3;
}

/** How places along an element are given: length from its start (the default), or the same over its whole length. */
export type Measure = 'distance' | 'fraction';

/** Force per unit length of element, running straight from its value at `from` to its value at `to`. */
export interface DistributedLoad {
  readonly element: number;
  /** Default `global`. */
  readonly axes?: 'global' | 'local';
  readonly measure?: Measure;
  /** Default: the start. */
  readonly from?: number;
  /** Default: the end. */
  readonly to?: number;
  readonly startForce: Vec3;
  /** Default: as `startForce`, a uniform load. */
  readonly endForce?: Vec3;
}

export interface MemberPointLoad {
  readonly element: number;
  /** Default `global`. */
  readonly axes?: 'global' | 'local';
  readonly measure?: Measure;
  /** Place along the element. */
  readonly at: number;
  readonly force?: Vec3;
  readonly moment?: Vec3;
}

/** The ground under a support moves by `value` along one freedom (also under a spring). */
export interface Settlement {
  readonly node: number;
  readonly freedom: Freedom;
  readonly value: number;
}

/** What can move without resistance. */
export interface Mechanism {
  /** Node and freedom that move most in the free motion. */
  readonly node: number;
  readonly freedom: Freedom;
  /** Set when it is one element that is loose (both its ends released the same way); `freedom` is then in its axes. */
  readonly element?: number;
  /** The free motion: six numbers a node, scaled so that the freedom named moves by one. Empty for a loose element. */
  readonly motion: Float64Array;
}

/** One case solved. Flat arrays: six numbers a node, twelve an element. */
export interface CaseResult {
  readonly displacements: Float64Array;
  /** Forces of the ground on the structure, springs included; zero where nothing is supported. */
  readonly reactions: Float64Array;
  /** Local end forces, see the sign convention. */
  readonly endForces: Float64Array;
  /** Which loads sit on which element, so that sampling need not search. */
  readonly loadIndex: LoadIndex;
}

/** Chains of load numbers by element: `first[element]`, then `next[load]`, until -1. Points follow the distributed. */
export interface LoadIndex {
  readonly first: Int32Array;
  readonly next: Int32Array;
}
