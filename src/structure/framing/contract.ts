import type { Vec3 } from '../../base/vec.js';
import type { CoverRoof, FramingChoice, FramingKind } from '../../project/model.js';
import type { Kit } from '../kit.js';
import type { Joint, Member, Strip } from '../model.js';
import type { Profile } from '../roofs/contract.js';

/** A frame resting on or hung from its bearing. */
export interface Seat {
  readonly kind: Joint['kind'];
  readonly member: string;
  /** Mark of the beam or ledger. */
  readonly support: string;
  readonly at: Vec3;
  readonly contact: Joint['contact'];
}

export interface Framed {
  readonly members: readonly Member[];
  readonly seats: readonly Seat[];
  /** The frame at each station whose tail carries the eave, leg by leg. */
  readonly tails: readonly (readonly Member[])[];
  /** Height of the top of each bearing part, by mark. */
  readonly tops: ReadonlyMap<string, number>;
  /** Height of the framing's top edge at the eave of each slope, in the order of the profile's legs. */
  readonly eaves: readonly number[];
  /** Plumb depth of what runs along the slope (rafter, top chord). */
  readonly plumb: number;
}

export interface FrameInput<K extends FramingKind> {
  readonly roof: CoverRoof;
  readonly choice: Extract<FramingChoice, { kind: K }>;
  readonly profile: Profile;
  /** Running number of the roof's framing marks. */
  readonly number: FrameNumbers;
  /** Roof surface strips of each station. */
  readonly strips: readonly (readonly Strip[])[];
  readonly kit: Kit;
}

/** Gives the next number of a mark prefix: `T` → 1, `T` → 2. */
export type FrameNumbers = (prefix: string) => number;

export interface Framing<K extends FramingKind> {
  /** Undefined when the roof cannot be framed this way; the reasons are in `kit.issues`. */
  frame(input: FrameInput<K>): Framed | undefined;
}
