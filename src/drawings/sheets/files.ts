/** The set in the files that offices ask for one by one: site plan, drawings, calculations, trusses; every sheet is in one of them. */
import type { SeparateFile, Sheet } from '../ir/index.js';

export interface SetFile {
  /** `site-plan`: name of the file without its ending. */
  readonly name: SeparateFile | 'drawings';
  readonly title: string;
  readonly sheets: readonly Sheet[];
}

const TITLES: Readonly<Record<SetFile['name'], string>> = {
  'site-plan': 'Site plan',
  drawings: 'Drawings',
  calculations: 'Calculations',
  trusses: 'Truss profiles and papers',
};

/** Files that have a sheet, the sheets of each in the order of the set. */
export function separateFiles(sheets: readonly Sheet[]): SetFile[] {
  return (Object.keys(TITLES) as SetFile['name'][])
    .map((name) => ({ name, title: TITLES[name], sheets: sheets.filter((s) => (s.file ?? 'drawings') === name) }))
    .filter((f) => f.sheets.length > 0);
}
