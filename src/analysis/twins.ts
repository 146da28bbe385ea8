/** Load cases that are bit for bit the same to some part: a case that loads another roof, or a span far away. */

/** For every case the first case with the same numbers; `same` compares two cases that share a `print`. */
export function twinsOf(
  cases: number,
  print: (loadCase: number) => number,
  same: (a: number, b: number) => boolean,
): Int32Array {
  const twins = new Int32Array(cases);
  const first = new Map<number, number>();
  /** The next case that has the print of this one and other numbers; 0, which is never a next one, ends the row. */
  const next = new Int32Array(cases);
  for (let c = 0; c < cases; c++) {
    const p = print(c);
    let k = first.get(p);
    if (k === undefined) first.set(p, c);
    while (k !== undefined && !same(k, c)) {
      if (next[k] === 0) {
        next[k] = c;
        k = undefined;
      } else k = next[k];
    }
    twins[c] = k ?? c;
  }
  return twins;
}
