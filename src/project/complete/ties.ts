import type { HouseTie } from '../model.js';
import type { WrittenCover } from '../schema/cover.js';
import type { Notebook } from './notebook.js';

type WrittenTie = NonNullable<WrittenCover['houseTies']>[number];

function tie(w: WrittenTie, path: string, wallNames: readonly string[], note: Notebook): HouseTie {
  if (w.level === undefined) {
    note.assumptions.push({
      path: `${path}/level`,
      text: `${w.mark} fastened to the house at the level of the lowest bearing of ${w.roof}`,
      why: 'No level is given.',
    });
  }
  return {
    mark: w.mark,
    roof: w.roof,
    wall: wallNames.indexOf(w.wall),
    from: w.from,
    to: w.to,
    level: w.level,
    nailer: w.nailer ?? '',
    fastener: {
      ...w.fastener,
      rows: note.default(
        w.fastener.rows,
        `${path}/fastener/rows`,
        1,
        `One fastener at each place of ${w.mark}`,
        'Not given; the fewest.',
      ),
    },
    into: w.into,
    gap: note.default(
      w.gap,
      `${path}/gap`,
      0.5,
      `1/2" of wall sheathing between ${w.mark} and the framing of the house`,
      'Not given; the usual wall sheathing, cladding cut away.',
    ),
    G: note.default(
      w.G,
      `${path}/G`,
      0.42,
      `Framing of the house behind ${w.mark}: specific gravity 0.42 (Spruce-Pine-Fir)`,
      'Not given; the lightest wood usual in house walls.',
    ),
    verified: note.office(w.verified, `${path}/verified`, {
      value: false,
      shown: 'not verified',
      question: `Has the framing of the house behind ${w.mark} been seen?`,
    }),
    path,
  };
}

export const completeTies = (w: WrittenCover, wallNames: readonly string[], note: Notebook): readonly HouseTie[] =>
  (w.houseTies ?? []).map((t, i) => tie(t, `/cover/houseTies/${i}`, wallNames, note));
