/** A gable that runs on over the house roof, and what is known of that roof, as written. */
import type { HouseRoofFraming, OnHouseRoof } from '../model.js';
import { given, list, part } from './leaf.js';
import { place } from './lot.js';
import { office } from './office.js';
import { choice, flag, size, text } from './plain.js';
import { areaLoad, force, length } from './quantities.js';

const section = (what: string) => given(text(`Name of the section under choices for ${what}.`, 'rafter'));

const joint = (what: string, sample: string) =>
  given(
    text(`Fastening of ${what}, as the statement says. Left out: not stated, and the set stays preliminary.`, sample),
  ).optional();

const statement = part(
  'What a named professional states of the house roof under the overlay, at allowable-stress level on its plan. Left out: the set stays preliminary.',
  {
    down: given(office(areaLoad('Dead load the old roof may be given beside what it carries.', '8 psf', 0, 100))),
    up: given(office(areaLoad('Uplift of the overlay the old roof and its ties may be given.', '20 psf', 0, 200))),
    point: given(
      office(force('Largest load on one old rafter or truss where a valley plate crosses it.', '600 lb', 0, 20000)),
    ),
    side: given(office(flag('Whether the house may take the side load of the cover through the joined sheathing.'))),
    thrust: given(
      office(
        force(
          'Outward push of one fill rafter at its seat that plate, fasteners and old framing may be given. Left out: not stated, and the set stays preliminary.',
          '700 lb',
          0,
          20000,
        ),
      ),
    ).optional(),
    fastening: given(
      text(
        'How valley plates and the end of the ridge are fastened to the old framing, as the statement says.',
        '(2) 1/4 in x 4-1/2 in wood screws into every old rafter crossed',
      ),
    ),
    rafterToPlate: joint('a fill rafter to its valley plate', '(4) 16d common toe-nails'),
    rafterToRidge: joint('a fill rafter to the ridge board', '(4) 16d common toe-nails'),
    ridgeToFrame: joint('the ridge board to the last frame of the cover', '(3) 16d common nails into a block'),
  },
);

export const overlay = part(
  'The roof goes on over a slope of the house roof, framed on top of it, until its ridge dies into that slope. Left out: it stops in front of the house.',
  {
    kind: given(choice('How it meets the house.', ['overlay'])),
    plane: given(text('Slope of the house roof it runs over, as marked on the roof plan.', 'HR1-1')),
    rafter: section('the fill rafters'),
    plate: section('the valley plates, laid flat on the old sheathing'),
    ridge: section('the ridge board'),
    spacing: given(
      length('Spacing of the fill rafters; the first stands this far from the last frame.', '24 in', 8, 24),
    ),
    oldCovering: given(
      choice('Whether the old roof covering comes off under the overlay and under its valleys.', ['removed', 'kept']),
    ),
    statement: statement.optional(),
  },
);

const FRAMING = ['rafters', 'trusses'] as const satisfies readonly HouseRoofFraming['kind'][];
const STANDING = ['chimney', 'vent', 'skylight'] as const satisfies readonly OnHouseRoof['kind'][];

/** Further keys of a house roof, all of which may be left out. */
export const houseRoofFacts = {
  heel: given(
    length('Plumb height of the top of its sheathing above the plate, over the wall line. Left out: 0.', '5 in', 0, 36),
  ).optional(),
  framing: part('What carries it. Left out: nobody has looked.', {
    kind: given(choice('Rafters cut on site, or trusses.', FRAMING)),
    size: given(size('Nominal size of a rafter or top chord.', '2x6')),
    spacing: given(length('Spacing, centre to centre.', '24 in', 8, 48)),
    sheathing: given(text('Sheathing as found.', '1/2 in plywood')),
    dead: given(areaLoad('Dead load it carries today, on the plan.', '12 psf', 2, 60)),
  }).optional(),
  gutter: given(flag('Whether its eave has a gutter.')).optional(),
  standing: list(
    'Chimneys, vents and skylights on it.',
    part('One thing on the roof.', {
      name: given(text('Name on the roof plan.', 'chimney')),
      kind: given(choice('What it is.', STANDING)),
      at: given(place),
      width: given(length('Size along x.', '32 in', 1, 240)),
      depth: given(length('Size along y.', '24 in', 1, 240)),
    }),
  )
    .max(50)
    .optional(),
};
