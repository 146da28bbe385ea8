import type { Issue } from '../../base/issue.js';
import { warning } from '../issues.js';
import { nailerLevel, placeNailer } from '../nailers.js';
import { feet } from '../text.js';
import type { StructureRule } from './contract.js';

/** Stated height and placed height of the board's middle may differ by this, inches. Rule of this program, no source. */
const NEAR = 2;

/** A nailer follows the sheathing, so its height is placed; a stated one that says otherwise is told. */
export const tieLevels: StructureRule = ({ project, structure }) =>
  (project.cover.houseTies ?? []).flatMap((t): Issue[] => {
    const nailer = t.level === undefined ? undefined : placeNailer(t, project, structure);
    if (nailer === undefined || t.level === undefined) return [];
    const level = nailerLevel(nailer);
    if (Math.abs(t.level - level) <= NEAR) return [];
    return [
      warning(
        'tie-level-off-deck',
        `${t.path}/level`,
        `The nailer of ${t.mark} follows the underside of the sheathing; its middle lies ${feet(level)} above the floor on average, not at the height stated. The placed height is used.`,
        { subject: t.mark, found: feet(t.level), expected: `leave "level" out, or ${feet(level)}` },
      ),
    ];
  });
