/** The placed structure as any 3-D viewer wants it: triangles, edges and curves as plain numbers, inches, house axes. */
import type { MaterialClass, Piece } from '../structure/model.js';

export interface SceneMesh {
  /** Member, footing, slab … id, and its mark as drawn. */
  readonly part: string;
  readonly mark: string;
  readonly role: Piece['role'];
  readonly state: Piece['state'];
  readonly material: MaterialClass;
  /** Three corners a triangle, x y z each; counter-clockwise seen from outside. */
  readonly triangles: Float32Array;
  /** Two ends an edge. Edges between faces in one plane are left out. */
  readonly edges: Float32Array;
}

export interface Scene {
  readonly meshes: readonly SceneMesh[];
  /** Corners of the box round all of the cover: x y z. */
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** One member under one combination. Arrays run along its axis from its start, equally long. */
export interface MemberState {
  readonly part: string;
  readonly mark: string;
  readonly start: readonly [number, number, number];
  readonly end: readonly [number, number, number];
  readonly up: readonly [number, number, number];
  /** Distance from the start, inches. */
  readonly at: Float32Array;
  /** Moment lb·in, shear lb, axial force lb (tension positive), deflection inches (down positive). */
  readonly m: Float32Array;
  readonly v: Float32Array;
  readonly n: Float32Array;
  readonly sag: Float32Array;
}

/** Force that passes a joint or reaches the soil: from the upper part onto the lower, lb, house axes. */
export interface Flow {
  readonly mark: string;
  readonly at: readonly [number, number, number];
  readonly force: readonly [number, number, number];
  /** Parts it comes from and goes to. */
  readonly from: string;
  readonly to: string;
}

export interface SceneState {
  readonly combination: string;
  readonly members: readonly MemberState[];
  readonly flows: readonly Flow[];
}
