/** What the bent frame hands over at post tops, braces and struts, and how far the post tops move. */

import type { BarModel } from './frame-draft.js';
import type { SolvedFrame } from './frame-parts.js';
import type { SupportFrame } from './idealise.js';
import type { Drift } from './model.js';
import { addTo, type Rows, rowsOf } from './rows.js';
import type { CaseResult, FactoredFrame } from './solver/index.js';

/** Force of a node on the end of an element, house axes. */
function endForce(
  frame: FactoredFrame,
  result: CaseResult,
  element: number,
  at: 'start' | 'end',
): [number, number, number] {
  const f = 12 * element + (at === 'end' ? 6 : 0);
  const r = 9 * element;
  const part = (k: number): number =>
    frame.axes[r + k]! * result.endForces[f]! +
    frame.axes[r + 3 + k]! * result.endForces[f + 1]! +
    frame.axes[r + 6 + k]! * result.endForces[f + 2]!;
  return [part(0), part(1), part(2)];
}

/** A post's top with the joints of the beams on it. */
export interface Cap {
  readonly node: number;
  readonly element: number;
  readonly joints: readonly string[];
}

export const capsOf = (support: SupportFrame): readonly Cap[] =>
  support.posts.map(({ member, pieces, top }) => ({
    node: top,
    element: pieces.at(-1)!.element,
    joints: support.beams.flatMap((b) =>
      b.held.filter((h) => h.bearing.lower === member.id).map((h) => h.bearing.joint.id),
    ),
  }));

/**
 * The joints of a cap already hold what each beam presses down; what the post's top really takes beyond that (its sideways
 * force, what links bring) is shared among them equally.
 */
export function pressCap(cap: Cap, { frame, results, at }: SolvedFrame, joints: Map<string, Rows>): void {
  const solves = at(cap.node);
  const rows = cap.joints.map((j) => rowsOf(joints, j, solves.length));
  solves.forEach((solve, c) => {
    const [x, y, z] = endForce(frame, results[solve]!, cap.element, 'end');
    const pressed = rows.reduce((sum, r) => sum + r[3 * c + 2]!, 0);
    for (const r of rows) addTo(r, c, x, y, z - pressed, 1 / rows.length);
  });
}

export function pressBar(bar: BarModel, solved: SolvedFrame, joints: Map<string, Rows>): void {
  const { frame, results } = solved;
  for (const { joint, element, at, sense } of bar.ends) {
    const solves = solved.at(frame.model.elements[element]!.start);
    const rows = rowsOf(joints, joint, solves.length);
    solves.forEach((solve, c) => {
      const [x, y, z] = endForce(frame, results[solve]!, element, at);
      addTo(rows, c, x, y, z, -sense);
    });
  }
}

/** Movement of every post's top, and the height over which it leans. */
export const driftOf = (support: SupportFrame, { results, at }: SolvedFrame): readonly Drift[] =>
  support.posts.map(({ member, pieces, top }) => ({
    post: member.id,
    height: pieces.at(-1)!.to - pieces[0]!.from,
    move: Array.from(at(top), (solve) => {
      const u = results[solve]!.displacements;
      return { x: u[6 * top]!, y: u[6 * top + 1]!, z: u[6 * top + 2]! };
    }),
  }));
