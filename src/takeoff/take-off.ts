/** The take-off of a placed structure: pieces → cutting plans and panel layouts → lines to buy. */

import { USUAL_BUYING } from '../project/complete/buying.js';
import { PHASES } from '../project/model/buying.js';
import type { PriceRow, Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import { blockCuts } from './cuts/blocks.js';
import { groupCuts } from './cuts/groups.js';
import type { TakeoffInput } from './cuts/input.js';
import { memberCuts } from './cuts/members.js';
import { nailerCuts } from './cuts/nailers.js';
import { steelOf } from './cuts/steel.js';
import { tubeOf } from './cuts/tubes.js';
import type { Solve } from './cutting/index.js';
import { countJoints } from './fasteners/joints.js';
import { merged } from './merge.js';
import type { Line, Open, Takeoff, TakeoffContext } from './model.js';
import { panelLayouts } from './panels/layout.js';
import { ITEMS } from './registry.js';
import { wholeRoof } from './whole-roof.js';

export interface TakeoffOptions {
  /** Mixed-integer solver of the cutting plans; without one they are good, not proved. */
  readonly solve?: Solve | undefined;
  /** In place of the project's own prices: boards are chosen by them. */
  readonly prices?: readonly PriceRow[] | undefined;
}

/** Pure: the same structure, prices and solver give the same lines. */
export function takeOff(project: Project, placed: Structure, options: TakeoffOptions = {}): Takeoff {
  const structure = wholeRoof(placed);
  const buying = project.buying ?? USUAL_BUYING;
  const input: TakeoffInput = { project, structure, buying };
  const panels = panelLayouts(input);
  const steel = structure.footings.map((f) => ({ f, read: steelOf(f) }));
  const loose = [
    ...memberCuts(input),
    ...nailerCuts(input),
    ...blockCuts(input, panels),
    ...steel.flatMap((s) => s.read.cuts),
    ...structure.footings.flatMap(tubeOf),
  ];
  const cuts = groupCuts(loose, options.prices ?? project.prices, options.solve);
  const ctx: TakeoffContext = { ...input, solve: options.solve, cuts, panels };
  const lines = merged(Object.values(ITEMS).flatMap((kind) => kind.count(ctx)));
  const open: Open[] = [
    ...countJoints(ctx).open,
    ...steel.flatMap(({ f, read }) =>
      read.left === ''
        ? []
        : [{ what: `steel of ${f.mark} not understood: "${read.left}"`, serves: [f.mark], path: f.path }],
    ),
  ];
  return { lines: inOrder(lines), open, cuts, panels };
}

/** By phase, kept in the order of the kinds within it. */
const inOrder = (lines: readonly Line[]): Line[] =>
  [...lines].sort((a, b) => PHASES.indexOf(a.phase) - PHASES.indexOf(b.phase));
