/**
 * Project and placed structure to load cases and their combinations. First reach: dead, roof live, balanced snow (with
 * rain on snow), free-roof wind and least wind. Unbalanced, drifting and sliding snow, seismic and component wind are
 * not cases here; the checks that ask for them say so.
 */
import type { Outcome } from '../base/issue.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import { makeLedger } from './basis.js';
import { expandCombinations } from './combinations.js';
import { deadCase } from './dead.js';
import { liveCase, snowCase } from './gravity.js';
import { minimumWindCases } from './minimum-wind.js';
import type { LoadCase, Loads } from './model.js';
import { windCases } from './wind.js';

export function buildLoads(project: Project, structure: Structure): Outcome<Loads> {
  const ledger = makeLedger();
  const cases: LoadCase[] = [deadCase(structure, ledger)];
  for (const c of [liveCase(project, structure, ledger), snowCase(project, structure, ledger)]) if (c) cases.push(c);
  cases.push(...windCases(project, structure, ledger));
  if (structure.roofs.length > 0) cases.push(...minimumWindCases(project, structure, ledger));
  const edition = project.basis.codes.loads;
  return {
    value: {
      cases,
      combinations: expandCombinations(cases, edition, 'ASD'),
      strength: expandCombinations(cases, edition, 'LRFD'),
      basis: { rows: ledger.rows },
      outside: ledger.outside,
    },
    issues: [],
  };
}
