import type { Member } from '../../structure/model.js';
import { isCut } from '../cuts/members.js';
import { line } from '../line.js';
import type { ItemKind } from '../model.js';
import { wasteOf } from '../waste.js';

/** Square feet a gallon covers in one coat: the low end of 350 to 400 (common practice, no source). */
export const COVERAGE = 350;
export const COATS = 2;

/** All four sides and no ends: what lies against other wood is small beside it. */
const faces = (m: Member): number => (2 * (m.section.width + m.section.depth) * m.length) / 144;

/** Paint or stain of the wood that is placed piece by piece. */
export const paint: ItemKind = {
  count: ({ structure, buying }) => {
    const wood = structure.members.filter(isCut);
    if (wood.length === 0) return [];
    return [
      line({
        group: 'finish',
        phase: 'finish',
        item: 'exterior paint or stain, gallon',
        net: COATS * wood.reduce((sum, m) => sum + faces(m), 0),
        unit: 'sq ft',
        waste: wasteOf(buying, 'paint'),
        sold: {
          unit: 'gallon',
          holds: COVERAGE,
          rule: `${COATS} coats, ${COVERAGE} sq ft a gallon and coat (common practice, no source)`,
        },
        serves: wood.map((m) => m.mark),
        note: 'All sides of posts, beams, framing and trim; trusses and ceilings are not in it. Let treated wood dry first. Strike it out if the wood stays as it is.',
      }),
    ];
  },
};
