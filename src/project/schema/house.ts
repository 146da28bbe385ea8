import type { z } from 'zod';
import type { HouseRoofKind } from '../model.js';
import { header } from './attachment.js';
import { given, list, maybe, named, part } from './leaf.js';
import { place } from './lot.js';
import { office } from './office.js';
import { houseRoofFacts } from './overlay.js';
import { choice, flag, number, size, text } from './plain.js';
import { force, length, lineLoad, percent, pitch } from './quantities.js';
import { equipment, rooms } from './rooms.js';
import { COVERINGS } from './words.js';

const STEEPEST = Math.atan(24 / 12);

const build = part('How a wall is built.', {
  studs: given(size('Stud size.', '2x4')),
  spacing: given(length('Stud spacing, centre to centre.', '16 in', 6, 48)),
  cladding: given(
    choice('Outside finish.', [
      'lap-siding',
      'stucco',
      'panel-siding',
      'brick-veneer',
      'stone-veneer',
      'concrete-masonry',
    ]),
  ),
  claddingThickness: given(length('Thickness of the finish outside the sheathing.', '7/8 in', 0, 12)),
  sheathing: given(text('Wall sheathing in words.', '7/16 in panel', true)),
  verified: given(office(flag('Whether someone opened the wall or saw its framing, and where.'))),
});

const sideLoad = part(
  'Side load the cover may hand to this wall, its bracing and the floor or roof behind it, as the building department or an engineer states it (allowable-stress forces). Asked for where the cover leans on the wall. Left out: not known.',
  {
    along: given(office(force('Along the wall, from everything fastened to it.', '900 lb', 1, 50000))),
    square: given(
      office(
        lineLoad('Square to the wall, in or out, per foot of what is fastened to it.', '120 plf', 1 / 12, 5000 / 12),
      ),
    ),
  },
);

const wall = part('One wall; it ends where the next begins.', {
  name: given(text('Name, by which openings and ledgers refer to it.', 'rear')),
  start: given(place),
  plate: given(length('Top of the wall plate above the finished floor.', '8 ft 1 in', 72, 600)),
  build: given(text('Name of its entry under builds.', 'stucco')),
  sideLoad: sideLoad.optional(),
});

const opening = part('A window, door or vent.', {
  mark: given(text('Mark on the sheets.', 'W1')),
  kind: given(choice('What it is.', ['window', 'door', 'sliding-door', 'french-door', 'vent', 'garage-door'])),
  wall: given(text('Name of its wall.', 'rear')),
  offset: given(length('From the left end of the wall, as seen from inside, to the near jamb.', '7 ft', 0, 2400)),
  width: given(length('Width of the opening.', '5 ft', 2, 480)),
  sill: given(length('Sill above finished floor; 0 in for a door.', '2 ft 8 in', -48, 600)),
  head: given(length('Head above finished floor.', '6 ft 8 in', 1, 600)),
  room: given(text('Room behind it.', 'bedroom 2', true)),
  escape: given(flag('Whether it is an emergency escape opening (every bedroom has one).')),
  glass: maybe(percent('Part of the opening that is glass.', '85 %', 0, 1)),
  opens: maybe(percent('Part of the opening that opens to the outdoors.', '45 %', 0, 1)),
  swing: maybe(choice('How a door moves; out swings over the landing.', ['in', 'out', 'slides'])),
  header: header.optional(),
});

const ROOFS = ['gable', 'hip', 'shed'] as const satisfies readonly HouseRoofKind[];

const roof = part('A roof of the house over a rectangle of its walls.', {
  kind: given(choice('Shape.', ROOFS)),
  min: given(place),
  max: given(place),
  ridge: maybe(choice('Axis the ridge runs along (gable, hip).', ['x', 'y'])),
  fall: maybe(choice('Way a shed roof falls.', ['+x', '-x', '+y', '-y'], '+y')),
  pitch: given(pitch('Pitch.', '5/12', 0, STEEPEST)),
  plate: given(length('Top of the wall plate it stands on, above finished floor.', '8 ft 1 in', 72, 600)),
  overhang: given(length('Level distance from wall to eave.', '18 in', 0, 72)),
  rake: given(length('Overhang at the gable ends.', '12 in', 0, 72)),
  covering: given(choice('Roof covering.', COVERINGS)),
  ...houseRoofFacts,
});

export const house = part(
  'The house as it stands. x runs along the patio wall, y out from it, heights from the finished floor.',
  {
    stories: given(number('Storeys above grade.', 1, 1, 3, true)),
    builds: named('Ways walls are built, by name.', build),
    walls: list('Outside walls in order, clockwise as seen from above.', wall).min(3).max(200),
    openings: list('Openings in those walls.', opening).max(500),
    roofs: list('Roofs of the house.', roof).min(1).max(50),
    rooms: rooms.optional(),
    equipment: equipment.optional(),
    built: maybe(number('Year the house was built.', 1994, 1600, 2200, true)),
    footing: part('The footing under the house wall, as dug up or drawn. Left out: to be verified on site.', {
      bottom: given(office(length('Underside below the finished grade at the house.', '30 in', 4, 180))),
      projection: given(office(length('How far it stands out past the face of the wall.', '4 in', 0, 48))),
    }).optional(),
  },
);

export type WrittenHouse = z.output<typeof house>;
