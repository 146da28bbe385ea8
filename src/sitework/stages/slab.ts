import type { Stage } from './contract.js';
import { NOT_AS_DRAWN, PAPERS } from './parts.js';

/** A new slab, before the pour. */
export const slab: Stage = {
  title: 'Slab and what lies under it',
  looks: 'inspector',
  applies: ({ structure }) => structure.slabs.some((s) => s.state === 'new'),
  body({ structure, len }) {
    const slabs = structure.slabs.filter((s) => s.state === 'new');
    const held = structure.footings.some((f) => f.slabHolds);
    return {
      when: 'Forms, base and any conduit in place, nothing poured.',
      tables: [
        {
          title: 'Slabs',
          heads: ['Mark', 'Thickness', 'Top at the house line', 'Fall'],
          rows: slabs.map((s) => [
            s.mark,
            len(s.thickness),
            len(s.top.z0),
            `${(-s.top.gy * 12).toFixed(2)} in/ft away from the house`,
          ]),
        },
      ],
      atHand: [...PAPERS],
      items: [
        { id: 'base', text: 'Fill compacted, base even, forms at level and staked.' },
        { id: 'thickness', text: 'Thickness as in the table at the forms and in the middle.', measure: true },
        { id: 'fall', text: 'Fall away from the house by a level on a straight board.', measure: true },
        {
          id: 'joints',
          text: held
            ? 'Slab poured tight against piers and posts where it holds them, as drawn.'
            : 'Joint between slab and piers; control joints marked.',
        },
        { id: 'conduit', text: 'Conduit in the open trench seen before it is covered.' },
        { id: 'mesh', text: 'Mesh or bars on supports where drawn.' },
      ],
      failures: [
        {
          text: 'Fill not compacted, thickness short, joints missing, mesh on the ground.',
          source: 'Accomack VA; Bartow FL',
        },
        { text: 'Conduit covered before it was seen.', source: 'Georgetown TX' },
        NOT_AS_DRAWN,
      ],
      cautions: [
        'Wet concrete burns skin and eyes: gloves, boots, eye protection. Cutting joints raises silica dust: cut wet, wear a respirator.',
      ],
    };
  },
};
