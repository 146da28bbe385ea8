import type { Footing } from '../../structure/model.js';
import type { Stage, StageContext } from './contract.js';
import { NOT_AS_DRAWN, NOT_READY, PAPERS } from './parts.js';

/** Bar sizes, laps and clearances as the drawings say; the card repeats them so that nothing is overlooked. */
function rows({ structure, len }: StageContext): string[][] {
  const groups = new Map<string, Footing[]>();
  for (const f of structure.footings) {
    const key = `${f.choice}|${f.size}|${(f.surface - f.bottom).toFixed(3)}`;
    groups.set(key, [...(groups.get(key) ?? []), f]);
  }
  return [...groups.values()].map((all) => {
    const f = all[0]!;
    const pier = f.pierDiameter > 0 && f.pierDiameter !== f.size ? `, pier ${len(f.pierDiameter)} dia.` : '';
    return [
      all.map((g) => g.mark).join(', '),
      f.onSlab
        ? `slab ${f.onSlab.slab}`
        : `${len(f.size)} ${f.round ? 'dia.' : 'square'}${f.padThickness > 0 ? ` × ${len(f.padThickness)}` : ''}${pier}`,
      len(f.surface - f.bottom),
      f.steel === '' ? 'none' : f.steel,
      `${f.fc} psi`,
      `${(f.concrete / 1728).toFixed(1)} cu ft each`,
    ];
  });
}

/** Holes before concrete. */
export const footing: Stage = {
  title: 'Footings, before the pour',
  looks: 'inspector',
  applies: ({ structure }) => structure.footings.some((f) => !f.onSlab),
  body(ctx) {
    const { project, layout, structure, len } = ctx;
    const frost = project.basis.frost;
    const embedded = structure.footings.some((f) => f.embedded);
    const steel = structure.footings.some((f) => f.steel !== '');
    return {
      when: 'Holes open, steel in, forms set, nothing poured.',
      tables: [
        { title: 'Footings', heads: ['Mark', 'Size', 'Depth', 'Steel', 'Concrete', 'Volume'], rows: rows(ctx) },
        {
          title: 'Levels from the benchmark (finished floor)',
          heads: ['Footing', 'Top of concrete', 'Bottom', 'Measured top'],
          rows: layout.piers.map((p) => {
            const read = ctx.built?.points.find((q) => q.name === p.footing)?.height;
            return [p.footing, len(p.top), len(p.bottom), read ? len(read.level) : ''];
          }),
        },
      ],
      atHand: [
        ...PAPERS,
        'Stake-out sheet',
        ...(steel ? ['Bar supports and tie wire'] : []),
        'Concrete order, with a spare bag for each pour',
      ],
      items: [
        {
          id: 'depth',
          text: `Depth below grade as in the table; frost depth here ${frost.state === 'unknown' ? 'not answered yet' : len(frost.value)}.`,
          measure: true,
        },
        { id: 'size', text: 'Width or diameter as in the table, all the way down; bottom flat.', measure: true },
        { id: 'place', text: 'Centers under the strings; running dimensions and diagonals checked again.' },
        { id: 'clean', text: 'Bottom clean and firm on undisturbed soil: no roots, no water, no loose soil.' },
        ...(steel
          ? [
              {
                id: 'steel',
                text: 'Bars by size and count, lapped and tied, off the soil on supports: 3 in to soil (recalled; the office’s figure decides).',
              },
            ]
          : []),
        { id: 'anchors', text: 'Anchors or post bases ready with a template; each within 1/4 in of its place.' },
        ...(embedded
          ? [
              {
                id: 'posts',
                text: 'Posts to be set in the ground: treated for ground contact, braced plumb both ways.',
              },
            ]
          : []),
        { id: 'not-poured', text: 'Nothing poured.' },
      ],
      failures: [
        {
          text: 'Bottom not clean: roots, water, loose soil; hole not deep enough after cleaning.',
          source: 'Accomack VA; city footing handouts',
        },
        { text: 'Steel lying on the soil, laps too short, wrong size.', source: 'Accomack VA' },
        {
          text: 'Poured before the inspection: the concrete comes out again.',
          source: 'Accomack VA; Washtenaw County MI',
        },
        {
          text: 'A note on the drawing overlooked: one owner failed for the letters P.T. in a diagram.',
          source: 'owner’s blog, 2012',
        },
        NOT_AS_DRAWN,
        NOT_READY,
      ],
      cautions: [
        'Dig by hand near utility marks. Deep or caving holes need shoring or sloping; nobody enters them alone. Cover or fence them overnight.',
        'Wet concrete burns skin and eyes: gloves, boots, eye protection; wash at once.',
      ],
    };
  },
};
