import type { Office, TrussPaper } from '../model.js';
import type { WrittenCover } from '../schema/cover.js';
import type { Notebook } from './notebook.js';

type Written = NonNullable<WrittenCover['trussPapers']>[number];

export const completePaper = (w: Written, i: number): TrussPaper => ({
  ...w,
  bottomPitch: w.bottomPitch ?? 0,
  sealedBy: w.sealedBy ?? '',
  deflection: w.deflection ?? '',
  chordForce: w.chordForce ?? 0,
  reactions: w.reactions.map((r) => ({ ...r, side: r.side ?? 0 })),
  path: `/cover/trussPapers/${i}`,
});

export const completeDeferred = (
  w: NonNullable<WrittenCover['deferred']>,
  note: Notebook,
): Office<readonly 'trusses'[]> =>
  note.office(w, '/cover/deferred', {
    value: [],
    shown: 'nothing may be deferred',
    question: 'May the sealed truss designs be handed in later, as a deferred submittal?',
  });
