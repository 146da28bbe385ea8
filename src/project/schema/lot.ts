import type { z } from 'zod';
import { given, list, maybe, part } from './leaf.js';
import { choice, flag, number, point, text } from './plain.js';
import { bearing, length } from './quantities.js';
import { SITE_ITEMS, UTILITIES, YARDS } from './words.js';

const FAR = 120_000;
/** A point in house axes. */
export const place = point(
  'Point [x, y]: x along the house wall to the right as seen looking out, y out from the wall.',
  length('House axis.', '22 ft', -FAR, FAR),
);
const outline = (what: string) => list(`Corners of ${what}, in order.`, given(place)).min(3).max(200);
const course = (what: string) => given(number(what, 0, 0, 199, true));

export const lot = part('The lot: its boundary as the plat or survey states it, and what stands on it.', {
  courses: list(
    'Boundary courses in order round the lot from the point of beginning, as on the plat.',
    part('One course.', {
      bearing: given(bearing('Quadrant bearing of the course, in the direction you go.', 'N 89°12\'30" E')),
      distance: given(length('Length of the course.', '84.00 ft', 1, FAR)),
      yard: given(choice('Which yard lies along this line.', YARDS)),
      name: given(text('Name of the line on the sheets.', 'south line')),
      elevation: maybe(
        length('Ground at the corner where this course begins, above the datum.', '99.4 ft', -FAR, 100 * FAR),
      ),
    }),
  )
    .min(3)
    .max(200),
  street: part('The street the lot fronts on.', {
    name: given(text('Name of the street.', 'Saltbush Lane')),
    course: course('Number of the course along it, counting from 0.'),
    rightOfWay: maybe(length('Width of the right of way.', '50 ft', 12, 12000)),
    toPavement: maybe(length('From the lot line to the edge of the pavement or curb.', '10 ft', 0, 6000)),
  }),
  origin: part('Where the house origin (x = 0, y = 0) lies from the point of beginning. Scale it from the survey.', {
    east: given(length('East of the point of beginning; negative is west.', '42 ft', -FAR, FAR)),
    north: given(length('North of the point of beginning; negative is south.', '66 ft', -FAR, FAR)),
  }),
  outward: given(bearing('Direction square out from the house wall toward the patio.', 'S 01°30\'00" E')),
  easements: list(
    'Easements, from the plat or title report; an empty list when there are none.',
    part('A strip along a lot line.', {
      name: given(text('What it is for.', 'utility easement')),
      course: course('Number of the course it runs along, counting from 0.'),
      width: given(length('Width inside the lot.', '7 ft 6 in', 1, 2400)),
    }),
  ).max(100),
  buildings: list(
    'Other buildings on the lot; an empty list when there are none.',
    part('A building.', {
      name: given(text('What it is.', 'shed')),
      outline: outline('the building'),
      counts: given(flag('Whether it counts in lot coverage.')),
    }),
  ).max(100),
  items: list(
    'Wells, tanks, services, trees and the like; an empty list when there are none.',
    part('One item.', {
      kind: given(choice('What it is.', SITE_ITEMS)),
      at: given(place),
      label: given(text('How the sheets name it.', 'electric meter')),
      outline: outline('the ground it takes up, e.g. a leach field').optional(),
    }),
  ).max(500),
  paving: list(
    'Driveway and other paving.',
    part('A paved area.', { name: given(text('What it is.', 'driveway')), outline: outline('the paving') }),
  )
    .max(100)
    .optional(),
  utilities: list(
    'Buried and overhead lines as far as they are known; the locating service marks them before digging.',
    part('One line.', {
      kind: given(choice('What it carries.', UTILITIES)),
      points: list('Points along it, in order.', given(place)).min(2).max(100),
      overhead: given(flag('Whether it runs overhead.')),
      label: given(text('How the sheets name it.', 'water service')),
    }),
  )
    .max(100)
    .optional(),
  drainage: list(
    'Ways the ground sheds water.',
    part('An arrow from high to low.', {
      from: given(place),
      to: given(place),
      label: given(text('Words beside the arrow.', 'swale, 2 %', true)),
    }),
  )
    .max(100)
    .optional(),
  datum: maybe(text('What corner elevations are measured from.', 'top of curb at the driveway = 100.00 ft')),
});

export type WrittenLot = z.output<typeof lot>;
export { outline };
