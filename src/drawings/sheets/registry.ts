import { atHouse } from './at-house.js';
import { beamPlanSheet } from './beam-plan.js';
import { braceDetails } from './brace-details.js';
import { calculations } from './calculations.js';
import type { SheetKind, SheetKindId } from './contract.js';
import { cover } from './cover.js';
import { edgeDetails, jointDetails } from './details/sheets.js';
import { details } from './details.js';
import { elevations } from './elevations.js';
import { footingPlan } from './footing-plan.js';
import { framingPlanSheet } from './framing-plan.js';
import { inspections } from './inspections.js';
import { jointPlan } from './joint-plan.js';
import { loadPathSheet } from './load-path.js';
import { lotPlan } from './lot/lot-plan.js';
import { officeList } from './office-list.js';
import { demolition } from './plans/demolition.js';
import { electricalPlan } from './plans/electrical.js';
import { floorPlan } from './plans/floor-plan.js';
import { roofPlan } from './roof-plan.js';
import { schedules } from './schedules.js';
import { sections } from './sections.js';
import { tieIn } from './tie-in.js';
import { trussPapers } from './truss-papers.js';
import { trusses } from './trusses.js';

/** Every sheet kind, in the order of the set. */
export const SHEETS: Readonly<Record<SheetKindId, SheetKind>> = {
  cover,
  inspections,
  'office-list': officeList,
  'lot-plan': lotPlan,
  'footing-plan': footingPlan,
  'beam-plan': beamPlanSheet,
  'framing-plan': framingPlanSheet,
  'joint-plan': jointPlan,
  'load-path': loadPathSheet,
  details,
  trusses,
  'truss-papers': trussPapers,
  'at-house': atHouse,
  'brace-details': braceDetails,
  'joint-details': jointDetails,
  'tie-in': tieIn,
  schedules,
  calculations,
  demolition,
  'floor-plan': floorPlan,
  'roof-plan': roofPlan,
  elevations,
  sections,
  'edge-details': edgeDetails,
  'electrical-plan': electricalPlan,
};
