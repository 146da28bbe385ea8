import type { Bid } from '../../project/model/buying.js';
import type { BidComparison, BidStanding, Scope, ScopeInput, Trade } from './model.js';
import { TRADES } from './registry.js';

/** One scope a trade that has work to do; lines numbered so that bids can answer them. */
export function scopesOf(input: ScopeInput): Scope[] {
  return Object.entries(TRADES as Readonly<Record<string, Trade>>).flatMap(([trade, t]) => {
    const lines = t.lines(input).map((l, i) => ({ ...l, id: `${t.letter}${i + 1}` }));
    return lines.length === 0
      ? []
      : [{ trade, title: t.title, phases: t.phases, lines, questions: t.questions, payments: t.payments }];
  });
}

function standing(scope: Scope, bid: Bid): BidStanding {
  const of = (says: Bid['lines'][number]['says']) => bid.lines.filter((l) => l.says === says);
  const known = new Set(scope.lines.map((l) => l.id));
  const named = new Set(bid.lines.map((l) => l.line));
  const excluded = of('excluded')
    .map((l) => l.line)
    .filter((id) => known.has(id));
  const silent = scope.lines.map((l) => l.id).filter((id) => !named.has(id));
  const different = of('different')
    .filter((l) => known.has(l.line))
    .map((l) => ({ line: l.line, note: l.note }));
  return {
    bid,
    excluded,
    silent,
    different,
    stray: [...named].filter((id) => !known.has(id)),
    deposit: bid.total > 0 ? bid.deposit / bid.total : 0,
    whole: excluded.length + silent.length + different.length === 0,
  };
}

function findingOf(standings: readonly BidStanding[]): string {
  if (standings.length === 0) return 'No bid is entered yet.';
  if (standings.length === 1) return 'One bid only: two or three on the same scope tell what is usual.';
  const whole = standings.filter((s) => s.whole);
  if (whole.length < 2) return 'Totals cannot be compared yet: ask each bidder to answer every line of the scope.';
  const [least] = [...whole].sort((a, b) => a.bid.total - b.bid.total);
  return `${least!.bid.bidder} is lowest of the ${whole.length} bids that include every line. Price is not all: references, license, insurance and schedule count.`;
}

/** Bids of each trade line by line on one scope. */
export const compareBids = (scopes: readonly Scope[], bids: readonly Bid[]): BidComparison[] =>
  scopes.map((scope) => {
    const standings = bids.filter((b) => b.trade === scope.trade).map((b) => standing(scope, b));
    return { trade: scope.trade, standings, finding: findingOf(standings) };
  });

/** Bids on a trade no scope is written for. */
export const strayBids = (scopes: readonly Scope[], bids: readonly Bid[]): Bid[] =>
  bids.filter((b) => !scopes.some((s) => s.trade === b.trade));
