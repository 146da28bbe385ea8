import type { Stage } from './contract.js';
import { NO_PAPERS, NOT_AS_DRAWN, PAPERS } from './parts.js';

/** The last look. */
export const final: Stage = {
  title: 'Final',
  looks: 'inspector',
  applies: () => true,
  body({ project, structure, len }) {
    const { headroom } = project.basis.zoning;
    return {
      when: 'Everything done, all trades’ finals passed.',
      tables: [
        {
          title: 'As approved',
          heads: ['What', 'Approved', 'As built'],
          rows: [
            ['Height, highest point above the floor', len(Math.max(...structure.roofs.map((r) => r.highestPoint))), ''],
            ['Clear height under beams, at least', len(headroom), ''],
            ['Posts', String(structure.members.filter((m) => m.role === 'post' && m.state === 'new').length), ''],
          ],
        },
      ],
      atHand: [...PAPERS, 'Passed cards of all stages before', 'Truss drawings', 'Pictures of what is covered'],
      items: [
        { id: 'trades', text: 'Electrical and other finals passed.' },
        { id: 'flashing', text: 'Roof and flashing finished, gutters lead water away.' },
        { id: 'grade', text: 'Ground falls 6 in in 10 ft away from the house; soil 6 in below wood.', measure: true },
        { id: 'height', text: 'Headroom and height as approved.', measure: true },
        { id: 'escape', text: 'Bedroom windows under the roof still open to the yard.' },
        { id: 'smoke', text: 'Smoke and CO alarms in the house where the office asks for them with any permit.' },
        { id: 'pins', text: 'Property pins still to be seen; holes filled, site clean.' },
      ],
      failures: [
        { text: 'A trade’s final still open.', source: 'Maple Grove MN; Rowlett TX' },
        { text: 'Nobody of age there when the inspector must come inside.', source: 'Maple Grove MN' },
        NO_PAPERS,
        NOT_AS_DRAWN,
      ],
      cautions: [
        'The permit is not finished before this card is passed: unfinished permits lapse and stay on the house’s record.',
      ],
    };
  },
};
