import { MATRIX } from './element.js';
import type { FactoredFrame } from './factor.js';
import { heldEndForces, indexLoads, makeLoadRoom } from './loads.js';
import { type CaseResult, FREEDOMS, type FrameCase } from './model.js';
import { solveSkyline } from './skyline.js';

/** Solves one case. A load that means nothing (no such element, a place off it, not finite) throws RangeError. */
export function solveCase(frame: FactoredFrame, c: FrameCase): CaseResult {
  const { model, equation, springs, matrix } = frame;
  const freedoms = equation.length;
  const elements = model.elements.length;
  const loadIndex = indexLoads(frame, c);
  const applied = nodalForces(frame, c);
  const displacements = new Float64Array(freedoms);
  const ground = new Float64Array(freedoms);
  const moved = settle(frame, c, ground, displacements);

  // Loads of the elements, and forces of the settled supports, with every free freedom held.
  const endForces = new Float64Array(12 * elements);
  const held = new Float64Array(freedoms);
  const room = makeLoadRoom();
  for (let e = 0; e < elements; e++) {
    const loaded = loadIndex.first[e]! >= 0;
    if (loaded) {
      heldEndForces(frame, c, loadIndex, e, room);
      endForces.set(room.forces, 12 * e);
    }
    if (!loaded && !moved) continue;
    if (moved) {
      room.forces.set(endForces.subarray(12 * e, 12 * e + 12));
      addStiffnessForces(frame, e, displacements, room.forces, 0);
    }
    addToNodes(frame, e, room.forces, 0, held);
  }

  const x = new Float64Array(matrix.size);
  let check = 0;
  for (let i = 0; i < freedoms; i++) {
    const row = equation[i]!;
    if (row >= 0) x[row] = applied[i]! - held[i]! + springs[i]! * ground[i]!;
    check += Math.abs(applied[i]!) + Math.abs(held[i]!);
  }
  if (!Number.isFinite(check)) throw new RangeError('a load is not a finite number');
  solveSkyline(matrix, x);
  for (let i = 0; i < freedoms; i++) if (equation[i]! >= 0) displacements[i] = x[equation[i]!]!;

  const reactions = new Float64Array(freedoms);
  for (let e = 0; e < elements; e++) {
    addStiffnessForces(frame, e, displacements, endForces, 12 * e);
    addToNodes(frame, e, endForces, 12 * e, reactions);
  }
  for (let i = 0; i < freedoms; i++) {
    if (equation[i]! < 0) reactions[i] = reactions[i]! - applied[i]!;
    else reactions[i] = springs[i] === 0 ? 0 : springs[i]! * (ground[i]! - displacements[i]!);
  }
  return { displacements, reactions, endForces, loadIndex };
}

function nodalForces(frame: FactoredFrame, c: FrameCase): Float64Array {
  const p = new Float64Array(frame.equation.length);
  for (const { node, force, moment } of c.nodal ?? []) {
    const i = 6 * node;
    if (!(i in p)) throw new RangeError(`load on node ${node}, which does not exist`);
    if (force) {
      p[i] = p[i]! + force.x;
      p[i + 1] = p[i + 1]! + force.y;
      p[i + 2] = p[i + 2]! + force.z;
    }
    if (moment) {
      p[i + 3] = p[i + 3]! + moment.x;
      p[i + 4] = p[i + 4]! + moment.y;
      p[i + 5] = p[i + 5]! + moment.z;
    }
  }
  return p;
}

/** Writes the ground's movement, and at fixed freedoms the structure's with it; tells whether the latter moved. */
function settle(frame: FactoredFrame, c: FrameCase, ground: Float64Array, displacements: Float64Array): boolean {
  let moved = false;
  for (const { node, freedom, value } of c.settlements ?? []) {
    const i = 6 * node + FREEDOMS.indexOf(freedom);
    const fixed = frame.equation[i] === -1;
    if (!fixed && !(frame.springs[i]! > 0))
      throw new RangeError(`node ${node} has no support along ${freedom} to settle`);
    if (!Number.isFinite(value)) throw new RangeError('a settlement is not a finite number');
    ground[i] = ground[i]! + value;
    if (fixed) {
      displacements[i] = ground[i]!;
      moved = true;
    }
  }
  return moved;
}

/** Adds to local end forces at `at` what the displacements of an element's nodes make of its stiffness. */
function addStiffnessForces(frame: FactoredFrame, e: number, u: Float64Array, f: Float64Array, at: number): void {
  const { axes, stiffness } = frame;
  const { start, end } = frame.model.elements[e]!;
  const r = 9 * e;
  for (let block = 0; block < 4; block++) {
    const i = (block < 2 ? 6 * start : 6 * end) + 3 * (block & 1);
    const x = u[i]!;
    const y = u[i + 1]!;
    const z = u[i + 2]!;
    if (x === 0 && y === 0 && z === 0) continue;
    for (let axis = 0; axis < 3; axis++) {
      const a = r + 3 * axis;
      const local = axes[a]! * x + axes[a + 1]! * y + axes[a + 2]! * z;
      if (local === 0) continue;
      // Symmetric, so the row of a freedom is its column.
      const k = MATRIX * e + 12 * (3 * block + axis);
      for (let j = 0; j < 12; j++) f[at + j] = f[at + j]! + stiffness[k + j]! * local;
    }
  }
}

/** Adds local end forces at `at` to the global forces of the element's nodes. */
function addToNodes(frame: FactoredFrame, e: number, f: Float64Array, at: number, nodes: Float64Array): void {
  const { axes } = frame;
  const { start, end } = frame.model.elements[e]!;
  const r = 9 * e;
  for (let block = 0; block < 4; block++) {
    const i = (block < 2 ? 6 * start : 6 * end) + 3 * (block & 1);
    const x = f[at + 3 * block]!;
    const y = f[at + 3 * block + 1]!;
    const z = f[at + 3 * block + 2]!;
    nodes[i] = nodes[i]! + axes[r]! * x + axes[r + 3]! * y + axes[r + 6]! * z;
    nodes[i + 1] = nodes[i + 1]! + axes[r + 1]! * x + axes[r + 4]! * y + axes[r + 7]! * z;
    nodes[i + 2] = nodes[i + 2]! + axes[r + 2]! * x + axes[r + 5]! * y + axes[r + 8]! * z;
  }
}
