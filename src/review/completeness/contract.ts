/** What offices ask to see in a submittal, and where the set shows it. */
import type { CheckResult } from '../../checks/contract.js';
import type { Sheet } from '../../drawings/ir/index.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import type { SheetFinding } from '../sheets/contract.js';

/** Everything a row may look at. */
export interface Submitted {
  readonly sheets: readonly Sheet[];
  readonly project: Project;
  readonly structure: Structure;
  readonly results: readonly CheckResult[];
  /** Faults of the sheets themselves, where they were judged; a set being drawn is judged when it is finished. */
  readonly findings?: readonly SheetFinding[];
}

export type RowGroup =
  | 'Documents'
  | 'Site plan'
  | 'Plans, sections and elevations'
  | 'Design criteria'
  | 'Paper and form';

/**
 * `shown`: on these sheets. `beside`: handed in or done beside the sheets. `not-needed`: this job has none of it. `ask`: the
 * office has to say. `missing`: asked for and neither shown nor answered.
 */
export type Found =
  | { readonly state: 'shown'; readonly sheets: readonly string[] }
  | {
      readonly state: 'beside' | 'not-needed' | 'ask' | 'missing';
      readonly why: string;
      /** Place in the project file where the answer belongs. */
      readonly path?: string;
    };

export interface OfficeRow {
  /** Stable, for `submittal.officeChecklist.remove`. */
  readonly name: string;
  readonly group: RowGroup;
  readonly item: string;
  /** Offices whose published list asks for it, of those read: at least so many, since only openings of long lists were read. */
  readonly asked: number;
  look(s: Submitted): Found;
}

export interface CompletenessRow {
  readonly name: string;
  readonly group: RowGroup | 'This office';
  readonly item: string;
  /** Absent for rows the project file adds. */
  readonly asked?: number;
  readonly found: Found;
}

/** Public lists of building offices that were read for the union, November 2026. */
export const OFFICES_READ = 44;

/** Title of the sheet that prints this list; its own words answer nothing. */
export const OFFICE_LIST = 'What the office asks, and where it is';
