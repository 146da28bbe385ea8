import type { EndRelease, FrameElement } from './model.js';

/** Numbers in a 12 × 12 element matrix, stored by rows. */
export const MATRIX = 144;

/** Stiffness of an unreleased element in its own axes, written into `k` from `at` (zeroed before). */
export function elementStiffness(e: FrameElement, l: number, k: Float64Array, at: number): void {
  const axial = (e.E * e.A) / l;
  const twist = (e.G * e.J) / l;
  set(0, 0, axial);
  set(0, 6, -axial);
  set(6, 6, axial);
  set(3, 3, twist);
  set(3, 9, -twist);
  set(9, 9, twist);
  // Bending in x-y couples v and rz; in x-z it couples w and ry, where a positive ry lowers w: the sign turns.
  bend(e.E * e.Iz, shearRatio(e.E * e.Iz, e.G, e.Ay, l), 1, 5, 1);
  bend(e.E * e.Iy, shearRatio(e.E * e.Iy, e.G, e.Az, l), 2, 4, -1);

  function bend(ei: number, phi: number, v: number, r: number, turn: 1 | -1): void {
    const c = ei / (l * (1 + phi));
    const shear = (12 * c) / (l * l);
    const mixed = (turn * 6 * c) / l;
    set(v, v, shear);
    set(v, v + 6, -shear);
    set(v + 6, v + 6, shear);
    set(v, r, mixed);
    set(v, r + 6, mixed);
    set(r, v + 6, -mixed);
    set(v + 6, r + 6, -mixed);
    set(r, r, (4 + phi) * c);
    set(r, r + 6, (2 - phi) * c);
    set(r + 6, r + 6, (4 + phi) * c);
  }

  function set(i: number, j: number, value: number): void {
    k[at + i * 12 + j] = value;
    k[at + j * 12 + i] = value;
  }
}

/** Timoshenko's shear parameter 12EI/(G·As·L²); zero without a shear area. */
export const shearRatio = (ei: number, g: number, area: number | undefined, l: number): number =>
  area ? (12 * ei) / (g * area * l * l) : 0;

/** Released freedoms of an element as indices into its twelve. */
export function releasedFreedoms(e: FrameElement): number[] {
  const of = (r: EndRelease | undefined, base: number): number[] => {
    if (!r) return [];
    const list = [];
    if (r.axial) list.push(base);
    if (r.torsion) list.push(base + 3);
    if (r.my) list.push(base + 4);
    if (r.mz) list.push(base + 5);
    return list;
  };
  return [...of(e.releases?.start, 0), ...of(e.releases?.end, 6)];
}

/** One released freedom, eliminated: forces on the others change by -column · (force on it). */
export interface Elimination {
  readonly freedom: number;
  readonly column: Float64Array;
}

/** A released freedom whose stiffness has sunk to this part of what it was is held by nothing. */
const LOOSE = 1e-9;

/**
 * Takes released freedoms out of the stiffness at `at`, one after the other (static condensation). Returns what loads
 * on the element need to follow suit, or the local freedom that nothing holds.
 */
export function condense(
  k: Float64Array,
  at: number,
  freedoms: readonly number[],
): Elimination[] | { readonly loose: number } {
  const whole = freedoms.map((r) => k[at + r * 13]!);
  const done: Elimination[] = [];
  for (let n = 0; n < freedoms.length; n++) {
    const r = freedoms[n]!;
    const pivot = k[at + r * 13]!;
    if (!(pivot > LOOSE * whole[n]!)) return { loose: r };
    const column = new Float64Array(12);
    for (let i = 0; i < 12; i++) column[i] = k[at + i * 12 + r]! / pivot;
    for (let i = 0; i < 12; i++) {
      const c = column[i]!;
      if (c === 0 || i === r) continue;
      for (let j = 0; j < 12; j++) k[at + i * 12 + j] = k[at + i * 12 + j]! - c * k[at + r * 12 + j]!;
    }
    for (let j = 0; j < 12; j++) {
      k[at + r * 12 + j] = 0;
      k[at + j * 12 + r] = 0;
    }
    done.push({ freedom: r, column });
  }
  return done;
}

/** Lets the end forces of a loaded, clamped element follow its releases. */
export function releaseForces(eliminations: readonly Elimination[], f: Float64Array): void {
  for (const { freedom, column } of eliminations) {
    const held = f[freedom]!;
    if (held === 0) continue;
    for (let i = 0; i < 12; i++) f[i] = f[i]! - column[i]! * held;
    f[freedom] = 0;
  }
}
