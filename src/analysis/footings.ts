/** Tier 3: what each post hands down, taken to the underside of its footing. */
import type { Vec3 } from '../base/vec.js';
import type { StructureIndex } from './index-structure.js';
import type { FootingForces } from './model.js';
import { NOTHING, type Rows } from './rows.js';

/** A held foot: the moment it passes at its level. */
export interface HeldFoot {
  readonly footing: string;
  readonly level: number;
  readonly moment: Rows;
}

/**
 * Horizontal force turns about the underside: from the top of the concrete with the footing's whole height as its arm, from
 * a held foot from the level it is held at, whose own moment adds.
 */
export function footingForces(
  index: StructureIndex,
  received: ReadonlyMap<string, Rows>,
  feet: readonly HeldFoot[],
): ReadonlyMap<string, FootingForces> {
  const out = new Map<string, FootingForces>();
  for (const [id, rows] of received) {
    const footing = index.footings.get(id)!;
    const held = feet.find((f) => f.footing === id);
    const arm = (held?.level ?? footing.top) - footing.bottom;
    const cases = rows.length / 3;
    const force: Vec3[] = [];
    const moment: Vec3[] = [];
    for (let c = 0; c < cases; c++) {
      const x = rows[3 * c]!;
      const y = rows[3 * c + 1]!;
      const own = held?.moment;
      if (!own && x === 0 && y === 0 && rows[3 * c + 2] === 0) {
        force.push(NOTHING);
        moment.push(NOTHING);
        continue;
      }
      force.push({ x, y, z: 0 - rows[3 * c + 2]! });
      moment.push({
        x: 0 - arm * y + (own?.[3 * c] ?? 0),
        y: arm * x + (own?.[3 * c + 1] ?? 0),
        z: own?.[3 * c + 2] ?? 0,
      });
    }
    out.set(id, { footing: id, force, moment });
  }
  return out;
}
