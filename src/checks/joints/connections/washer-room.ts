/** Whether heads and washers of a group of bolts or lag screws clear each other and the edges of the wood they press. */
import { formatLength } from '../../../base/quantity/index.js';
import type { Vec3 } from '../../../base/vec.js';
import type { Fastener } from '../../../catalog/index.js';
import { headAcross, leastWasher } from '../../heads.js';
import { type Dowels, driven } from './dowel-words.js';
import { endGrain, type Piece } from './pieces.js';

/** Outside diameter of what lies about each fastener, inches; 0 for nails and wood screws, whose heads are small. */
function acrossOf(part: Dowels, f: Fastener): number {
  if (part.kind === 'bolts') return Math.max(part.washer, headAcross(f.D));
  if (part.kind !== 'lag-screws') return 0;
  // Lags stand on washers where they press wood; a steel plate needs none.
  return part.plates?.material === 'steel' ? headAcross(f.D) : leastWasher(f.D);
}

const up = (x: number): string => formatLength(Math.ceil(x * 16 - 1e-6) / 16);

/**
 * What is wrong with the room for heads and washers, one line each. Washers may touch but not overlap, nor run past an edge or
 * end of the wood under them: the pull they hold is counted over their whole area.
 */
export function crowded(part: Dowels, f: Fastener, pieces: readonly Piece[], axis: Vec3): readonly string[] {
  const across = acrossOf(part, f);
  if (across === 0) return [];
  const what = !driven(part) && part.washer > headAcross(f.D) ? 'washers' : 'heads and washers';
  const faults: string[] = [];
  for (const p of pieces) {
    const { alongGrain, acrossGrain, spacingAlong, spacingAcross, edge, end } = p.pattern;
    const least = Math.min(
      alongGrain > 1 ? spacingAlong : Number.POSITIVE_INFINITY,
      acrossGrain > 1 ? spacingAcross : Number.POSITIVE_INFINITY,
    );
    if (least < across - 1e-6)
      faults.push(
        `${p.name}: ${what} ${up(across)} across overlap where fasteners stand ${formatLength(least)} apart: use smaller washers or set the fasteners at least ${up(across)} apart`,
      );
    if (!p.wood) continue;
    const far = p.depth - edge - (acrossGrain - 1) * spacingAcross;
    const nearest = Math.min(edge, far, endGrain(p, axis) ? Number.POSITIVE_INFINITY : end);
    if (nearest < across / 2 - 1e-6)
      faults.push(
        `${p.name}: ${what} ${up(across)} across run past its edge, ${formatLength(Math.max(0, nearest))} from the fasteners: use smaller washers or stay ${up(across / 2)} from edges and ends`,
      );
  }
  return faults;
}
