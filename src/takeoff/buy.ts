/** Everything the buying papers, tables and JSON are made from. */

import type { CheckContext } from '../checks/contract.js';
import { USUAL_BUYING } from '../project/complete/buying.js';
import type { Buying } from '../project/model/buying.js';
import type { PriceRow, Project } from '../project/model.js';
import type { Structure } from '../structure/model.js';
import type { Compared } from './choices/model.js';
import type { Solve } from './cutting/index.js';
import { compareBids, scopesOf } from './hiring/index.js';
import type { BidComparison, Scope } from './hiring/model.js';
import type { Takeoff } from './model.js';
import { type PourOrder, pourOrders } from './orders/concrete.js';
import { strayPapers, type TrussSheet, trussSheets } from './orders/truss.js';
import { type Costs, costsOf } from './prices/costs.js';
import { INVENTED, inventedPrices } from './prices/invented.js';
import { takeOff } from './take-off.js';
import { wholeRoof } from './whole-roof.js';

export interface BuyOptions {
  readonly solve?: Solve | undefined;
  /** In place of the project's own; `invented` makes some up, and everything says so. */
  readonly prices?: readonly PriceRow[] | 'invented' | undefined;
  readonly compared?: readonly Compared[] | undefined;
}

export interface Buy {
  readonly project: Project;
  readonly structure: Structure;
  readonly buying: Buying;
  readonly takeoff: Takeoff;
  readonly prices: readonly PriceRow[];
  /** Printed wherever prices are; empty when they are the owner's own. */
  readonly pricesAre: string;
  readonly costs: Costs;
  readonly pours: readonly PourOrder[];
  /** Empty without trusses, or where the forces are not known. */
  readonly trusses: readonly TrussSheet[];
  readonly strayPapers: readonly string[];
  readonly scopes: readonly Scope[];
  readonly bids: readonly BidComparison[];
  readonly compared: readonly Compared[];
}

/** @param ctx everything derived, for the loads of the truss order; without it that order is left out */
export function buyOf(project: Project, placed: Structure, ctx: CheckContext | undefined, o: BuyOptions = {}): Buy {
  const structure = wholeRoof(placed);
  const buying = project.buying ?? USUAL_BUYING;
  const own = o.prices === 'invented' ? undefined : (o.prices ?? project.prices);
  const prices = own ?? inventedPrices(takeOff(project, placed));
  const takeoff = takeOff(project, placed, { solve: o.solve, prices });
  const scopes = scopesOf({ project, structure, takeoff });
  return {
    project,
    structure,
    buying,
    takeoff,
    prices,
    pricesAre: own ? '' : INVENTED,
    costs: costsOf(takeoff, prices, buying),
    pours: pourOrders(project, structure),
    trusses: ctx ? trussSheets(ctx) : [],
    strayPapers: ctx ? strayPapers(ctx) : [],
    scopes,
    bids: compareBids(scopes, buying.bids),
    compared: o.compared ?? [],
  };
}
