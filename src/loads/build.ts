/**
 * Project and placed structure to load cases and their combinations: dead, roof live, snow (balanced with rain on snow,
 * drifted, slid down from the house, unbalanced, on some spans), wind on free roofs and beside the house, least wind,
 * earthquake.
 * Component wind is not a case here.
 */
import type { Outcome } from '../base/issue.js';
import type { Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import { attachedWind } from './attached-wind.js';
import { makeLedger } from './basis.js';
import { expandCombinations } from './combinations.js';
import { deadCase } from './dead.js';
import { liveCase, snowCase } from './gravity.js';
import { minimumWindCases } from './minimum-wind.js';
import type { LoadCase, Loads } from './model.js';
import { withTrussPapers } from './papers.js';
import { partialLive, partialSnow } from './partial.js';
import { askPonding } from './ponding.js';
import { seismicCases } from './seismic.js';
import { unevenSnow } from './snow/index.js';
import { windCases } from './wind.js';

export function buildLoads(project: Project, structure: Structure): Outcome<Loads> {
  const ledger = makeLedger();
  const cases: LoadCase[] = [deadCase(structure, ledger)];
  const live = liveCase(project, structure, ledger);
  if (live) cases.push(live, ...partialLive(project, structure, live));
  const snow = snowCase(project, structure, ledger);
  if (snow?.balanced) cases.push(snow.balanced);
  const uneven = snow ? unevenSnow(project, structure, snow, ledger) : { cases: [], answers: [] };
  const partial = snow ? partialSnow(project, structure, snow.ps) : { cases: [], answers: [] };
  cases.push(...uneven.cases, ...partial.cases);
  cases.push(...windCases(project, structure, ledger));
  const attached = attachedWind(project, structure, ledger);
  cases.push(...attached.cases);
  if (structure.roofs.length > 0) cases.push(...minimumWindCases(project, structure, ledger));
  const pf = ledger.rows.find((r) => r.symbol === 'pf')?.value ?? 0;
  const quake = seismicCases(project, structure, pf, ledger);
  cases.push(...quake.cases);
  askPonding(project, structure, ledger);
  const edition = project.basis.codes.loads;
  return {
    value: withTrussPapers(project, structure, {
      cases,
      combinations: expandCombinations(cases, edition, 'ASD', quake.SDS),
      strength: expandCombinations(cases, edition, 'LRFD', quake.SDS),
      basis: { rows: ledger.rows },
      outside: ledger.outside,
      snow: [...uneven.answers, ...partial.answers],
      attachedWind: attached.answers,
      seismic: quake.answer,
    }),
    issues: [],
  };
}
