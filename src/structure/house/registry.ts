import type { House, HouseRoof, HouseRoofKind } from '../../project/model.js';
import type { HousePlane } from '../model.js';
import type { HouseRoofShape } from './contract.js';
import { gable } from './gable.js';
import { hip } from './hip.js';
import { shed } from './shed.js';

const SHAPES: { readonly [K in HouseRoofKind]: HouseRoofShape<K> } = { gable, hip, shed };

/** Planes lie at the top of the sheathing: `heel` above the plate over the wall line. */
const planesOf = (r: HouseRoof) =>
  (SHAPES[r.kind] as HouseRoofShape<HouseRoofKind>).planes({ ...r, plate: r.plate + (r.heel ?? 0) });

/** Planes `HR1-1`, `HR1-2` … of every house roof. */
export const placeHouseRoofs = (house: House): HousePlane[] =>
  house.roofs.flatMap((r, i) =>
    planesOf(r).map((outline, k): HousePlane => ({ id: `HR${i + 1}-${k + 1}`, outline, state: 'existing' })),
  );
