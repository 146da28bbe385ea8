/** What the truss plant's sealed sheets say, copied by whoever holds them, and whether the office lets them come later. */
import { given, type Leaf, list, maybe, part, refuse, value, wrongType } from './leaf.js';
import { office } from './office.js';
import { choice, number, text } from './plain.js';
import { force, length, pitch } from './quantities.js';

const reaction = part(
  'One row of the reaction table for one bearing. Sheets without load cases give one row for the most down and one for the most up.',
  {
    bearing: given(
      choice('Left is the bearing with the smaller x (or, with the ridge along x, the smaller y).', ['left', 'right']),
    ),
    kind: given(
      choice('What the row is: the greatest total gravity reaction, or the greatest uplift.', ['gravity', 'uplift']),
    ),
    amount: given(force('Its size, without a sign.', '640 lb', 0, 100000)),
    side: maybe(force('Level reaction pushing outward in the same row. Left out: none printed.', '0 lb', 0, 20000)),
    duration: given(number('Load duration factor CD of the row: 1.25 roof live, 1.15 snow, 1.6 wind.', 1.25, 0.9, 1.6)),
  },
);

export const trussPaper = part('Sealed design of one truss mark.', {
  mark: given(text('Mark of the truss in this set.', 'T1')),
  from: given(text('Who made the sheet, its number and date.', 'truss plant, sheet A1, 2026-04-02')),
  sealedBy: maybe(
    text('Engineer who sealed it and the date of the seal. Left out: not sealed.', 'J. Marl, PE, 2026-04-03'),
  ),
  span: given(length('Span over the outer faces of the bearings, as printed.', '18 ft 5 1/2 in', 24, 1200)),
  pitch: given(pitch('Pitch of the top chord.', '4/12', 0, Math.PI / 4)),
  bottomPitch: maybe(pitch('Pitch of the bottom chord. Left out: level.', '2/12', 0, Math.PI / 4)),
  heel: given(length('Heel height.', '5 1/2 in', 2, 60)),
  overhang: given(length('Level overhang past the bearing.', '16 in', 0, 60)),
  spacing: given(length('Spacing.', '24 in', 6, 60)),
  bearingWidth: given(length('Least bearing width the sheet asks for.', '1 1/2 in', 0.5, 24)),
  reactions: list('Reaction table.', reaction).min(2).max(40),
  bracing: given(text('Permanent lateral bracing the sheet asks for, in its words.', 'none required')),
  chordForce: maybe(
    force(
      'Side load along the top chord (roof bending, pull or push; some sheets call it a drag load) that the sheet is designed for. Left out: the sheet says nothing of it.',
      '250 lb',
      0,
      20000,
    ),
  ),
  deflection: maybe(text('Calculated deflection as printed.', 'L/999 live, 0.31 in horizontal')),
  govern: part('Why the papers’ reactions are set aside. Left out: the larger of ours and theirs governs.', {
    set: given(choice('Whose reactions the parts below are checked with.', ['ours'])),
    why: given(text('Reason, printed on the sheets.', 'sheet is for a heavier covering, since changed')),
  }).optional(),
});

/** Items a building office may let be handed in later. */
const DEFERRABLE = ['trusses'] as const;
const deferredList: Leaf<readonly 'trusses'[]> = {
  example: '["trusses"]',
  json: {
    type: 'array',
    description: 'Items whose papers may be handed in later.',
    items: { type: 'string', enum: [...DEFERRABLE] },
    examples: [['trusses']],
  },
  read: (raw) => {
    if (!Array.isArray(raw)) return wrongType(raw, 'a list', '["trusses"]');
    const odd = raw.find((x) => x !== 'trusses');
    return odd === undefined
      ? value(raw.length > 0 ? (['trusses'] as const) : [])
      : refuse('not-one-of', `${JSON.stringify(odd)?.slice(0, 40)} cannot be deferred here`, '["trusses"] or []');
  },
};

export const trussPapers = list('Sealed truss designs, once they are there.', trussPaper).max(50).optional();
export const deferred = maybe(office(deferredList));
