/** Connections proved by calculation instead of a published table. */
import { z } from 'zod';
import { BOLTS, LAG_SCREWS, NAILS, WOOD_SCREWS } from '../../catalog/index.js';
import { served } from './joints.js';
import { given, list, maybe, part } from './leaf.js';
import { choice, number, text } from './plain.js';
import { length, stress } from './quantities.js';
import { CONNECTION_WAYS, FASTENER_AXES } from './words.js';

const kind = <const K extends string>(name: K, words: string) => z.literal(name).meta({ description: words });
const ids = (rows: readonly { readonly id: string }[]): readonly string[] => rows.map((r) => r.id);

const takes = list(
  'Directions this part alone holds: down, up, lengthwise (level, along the part carried) or crosswise (level, square to it). For a brace: push and pull, along the brace; the others are then what is left.',
  given(choice('A direction.', CONNECTION_WAYS, 'up')),
)
  .min(1)
  .max(6);

const pattern = (member: string) =>
  part(`Fasteners in the ${member}, laid out along and across its grain.`, {
    alongGrain: given(number('How many one behind the other along the grain.', 2, 1, 12, true)),
    acrossGrain: given(number('How many side by side across the grain.', 1, 1, 12, true)),
    spacingAlong: maybe(length('Centre to centre along the grain; needed for more than one.', '4 in', 0.5, 48)),
    spacingAcross: maybe(length('Centre to centre across the grain; needed for more than one.', '2-1/2 in', 0.5, 24)),
    end: given(length('From the nearest fastener’s centre to the end of the member.', '4 in', 0.25, 480)),
    edge: given(
      length('From the nearest fastener’s centre to the edge that faces the other member.', '2-1/2 in', 0.25, 48),
    ),
  });

const plateEnd = given(length('From the outermost fastener’s centre to the end of the piece.', '3-1/2 in', 0.25, 24));

const plates = z
  .discriminatedUnion('material', [
    part('Wood pieces whose grain runs from one member to the other.', {
      material: kind('wood', 'Wood.'),
      count: given(number('One side or both.', 2, 1, 2, true)),
      end: plateEnd,
      section: given(text('Name of a solid section.', 'plate')),
    }),
    part('Steel strips or plates, their length running from one member to the other.', {
      material: kind('steel', 'Steel.'),
      count: given(number('One side or both.', 2, 1, 2, true)),
      end: plateEnd,
      thickness: given(length('Thickness of the bare steel.', '0.12 in', 0.03, 0.5)),
      width: given(length('Width.', '3 in', 0.75, 16)),
      Fy: given(stress('Yield strength stated for the steel.', '33000 psi', 30000, 60000)),
      Fu: given(stress('Tensile strength stated for the steel.', '45000 psi', 42000, 80000)),
    }),
  ])
  .meta({ description: 'Pieces across the joint. Left out: the members lap and are fastened to each other.' });

const left = (member: string) =>
  maybe(length(`Wood left of the ${member} where it is cut for the joint. Left out: all of it.`, '3-1/2 in', 0.75, 24));

const dowel = {
  takes,
  axis: given(
    choice(
      'How the fasteners point: lengthwise or crosswise to the part carried, or plumb.',
      FASTENER_AXES,
      'crosswise',
    ),
  ),
  plates: plates.optional(),
  upper: pattern('part that is carried'),
  lower: pattern('part that carries'),
  upperThickness: left('part that is carried'),
  lowerThickness: left('part that carries'),
};
const driven = (rows: readonly { readonly id: string }[]) => ({
  size: given(choice('Size.', ids(rows))),
  length: given(length('Length.', '3 in', 1, 16)),
  head: maybe(
    choice('Part that holds the heads where there is no plate. Left out: the one carried.', ['upper', 'lower']),
  ),
  ...dowel,
});

const connectionPart = z
  .discriminatedUnion('kind', [
    part('Bolts through both members, or through each of them and the plates.', {
      kind: kind('bolts', 'Bolts.'),
      size: given(choice('Size.', ids(BOLTS))),
      washer: maybe(
        length(
          'Outer diameter of round washers under head and nut. Left out: the bolts hold nothing along themselves.',
          '2 in',
          0.5,
          6,
        ),
      ),
      ...dowel,
    }),
    part('Lag screws.', { kind: kind('lag-screws', 'Lag screws.'), ...driven(LAG_SCREWS) }),
    part('Cut-thread wood screws.', { kind: kind('wood-screws', 'Wood screws.'), ...driven(WOOD_SCREWS) }),
    part('Nails through a face or a plate.', { kind: kind('nails', 'Nails.'), ...driven(NAILS) }),
    part('Nails driven slantwise through the part carried into the one that carries.', {
      kind: kind('toe-nails', 'Toe-nails.'),
      takes,
      size: given(choice('Size.', ids(NAILS))),
      count: given(number('Nails at each joint.', 3, 1, 8, true)),
    }),
    part('Wood pressing squarely on wood: a notch, a block, a shoulder.', {
      kind: kind('bearing', 'Bearing.'),
      takes,
      length: given(length('Length of the face.', '3-1/2 in', 0.5, 48)),
      width: given(length('Width of the face.', '1-1/2 in', 0.5, 48)),
    }),
  ])
  .meta({ description: 'One means of holding. A direction is held by one part only: different fasteners do not add.' });

export const connection = part(
  'A connection proved by calculation (NDS chapters 11 and 12) where no published table serves.',
  {
    serves: list('Joint marks or kinds it serves. A row naming a mark outranks one naming its kind.', given(served))
      .min(1)
      .max(100),
    made: given(
      choice('Moisture of the wood when the connection is made: "dry" is 19 % or less, freshly treated is "wet".', [
        'dry',
        'wet',
      ]),
    ),
    parts: list('What holds, part by part.', connectionPart).min(1).max(4),
  },
);

export type WrittenConnection = z.output<typeof connection>;
