/** A dimension of a plan, read backwards: which parts stand at its ends, and what moving each would change. */
import type { Vec2 } from '../base/vec.js';
import type { TextEdit } from '../project/edit.js';
import type { Handle } from './model.js';

/** One way to make a dimension show another length. */
export interface DimensionMove {
  readonly handles: readonly string[];
  /** `Move P2 with footing F2`. */
  readonly text: string;
  readonly paths: readonly string[];
  /** Inches that each handle moves along its own axis for each inch the dimension grows. */
  readonly signs: readonly number[];
}

/** Half of the finest fraction a dimension shows. */
const NEAR = 1 / 32;

const dot = (a: Vec2, b: Vec2): number => a.x * b.x + a.y * b.y;

const kindOf = (h: Handle): string => h.id.slice(0, h.id.indexOf(':'));

/**
 * Ways to change a dimension measured along `angle` between `a` and `b`, model inches. The far end moves before the near
 * one; parts of one kind that stand in line are offered together, since opposite sides mostly must match, and then alone.
 */
export function movesOf(d: { a: Vec2; b: Vec2; angle: number }, handles: readonly Handle[]): readonly DimensionMove[] {
  const u = { x: Math.cos(d.angle), y: Math.sin(d.angle) };
  const [sa, sb] = [dot(d.a, u), dot(d.b, u)];
  const out: DimensionMove[] = [];
  const far = Math.abs(sb) >= Math.abs(sa);
  for (const [s, way] of far
    ? ([
        [sb, 1],
        [sa, -1],
      ] as const)
    : ([
        [sa, -1],
        [sb, 1],
      ] as const)) {
    const here = handles.filter((h) => Math.abs(dot(h.axis, u)) > 0.999 && Math.abs(dot(h.at, u) - s) <= NEAR);
    const kinds = new Map<string, Handle[]>();
    for (const h of here) kinds.set(kindOf(h), [...(kinds.get(kindOf(h)) ?? []), h]);
    const move = (group: readonly Handle[]): DimensionMove => ({
      handles: group.map((h) => h.id),
      text: group.length === 1 ? `Move ${group[0]!.what}` : `Move ${group.map((h) => h.mark).join(', ')} together`,
      paths: group.map((h) => h.path),
      signs: group.map((h) => way * Math.sign(dot(h.axis, u))),
    });
    for (const group of kinds.values()) {
      if (group.length > 1) out.push(move(group));
      for (const h of group) out.push(move([h]));
    }
  }
  return out;
}

/** Changes of the file that make a dimension longer by so many inches. */
export function editsOf(move: DimensionMove, by: number, handles: readonly Handle[]): readonly TextEdit[] {
  return move.handles.flatMap((id, i) => handles.find((h) => h.id === id)?.edits(move.signs[i]! * by) ?? []);
}
