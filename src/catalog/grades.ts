import { DIMENSION_LUMBER } from './dimension-lumber.js';
import { GLULAM, LVL } from './engineered.js';
import type { WoodGrade } from './model.js';
import { SOUTHERN_PINE } from './southern-pine.js';
import { TIMBERS } from './timbers.js';

/** Every grade of the catalogue. */
export const WOOD_GRADES: readonly WoodGrade[] = [
  ...DIMENSION_LUMBER,
  ...SOUTHERN_PINE,
  ...TIMBERS,
  ...GLULAM,
  ...LVL,
].map((g) => Object.freeze(g));

const BY_ID: ReadonlyMap<string, WoodGrade> = new Map(WOOD_GRADES.map((g) => [g.id, g]));

export const gradeById = (id: string): WoodGrade | undefined => BY_ID.get(id);

/** True when the row is sold under this grade mark: `No. 1 / No. 2` answers to both of its parts. */
const answersTo = (row: WoodGrade, grade: string): boolean =>
  row.grade === grade || row.grade.split(' / ').includes(grade);

/** Widths of table 4B rows: each covers nominal widths from the one before (exclusive) up to its own; 12 also more. */
const widthClass4B = (nominalWidth: number): number =>
  nominalWidth <= 4 ? 4 : nominalWidth <= 6 ? 6 : nominalWidth <= 8 ? 8 : nominalWidth <= 10 ? 10 : 12;

/**
 * Reference design values of a sawn member by its nominal size, inches. 2 to 4 in. thick is dimension lumber (4A, or
 * 4B for Southern Pine); 5 in. and thicker is a timber (4D): a beam or stringer when its width is more than 2 in.
 * greater than its thickness, else a post or timber. Undefined when the catalogue has no such row.
 *
 * Source: NDS Supplement Tables 4A, 4B, 4D; size classes as published by western lumber grading rules. Stud grade
 * 8 in. and wider takes the No. 3 values (Table 4A).
 */
export function findGrade(
  species: string,
  grade: string,
  nominalThickness: number,
  nominalWidth: number,
): WoodGrade | undefined {
  const thin = Math.min(nominalThickness, nominalWidth);
  const wide = Math.max(nominalThickness, nominalWidth);
  if (thin < 2) return undefined;
  if (thin >= 5) {
    const sizeClass = wide - thin > 2 ? 'beams-stringers' : 'posts-timbers';
    return TIMBERS.find((g) => g.species === species && g.sizeClass === sizeClass && answersTo(g, grade));
  }
  if (species === 'Southern Pine') {
    const width = widthClass4B(wide);
    return SOUTHERN_PINE.find((g) => g.width === width && answersTo(g, grade));
  }
  const wanted = grade === 'Stud' && wide >= 8 ? 'No. 3' : grade;
  return DIMENSION_LUMBER.find((g) => g.species === species && answersTo(g, wanted));
}

/** Species that the table holding this size knows, with the grade marks of each, for choices and error messages. */
export function gradesSold(table: WoodGrade['table']): ReadonlyMap<string, readonly string[]> {
  const out = new Map<string, string[]>();
  for (const g of WOOD_GRADES) {
    if (g.table !== table) continue;
    const list = out.get(g.species) ?? [];
    if (!list.includes(g.grade)) list.push(g.grade);
    out.set(g.species, list);
  }
  return out;
}
