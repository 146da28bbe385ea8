/** Vertical load, side force and moment of one combination at a footing, taken together. Pounds and inches, house axes. */

import { combineVector, distinctCombinations } from '../../analysis/index.js';
import type { FootingForces } from '../../analysis/model.js';
import type { Recorder } from '../../base/trace.js';
import type { Combination } from '../../loads/model.js';
import type { Office } from '../../project/model.js';
import type { Footing } from '../../structure/model.js';
import type { CheckContext } from '../contract.js';
import { sumText } from '../members/scan.js';
import type { LoadedFooting } from './footing.js';

export interface Actions {
  readonly combination: Combination;
  /** Down positive, the footing's own weight left out. */
  readonly P: number;
  /** Its dead part, factor included. */
  readonly Pd: number;
  readonly Vx: number;
  readonly Vy: number;
  readonly V: number;
  /** About the x and y axes at the underside. */
  readonly Mx: number;
  readonly My: number;
  /** Factor of dead load in this combination: the footing's weight takes the same. */
  readonly dead: number;
  /** Wind is part of it: a short-term side load. */
  readonly wind: boolean;
}

/** Side force in lb and moment in lb·in that count as nothing. */
export const NO_FORCE = 1;
export const NO_MOMENT = 12;

const made = new WeakMap<FootingForces, Map<readonly Combination[], readonly Actions[]>>();

function workOut(ctx: CheckContext, forces: FootingForces, combinations: readonly Combination[]): readonly Actions[] {
  return distinctCombinations(forces, combinations).map((combination) => {
    const F = combineVector(forces.force, combination);
    const M = combineVector(forces.moment, combination);
    let dead = 0;
    let Pd = 0;
    let wind = false;
    for (const t of combination.terms) {
      const kind = ctx.loads.cases[t.case]?.kind;
      if (kind === 'D') {
        dead += t.factor;
        Pd += t.factor * forces.force[t.case]!.z;
      }
      if (kind === 'W') wind = true;
    }
    return { combination, P: F.z, Pd, Vx: F.x, Vy: F.y, V: Math.hypot(F.x, F.y), Mx: M.x, My: M.y, dead, wind };
  });
}

/** One row for each combination of the list that differs for this footing. */
export function actionsUnder(
  ctx: CheckContext,
  { forces }: LoadedFooting,
  combinations: readonly Combination[],
): readonly Actions[] {
  let lists = made.get(forces);
  if (!lists) {
    lists = new Map();
    made.set(forces, lists);
  }
  let rows = lists.get(combinations);
  if (!rows) {
    rows = workOut(ctx, forces, combinations);
    lists.set(combinations, rows);
  }
  return rows;
}

/** Moment `up` inches above the underside, resultant of both axes: the side force turns about that level no longer. */
export const momentAt = (a: Actions, up: number): number => Math.hypot(a.Mx + up * a.Vy, a.My - up * a.Vx);

/** Ground beside a footing: the finished grade, or the slab top where that is lower. */
export const groundBeside = (ctx: CheckContext, f: Footing): number =>
  Math.min(f.surface, ctx.structure.grade.z0 + ctx.structure.grade.gx * f.at.x + ctx.structure.grade.gy * f.at.y);

/** A value that may be counted only because someone named its source. */
export const sourced = <T>(office: Office<T> | undefined): T | undefined =>
  office?.state === 'given' && office.from !== '' ? office.value : undefined;

/** The forces of one combination as steps; those that are nothing are left out. */
export function recordActions(ctx: CheckContext, { footing, forces }: LoadedFooting, a: Actions, rec?: Recorder): void {
  if (!rec) return;
  const { combination } = a;
  const rows = [
    ['P', 'load from the post, down, from the frame', 'lb', a.P, (c: number) => forces.force[c]!.z],
    ['Vx', 'side force along x, from the frame', 'lb', a.Vx, (c: number) => forces.force[c]!.x],
    ['Vy', 'side force along y, from the frame', 'lb', a.Vy, (c: number) => forces.force[c]!.y],
    ['Mx', 'moment about x at the underside', 'lb·in', a.Mx, (c: number) => forces.moment[c]!.x],
    ['My', 'moment about y at the underside', 'lb·in', a.My, (c: number) => forces.moment[c]!.y],
  ] as const;
  for (const [symbol, meaning, unit, value, of] of rows) {
    if (symbol !== 'P' && value === 0) continue;
    rec.step({
      symbol,
      meaning,
      formula: combination.label,
      substituted: sumText(ctx, combination, of),
      value,
      unit,
      clause: combination.clause,
      from: [footing.path],
    });
  }
}
