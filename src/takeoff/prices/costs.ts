/** What it costs, by phase and by who does it. A thing without a price is listed, never taken for nothing. */
import { type Buying, PHASES, type Phase, type WorkBy } from '../../project/model/buying.js';
import type { PriceRow } from '../../project/model.js';
import type { Line, Takeoff } from '../model.js';
import { priceOf } from './match.js';

export interface PricedLine {
  readonly line: Line;
  readonly price: number | undefined;
  readonly total: number | undefined;
}

export interface PhaseCost {
  readonly phase: Phase;
  /** Material with a price; how many lines have none. */
  readonly material: number;
  readonly unpriced: number;
  readonly by: WorkBy;
  /** The work alone; undefined: not known. Own work costs nothing here. */
  readonly work: number | undefined;
  readonly from: string;
}

export interface Costs {
  readonly lines: readonly PricedLine[];
  readonly phases: readonly PhaseCost[];
  readonly material: number;
  readonly work: number;
  readonly total: number;
  /** Lines without a price, and phases let out without one: the total is at least this much too low. */
  readonly unpriced: readonly Line[];
  readonly unknownWork: readonly Phase[];
}

export function costsOf(t: Takeoff, prices: readonly PriceRow[], buying: Buying): Costs {
  const lines = t.lines.map((line): PricedLine => {
    const price = priceOf(prices, line.item, line.buy.unit)?.price;
    return { line, price, total: price === undefined ? undefined : price * line.buy.quantity };
  });
  const phases = PHASES.flatMap((phase): PhaseCost[] => {
    const own = lines.filter((l) => l.line.phase === phase);
    const work = buying.work.find((w) => w.phase === phase);
    if (own.length === 0 && !work) return [];
    const by = work?.by ?? 'own';
    return [
      {
        phase,
        material: own.reduce((sum, l) => sum + (l.total ?? 0), 0),
        unpriced: own.filter((l) => l.total === undefined).length,
        by,
        work: work?.price ?? (by === 'own' ? 0 : undefined),
        from: work?.from ?? '',
      },
    ];
  });
  const material = phases.reduce((sum, p) => sum + p.material, 0);
  const work = phases.reduce((sum, p) => sum + (p.work ?? 0), 0);
  return {
    lines,
    phases,
    material,
    work,
    total: material + work,
    unpriced: lines.filter((l) => l.total === undefined).map((l) => l.line),
    unknownWork: phases.filter((p) => p.work === undefined).map((p) => p.phase),
  };
}
