/** What one means of holding answers: how far it is used by a force, and what is wrong with its layout. */
import type { Recorder } from '../../../base/trace.js';
import type { Vec3 } from '../../../base/vec.js';
import type { ConnectionPart } from '../../../project/connections.js';
import type { Joint, Member } from '../../../structure/model.js';
import type { CheckContext } from '../../contract.js';

/** One joint, its two members and the directions words like `crosswise` mean there (unit vectors). */
export interface Place {
  readonly ctx: CheckContext;
  readonly joint: Joint;
  readonly upper: Member;
  readonly lower: Member;
  readonly lengthwise: Vec3;
  readonly crosswise: Vec3;
  /** The way the carried part pushes: along it toward the joint. */
  readonly inward: Vec3;
  readonly madeDry: boolean;
}

export interface Held {
  /** Demand over capacity, every limit of the part counted. */
  readonly ratio: number;
  /** The limit that ratio belongs to, and what would help it. */
  readonly what: string;
  /** What is out of rule and what would fit; any of it fails the joint. */
  readonly faults: readonly string[];
  /** Beyond the program's range: the joint needs a licensed professional. */
  readonly outside?: string;
}

/**
 * One part at one place: part of the fasteners' own holding power used under `force`, lb, house axes, for load duration
 * `CD`. It is asked for thousands of forces, so it keeps what does not change with them.
 */
export type Hold = (force: Vec3, CD: number, rec?: Recorder) => Held;

export interface PartKind<P extends ConnectionPart> {
  /** As the schedule and notes name it. */
  words(part: P): string;
  /** Where its fasteners sit, for the schedule; empty when the words say it all. */
  layout(part: P): string;
  /** What the builder must keep to for the numbers to hold, one clause of a sentence. */
  care(part: P): string;
  hold(part: P, place: Place): Hold;
}

export const UP: Vec3 = { x: 0, y: 0, z: 1 };
