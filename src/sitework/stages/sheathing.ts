import { NAILS } from '../../catalog/index.js';
import type { Stage } from './contract.js';
import { NOT_AS_DRAWN, PAPERS } from './parts.js';

const name = (id: string): string => NAILS.find((n) => n.id === id)?.name ?? id;

/** Sheathing and its nails, before they disappear under paper. */
export const sheathing: Stage = {
  title: 'Sheathing and nailing',
  looks: 'inspector',
  applies: ({ structure }) => structure.surfaces.some((s) => s.sheathed),
  body({ project, structure, len }) {
    const roofs = project.cover.roofs.filter((r) => r.finish.sheathing !== '');
    const area = structure.surfaces.filter((s) => s.sheathed);
    return {
      when: 'All panels nailed, no underlayment.',
      tables: [
        {
          title: 'Panels and nails',
          heads: ['Roof', 'Panel', 'Nail', 'Edges', 'Field', 'Boundary', 'Blocked', 'Heel toe-nails a bay'],
          rows: roofs.map((r) => {
            const n = r.finish.nailing;
            return [
              r.mark,
              r.finish.sheathing,
              n ? name(n.nail) : 'not said',
              n ? `${len(n.edge)} o.c.` : '–',
              n ? `${len(n.field)} o.c.` : '–',
              n ? `${len(n.boundary ?? n.edge)} o.c.` : '–',
              n?.blocked ? 'yes' : 'no',
              n?.heel ? `${n.heel.count} ${name(n.heel.nail)}` : '–',
            ];
          }),
        },
      ],
      atHand: [...PAPERS, 'Panel stamp with its span rating, left readable'],
      items: [
        {
          id: 'panel',
          text: 'Panel and span rating as drawn, strength axis across the framing, joints staggered, 1/8 in gaps (common practice).',
        },
        { id: 'edges', text: 'Nails at panel edges and boundary as in the table.', measure: true },
        { id: 'field', text: 'Nails in the field as in the table.', measure: true },
        { id: 'heads', text: 'Heads flush: overdriven ones and misses (seen from below) replaced.' },
        {
          id: 'heel',
          text: 'Blocking at the bearings with its toe-nails; clips or blocking at free edges where drawn.',
        },
        ...(area.some((s) => s.thickness > 0)
          ? [
              {
                id: 'ends',
                text: 'End frames and ledgers nailed through the sheathing: that is how side load gets out of the roof.',
              },
            ]
          : []),
      ],
      failures: [
        {
          text: 'Nails missed or overdriven; 6 in at edges and 6 to 12 in field looked for.',
          source: 'framing and wind checklists',
        },
        { text: 'Covered before it was seen.', source: 'Johnston County NC' },
        NOT_AS_DRAWN,
      ],
      cautions: [
        'Fall protection from the first panel on: harness or scaffold with rails. Panels sail in the wind: carry them edge to it, never in gusts.',
        'Nail guns: sequential trigger, eye protection, nobody below.',
      ],
    };
  },
};
