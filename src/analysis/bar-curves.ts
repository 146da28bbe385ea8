/**
 * Curves of a rafter under every load case, as sums of units. Cases that put the same on it share their rows: of a large
 * cover most put nothing on it.
 */
import type { MemberEffects } from './model.js';
import type { Near } from './near.js';
import type { Bar, BarUnit } from './rafter.js';
import { makeTable } from './rows.js';
import { makeSpans } from './two-bearings.js';

export type Curves = Omit<MemberEffects, 'member'>;

/** Curves of every case as sums of units; `self` is the member's own weight. */
export function barCurves(
  bar: Bar,
  cases: number,
  near: Near,
  units: readonly (BarUnit | undefined)[],
  self: BarUnit,
  supports: readonly number[],
): Curves {
  const size = bar.stations.x.length;
  const zero = new Float64Array(size);
  const rows = makeTable(4 * near.cases.length, size);
  let next = 0;
  const flat: readonly Float64Array[] = new Array(cases).fill(zero);
  const [m, v, n, sag] = [[...flat], [...flat], [...flat], [...flat]];
  const first = new Map<string, number>();
  for (const { index, self: own, term, factor } of near.cases) {
    let put = own === 0 ? '' : `${own}`;
    for (let k = 0; k < term.length; k++) if (units[term[k]!]) put += ` ${term[k]}·${factor[k]}`;
    if (put === '') continue;
    const twin = first.get(put);
    if (twin !== undefined) {
      m[index] = m[twin]!;
      v[index] = v[twin]!;
      n[index] = n[twin]!;
      sag[index] = sag[twin]!;
      continue;
    }
    first.set(put, index);
    m[index] = rows[next++]!;
    v[index] = rows[next++]!;
    n[index] = rows[next++]!;
    sag[index] = rows[next++]!;
    const add = (unit: BarUnit, times: number): void => {
      addTimes(m[index]!, unit.m, times);
      addTimes(v[index]!, unit.v, times);
      addTimes(n[index]!, unit.n, times);
      addTimes(sag[index]!, unit.sag, times);
    };
    if (own !== 0) add(self, own);
    for (let k = 0; k < term.length; k++) {
      const unit = units[term[k]!];
      if (unit) add(unit, factor[k]!);
    }
  }
  return {
    stations: bar.stations.x,
    spanOf: bar.stations.spanOf,
    spans: makeSpans(bar.beam.length, supports),
    m,
    v,
    n,
    mWeak: flat,
    vWeak: flat,
    sag,
  };
}

function addTimes(into: Float64Array, row: Float64Array, factor: number): void {
  for (let i = 0; i < into.length; i++) into[i] = into[i]! + factor * row[i]!;
}
