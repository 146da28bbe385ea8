/** IRC R303: daylight and natural ventilation of habitable rooms. Areas in any one unit; shares are of one. */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../say.js';

/** Glass of at least 8 percent of the floor, openings to the outdoors of at least 4 percent (R303.1). */
export const GLASS_SHARE = 0.08;
export const OPEN_SHARE = 0.04;
/** Part of a cover's walls that must be open, or screened only, for a room to be aired into it (R303.1, exception 3). */
export const OPEN_WALLS = 0.4;
/** A roofed porch may stand before required glass where its longer side is this open and its ceiling this high, in (R303.9). */
export const PORCH_OPEN_SIDE = 0.65;
export const PORCH_CEILING = 84;

/** Least glass of a habitable room, in the unit of its floor area. IRC 2018 R303.1. */
export function requiredGlass(floor: number, rec?: Recorder): number {
  const glass = GLASS_SHARE * floor;
  rec?.step({
    symbol: 'glass required',
    meaning: 'least glazed area of a habitable room',
    formula: '8 % of the floor',
    substituted: `0.08 · ${say(floor)}`,
    value: glass,
    unit: 'sq ft',
    clause: 'IRC 2018 R303.1',
  });
  return glass;
}

/** Least area of a habitable room that opens to the outdoors, in the unit of its floor area. IRC 2018 R303.1. */
export function requiredOpening(floor: number, rec?: Recorder): number {
  const open = OPEN_SHARE * floor;
  rec?.step({
    symbol: 'opening required',
    meaning: 'least openable area of a habitable room',
    formula: '4 % of the floor',
    substituted: `0.04 · ${say(floor)}`,
    value: open,
    unit: 'sq ft',
    clause: 'IRC 2018 R303.1',
  });
  return open;
}
