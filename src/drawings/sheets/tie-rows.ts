/** Ties to the house as rows of the joint schedule, and what the house must take as notes. */
import { formatForce } from '../../base/quantity/index.js';
import { tieText } from '../../checks/lateral/house-tie.js';
import { houseTieDemands } from '../../checks/lateral/side-loads.js';
import type { TableRow } from '../annotate/index.js';
import type { SheetContext } from './contract.js';

const largest = (values: Float64Array): number => values.reduce((most, x) => Math.max(most, Math.abs(x)), 0);

/** One row a tie: mark, kind, what it ties, count, down, up, along and square to the house, fasteners. */
export function tieRows({ input }: SheetContext): TableRow[] {
  const { cover, job, house } = input.project;
  const ties = cover.houseTies ?? [];
  if (ties.length === 0) return [];
  const demands = houseTieDemands(input);
  const lb = (x: number): string => (x >= 0.5 ? formatForce(Math.ceil(x), job.units, 0) : '–');
  return ties.map((t): TableRow => {
    const d = demands.find((x) => x.mark === t.mark);
    const places = Math.floor((t.to - t.from) / t.fastener.spacing + 1e-6) + 1;
    const name = `${t.fastener.diameter.toFixed(3)} in ${t.fastener.kind === 'lag' ? 'lag screw' : 'wood screw'}`;
    return [
      { text: t.mark, mark: t.mark, path: t.path },
      t.nailer === '' ? 'end frame to house' : 'nailer to house',
      `${t.roof} to ${house.walls[t.wall]?.name ?? 'house'} wall`,
      String(places * t.fastener.rows),
      '–',
      '–',
      d ? lb(largest(d.along)) : '–',
      d ? lb(largest(d.square)) : '–',
      `${tieText(t, name)}, all together; nails of the sheathing's edge as at boundaries`,
    ];
  });
}

/** What the house beyond the ties must take, in the words of the check. */
export const houseNotes = ({ input }: SheetContext): string[] =>
  input.results.filter((r) => r.check === 'house-path' && r.path !== '/cover' && r.note !== '').map((r) => r.note);
