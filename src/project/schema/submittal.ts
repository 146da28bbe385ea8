/** What is handed in beside the drawings, and what came back: the office's own list, its comments, the association's packet. */
import type { z } from 'zod';
import { given, list, maybe, part } from './leaf.js';
import { date, text } from './plain.js';

const officeChecklist = part(
  'What your office asks for where it differs from the list the program starts with: the union of what many offices ask.',
  {
    office: maybe(text('The office and its list, as printed.', 'county patio cover handout')),
    remove: list(
      'Rows this office does not ask for, by their names in `eavewright review`.',
      given(text('Name of a row.', 'lot-trees')),
    ).optional(),
    add: list(
      'Rows this office asks for beside the others.',
      part('A row.', {
        item: given(text('What it asks.', 'photographs of the rear of the house')),
        words: maybe(text('Words that a sheet must carry for it; left out when no sheet answers it.', 'smoke alarm')),
        answer: maybe(text('How it is answered where no sheet does.', 'four photographs, handed in as photos.pdf')),
      }),
    ).optional(),
  },
);

const comment = part('A comment of a reviewer and your answer to it.', {
  number: given(text('Number of the comment in the reviewer’s letter.', '3')),
  from: maybe(text('Who wrote it.', 'plan review')),
  date: maybe(date('Date of the letter.')),
  text: given(text('The comment, in the reviewer’s words.', 'Show the uplift connector at each truss.')),
  answer: given(text('What you did about it.', 'Tie J1 added at every bearing; see the joint schedule.', true)),
  sheet: maybe(text('Sheet that shows it now.', 'S-601')),
  place: maybe(text('Where on that sheet: a view, a mark, a row.', 'joint schedule, row J1')),
});

const association = part('What a homeowners’ association wants to see beside the drawings.', {
  name: given(text('Name of the association and its committee.', 'Saltbush Ranch architectural committee')),
  finishes: list(
    'Materials and colors, part by part.',
    part('A finish.', {
      part: given(text('Part of the cover.', 'roof')),
      material: given(text('What it is made of.', 'asphalt shingles, laminated')),
      color: given(
        text(
          'Its color, as the maker or the paint card names it, and whether it matches the house.',
          'weathered gray, as on the house',
        ),
      ),
      sample: maybe(text('Sample handed in with it.', 'one shingle')),
    }),
  ).optional(),
  schedule: list(
    'When the work is done, in order.',
    part('A step.', {
      step: given(text('What is done.', 'Footings dug and poured')),
      when: given(text('When, and how long it takes.', 'first week of May, 3 days')),
      note: maybe(text('Noise, deliveries, access.', 'one concrete truck')),
    }),
  ).optional(),
  storage: maybe(
    text('Where material and debris are kept meanwhile.', 'in the driveway, covered; a container for a week'),
  ),
  drainage: maybe(
    text(
      'Where the roof’s water goes, if more is to be said than the lot plan shows.',
      'downspout to the existing swale',
    ),
  ),
  neighbors: list(
    'Neighbors whose signatures are asked for.',
    part('A neighbor.', {
      name: given(text('Name or lot.', 'lot 17, north')),
      side: maybe(text('Which lot line it lies beyond.', 'north line')),
    }),
  ).optional(),
});

export const submittal = part('What is handed in beside the drawings, and what came back.', {
  officeChecklist: officeChecklist.optional(),
  comments: list('Comments of reviewers, answered one by one.', comment).max(500).optional(),
  association: association.optional(),
});

export type WrittenSubmittal = z.output<typeof submittal>;
