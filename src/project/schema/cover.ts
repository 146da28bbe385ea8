import { z } from 'zod';
import type { LateralSystem, ShedFall } from '../model.js';
import { beamEnds, ledgerFastening } from './attachment.js';
import { electrical } from './electrical.js';
import { given, list, maybe, part, value } from './leaf.js';
import { place } from './lot.js';
import { overlay } from './overlay.js';
import { choice, flag, number, size, text } from './plain.js';
import { areaLoad, length, lineLoad, pitch } from './quantities.js';
import { rakeFraming } from './rake.js';
import { houseTie } from './ties.js';
import { deferred, trussPapers } from './truss-papers.js';
import { CEILINGS, COVERINGS, SHEATHING_IDS, SPECIES_NAMES, UNDERLAYMENTS } from './words.js';

const FAR = 2400;
const STEEPEST = Math.PI / 4;
const section = (what: string) => given(text(`Name of the section under choices for ${what}.`, 'beam'));
const mark = (example: string) => given(text('Mark on the sheets, each used once.', example));

const knee = {
  section: section('the brace'),
  run: given(
    length('From the centre of the post to where the centre line of the brace meets the underside.', '30 in', 6, 120),
  ),
  rise: given(
    length('From that underside down to where the centre line meets the centre of the post.', '30 in', 6, 120),
  ),
};
const brace = part('A knee brace from the post up to its own beam.', {
  toward: given(choice('End of the beam it leans toward.', ['start', 'end'])),
  ...knee,
});

const post = part('A post under the beam.', {
  mark: mark('P1'),
  at: given(length('From the start of the beam to the centre of the post.', '6 in', 0, FAR)),
  section: section('the post'),
  footing: given(text('Name of its footing under choices.', 'pier')),
  footingMark: mark('F1'),
  base: maybe(
    choice(
      'How the foot is held. Left out: pinned. "fixed" needs a post base with a published moment, "embedded" a footing that takes the post into the ground.',
      ['pinned', 'fixed', 'embedded'],
    ),
  ),
  braces: list('Knee braces to the beam, at most one toward each end.', brace).max(2).optional(),
});

const strut = part('A cross member between two facing posts of different beams, right under the beams.', {
  mark: mark('ST1'),
  from: given(text('Mark of the post at one end.', 'P1')),
  to: given(text('Mark of the post at the other end.', 'P3')),
  section: section('the cross member'),
  braces: part('A knee brace at each end of it.', knee).optional(),
});

const sharedPost = part('A post that is listed with another beam.', {
  post: given(text('Mark of the post.', 'P3')),
  at: given(length('From the start of this beam to the centre of the post.', '2 3/4 in', 0, FAR)),
});

const beam = part('A beam line on its posts.', {
  mark: mark('B1'),
  from: given(place),
  to: given(place),
  section: section('the beam'),
  posts: list(
    'Posts in order from the start of the beam; with shared ones and ends held by the house at least two.',
    post,
  ).max(500),
  shared: list('Posts of other beams that this one stands on too, such as a corner post.', sharedPost)
    .max(10)
    .optional(),
  ends: beamEnds.optional(),
  splices: list(
    'Where the beam is cut, from its start; each over a post. Left out: one piece.',
    given(length('From the start of the beam.', '10 ft', 0, FAR)),
  )
    .max(100)
    .optional(),
});

const ledger = part('A ledger fastened to the house wall.', {
  mark: mark('L1'),
  wall: given(text('Name of the house wall.', 'rear')),
  from: given(
    length(
      'Start along the house x axis; along the y axis on a wall that faces sideways, such as the side of a wing.',
      '-10 ft',
      -FAR,
      FAR,
    ),
  ),
  to: given(length('End along the same axis, more than the start.', '10 ft', -FAR, FAR)),
  section: section('the ledger'),
  fastening: ledgerFastening.optional(),
});

const spacing = given(length('Spacing, centre to centre.', '24 in', 6, 48));
const wood = part('Lumber assumed for weight and drawing; the truss plant decides.', {
  species: given(choice('Species.', SPECIES_NAMES, 'Douglas Fir-Larch')),
  grade: given(text('Grade.', 'No. 2')),
  treatment: maybe(choice('Preservative treatment.', ['none', 'above-ground', 'ground-contact'])),
  incised: maybe(flag('Whether it is incised for treatment.')),
  service: maybe(choice('Moisture in service.', ['dry', 'wet'])),
});
const truss = {
  spacing,
  chord: given(size('Nominal size of the chords.', '2x4')),
  wood,
  heel: given(
    length(
      'Plumb height at the outer face of the beam, from bearing to the upper edge of the top chord.',
      '5 1/2 in',
      2,
      60,
    ),
  ),
  weight: given(lineLoad('Weight of one truss per foot of its span.', '6 plf', 1 / 12, 50 / 12)),
};

const ties = part(
  'Ties on every pair of rafters below a ridge board. Left out where a ridge beam carries the rafters.',
  {
    section: section('the ties'),
    height: given(length('Underside of the tie above the top of the beams.', '0 in', 0, 120)),
    braced: maybe(
      length(
        'Greatest distance between braces that keep the ties from buckling sideways under uplift, such as a board across their tops. Left out: none.',
        '6 ft',
        12,
        FAR,
      ),
    ),
    ridgeBoard: section('the ridge board'),
    nail: given(text('Nail by its catalogue name.', 'common-16d')),
    nails: given(number('Nails at each end of a tie.', 6, 1, 40, true)),
  },
);

/** Framing by kind. A new kind is a member here, in the model, and in the structure's registry. */
const framing = z
  .discriminatedUnion('kind', [
    part('Trusses with a level bottom chord.', {
      kind: z.literal('common-truss').meta({ description: 'Common truss.' }),
      ...truss,
    }),
    part('Trusses with a raised bottom chord.', {
      kind: z.literal('scissor-truss').meta({ description: 'Scissor truss.' }),
      ...truss,
      bottomPitch: given(pitch('Pitch of the bottom chord, less than the roof.', '2/12', 0, STEEPEST)),
      spreadLimit: maybe(
        length('Most the two bearings may move apart under load. Left out: 1 1/4 in.', '3/4 in', 1 / 8, 3),
      ),
      slides: maybe(
        choice(
          'Bearing whose connector lets the truss slide along itself (slotted holes, nails in the slot); left is the one with the smaller x, or y with the ridge along x. Left out: both are fastened, and the trusses push the beams apart.',
          ['left', 'right'],
          'right',
        ),
      ),
    }),
    part('Rafters.', {
      kind: z.literal('rafter').meta({ description: 'Rafter.' }),
      spacing,
      section: section('the rafters'),
      ties: ties.optional(),
    }),
  ])
  .meta({ description: 'What carries the roof between its bearings.' });

const heel = part('Blocks between the frames over each bearing. Left out: that path is not checked.', {
  nail: given(text('Toe-nail by its catalogue name.', 'common-8d')),
  count: given(number('Toe-nails from each block into the bearing.', 3, 1, 12, true)),
});

const nailing = part('How the sheathing is nailed to the framing. Left out: the nails are not checked.', {
  nail: given(
    text(
      'Nail by its catalogue name; smooth common, box and sinker nails are checked, others need an engineer.',
      'common-8d',
    ),
  ),
  edge: given(length('Spacing along the framing at panel ends and edges.', '6 in', 1, 12)),
  field: given(length('Spacing along the framing elsewhere in the panel.', '12 in', 1, 24)),
  boundary: maybe(length("Spacing along the roof's outer edges. Left out: as at panel edges.", '6 in', 1, 12)),
  blocked: maybe(flag('Whether every panel edge between frames is blocked and nailed. Left out: no.')),
  heel: heel.optional(),
});

const coveringRating = part('Rated uplift of the covering. Left out: the covering is not checked against wind.', {
  uplift: given(
    areaLoad('Allowable uplift of the covering as fastened here, safety factor already taken.', '60 psf', 1, 500),
  ),
  from: given(text('Where it was read.', "maker's published test report")),
});

const finish = part('What lies on the framing.', {
  covering: given(choice('Roof covering.', COVERINGS)),
  underlayment: given(
    choice('Underlayment; empty when the covering brings its own.', ['', ...UNDERLAYMENTS], 'felt-30'),
  ),
  sheathing: given(
    choice(
      'Sheathing panel; empty when there is none (then the roof is no diaphragm).',
      ['', ...SHEATHING_IDS],
      'osb-7/16',
    ),
  ),
  ceiling: given(choice('Ceiling on the underside; empty when open.', ['', ...CEILINGS], '')),
  allowance: given(areaLoad('Other dead load on the slope: lights, fans, later panels.', '1 psf', 0, 20)),
  fascia: given(size('Nominal size of the fascia board; empty when there is none.', '2x6', true)),
  gutter: given(flag('Whether the eave carries a gutter.')),
  nailing: nailing.optional(),
  coveringRating: coveringRating.optional(),
  gableEnd: maybe(
    choice(
      'Whether gable ends are sheathed (closed) or left open below the rake. Left out: closed, which wind along the ridge pushes harder.',
      ['open', 'closed'],
      'closed',
    ),
  ),
});

const pitchLeaf = pitch('Roof pitch.', '4/12', 0, STEEPEST);
/** Keeps the pitch as it was written, for printing. */
const roofPitch = given({
  ...pitchLeaf,
  read: (raw: unknown) => {
    const r = pitchLeaf.read(raw);
    return r.ok ? value({ angle: r.value, text: String(raw).trim() }) : r;
  },
});

const common = {
  mark: mark('R1'),
  from: given(length('First frame centre along the roof.', '0 ft 9 in', -FAR, FAR)),
  to: given(length('Last frame centre along the roof.', '14 ft 9 in', -FAR, FAR)),
  pitch: roofPitch,
  bearing: given(
    length('Top of the bearing (of the high one on a shed roof) above finished floor.', '8 ft 4 in', 72, 288),
  ),
  eave: given(length('Level overhang past the outer face of the beam.', '16 in', 0, 48)),
  rake: given(length('Overhang past the end frames.', '6 in', 0, 48)),
  rakeFraming: rakeFraming.optional(),
  framing,
  finish,
};

const FALLS = ['+y', '+x', '-x'] as const satisfies readonly ShedFall[];

const { from: _from, to: _to, rake: _rake, rakeFraming: _rakeFraming, ...allRound } = common;

const roof = z
  .discriminatedUnion('kind', [
    part('Two slopes from a ridge to two beams.', {
      ...common,
      kind: z.literal('gable').meta({ description: 'Gable roof.' }),
      beams: z
        .array(given(text('Mark of a beam.', 'B1')))
        .length(2)
        .meta({
          description:
            'The two beams it bears on: left of the ridge, then right of it, looking along the positive axis.',
        }),
      ridge: given(choice('Axis the ridge runs along.', ['y', 'x'])),
      ridgeBeam: maybe(text('Mark of the beam under the ridge, for rafters that bear on it.', 'B3')),
      meetsHouse: overlay.optional(),
    }),
    part('One slope from a high bearing to a low beam, falling away from the house.', {
      ...common,
      kind: z.literal('shed').meta({ description: 'Shed roof.' }),
      fall: maybe(
        choice('Direction it falls in: "+y" away from the rear wall, "+x" or "-x" away from a side wall.', FALLS, '+x'),
      ),
      high: part('The high bearing: a ledger or a beam.', {
        ledger: maybe(text('Mark of the ledger.', 'L1')),
        beam: maybe(text('Mark of the beam.', 'B2')),
      }),
      low: given(text('Mark of the low beam.', 'B1')),
      highOverhang: given(length('Level overhang past the high beam; 0 in on a ledger.', '0 in', 0, 48)),
    }),
    part('Four slopes of one pitch over a rectangle of four beams, on a ridge beam; free-standing.', {
      ...allRound,
      kind: z.literal('hip').meta({ description: 'Hip roof.' }),
      beams: z
        .array(given(text('Mark of a beam.', 'B1')))
        .length(2)
        .meta({ description: 'The two beams along the ridge.' }),
      ends: z
        .array(given(text('Mark of a beam.', 'B3')))
        .length(2)
        .meta({ description: 'The two beams square to the ridge.' }),
      ridge: given(choice('Axis the ridge runs along.', ['y', 'x'])),
      ridgeBeam: given(text('Mark of the beam under the ridge, from peak to peak.', 'B5')),
      hip: section('the hip rafters'),
    }),
  ])
  .meta({ description: 'A roof of the cover.' });

const LATERAL = ['house', 'knee-braces', 'fixed-posts', 'none', 'unknown'] as const satisfies readonly LateralSystem[];
const lateral = (axis: string) =>
  given(choice(`What resists side load along ${axis}. "unknown" leaves the set preliminary.`, LATERAL));

export const cover = part('The new cover: beams on posts, ledgers, and the roofs on them.', {
  attachment: given(choice('Whether the cover is held by the house.', ['attached', 'free-standing'])),
  use: given(choice('What it is for.', ['recreation', 'carport', 'storage', 'other'])),
  lateral: part('What resists side load in each direction.', { x: lateral('x'), y: lateral('y') }),
  beams: list('Beam lines.', beam).min(1).max(200),
  struts: list('Cross members between facing posts.', strut).max(100).optional(),
  ledgers: list('Ledgers; an empty list when there are none.', ledger).max(50),
  roofs: list('Roofs.', roof).min(1).max(50),
  trussPapers,
  deferred,
  houseTies: list('Lines of fasteners that hand side load to the house where no ledger does.', houseTie)
    .max(50)
    .optional(),
  electrical: electrical.optional(),
});

export type WrittenCover = z.output<typeof cover>;
