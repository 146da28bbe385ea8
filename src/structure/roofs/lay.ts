/** What a roof shape implements: its outline, and its framing where that is no row of equal frames. */
import type { CoverRoof, RoofKind } from '../../project/model.js';
import type { Framed, FrameNumbers, Seat } from '../framing/contract.js';
import type { Kit } from '../kit.js';
import type { RoofLayers } from '../layers.js';
import type { Member, Section, Surface } from '../model.js';
import type { Profile } from './contract.js';

/** What a shape lays out itself when its frames do not stand in one row. */
export interface Laying {
  readonly framed: Framed;
  readonly planes: readonly Surface[];
  readonly trim: { readonly members: readonly Member[]; readonly seats: readonly Seat[] } | undefined;
}

export interface LayInput<R extends CoverRoof = CoverRoof> {
  readonly roof: R;
  readonly profile: Profile;
  readonly layers: RoofLayers;
  readonly fascia: Section | undefined;
  readonly number: FrameNumbers;
  readonly kit: Kit;
}

export interface RoofShape<K extends RoofKind> {
  /** Undefined when the roof cannot be laid out; the reasons are in `kit.issues`. */
  profile(roof: Extract<CoverRoof, { kind: K }>, kit: Kit): Profile | undefined;
  /** Frames, planes and trim; absent: the row of equal frames of src/structure/framing. */
  lay?(input: LayInput<Extract<CoverRoof, { kind: K }>>): Laying | undefined;
}
