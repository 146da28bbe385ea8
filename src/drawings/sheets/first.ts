/** The sheet that a screen opens with. It needs no other kind of sheet, so an app can show it before the rest is loaded. */
import type { Sheet } from '../ir/index.js';
import { type DrawingInput, SHEET_IDS } from './contract.js';
import { footingPlan } from './footing-plan.js';
import { drawOneOf, type SetPlace, type SheetKinds } from './one-of.js';

export const FIRST_SHEET: string = SHEET_IDS['footing-plan'];

const KINDS: SheetKinds = { 'footing-plan': footingPlan };

/**
 * The footing plan as `drawSet` would draw it.
 * @param place empty while the set is not known: then its title block does not say which sheet of how many it is
 */
export const drawFirst = (given: DrawingInput, place: SetPlace = { index: [] }): Sheet | undefined =>
  drawOneOf(KINDS, given, FIRST_SHEET, place);
