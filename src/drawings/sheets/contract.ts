/**
 * What a sheet is made of. A kind draws bodies; the set puts frame, title block, status and index round them, so no sheet
 * knows its neighbours except by name. Sheets print what the stages before them found: they compute no number of their own.
 */
import type { Effects } from '../../analysis/model.js';
import type { Issue } from '../../base/issue.js';
import type { TraceLine } from '../../base/trace.js';
import type { CheckResult } from '../../checks/contract.js';
import type { Loads } from '../../loads/model.js';
import type { LotResult } from '../../lot/model.js';
import type { Project } from '../../project/model.js';
import type { Verdict } from '../../review/model.js';
import type { Piece, Structure } from '../../structure/model.js';
import type { Style } from '../annotate/style.js';
import type { Discipline, Primitive, Rect, SheetSize, Viewport } from '../ir/index.js';

/** Everything derived that a drawing may show. */
export interface DrawingInput {
  readonly project: Project;
  readonly lot: LotResult;
  readonly structure: Structure;
  readonly loads: Loads;
  readonly effects: Effects;
  readonly results: readonly CheckResult[];
  readonly issues: readonly Issue[];
  readonly verdict: Verdict;
  /** Steps behind a result. */
  explain(resultId: string): readonly TraceLine[];
}

/** Sheet ids in the form of the US National CAD Standard: discipline, type digit, sequence. */
export const SHEET_IDS = {
  cover: 'G-001',
  'lot-plan': 'C-101',
  'footing-plan': 'S-101',
  'beam-plan': 'S-102',
  'framing-plan': 'S-103',
  'load-path': 'S-301',
  details: 'S-501',
  trusses: 'S-502',
  'at-house': 'S-511',
  'brace-details': 'S-521',
  'tie-in': 'S-531',
  schedules: 'S-601',
  calculations: 'S-701',
  'roof-plan': 'A-121',
  elevations: 'A-201',
  sections: 'A-301',
} as const satisfies Record<string, string>;
export type SheetKindId = keyof typeof SHEET_IDS;

export interface SheetContext {
  readonly input: DrawingInput;
  readonly size: SheetSize;
  readonly style: Style;
  /** Paper left by frame and title block. */
  readonly area: Rect;
  /** Lengths as this project prints them on sheets, with true fractions: `12'-6 ½"`. */
  len(inches: number): string;
  /** Convex pieces of everything, made once per set. */
  readonly pieces: readonly Piece[];
  /** Sheets of the set in order, known when the cover is drawn; empty before. */
  readonly index: readonly { readonly id: string; readonly title: string }[];
}

export interface SheetBody {
  readonly title: string;
  readonly scaleNote: string;
  readonly viewports: readonly Viewport[];
  readonly items: readonly Primitive[];
}

export interface SheetKind {
  readonly title: string;
  readonly discipline: Discipline;
  needed(input: DrawingInput): boolean;
  /** One body a sheet; more than one when the matter does not fit (ids count up from the kind's own). */
  draw(ctx: SheetContext): readonly SheetBody[];
}

/** `S-701` counted up: S-701, S-702 … */
export function idAt(base: string, n: number): string {
  const [letter, digits] = base.split('-');
  return `${letter}-${String(Number(digits) + n).padStart(3, '0')}`;
}
