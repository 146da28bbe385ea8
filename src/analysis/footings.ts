/** Tier 3: what each post hands down, taken to the underside of its footing. */
import type { StructureIndex } from './index-structure.js';
import type { FootingForces } from './model.js';
import type { Rows } from './rows.js';

/** Horizontal force at the top of the concrete turns about the underside with the footing's whole height as its arm. */
export function footingForces(
  index: StructureIndex,
  received: ReadonlyMap<string, Rows>,
): ReadonlyMap<string, FootingForces> {
  const out = new Map<string, FootingForces>();
  for (const [id, rows] of received) {
    const footing = index.footings.get(id)!;
    const arm = footing.top - footing.bottom;
    const cases = rows.length / 3;
    const force = [];
    const moment = [];
    for (let c = 0; c < cases; c++) {
      const x = rows[3 * c]!;
      const y = rows[3 * c + 1]!;
      force.push({ x, y, z: 0 - rows[3 * c + 2]! });
      moment.push({ x: 0 - arm * y, y: arm * x, z: 0 });
    }
    out.set(id, { footing: id, force, moment });
  }
  return out;
}
