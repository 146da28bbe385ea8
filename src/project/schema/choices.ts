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

const slabHolds = maybe(
  flag(
    'Whether a rigid slab is poured against it all round at the surface. Counted only where a slab of this project lies there. Left out: no.',
  ),
);

const footing = z
  .discriminatedUnion('kind', [
    part('A round pier.', { kind: kind('round-pier', 'Round pier.'), diameter, bottom, top, slabHolds, ...concrete }),
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
      slabHolds,
      ...concrete,
    }),
    part('A post set in a drilled hole.', {
      kind: kind('embedded-post', 'Post set in the ground.'),
      diameter: given(length('Diameter of the drilled hole.', '16 in', 6, 60)),
      bottom: given(length('Bottom of the hole below the finished ground or slab beside it.', '48 in', 12, 144)),
      under: given(length('Concrete under the foot of the post; 0 in when it stands on the soil.', '8 in', 0, 48)),
      backfill: given(choice('What the hole is filled with round the post.', ['concrete', 'sand', 'soil'], 'concrete')),
      slabHolds,
      ...concrete,
    }),
    part('No footing: the post base stands on the patio slab, where the patio-cover appendix allows it.', {
      kind: kind('slab', 'On the slab.'),
      ...concrete,
    }),
  ])
  .meta({ description: 'A footing that posts name.' });

const anchor = part('One headed anchor bolt cast in the middle of the footing under the post base.', {
  bolt: given(length('Nominal diameter of the bolt: 1/2, 5/8, 3/4, 7/8 or 1 in.', '5/8 in', 0.5, 1)),
  embedment: given(length('From the surface of the concrete to the bearing face of the head.', '8 in', 4, 25)),
  fu: given(stress('Specified tensile strength of the bolt.', '58000 psi', 40000, 150000)),
  fy: given(stress('Specified yield strength of the bolt.', '36000 psi', 30000, 130000)),
});

const divisor = (load: string, usual: number) =>
  maybe(number(`Span divisor for ${load} load: 360 means L/360.`, usual, 120, 1000));

export const choices = part('Materials and sizes the cover names.', {
  standoff: maybe(length('Gap between post end and concrete made by the post base. Left out: 1 in.', '1 in', 0, 6)),
  deflection: part('Deflection limits.', {
    live: divisor('live', 360),
    total: divisor('total', 240),
    drift: maybe(
      number(
        'Divisor of the post height for the sideways movement of the roof in wind, where the posts hold it: 60 means h/60. Left out: 60.',
        60,
        30,
        600,
      ),
    ),
  }).optional(),
  sections: named('Sections by name.', section),
  footings: named('Footings by name.', footing),
  anchors: named('Cast-in anchors of post bases, by the name of the footing they stand in.', anchor).optional(),
  joints: list('What serves each joint, with its published allowable loads.', jointProduct).max(200).optional(),
  connections: list('Joints proved by calculation instead of a published table.', connection).max(200).optional(),
});

export type WrittenChoices = z.output<typeof choices>;
