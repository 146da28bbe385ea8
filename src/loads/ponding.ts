/** Roofs so flat that water stands on them: beyond this program (ASCE 7 7.11, 8.4). */
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { Ledger } from './basis.js';
import { asce } from './codes/asce7/index.js';

/** Slope under which ponding has to be investigated, rise over run: 1/4 in 12 (recalled). */
export const PONDING_SLOPE = 0.25 / 12;

export function askPonding(project: Project, structure: Structure, ledger: Ledger): void {
  for (const roof of structure.roofs) {
    if (Math.tan(roof.slope) >= PONDING_SLOPE - 1e-12) continue;
    ledger.outside.push({
      about: `ponding on ${roof.mark}`,
      why: `the slope is under 1/4 in 12, where rain and melting snow can pond (${asce(project.basis.codes.loads, '7.11, 8.4')}); make it steeper`,
    });
  }
}
