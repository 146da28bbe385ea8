/** Where an open question is answered: the place in the file, from the check and the part it speaks of. */
import type { CheckResult } from '../../../src/index.js';

const UNDER: Readonly<Record<string, string>> = {
  diaphragm: '/finish/nailing',
  'heel-blocking': '/heel',
  'ledger-fasteners': '/fastening',
  'ledger-strength': '/fastening',
};

const AT: Readonly<Record<string, string>> = {
  'truss-papers': '/cover/deferred',
  'house-tie': '/cover/houseTies',
  'sway-x': '/cover/lateral/x',
  'sway-y': '/cover/lateral/y',
  'existing-building': '/basis/existingHouse',
};

/** JSON pointer of what is not said yet; the part's own place where no better one is known. */
export function answerPath(r: CheckResult): string {
  if (r.id.startsWith('office-answers:')) return r.id.slice('office-answers:'.length);
  return AT[r.check] ?? `${r.path}${UNDER[r.check] ?? ''}`;
}
