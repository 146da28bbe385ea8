/** Ties of a roof to the house, as written. */
import type { TieBacking } from '../model.js';
import { given, maybe, part } from './leaf.js';
import { office } from './office.js';
import { choice, flag, number, text } from './plain.js';
import { length } from './quantities.js';

const FAR = 2400;
const INTO = ['studs', 'band', 'plate', 'fascia', 'cantilevered-floor'] as const satisfies readonly TieBacking[];

export const houseTie = part(
  'A line of fasteners between the edge of a roof at the house and the wall. It hands side load to the house; weight stays on the posts.',
  {
    mark: given(text('Mark on the sheets, used once.', 'H1')),
    roof: given(text('Mark of the roof it holds.', 'R1')),
    wall: given(text('Name of the house wall.', 'rear')),
    from: given(length('First fastener, along the house x axis.', '-9 ft', -FAR, FAR)),
    to: given(length('Last fastener.', '9 ft', -FAR, FAR)),
    level: maybe(length("Height above finished floor. Left out: at the roof's lowest bearing.", '8 ft 6 in', 24, 480)),
    nailer: maybe(
      text(
        'Name of the section under choices of a board flat against the wall under the edge of the sheathing. Left out: the fasteners go through the end frame of the roof.',
        'nailer',
      ),
    ),
    fastener: part('Fastener.', {
      kind: given(choice('Lag screw or cut-thread wood screw.', ['lag', 'screw'])),
      diameter: given(length('Nominal diameter.', '0.242 in', 0.1, 1)),
      length: given(length('Length under the head.', '4 1/2 in', 1.5, 16)),
      spacing: given(length('Centre to centre along the line; into studs, their spacing.', '16 in', 1, 48)),
      rows: maybe(number('Fasteners over each other at each place. Left out: 1.', 2, 1, 4, true)),
    }),
    into: given(
      choice('What they go into behind the wall sheathing. A fascia or a cantilevered floor may not be used.', INTO),
    ),
    gap: maybe(
      length(
        'From the back of the board or frame to the framing of the house: wall sheathing and packing, cladding cut away. Left out: 1/2 in.',
        '1/2 in',
        0,
        6,
      ),
    ),
    G: maybe(number("Specific gravity of the house's framing. Left out: 0.42.", 0.5, 0.31, 0.67)),
    verified: given(office(flag('Whether the framing it goes into was seen, and where.'))),
  },
);
