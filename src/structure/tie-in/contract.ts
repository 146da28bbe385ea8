/** What placing an overlay is given, and what of it is known before its parts are cut. */
import type { GableRoof, Overlay } from '../../project/model.js';
import type { Framed, FrameNumbers } from '../framing/contract.js';
import type { Kit } from '../kit.js';
import type { RoofLayers } from '../layers.js';
import type { HousePlane, OverlayPlaced, Section, Surface } from '../model.js';
import type { Profile } from '../roofs/contract.js';

export interface OverlayInput {
  readonly roof: GableRoof & { readonly meetsHouse: Overlay };
  readonly profile: Profile;
  readonly framed: Framed;
  readonly planes: readonly Surface[];
  readonly layers: RoofLayers;
  /** Fascia of the cover, which goes on to the old roof; absent when it has none. */
  readonly fascia: { readonly section: Section; readonly mark: string } | undefined;
  readonly housePlanes: readonly HousePlane[];
  readonly number: FrameNumbers;
  readonly kit: Kit;
}

/** Everything but the cut parts. */
export type Outline = Omit<OverlayPlaced, 'members' | 'fills' | 'plates' | 'board'>;
