import { memberAxes } from '../../base/geometry/index.js';
import { condense, type Elimination, elementStiffness, MATRIX, releasedFreedoms } from './element.js';
import { FREEDOMS, type FrameModel, type Freedom, type Mechanism } from './model.js';
import { reverseCuthillMcKee } from './order.js';
import { addTerm, factorise, freeMotion, makeSkyline, type Skyline } from './skyline.js';

/** A frame ready to solve any number of cases. Flat arrays, read-only by custom: nine axes numbers an element, etc. */
export interface FactoredFrame {
  readonly model: FrameModel;
  readonly lengths: Float64Array;
  /** Rows x, y, z of each element's local axes. */
  readonly axes: Float64Array;
  /** Local stiffness of each element, its releases condensed. */
  readonly stiffness: Float64Array;
  readonly eliminations: readonly (readonly Elimination[])[];
  /** Equation of each freedom, six a node; -1 where fixed. */
  readonly equation: Int32Array;
  /** Spring to the ground of each freedom. */
  readonly springs: Float64Array;
  readonly matrix: Skyline;
}

export type Factoring =
  | { readonly ok: true; readonly frame: FactoredFrame }
  | { readonly ok: false; readonly mechanism: Mechanism };

/**
 * Builds and factors the stiffness of a frame. A frame that can move freely is answered as data. A model that means
 * nothing (an index out of range, no length, no stiffness, an `up` along the element) is a fault of the caller and
 * throws RangeError.
 */
export function factorFrame(model: FrameModel): Factoring {
  const elements = model.elements;
  const lengths = new Float64Array(elements.length);
  const axes = new Float64Array(9 * elements.length);
  const stiffness = new Float64Array(MATRIX * elements.length);
  const eliminations: Elimination[][] = [];
  for (let e = 0; e < elements.length; e++) {
    placeElement(model, e, lengths, axes);
    const element = elements[e]!;
    elementStiffness(element, lengths[e]!, stiffness, MATRIX * e);
    const done = condense(stiffness, MATRIX * e, releasedFreedoms(element));
    if ('loose' in done) {
      const node = done.loose < 6 ? element.start : element.end;
      const freedom = FREEDOMS[done.loose % 6]!;
      return { ok: false, mechanism: { node, freedom, element: e, motion: new Float64Array(0) } };
    }
    eliminations.push(done);
  }
  const { fixed, springs } = readSupports(model);
  const equation = numberEquations(model, fixed);
  const matrix = assemble(model, equation, axes, stiffness, springs);
  const stopped = factorise(matrix);
  if (stopped >= 0) return { ok: false, mechanism: nameMotion(lengths, equation, freeMotion(matrix, stopped)) };
  return { ok: true, frame: { model, lengths, axes, stiffness, eliminations, equation, springs, matrix } };
}

function placeElement(model: FrameModel, e: number, lengths: Float64Array, axes: Float64Array): void {
  const { start, end, up, E, G, A, Iy, Iz, J } = model.elements[e]!;
  const a = model.nodes[start];
  const b = model.nodes[end];
  if (!a || !b || start === end) throw new RangeError(`element ${e} does not join two nodes`);
  const local = memberAxes(a, b, up);
  if (!local) throw new RangeError(`element ${e} has no length, or its up runs along it`);
  if (![E, G, A, Iy, Iz, J].every((v) => v > 0 && v < Infinity)) throw new RangeError(`element ${e} has no stiffness`);
  lengths[e] = local.length;
  axes.set([local.x.x, local.x.y, local.x.z, local.y.x, local.y.y, local.y.z, local.z.x, local.z.y, local.z.z], 9 * e);
}

function readSupports(model: FrameModel): { readonly fixed: Uint8Array; readonly springs: Float64Array } {
  const fixed = new Uint8Array(6 * model.nodes.length);
  const springs = new Float64Array(6 * model.nodes.length);
  for (const support of model.supports) {
    if (!model.nodes[support.node]) throw new RangeError(`support at node ${support.node}, which does not exist`);
    FREEDOMS.forEach((name, f) => {
      const held = support[name];
      const i = 6 * support.node + f;
      if (held === 'fixed') fixed[i] = 1;
      else if (held !== undefined) {
        if (!(held >= 0 && held < Infinity)) throw new RangeError(`spring at node ${support.node} is not a stiffness`);
        springs[i] = springs[i]! + held;
      }
    });
  }
  for (let i = 0; i < fixed.length; i++) if (fixed[i]) springs[i] = 0;
  return { fixed, springs };
}

function numberEquations(model: FrameModel, fixed: Uint8Array): Int32Array {
  const edges = model.elements.map((e): [number, number] => [e.start, e.end]);
  const equation = new Int32Array(fixed.length).fill(-1);
  let count = 0;
  for (const node of reverseCuthillMcKee(model.nodes.length, edges)) {
    for (let i = 6 * node; i < 6 * node + 6; i++) if (!fixed[i]) equation[i] = count++;
  }
  return equation;
}

function assemble(
  model: FrameModel,
  equation: Int32Array,
  axes: Float64Array,
  stiffness: Float64Array,
  springs: Float64Array,
): Skyline {
  const rows = new Int32Array(12);
  const rowsOf = (e: number): void => {
    const { start, end } = model.elements[e]!;
    for (let f = 0; f < 6; f++) {
      rows[f] = equation[6 * start + f]!;
      rows[f + 6] = equation[6 * end + f]!;
    }
  };
  const size = equation.reduce((n, i) => Math.max(n, i + 1), 0);
  const top = Int32Array.from({ length: size }, (_, i) => i);
  for (let e = 0; e < model.elements.length; e++) {
    rowsOf(e);
    let least = size;
    for (const r of rows) if (r >= 0 && r < least) least = r;
    for (const r of rows) if (r >= 0 && top[r]! > least) top[r] = least;
  }
  const matrix = makeSkyline(top);
  const global = new Float64Array(MATRIX);
  for (let e = 0; e < model.elements.length; e++) {
    rowsOf(e);
    turnMatrix(stiffness, MATRIX * e, axes, 9 * e, global);
    for (let p = 0; p < 12; p++) {
      const i = rows[p]!;
      if (i < 0) continue;
      for (let q = p; q < 12; q++) {
        const j = rows[q]!;
        if (j >= 0) addTerm(matrix, Math.min(i, j), Math.max(i, j), global[p * 12 + q]!);
      }
    }
  }
  for (let i = 0; i < equation.length; i++) {
    const row = equation[i]!;
    if (row >= 0 && springs[i]! > 0) addTerm(matrix, row, row, springs[i]!);
  }
  return matrix;
}

/** Global form of a local matrix: RᵀkR for each of its 3 × 3 blocks. */
function turnMatrix(k: Float64Array, at: number, axes: Float64Array, r: number, out: Float64Array): void {
  const half = new Float64Array(9);
  for (let a = 0; a < 12; a += 3) {
    for (let b = 0; b < 12; b += 3) {
      for (let i = 0; i < 3; i++) {
        const row = at + (a + i) * 12 + b;
        for (let j = 0; j < 3; j++) {
          half[i * 3 + j] = k[row]! * axes[r + j]! + k[row + 1]! * axes[r + 3 + j]! + k[row + 2]! * axes[r + 6 + j]!;
        }
      }
      for (let i = 0; i < 3; i++) {
        for (let j = 0; j < 3; j++) {
          out[(a + i) * 12 + b + j] =
            axes[r + i]! * half[j]! + axes[r + 3 + i]! * half[3 + j]! + axes[r + 6 + i]! * half[6 + j]!;
        }
      }
    }
  }
}

/** Names the freedom that moves most; a rotation counts as the drift it gives half an average element. */
function nameMotion(lengths: Float64Array, equation: Int32Array, x: Float64Array): Mechanism {
  const arm = lengths.length === 0 ? 1 : lengths.reduce((a, b) => a + b) / lengths.length / 2;
  const motion = Float64Array.from(equation, (row) => (row < 0 ? 0 : x[row]!));
  let named = 0;
  let most = 0;
  for (let i = 0; i < motion.length; i++) {
    const reach = Math.abs(motion[i]!) * (i % 6 < 3 ? 1 : arm);
    // The margin makes the first of several that move alike the one named, whatever the round-off.
    if (reach > most * (1 + 1e-6)) {
      most = reach;
      named = i;
    }
  }
  const scale = motion[named]!;
  const freedom: Freedom = FREEDOMS[named % 6]!;
  return { node: Math.floor(named / 6), freedom, motion: motion.map((v) => (v === 0 ? 0 : v / scale)) };
}
