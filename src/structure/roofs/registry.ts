import type { CoverRoof, RoofKind } from '../../project/model.js';
import { placeFascia } from '../fascia.js';
import { placeRake } from '../framing/rake.js';
import { frameRoof } from '../framing/registry.js';
import type { Kit } from '../kit.js';
import { placeSurfaces, stripsOf } from '../surfaces.js';
import type { Profile } from './contract.js';
import { gable } from './gable.js';
import { hip } from './hip.js';
import type { LayInput, Laying, RoofShape } from './lay.js';
import { shed } from './shed.js';

const SHAPES: { readonly [K in RoofKind]: RoofShape<K> } = { gable, shed, hip };

export const profileOf = (roof: CoverRoof, kit: Kit): Profile | undefined =>
  (SHAPES[roof.kind] as RoofShape<RoofKind>).profile(roof, kit);

/** Frames in a row along the ridge, each with its strip of every slope. */
function layRow({ roof, profile, layers, fascia, number, kit }: LayInput): Laying | undefined {
  const strips = stripsOf(profile, roof);
  const bare = frameRoof({ roof, choice: roof.framing, profile, number, strips, kit });
  const framed = bare && placeRake(roof, profile, bare, number, kit);
  if (framed === undefined) return undefined;
  const planes = placeSurfaces(roof, profile, framed, layers, fascia);
  return { framed, planes, trim: fascia && placeFascia(roof, profile, framed, fascia, number) };
}

/** Frames, planes and trim of a roof; undefined when it cannot be framed, with the reasons in `kit.issues`. */
export function layRoof(input: LayInput): Laying | undefined {
  const { lay } = SHAPES[input.roof.kind] as RoofShape<RoofKind>;
  return lay ? lay(input) : layRow(input);
}
