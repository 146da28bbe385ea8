/** Combinations in order of their estimated cost: a binary heap over index vectors, each visited once. */
export interface Entry {
  readonly cost: number;
  /** Index of the option in each dimension, cheapest first. */
  readonly at: readonly number[];
  /** Last index that was raised: raising earlier ones would reach a vector twice. */
  readonly last: number;
}

const before = (a: Entry, b: Entry): boolean => a.cost < b.cost || (a.cost === b.cost && lower(a.at, b.at));
const lower = (a: readonly number[], b: readonly number[]): boolean => {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! < b[i]!;
  return false;
};

export class Queue {
  private readonly heap: Entry[] = [];

  push(e: Entry): void {
    const h = this.heap;
    h.push(e);
    let i = h.length - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (!before(h[i]!, h[up]!)) break;
      [h[i], h[up]] = [h[up]!, h[i]!];
      i = up;
    }
  }

  pop(): Entry | undefined {
    const h = this.heap;
    const top = h[0];
    const last = h.pop();
    if (top === undefined || last === undefined || h.length === 0) return top;
    h[0] = last;
    let i = 0;
    for (;;) {
      const [l, r] = [2 * i + 1, 2 * i + 2];
      let least = i;
      if (l < h.length && before(h[l]!, h[least]!)) least = l;
      if (r < h.length && before(h[r]!, h[least]!)) least = r;
      if (least === i) return top;
      [h[i], h[least]] = [h[least]!, h[i]!];
      i = least;
    }
  }
}
