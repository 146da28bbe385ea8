/** The offices whose word the work needs, in the order to ask them, and what each wants to see. */
import type { ApprovalKind, Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';

export interface OfficeKind {
  readonly title: string;
  /** Why it comes where it comes. */
  readonly order: string;
  readonly needs: readonly string[];
  /** Whether this project needs it; `ask` where the model cannot know. */
  applies(project: Project, structure: Structure): 'yes' | 'no' | 'ask';
  /** Words of the log's own name for it. */
  readonly words: RegExp;
  readonly source: string;
}

const WASTE = new Set(['septic-tank', 'leach-field', 'well']);

export const OFFICES: Readonly<Record<ApprovalKind, OfficeKind>> = {
  zoning: {
    title: 'Zoning or planning',
    order: 'First, before money is spent on drawings: a setback or an easement can end the project.',
    needs: [
      'Lot plan with distances to every line, easements and existing structures',
      'Height, roof area and lot coverage, existing and proposed',
      'Which edge is measured: post, wall or overhang',
    ],
    applies: () => 'yes',
    words: /zoning|planning|land use/i,
    source: 'Santa Ana CA and Diamond Bar CA: zoning question before plans; St. George UT 10-5-5',
  },
  association: {
    title: 'Homeowners’ association',
    order: 'Before the permit: some offices hold the permit until its letter is there.',
    needs: [
      'Lot plan with distances; elevations of at least two sides with heights',
      'Materials and colors with samples; pictures of site and house',
      'Neighbors’ names, drainage, schedule and storage place where asked',
    ],
    applies: (project) => (project.submittal?.association ? 'yes' : 'ask'),
    words: /association|committee|\bhoa\b|architectural review/i,
    source: 'Douglas County CO waits for the letter, Shady Shores TX refuses without; six associations’ packets',
  },
  health: {
    title: 'Health department (septic, well)',
    order: 'Before the permit where a tank, a field or a well is on the lot: a slab poured over a tank is denied.',
    needs: ['Lot plan with tank, field, reserve area and well, and distances from footings to each'],
    applies: (project) => (project.lot.items.some((i) => WASTE.has(i.kind)) ? 'yes' : 'no'),
    words: /health|septic|sanita/i,
    source: 'San Joaquin County CA site plan list; owner’s thread on a denied permit, 2024',
  },
  building: {
    title: 'Building permit',
    order:
      'With zoning, association and health answered; work starts when it is posted and the stamped set is on site.',
    needs: [
      'The drawing set and calculations, in the office’s paper or file format',
      'Truss engineering and layout, or the office’s word that they may follow',
      'Engineer’s seal where the office asks for one; owner-builder declaration',
    ],
    applies: () => 'yes',
    words: /building|permit/i,
    source: 'forty-four offices’ submittal lists',
  },
  electrical: {
    title: 'Electrical permit',
    order: 'With the building permit, where anything is wired.',
    needs: ['Devices, circuits and protection; who does the work'],
    applies: ({ cover }) =>
      cover.electrical === undefined ? 'ask' : cover.electrical.devices.some((d) => d.state === 'new') ? 'yes' : 'no',
    words: /electric/i,
    source: 'Georgetown TX; Melissa TX',
  },
};
