/**
 * Snow that does not lie evenly (ASCE 7 7.6, 7.7, 7.9): drift below the house, snow sliding off it, and snow blown across a
 * ridge. Each is a case of its own on top of the balanced load ps, without rain on snow and without the low-slope minimum
 * (7.3.4, 7.10), an alternative to the others. A drift is carried over the whole edge that faces the wall.
 */
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import { type Ledger, note } from '../basis.js';
import { asce, snowDensity } from '../codes/asce7/index.js';
import type { BalancedSnow } from '../gravity.js';
import type { LoadCase, SnowAnswer } from '../model.js';
import { finish, type Sheet } from './case.js';
import { drift } from './drift.js';
import { sliding } from './sliding.js';
import { unbalanced } from './unbalanced.js';

/** The uneven snow cases of all roofs and what became of each question. */
export function unevenSnow(
  project: Project,
  structure: Structure,
  snow: BalancedSnow,
  ledger: Ledger,
): { readonly cases: readonly LoadCase[]; readonly answers: readonly SnowAnswer[] } {
  const edition = project.basis.codes.loads;
  const gamma = snowDensity(snow.pg, edition);
  const sheet: Sheet = { project, structure, snow, ledger, gamma, drafts: new Map() };
  if (structure.roofs.length > 0)
    note(ledger, 'γ', 'snow density', gamma, 'pcf', asce(edition, 'Eq. 7.7-1'), [project.basis.snow.ground.path]);
  const answers = structure.roofs.flatMap((r) => [drift(sheet, r), sliding(sheet, r), unbalanced(sheet, r)]);
  return { cases: [...sheet.drafts.values()].map((d) => finish(d, sheet)), answers };
}
