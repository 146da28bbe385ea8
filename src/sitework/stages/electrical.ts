import type { Stage } from './contract.js';
import { NOT_READY } from './parts.js';

const CODE = 'as stated on trade pages about the electrical code; the edition in force decides';

/** Wiring in the open, where any is done. */
export const electrical: Stage = {
  title: 'Electrical rough-in',
  looks: 'inspector',
  // A project that lists its devices knows whether any is new; one that does not gets the card.
  applies: ({ project }) => project.cover.electrical?.devices.some((d) => d.state === 'new') ?? true,
  body({ project, len }) {
    const devices = (project.cover.electrical?.devices ?? []).filter((d) => d.state !== 'existing');
    return {
      when: 'Only where electrical work is done: boxes, cable and bonding in, nothing covered. Often a permit of its own.',
      tables:
        devices.length > 0
          ? [
              {
                title: 'Devices',
                heads: ['Mark', 'What', 'State', 'Location', 'Height', 'Circuit', 'Switched by', 'Remark'],
                rows: devices.map((d) => [
                  d.mark,
                  d.kind,
                  d.state,
                  d.place,
                  len(d.height),
                  d.circuit || 'not settled',
                  d.switchedBy || '–',
                  d.note,
                ]),
              },
            ]
          : [],
      atHand: [
        'Electrical permit',
        'Licence of the electrician, or the owner’s declaration where the state lets owners wire',
      ],
      items: [
        { id: 'permit', text: 'Permit pulled; who wires may do so here.' },
        {
          id: 'gfci',
          text: `GFCI for outdoor receptacles; weather-resistant type; in-use covers where wet (${CODE}).`,
        },
        {
          id: 'reach',
          text: `A receptacle within the perimeter of the porch, not over 6 ft 6 in above its floor (${CODE}).`,
        },
        { id: 'light', text: `Switched light at the door to grade (${CODE}).` },
        {
          id: 'boxes',
          text: 'Fan on a box rated for fans; fixtures listed for damp or wet places as the official says.',
        },
        { id: 'open', text: 'Cable stapled, nail plates set, nothing covered.' },
      ],
      failures: [
        { text: 'Covered before it was seen.', source: 'Georgetown TX; Johnston County NC' },
        { text: 'No GFCI, wrong cover, fan on a light box.', source: 'electricians’ forum on outdoor receptacles' },
        NOT_READY,
      ],
      cautions: [
        'Circuits are designed and connected by a licensed electrician unless the state lets the owner do it. Turn off, lock out, and test dead before a box is opened.',
        'No work on or near the service drop or the meter: that is the utility’s.',
      ],
    };
  },
};
