/** The job and the codes it is judged by. */

export type UnitChoice = 'us' | 'metric';

export type SheetSizeName = 'ARCH D' | 'ARCH C' | 'ANSI B' | 'ANSI D';

export interface Job {
  readonly title: string;
  readonly address: string;
  readonly owner: string;
  readonly parcel: string;
  readonly preparedBy: string;
  /** ISO date printed in the title block; the program has no clock. */
  readonly date: string;
  readonly units: UnitChoice;
  readonly sheetSize: SheetSizeName;
  /** Plain-words scope of work for the cover. */
  readonly scope: string;
}

/** A consistent set of editions; a mixed set is refused on reading. */
export interface CodeBundle {
  readonly id: '2018' | '2021';
  readonly residential: string;
  readonly building: string;
  readonly loads: '7-16' | '7-22';
  readonly wood: 'NDS 2018';
  readonly concrete: string;
}
