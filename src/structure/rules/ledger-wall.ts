import type { Issue } from '../../base/issue.js';
import type { Cladding } from '../../project/model.js';
import { error, warning } from '../issues.js';
import { inches } from '../text.js';
import type { ProjectRule } from './contract.js';

/** Claddings a ledger must not be fastened to or through: veneer stands on its own and carries nothing. */
const VENEER: ReadonlySet<Cladding> = new Set<Cladding>(['brick-veneer', 'stone-veneer']);

/** A ledger needs a wall that can carry it, and somebody who has looked. */
export const ledgerWall: ProjectRule = ({ cover, house }) =>
  cover.ledgers.flatMap((l): Issue[] => {
    const wall = house.walls[l.wall];
    if (wall === undefined) return [];
    const { build } = wall;
    if (VENEER.has(build.cladding))
      return [
        error(
          'ledger-on-veneer',
          `${l.path}/wall`,
          `The ${wall.name} wall is clad with masonry veneer, which carries no ledger (IRC 2018 R507.9.1.1 says so of deck ledgers, recalled).`,
          {
            subject: l.mark,
            found: build.cladding,
            expected: 'a roof on beams and posts of its own at the house',
          },
        ),
      ];
    const f = l.fastening;
    const bays = f?.into === 'studs' ? f.spacing / build.studSpacing : 1;
    if (f && Math.abs(bays - Math.round(bays)) > 0.01)
      return [
        error(
          'fasteners-off-studs',
          `${f.path}/spacing`,
          'The fasteners go into studs and are not spaced as the studs are.',
          {
            subject: l.mark,
            found: inches(f.spacing),
            expected: `${inches(build.studSpacing)}, or a whole number of times that`,
          },
        ),
      ];
    if (build.verified.value && build.verified.state === 'given') return [];
    return [
      warning(
        'ledger-on-unverified-wall',
        build.verified.path || `${l.path}/wall`,
        `Nobody has verified what is behind the ${wall.name} wall where the ledger is fastened.`,
        {
          subject: l.mark,
          expected: 'studs or floor band seen, their size and spacing noted',
        },
      ),
    ];
  });
