/** The packet that an association's committee wants: application, plot plan, elevations, perspectives. */
import type { Sheet, SheetSize } from '../../ir/index.js';
import { type DrawingInput, SHEET_IDS } from '../contract.js';
import { elevations } from '../elevations.js';
import { lotPlan } from '../lot/lot-plan.js';
import { drawParts, type SetPart } from '../set.js';
import { front } from './front.js';
import { perspectives } from './perspectives.js';

const PARTS: readonly SetPart[] = [
  { id: SHEET_IDS.cover, kind: front },
  { id: SHEET_IDS['lot-plan'], kind: lotPlan },
  { id: SHEET_IDS.elevations, kind: elevations },
  // Type digit 9 of the national CAD standard: three-dimensional representations, recalled.
  { id: 'A-901', kind: perspectives },
];

/** 11 by 17 in unless asked otherwise: what a committee can copy and pass round. */
export const drawAssociation = (input: DrawingInput, size: SheetSize = 'ANSI B'): Sheet[] =>
  drawParts(input, size, PARTS, 'Association review');
