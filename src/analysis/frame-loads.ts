/** What the framing and the members' own weight put on the frame. */
import type { Vec3 } from '../base/vec.js';
import type { BeamLineModel } from './frame-draft.js';
import type { SupportFrame } from './idealise.js';
import type { Rows } from './rows.js';
import type { DistributedLoad, FrameCase, MemberPointLoad, NodalLoad } from './solver/index.js';

/** Where one framing joint acts: on an element, or right on a node. */
export type Place = { readonly rows: Rows; readonly beam: string; readonly lever?: Lever } & (
  | { readonly node: number }
  | { readonly element: number; readonly at: number }
);

/** The seat on the beam's top above the level the frame has it at, and its direction on plan: a push along it turns as it should. */
export interface Lever {
  readonly arm: number;
  readonly x: number;
  readonly y: number;
}

function leverOf(frame: SupportFrame, { member, length }: BeamLineModel): { readonly lever?: Lever } {
  if (!frame.framed) return {};
  const dir = (k: 'x' | 'y'): number => (member.end[k] - member.start[k]) / length;
  return { lever: { arm: member.section.depth, x: dir('x'), y: dir('y') } };
}

/** Moment about the level axis square to the beam; across the beam see `rollingCouples`. */
function leverMoment({ arm, x, y }: Lever, fx: number, fy: number): Vec3 {
  const m = arm * (fx * x + fy * y);
  return { x: -m * y, y: m * x, z: 0 };
}

/** Nearer than this to a node a load acts on the node, inches. */
export const ON_NODE = 1e-6;

export function placesOf(frame: SupportFrame, lengths: Float64Array, framing: ReadonlyMap<string, Rows>): Place[] {
  const places: Place[] = [];
  for (const beam of frame.beams) {
    const lever = leverOf(frame, beam);
    for (const load of beam.loads) {
      const rows = framing.get(load.joint.id);
      if (!rows) continue;
      const along = Math.min(Math.max(load.lowerAlong, 0), beam.length);
      const piece = beam.pieces.find((p) => along <= p.to) ?? beam.pieces.at(-1)!;
      const { start, end } = frame.model.elements[piece.element]!;
      if (along - piece.from < ON_NODE) places.push({ rows, beam: beam.member.id, node: start, ...lever });
      else if (piece.to - along < ON_NODE) places.push({ rows, beam: beam.member.id, node: end, ...lever });
      else
        places.push({
          rows,
          beam: beam.member.id,
          ...lever,
          element: piece.element,
          at: Math.min(along - piece.from, lengths[piece.element]!),
        });
    }
  }
  return places;
}

export function frameCase(
  c: number,
  places: readonly Place[],
  weights: readonly DistributedLoad[],
  self: number,
): FrameCase {
  const points: MemberPointLoad[] = [];
  const nodal: NodalLoad[] = [];
  for (const p of places) {
    const x = p.rows[3 * c]!;
    const y = p.rows[3 * c + 1]!;
    const z = p.rows[3 * c + 2]!;
    if (x === 0 && y === 0 && z === 0) continue;
    const moment = p.lever ? { moment: leverMoment(p.lever, x, y) } : {};
    if ('node' in p) nodal.push({ node: p.node, force: { x, y, z }, ...moment });
    else points.push({ element: p.element, at: p.at, force: { x, y, z }, ...moment });
  }
  if (self === 0) return { points, nodal };
  const distributed = weights.map((w) => ({ ...w, startForce: { x: 0, y: 0, z: w.startForce.z * self } }));
  return { points, nodal, distributed };
}
