import type { Phase } from '../project/model/buying.js';
import type { GroupId, Line, Waste } from './model.js';

const slug = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll('"', ' in')
    .replaceAll('/', '-')
    .replace(/[^a-z0-9.-]+/g, ' ')
    .trim()
    .replaceAll(' ', '-');

/** Marks in the order of the drawings: letters, then numbers by size. */
export const byMark = (a: string, b: string): number => {
  const [x, y] = [a, b].map((m) => /^(\D*)(\d*)/.exec(m)!);
  return x![1]! < y![1]! ? -1 : x![1]! > y![1]! ? 1 : Number(x![2]) - Number(y![2]) || (a < b ? -1 : a > b ? 1 : 0);
};

export const marks = (list: readonly string[]): string[] => [...new Set(list)].sort(byMark);

/** Slack so that 3.0000000001 bags are three. */
export const wholeUp = (x: number): number => Math.ceil(x - 1e-6);

/** Units that hold a gross quantity, up to the next part that is sold. */
export const soldFor = (gross: number, holds: number, step: number): number => wholeUp(gross / holds / step) * step;

export interface LineParts {
  readonly group: GroupId;
  readonly phase: Phase;
  readonly item: string;
  readonly net: number;
  readonly unit: string;
  readonly waste: Waste;
  /** Sold by: units of `unit` in one of them. */
  readonly sold: {
    readonly unit: string;
    readonly holds: number;
    readonly rule: string;
    /** Least part of a unit that is sold; whole units when absent. */
    readonly step?: number;
  };
  readonly serves: readonly string[];
  readonly note?: string;
}

/** A line whose purchase is the gross quantity in whole units as sold. */
export function line(p: LineParts): Line {
  const gross = p.net * (1 + p.waste.fraction);
  const step = p.sold.step ?? 1;
  return {
    id: `${p.group}:${p.phase}:${slug(p.item)}`,
    group: p.group,
    phase: p.phase,
    item: p.item,
    net: p.net,
    unit: p.unit,
    waste: p.waste,
    gross,
    buy: { ...p.sold, step, quantity: soldFor(gross, p.sold.holds, step) },
    serves: marks(p.serves),
    note: p.note ?? '',
  };
}

export const EACH = { unit: 'each', holds: 1, rule: 'by the piece' } as const;
