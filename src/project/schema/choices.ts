import { z } from 'zod';
import { GLULAM, LVL } from '../../catalog/index.js';
import { connection } from './connections.js';
import { jointProduct } from './joints.js';
import { given, list, maybe, named, part } from './leaf.js';
import { choice, flag, number, size, text } from './plain.js';
import { plyFastening } from './ply-fastening.js';
import { length, stress } from './quantities.js';
import { SPECIES_NAMES } from './words.js';

const kind = <const K extends string>(name: K, words: string) => z.literal(name).meta({ description: words });

const treatment = given(
  choice('Preservative treatment: weather reaches above-ground, soil or a wet slab ground-contact.', [
    'none',
    'above-ground',
    'ground-contact',
  ]),
);
const service = given(
  choice('Moisture in service: "wet" when rain reaches it often (over 19 %, glulam 16 %).', ['dry', 'wet']),
);
const incised = given(
  flag('Whether it is incised for treatment; western species mostly are when treated. Strength drops.'),
);
const wood = {
  species: given(choice('Species or species group on the grade stamp.', SPECIES_NAMES, 'Douglas Fir-Larch')),
  grade: given(text('Grade on the stamp.', 'No. 2')),
  treatment,
  incised,
  service,
};

const section = z
  .discriminatedUnion('kind', [
    part('One sawn piece.', { kind: kind('solid', 'Solid sawn.'), size: given(size('Nominal size.', '6x6')), ...wood }),
    part('Sawn plies fastened side by side.', {
      kind: kind('built-up', 'Built up of plies.'),
      plies: given(number('Number of plies.', 3, 2, 5, true)),
      ply: given(size('Nominal size of a ply.', '2x12')),
      spacers: given(number('Plywood strips between plies; they add weight and width only.', 2, 0, 4, true)),
      spacerThickness: given(length('Thickness of each strip; 0 in without strips.', '1/2 in', 0, 2)),
      fastening: given(text('How the plies are fastened to each other.', 'two rows 16d at 12 in each face')),
      plyFastening: plyFastening.optional(),
      ...wood,
    }),
    part('Glued-laminated timber.', {
      kind: kind('glulam', 'Glulam.'),
      combination: given(
        choice(
          'Stress combination.',
          GLULAM.map((g) => g.grade),
        ),
      ),
      width: given(length('Finished width.', '5-1/2 in', 2, 14)),
      depth: given(length('Finished depth.', '12 in', 4.5, 48)),
      treatment,
      service,
    }),
    part('Laminated veneer lumber.', {
      kind: kind('lvl', 'LVL.'),
      grade: given(
        choice(
          'Grade.',
          LVL.map((g) => g.grade),
        ),
      ),
      plies: given(number('Number of plies.', 2, 1, 5, true)),
      thickness: given(length('Thickness of a ply.', '1-3/4 in', 1, 7)),
      depth: given(length('Depth.', '11-7/8 in', 4.5, 24)),
      fastening: given(
        text('How the plies are fastened to each other; empty for one ply.', 'two rows bolts at 12 in', true),
      ),
      plyFastening: plyFastening.optional(),
      treatment,
      service,
    }),
  ])
  .meta({ description: 'A section that beams, posts, rafters or ledgers name.' });

const bottom = given(length('Underside below the finished ground or slab beside it.', '42 in', 6, 144));
const top = given(length('How far the pier stands above that surface; 0 in is flush.', '0 in', 0, 36));
const concrete = {
  fc: given(stress('Specified concrete strength.', '2500 psi', 2500, 10000)),
  steel: given(text('Reinforcement as the sheets print it; "none" for plain concrete.', '(3) #4 each way in pad')),
};
const diameter = given(length('Diameter of the pier.', '16 in', 6, 60));
const width = given(length('Side of the square pad.', '30 in', 8, 120));
const thickness = given(length('Thickness of the pad.', '12 in', 6, 48));

const footing = z
  .discriminatedUnion('kind', [
    part('A round pier.', { kind: kind('round-pier', 'Round pier.'), diameter, bottom, top, ...concrete }),
    part('A square pad without pier.', {
      kind: kind('square-pad', 'Square pad.'),
      width,
      thickness,
      bottom,
      ...concrete,
    }),
    part('A round pier on a square pad.', {
      kind: kind('pier-on-pad', 'Pier on a pad.'),
      diameter,
      width,
      thickness,
      bottom,
      top,
      ...concrete,
    }),
  ])
  .meta({ description: 'A footing that posts name.' });

const divisor = (load: string, usual: number) =>
  maybe(number(`Span divisor for ${load} load: 360 means L/360.`, usual, 120, 1000));

export const choices = part('Materials and sizes the cover names.', {
  standoff: maybe(length('Gap between post end and concrete made by the post base. Left out: 1 in.', '1 in', 0, 6)),
  deflection: part('Deflection limits.', { live: divisor('live', 360), total: divisor('total', 240) }).optional(),
  sections: named('Sections by name.', section),
  footings: named('Footings by name.', footing),
  joints: list('What serves each joint, with its published allowable loads.', jointProduct).max(200).optional(),
  connections: list('Joints proved by calculation instead of a published table.', connection).max(200).optional(),
});

export type WrittenChoices = z.output<typeof choices>;
