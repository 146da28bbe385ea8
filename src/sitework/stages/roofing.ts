import { formatPitch } from '../../base/quantity/index.js';
import { ROOF_COVERINGS } from '../../catalog/index.js';
import type { Stage } from './contract.js';
import { NOT_AS_DRAWN } from './parts.js';

/** Flashing and covering, in the order that sheds water. */
export const roofing: Stage = {
  title: 'Roofing and flashing',
  looks: 'owner',
  applies: ({ project }) => project.cover.roofs.length > 0,
  body({ project, structure }) {
    const attached = structure.roofs.some((r) => r.attached);
    const valleys =
      (structure.overlays ?? []).length > 0 ||
      structure.roofs.some((r) => r.neighbours?.some((n) => n.how === 'valley'));
    const gutters = project.cover.roofs.some((r) => r.finish.gutter);
    return {
      when: 'Sheathing passed. Keep the order: each layer laps over the one below it.',
      tables: [
        {
          title: 'Covering',
          heads: ['Roof', 'Covering', 'Slope', 'Least slope', 'Underlayment'],
          rows: project.cover.roofs.map((r) => {
            const c = ROOF_COVERINGS.find((k) => k.id === r.finish.covering);
            const slope = Math.tan(r.pitch) * 12;
            const twice = c?.underlayment.kind === 'double-below' && slope < c.underlayment.slope - 1e-6;
            return [
              r.mark,
              c?.name ?? r.finish.covering,
              formatPitch(r.pitch),
              c ? `${c.minSlope}/12` : '–',
              `${r.finish.underlayment}${twice ? ', two layers below 4/12' : ''}`,
            ];
          }),
        },
        {
          title: 'Order',
          heads: ['Step', 'What'],
          rows: [
            'Drip edge along the eaves: 1/4 in below the sheathing, 2 in up the roof, 2 in laps, fasteners within 12 in.',
            'Underlayment from the eave up, over the eave’s drip edge.',
            'Drip edge along the rakes, over the underlayment.',
            ...(attached
              ? [
                  'At the house: flashing behind the siding or stucco, never over it; flashing 4 in up the wall and 4 in out, a piece a course beside shingles, the maker’s sidewall flashing in one run beside metal panels.',
                  'Kick-out at the low end of a wall, so that water does not run into the siding.',
                ]
              : []),
            ...(valleys
              ? [
                  'Valleys before the slopes: open metal lining at least 24 in wide, or 36 in roll under a closed one (R905.2.8.2 as quoted).',
                ]
              : []),
            'Covering from the eave up, fastened as its maker’s test says; starter, ridge.',
            ...(gutters ? ['Gutters and downspouts, water led away from the footings.'] : []),
          ].map((t, i) => [String(i + 1), t]),
        },
      ],
      atHand: [
        'Maker’s sheet of the covering, with its slope and fastening',
        ...(attached ? ['Pictures of each flashing layer before the next'] : []),
      ],
      items: [
        { id: 'drip', text: 'Drip edge under the paper at eaves, over it at rakes.' },
        { id: 'underlayment', text: 'Underlayment laps and layers as in the table.' },
        ...(attached
          ? [
              { id: 'wall', text: 'Flashing at the house in order, pictures taken before it is closed.' },
              { id: 'kickout', text: 'Kick-out in place at each low end.' },
            ]
          : []),
        ...(valleys
          ? [{ id: 'valley', text: 'Valley lining full width, laps downhill, no nails in its middle.' }]
          : []),
        { id: 'fasteners', text: 'Fasteners of the covering by kind, count and place.' },
        { id: 'water', text: 'A hose at the top for ten minutes, dry below.' },
      ],
      failures: [
        {
          text: 'Kick-out missing: the part most often cited.',
          source: 'inspectors’ association, flashing part 4; trade magazine 2008',
        },
        { text: 'Flashing over the siding instead of behind it.', source: 'inspectors’ forum; forensic page' },
        { text: 'Shingles under 2:12, one layer of paper under 4:12.', source: 'Hopkins MN; R905.2 as quoted' },
        NOT_AS_DRAWN,
      ],
      cautions: [
        'Fall protection, roof dry, no work in wind or near storms. Ladders tied and three rungs above the eave.',
        'Metal and ladders stay ten feet and more off the service drop; the utility’s rule decides.',
      ],
    };
  },
};
