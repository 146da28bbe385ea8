import { LAYOUT_CAUTIONS } from '../layout/index.js';
import type { Stage } from './contract.js';

/** Buried lines, before anything is driven or dug. */
export const locate: Stage = {
  title: 'Utility locate',
  looks: 'owner',
  applies: ({ structure }) => structure.footings.length > 0 || structure.slabs.some((s) => s.state === 'new'),
  body({ project, layout, structure, len }) {
    const deepest = Math.max(0, ...structure.footings.map((f) => f.surface - f.bottom));
    const centers = layout.points.filter((p) => p.role === 'footing');
    const out = centers.map((p) => p.out);
    const along = centers.map((p) => p.along);
    const items = project.lot.items.map((i) => i.label || i.kind.replaceAll('-', ' '));
    return {
      when: 'Two to three business days before digging, and again when the marks lapse.',
      tables: [
        {
          title: 'What to tell the locating service',
          heads: ['They ask', 'You say'],
          rows: [
            ['Address', project.job.address],
            [
              'Where',
              `rear yard, ${len(Math.min(...out))} to ${len(Math.max(...out))} out from the house, ${len(Math.max(...along) - Math.min(...along))} along it`,
            ],
            ['Work', `${structure.footings.length} holes, the deepest ${len(deepest)}`],
            ['Marked white', 'the outline of the work and every footing center'],
            ...(items.length > 0 ? [['Known on this lot', items.join(', ')]] : []),
          ],
        },
      ],
      atHand: ['Ticket number of the locating service', 'Lot plan with known lines'],
      items: [
        { id: 'white', text: 'Area and centers marked white.' },
        { id: 'called', text: 'Locating service called; ticket number and day written here.', measure: true },
        { id: 'answered', text: 'Every utility of the ticket has marked or answered “clear”.' },
        { id: 'private', text: 'Private lines found: septic, own propane and water, irrigation, low-voltage.' },
        { id: 'photo', text: 'Marks photographed before they are dug away.' },
      ],
      failures: [
        {
          text: 'Marks have lapsed, or the work moved outside the white line.',
          source: 'locating services’ owner pages',
        },
      ],
      cautions: LAYOUT_CAUTIONS,
    };
  },
};
