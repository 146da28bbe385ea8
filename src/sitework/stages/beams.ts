import type { Member } from '../../structure/model.js';
import { liftOf } from '../sequence/lifting.js';
import type { Stage } from './contract.js';
import { jointTable, NOT_AS_DRAWN } from './parts.js';

/** Equal pieces in one row. */
function pieces(members: readonly Member[], len: (v: number) => string): string[][] {
  const groups = new Map<string, Member[]>();
  for (const m of members) {
    const key = `${m.section.label}|${m.length.toFixed(3)}`;
    groups.set(key, [...(groups.get(key) ?? []), m]);
  }
  return [...groups.values()].map((all) => {
    const m = all[0]!;
    const lift = liftOf(m);
    const marks = [...new Set(all.map((o) => o.mark))].join(', ');
    return [marks, m.section.label, String(all.length), len(m.length), `${Math.round(lift.pounds)} lb`, lift.words];
  });
}

/** Beams, ledgers and cross members, with their connectors, before they are covered. */
export const beams: Stage = {
  title: 'Beams, ledgers and post caps',
  looks: 'inspector',
  applies: ({ structure }) => structure.members.some((m) => ['beam', 'ledger', 'ridge', 'strut'].includes(m.role)),
  body(ctx) {
    const { structure, len } = ctx;
    const own = structure.members.filter((m) => ['beam', 'ledger', 'ridge', 'strut', 'brace'].includes(m.role));
    const house = structure.joints.some((j) =>
      ['ledger-to-house', 'beam-to-wall', 'beam-to-wall-post'].includes(j.kind),
    );
    return {
      when: 'Beams up and fastened, nothing covered.',
      tables: [
        {
          title: 'Pieces',
          heads: ['Pieces', 'Section', 'Count', 'Length', 'Weight each', 'Lift'],
          rows: pieces(own, len),
        },
        ...jointTable(ctx, 'beams', 'Connectors'),
      ],
      atHand: [
        'Approved plans',
        'Maker’s sheets of caps and hangers',
        ...(house ? ['Pictures of the opened wall before it is closed'] : []),
      ],
      items: [
        { id: 'bearing', text: 'Beams bear on posts, not on bolts; full bearing, splices over posts only, crown up.' },
        { id: 'caps', text: 'Post caps as chosen, every hole filled with the fastener the maker names.' },
        ...(house
          ? [
              {
                id: 'ledger',
                text: 'Fastened into framing as drawn: size, rows and spacing counted; never into siding, veneer or fascia; flashing behind the siding.',
                measure: true as const,
              },
            ]
          : []),
        { id: 'level', text: 'Level along the beam and between beams, within 1/8 in.', measure: true },
        {
          id: 'span',
          text: 'Distance between beam lines measured at both ends, for the trusses or rafters.',
          measure: true,
        },
        { id: 'plies', text: 'Plies of built-up beams nailed as drawn.' },
        { id: 'braced', text: 'Knee braces or temporary braces both ways before the roof is set.' },
      ],
      failures: [
        {
          text: 'Connectors with empty holes or the wrong nails; connector missing where load lifts.',
          source: 'framing and wind checklists',
        },
        {
          text: 'Ledger on brick veneer, on a cantilever or on the fascia.',
          source: 'code forum; wood association deck guide; inspectors’ pages',
        },
        { text: 'Notches and holes in beams that are not drawn.', source: 'Johnston County NC' },
        NOT_AS_DRAWN,
      ],
      cautions: [
        'Nobody stands under a beam that is being lifted. Two lift points, ropes to steady it, posts braced first.',
        'Ladders: on firm level ground, tied, one rung in four out; never carry a beam up one.',
        'Before the wall of the house is cut: power to it off, wires and pipes found; nothing of the house’s framing cut without the answer of a qualified person.',
      ],
    };
  },
};
