/** Load cases that are bit for bit the same to some part: a case that loads another roof, or a span far away. */

/** For every case the first case with the same numbers; `same` compares two cases that share a `print`. */
export function twinsOf(
  cases: number,
  print: (loadCase: number) => number,
  same: (a: number, b: number) => boolean,
): Int32Array {
  const twins = new Int32Array(cases);
  const byPrint = new Map<number, number[]>();
  for (let c = 0; c < cases; c++) {
    const p = print(c);
    const known = byPrint.get(p);
    const twin = known?.find((k) => same(k, c));
    twins[c] = twin ?? c;
    if (twin !== undefined) continue;
    if (known) known.push(c);
    else byPrint.set(p, [c]);
  }
  return twins;
}
