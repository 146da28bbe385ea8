import { atHouse } from './at-house.js';
import { beamPlanSheet } from './beam-plan.js';
import { braceDetails } from './brace-details.js';
import { calculations } from './calculations.js';
import type { SheetKind, SheetKindId } from './contract.js';
import { cover } from './cover.js';
import { details } from './details.js';
import { elevations } from './elevations.js';
import { footingPlan } from './footing-plan.js';
import { framingPlanSheet } from './framing-plan.js';
import { loadPathSheet } from './load-path.js';
import { lotPlan } from './lot-plan.js';
import { roofPlan } from './roof-plan.js';
import { schedules } from './schedules.js';
import { sections } from './sections.js';
import { tieIn } from './tie-in.js';
import { trusses } from './trusses.js';

/** Every sheet kind, in the order of the set. */
export const SHEETS: Readonly<Record<SheetKindId, SheetKind>> = {
  cover,
  'lot-plan': lotPlan,
  'footing-plan': footingPlan,
  'beam-plan': beamPlanSheet,
  'framing-plan': framingPlanSheet,
  'load-path': loadPathSheet,
  details,
  trusses,
  'at-house': atHouse,
  'brace-details': braceDetails,
  'tie-in': tieIn,
  schedules,
  calculations,
  'roof-plan': roofPlan,
  elevations,
  sections,
};
