import type { CoverRoof, RoofKind } from '../../project/model.js';
import type { Kit } from '../kit.js';
import type { Profile, RoofShape } from './contract.js';
import { gable } from './gable.js';
import { shed } from './shed.js';

const SHAPES: { readonly [K in RoofKind]: RoofShape<K> } = { gable, shed };

export const profileOf = (roof: CoverRoof, kit: Kit): Profile | undefined =>
  (SHAPES[roof.kind] as RoofShape<RoofKind>).profile(roof, kit);
