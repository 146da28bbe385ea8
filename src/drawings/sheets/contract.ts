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
import type { Discipline, Primitive, Rect, SeparateFile, Sheet, SheetSize, Viewport } from '../ir/index.js';

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

/** Sheet ids in the form of the US National CAD Standard: discipline (AD: architectural demolition), type digit, sequence. */
export const SHEET_IDS = {
  cover: 'G-001',
  inspections: 'G-002',
  'office-list': 'G-601',
  'lot-plan': 'C-101',
  'footing-plan': 'S-101',
  'beam-plan': 'S-102',
  'framing-plan': 'S-103',
  'joint-plan': 'S-104',
  'load-path': 'S-301',
  details: 'S-501',
  trusses: 'S-502',
  'truss-papers': 'S-503',
  'at-house': 'S-511',
  'brace-details': 'S-521',
  'joint-details': 'S-531',
  'tie-in': 'S-541',
  schedules: 'S-601',
  calculations: 'S-701',
  demolition: 'AD101',
  'floor-plan': 'A-101',
  'roof-plan': 'A-121',
  elevations: 'A-201',
  sections: 'A-301',
  'edge-details': 'A-501',
  'electrical-plan': 'E-101',
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
  /** Sheets of the set in order, known to kinds that list the set; empty for all others. */
  readonly index: readonly { readonly id: string; readonly title: string }[];
  /** The same sheets as drawn so far, without their title blocks. */
  readonly drawn: readonly Sheet[];
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
  /** File of its own in which offices ask for it; absent: with the drawings. */
  readonly file?: SeparateFile;
  /** Lists the set: drawn again once its sheets are known. */
  readonly lists?: true;
  needed(input: DrawingInput): boolean;
  /** One body a sheet; more than one when the matter does not fit (ids count up from the kind's own). */
  draw(ctx: SheetContext): readonly SheetBody[];
}

/**
 * Ids of a set's sheets in their order, each given the id its kind begins with: it counts up from there, past ids already
 * taken (a cover of two sheets moves what follows it).
 */
export function idsOf(first: readonly string[]): string[] {
  const taken = new Set<string>();
  return first.map((base) => {
    let n = 0;
    while (taken.has(idAt(base, n))) n++;
    const id = idAt(base, n);
    taken.add(id);
    return id;
  });
}

/** `S-701` counted up: S-701, S-702 …; the hyphen holds the place of a second letter, as in AD101. */
export function idAt(base: string, n: number): string {
  return `${base.slice(0, 2)}${String(Number(base.slice(2)) + n).padStart(3, '0')}`;
}
