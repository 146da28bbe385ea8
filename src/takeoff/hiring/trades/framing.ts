import type { ScopeInput, ScopeLine, Trade } from '../model.js';
import { alike, bought, inch, len, list } from '../words.js';

function lines(input: ScopeInput): Omit<ScopeLine, 'id'>[] {
  const { project, structure } = input;
  const out: Omit<ScopeLine, 'id'>[] = [];
  const put = (text: string, quantity = ''): void => void out.push({ text, quantity });
  for (const g of alike(structure, 'post'))
    put(`Posts ${g.marks}: ${g.label}, cut to the lengths of the cut list, plumb, on their bases.`, `${g.count} each`);
  for (const g of alike(structure, 'beam', 'strut', 'brace'))
    put(`Beams and braces ${g.marks}: ${g.label}.`, `${g.count} each`);
  for (const spec of project.cover.ledgers)
    put(
      `Ledger ${spec.mark} on the house framing, cladding removed and flashed as detailed; ${spec.fastening ? `fasteners at ${inch(spec.fastening.spacing)}` : 'fasteners as the plans say'}.`,
      len(spec.to - spec.from),
    );
  const trusses = structure.members.filter((m) => m.truss);
  if (trusses.length > 0)
    put(
      `Set and brace trusses ${list(trusses.map((m) => m.mark))} by their sealed sheets and the bracing guide that comes with them. Cut none. No load on trusses that are not braced.`,
      `${trusses.length} each`,
    );
  for (const g of alike(structure, 'rafter', 'hip', 'ridge', 'tie'))
    put(`Framing ${g.marks}: ${g.label}, cuts and seats as drawn.`, `${g.count} each`);
  for (const g of alike(structure, 'outlooker', 'barge', 'fascia'))
    put(`Edges ${g.marks}: ${g.label}.`, `${g.count} each`);
  put(
    'Every joint of the joint schedule with the product or fasteners named there, each hole filled as its maker asks.',
    `${structure.joints.length} joints`,
  );
  const panels = input.takeoff.panels;
  for (const p of panels) {
    const roof = project.cover.roofs.find((r) => r.mark === p.roof);
    const n = roof?.finish.nailing;
    put(
      `Sheathing of ${p.roof}: ${p.item}${n ? `, nailed at ${inch(n.edge)} along edges and ${inch(n.field)} within` : ''}, gaps left as the panels are stamped.`,
      `${p.sheets} sheets`,
    );
  }
  put('Call the framing and the sheathing-nailing inspection before anything is covered.');
  put(
    `Material by the owner or by the contractor: ${bought(input, 'lumber', 'engineered', 'trusses').length > 0 ? 'as in the take-off attached' : 'as drawn'}. Say which.`,
  );
  return structure.members.length > 0 ? out : [];
}

export const framing: Trade = {
  title: 'Framing and sheathing',
  letter: 'F',
  phases: ['posts-and-beams', 'framing', 'sheathing'],
  lines,
  questions: [
    'Who lifts beams and trusses, with what, and who is insured for it?',
    'How are posts, beams and trusses braced until the sheathing is on?',
    'Who answers for the cut list when a footing is not where it is drawn?',
    'Who calls each inspection and who is there?',
  ],
  payments: [
    {
      when: 'On signing',
      percent: 10,
      proof: 'contract signed, insurance and license seen; no more than your state allows',
    },
    { when: 'Posts and beams up', percent: 25, proof: 'plumb and braced; connectors complete; conditional release' },
    {
      when: 'Framing and sheathing',
      percent: 45,
      proof: 'framing and sheathing-nailing inspections passed; conditional releases of contractor and yard',
    },
    { when: 'Final', percent: 20, proof: 'final inspection passed; punch list done; final releases' },
  ],
};
