import { gather, objectAt, rename, type UpgradeStep } from './step.js';

const FINISH = ['covering', 'underlayment', 'sheathing', 'ceiling', 'allowance', 'fascia', 'gutter'];

/** Draft format 0: the finish lay flat on each roof of the cover, and the code year was `basis.edition`. */
export const nestFinish: UpgradeStep = {
  from: 0,
  summary: 'basis.edition is now basis.codes; what lies on a roof is now gathered under finish',
  apply: (root) => {
    const basis = objectAt(root, 'basis');
    if (basis) rename(basis, 'edition', 'codes');
    const roofs = objectAt(root, 'cover')?.members.get('roofs')?.value;
    if (roofs?.kind !== 'list') return;
    for (const roof of roofs.items) if (roof.kind === 'object') gather(roof, FINISH, 'finish');
  },
};
