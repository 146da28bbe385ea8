/** How the cover meets the house: beam ends, ledger fasteners, headers over openings. */
import { z } from 'zod';
import { given, list, maybe, part } from './leaf.js';
import { office } from './office.js';
import { choice, flag, number, size, text } from './plain.js';
import { length, lineLoad, stress } from './quantities.js';
import { SPECIES_NAMES } from './words.js';

const wall = given(text('Name of the house wall.', 'rear'));
const kind = <const K extends string>(name: K, words: string) => z.literal(name).meta({ description: words });

const foot = z
  .discriminatedUnion('kind', [
    part('A new footing under the wall.', {
      kind: kind('footing', 'New footing.'),
      footing: given(text('Name of the footing under choices.', 'pier')),
      footingMark: given(text('Mark on the sheets, used once.', 'F5')),
    }),
    part('The foundation of the house.', {
      kind: kind('foundation', 'Existing foundation.'),
      top: given(length('Top of its concrete above finished floor.', '-1 1/2 in', -96, 24)),
      fc: maybe(
        stress(
          'Strength of its concrete, by plans, core or age as the office accepts. Left out: not known, so no anchor in it is checked.',
          '2500 psi',
          2000,
          10000,
        ),
      ),
      verified: given(office(flag('Whether it was seen there and can take the load on the sheets.'))),
    }),
  ])
  .meta({ description: 'What the post in the wall stands on.' });

const end = z
  .discriminatedUnion('kind', [
    part('The beam runs into the wall over a new post inside it.', {
      kind: kind('post-in-wall', 'On a post in the wall.'),
      wall,
      mark: given(text('Mark of the new post, used once.', 'P5')),
      section: given(text('Name of its section under choices; its width lies along the beam.', 'wall-post')),
      foot,
      verified: given(
        office(
          flag('Whether the wall was opened there: room for the post, no pipe, duct, wire or hold-down in the way.'),
        ),
      ),
    }),
    part('The beam ends at the wall and hangs on it by a connector, named under choices.joints.', {
      kind: kind('on-wall', 'Fixed to the wall.'),
      wall,
      into: given(
        choice('What the connector is fastened to, seen and not guessed.', [
          'post',
          'studs',
          'blocking',
          'band',
          'single-stud',
          'fascia',
          'cantilever',
          'unknown',
        ]),
      ),
      species: maybe(
        choice(
          'Species on the stamp of that framing. Left out: not known, so no connector in it is checked.',
          SPECIES_NAMES,
        ),
      ),
      verified: given(office(flag('Whether that framing was seen there and reaches down to the foundation.'))),
    }),
  ])
  .meta({ description: 'How the house holds this end of the beam.' });

export const beamEnds = part('Ends of the beam that the house holds. Left out: it stands on its posts alone.', {
  start: end.optional(),
  end: end.optional(),
});

export const ledgerFastening = part('Fasteners from the ledger into the house. Left out: they are not checked.', {
  kind: given(choice('Lag screw, wood screw or through bolt.', ['lag', 'screw', 'bolt'])),
  diameter: given(length('Diameter of the shank.', '1/2 in', 0.1, 1.25)),
  length: given(length('Length under the head.', '6 in', 1, 16)),
  washer: given(
    length('Outside diameter of the washer under head or nut; of the head, for a screw.', '1 3/8 in', 0.1, 6),
  ),
  spacing: given(length('Distance between places along the ledger.', '16 in', 2, 48)),
  end: maybe(
    length(
      'Distance from each end of the ledger to its first place; the others stand evenly between. Left out: all places centered.',
      '3 1/2 in',
      0.5,
      24,
    ),
  ),
  rows: list(
    'Depth of each fastener of one place below the top of the ledger, the uppermost first.',
    given(length('Below the top of the ledger.', '2 in', 0.5, 24)),
  )
    .min(1)
    .max(4),
  into: given(
    choice(
      'What they go into: studs, one at each place, or the floor band or solid blocking with its grain along the wall.',
      ['studs', 'band'],
    ),
  ),
  through: given(length('Wall sheathing left between ledger and framing; 0 in where it was cut out.', '7/16 in', 0, 3)),
  standoff: maybe(length('Spacers that hold the ledger off the sheathing. Left out: none.', '1/2 in', 0, 3)),
  framing: part('The wood they go into, as seen.', {
    species: given(choice('Species on its grade stamp; the lightest likely when none is seen.', SPECIES_NAMES)),
    depth: given(length('Its depth behind the sheathing, measured into the house.', '1 1/2 in', 0.75, 12)),
    bottom: maybe(length('Lower edge of the band above finished floor; left out for studs.', '9 ft 2 in', -24, 600)),
    top: maybe(length('Upper edge of the band above finished floor.', '9 ft 11 1/4 in', -24, 600)),
  }),
  basis: maybe(text('What it was proportioned by, in words. The program makes its own calculation.', 'own choice')),
  verified: given(
    office(flag('Whether that wood was seen along the whole ledger: no veneer, no cantilever, no fascia.')),
  ),
});

export const header = part('The header over the opening, asked for where the cover loads it. Left out: not known.', {
  verified: given(
    office(flag('Whether someone qualified found header and jack studs able to take the added load on the sheets.')),
  ),
  made: part('What it is made of, to have it checked.', {
    plies: given(number('Number of plies.', 2, 1, 4, true)),
    size: given(size('Nominal size of a ply.', '2x10')),
    species: given(choice('Species on its stamp.', SPECIES_NAMES)),
    grade: given(text('Grade on its stamp.', 'No. 2')),
    jacks: given(number('Jack studs under each end.', 1, 1, 4, true)),
    existing: given(lineLoad('Load it carries already, per foot.', '300 plf', 0, 4000 / 12)),
  }).optional(),
});

export type WrittenEnd = z.output<typeof end>;
export type WrittenFastening = z.output<typeof ledgerFastening>;
export type WrittenHeader = z.output<typeof header>;
