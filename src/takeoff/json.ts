/** The buying data as JSON: plain values, lengths in inches, nothing that is worked out twice. */
import type { Buy } from './buy.js';

export function buyJson(b: Buy) {
  return {
    project: b.project.job.title,
    pricesAre: b.pricesAre || 'as entered',
    lines: b.costs.lines.map(({ line, price, total }) => ({ ...line, price: price ?? null, total: total ?? null })),
    open: b.takeoff.open,
    cuts: b.takeoff.cuts.map((g) => ({
      item: g.item,
      method: g.plan.method,
      by: g.priced ? 'price' : 'length',
      cost: g.plan.cost,
      bound: g.plan.bound,
      gap: g.plan.gap,
      bestFitDecreasing: g.plan.baseline,
      boards: g.plan.boards.map((x) => ({
        length: x.stock.length,
        pieces: x.cuts.map((c) => ({ id: c.id, mark: c.mark, what: c.what, length: c.length })),
        left: x.offcut,
      })),
    })),
    panels: b.takeoff.panels.map((p) => ({
      roof: p.roof,
      item: p.item,
      sheets: p.sheets,
      whole: p.whole,
      area: p.area / 144,
      pieces: p.pieces.map(({ id, surface, row, u0, u1, v0, v1, whole }) => ({
        id,
        surface,
        row,
        u0,
        u1,
        v0,
        v1,
        whole,
      })),
    })),
    costs: {
      phases: b.costs.phases,
      material: b.costs.material,
      work: b.costs.work,
      total: b.costs.total,
      unpriced: b.costs.unpriced.map((l) => l.id),
      unknownWork: b.costs.unknownWork,
    },
    concrete: b.pours,
    trusses: b.trusses.map((t) => ({ mark: t.order.mark, rows: t.rows, mismatches: t.mismatches, missing: t.missing })),
    strayPapers: b.strayPapers,
    scopes: b.scopes,
    bids: b.bids,
    compared: b.compared,
  };
}
export type BuyJson = ReturnType<typeof buyJson>;
