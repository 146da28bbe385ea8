/** What lies behind the wall the cover stands at: rooms by use and floor, vents and meters on the wall. */
import type { EquipmentKind, RoomUse } from '../model.js';
import { given, list, part } from './leaf.js';
import { outline } from './lot.js';
import { office } from './office.js';
import { choice, text } from './plain.js';
import { length } from './quantities.js';

const USES = ['living', 'sleeping', 'eating', 'cooking', 'service'] as const satisfies readonly RoomUse[];
const EQUIPMENT = [
  'flue',
  'dryer-vent',
  'exhaust-vent',
  'plumbing-vent',
  'air-intake',
  'gas-meter',
  'gas-regulator',
  'electric-meter',
  'air-conditioner',
  'hose-bibb',
] as const satisfies readonly EquipmentKind[];

export const rooms = list(
  'Rooms behind the cover, for their light, air and escape. An opening belongs to the room whose name it bears.',
  part('One room.', {
    name: given(text('Name, as its openings give it under "room".', 'bedroom 2')),
    use: given(choice('What it is for; service covers halls, baths, closets, laundries, garages.', USES, 'sleeping')),
    outline: outline('its clear floor, in house axes'),
  }),
).max(100);

export const equipment = list(
  'Flues, vents, meters, intakes and the like on the walls beside the cover.',
  part('One thing on a wall.', {
    label: given(text('How the sheets name it.', 'dryer vent')),
    kind: given(choice('What it is.', EQUIPMENT, 'dryer-vent')),
    wall: given(text('Name of its wall.', 'rear')),
    offset: given(length('From the left end of the wall, as seen from inside, to its center.', '30 ft', 0, 2400)),
    height: given(length('Center above the finished floor.', '1 ft 6 in', -48, 600)),
    clearance: given(
      office(
        length('Least distance new work must keep from it, by its maker, the utility or the code.', '3 ft', 0, 240),
      ),
    ),
  }),
).max(100);
