/** What is written down on the site: readings of what was built, and what inspectors said. */
import { APPROVAL_KINDS, type Instrument, type ReadingKind, STAGE_IDS } from '../model/log.js';
import { given, list, maybe, part } from './leaf.js';
import { choice, date, flag, number, text } from './plain.js';
import { length } from './quantities.js';

const KINDS: readonly ReadingKind[] = ['along', 'out', 'distance', 'level'];
const INSTRUMENTS: readonly Instrument[] = [
  'tape',
  'steel-tape',
  'laser-distance',
  'line-laser',
  'water-level',
  'optical-level',
];

export const asBuilt = part(
  'What was measured of the work as it stands. The names of points are on the stake-out sheet.',
  {
    readings: list(
      'Readings, each as it was taken.',
      part('A reading.', {
        kind: given(
          choice(
            'along: along the house wall. out: square out from the wall. distance: level distance between two points. level: height of one point above another.',
            KINDS,
            'distance',
          ),
        ),
        from: maybe(
          text('Point measured from; left out: home base (along), the wall line (out), the benchmark (level).', 'F1'),
        ),
        to: given(text('Point measured to.', 'F4')),
        value: given(
          length('The reading; a level is negative when its point lies lower.', '21 ft 7 3/8 in', -1200, 6000),
        ),
        date: given(date('Day of the reading.')),
        instrument: given(choice('What it was taken with.', INSTRUMENTS, 'steel-tape')),
        sigma: maybe(
          length('Standard deviation of the reading; left out: the usual one of its instrument.', '1/8 in', 0.001, 12),
        ),
      }),
    ).max(2000),
    slot: maybe(length('How far a post base can be moved on its anchor, from its maker’s sheet.', '1/4 in', 0, 3)),
    cut: list(
      'Posts that are cut already.',
      part('A cut post.', {
        post: given(text('Mark of the post.', 'P1')),
        length: given(length('Its length as cut.', '8 ft 1 1/2 in', 6, 600)),
      }),
    )
      .max(500)
      .optional(),
  },
);

export const inspections = list(
  'What inspectors said, and the stage cards as they were filled in.',
  part('An inspection.', {
    stage: given(choice('Stage of the work.', STAGE_IDS, 'footing')),
    date: given(date('Day of the inspection; empty while it is not called.', true)),
    result: given(choice('What the inspector said.', ['passed', 'partial', 'failed', 'pending'])),
    by: maybe(text('Who inspected, as on the card.', 'inspector 14', true)),
    note: maybe(text('Corrections asked for, remarks.', 'clean the north hole, call again', true)),
    items: list(
      'Lines of the stage card.',
      part('A line.', {
        item: given(text('Its name on the card.', 'depth')),
        done: given(flag('Whether it is ticked.')),
        measured: maybe(text('What was measured.', '5 ft 1 in', true)),
        note: maybe(text('Remark.', 'rock at F3, dug by hand', true)),
        photo: maybe(text('Name of a picture.', 'f3-bottom.jpg', true)),
      }),
    )
      .max(200)
      .optional(),
  }),
).max(500);

/** What an approval may say beside its words: which office it is, and how long it lives without work. */
export const approvalKind = maybe(
  choice('Which office it is; left out: told by its name.', APPROVAL_KINDS, 'building'),
);
export const approvalDays = maybe(
  number('Days without work or a passed inspection after which it lapses; left out: 180.', 180, 1, 3650, true),
);
