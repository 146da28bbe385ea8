/** Ties to the house: rows of the joint schedule, the line on the plan, and what the house must take as notes. */
import { formatForce, formatLength } from '../../base/quantity/index.js';
import { tieLevel, tieText } from '../../checks/lateral/house-tie.js';
import { houseTieDemands } from '../../checks/lateral/side-loads.js';
import type { SectionChoice } from '../../project/model.js';
import type { TableRow, TagWish } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import type { SheetContext } from './contract.js';

const largest = (values: Float64Array): number => values.reduce((most, x) => Math.max(most, Math.abs(x)), 0);

/** `2x6 Douglas Fir-Larch No. 2 nailer, `; empty where the end frame itself is fastened. */
const boardText = (s: SectionChoice | undefined): string =>
  s !== undefined && 'size' in s ? `${s.size} ${s.species} ${s.grade} nailer, ` : '';

/** One row a tie: mark, kind, what it ties, count, down, up, along and square to the house, fasteners. */
export function tieRows({ input }: SheetContext): TableRow[] {
  const { cover, job, house, choices } = input.project;
  const ties = cover.houseTies ?? [];
  if (ties.length === 0) return [];
  const demands = houseTieDemands(input);
  const lb = (x: number): string => (x >= 0.5 ? formatForce(Math.ceil(x), job.units, 0) : '–');
  return ties.map((t): TableRow => {
    const d = demands.find((x) => x.mark === t.mark);
    const places = Math.floor((t.to - t.from) / t.fastener.spacing + 1e-6) + 1;
    const board = boardText(choices.sections[t.nailer]);
    const level = `${formatLength(tieLevel(input, t))} above the floor`;
    // A nailer rakes with the roof, for the deck's edge is nailed to it; its level is the one its fasteners' couple is taken at.
    const place = t.nailer === '' ? `at ${level}` : `set along the underside of the sheathing, reckoned at ${level}`;
    const name = `${t.fastener.diameter.toFixed(3)} in ${t.fastener.kind === 'lag' ? 'lag screw' : 'wood screw'}`;
    return [
      { text: t.mark, mark: t.mark, path: t.path },
      t.nailer === '' ? 'end frame to house' : 'nailer to house',
      `${t.roof} to ${house.walls[t.wall]?.name ?? 'house'} wall`,
      // One joint along its whole length, like the other rows' counts; its fasteners stand in the words.
      '1',
      '–',
      '–',
      d ? lb(largest(d.along)) : '–',
      d ? lb(largest(d.square)) : '–',
      `${board}${place}: ${tieText(t, name)}, ${places * t.fastener.rows} in all; loads and a couple of ${d ? Math.ceil(largest(d.couple) / 12) : 0} lb·ft are for all of them together; sheathing's edge nailed to it as at boundaries`,
    ];
  });
}

/** Each tie on a plan: its line of fasteners along the wall, and its tag drawn toward the roof. */
export function tiesOnPlan({ input, style }: SheetContext): {
  readonly lines: readonly Primitive[];
  readonly tags: readonly TagWish[];
} {
  const layer = 'S-ANNO-SYMB';
  const placed = (input.project.cover.houseTies ?? []).map((t) => ({
    t,
    y: input.structure.walls[t.wall]?.start.y ?? 0,
  }));
  return {
    lines: placed.map(({ t, y }) => ({
      kind: 'line',
      layer,
      pen: 'profile',
      a: { x: t.from, y },
      b: { x: t.to, y },
      mark: t.mark,
    })),
    tags: placed.map(({ t, y }) => ({
      kind: 'joint',
      text: t.mark,
      at: { x: t.from + 0.68 * (t.to - t.from), y },
      off: { x: 2 * style.note, y: 4.5 * style.note },
      layer,
      style,
      path: t.path,
    })),
  };
}

/** What the house beyond the ties must take, in the words of the check. */
export const houseNotes = ({ input }: SheetContext): string[] =>
  input.results.filter((r) => r.check === 'house-path' && r.path !== '/cover' && r.note !== '').map((r) => r.note);
