/** Least number of letters to insert, delete, replace or swap with a neighbour to turn `a` into `b`. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let d = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d = Math.min(d, before[j - 2]! + 1);
      row.push(d);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}

/** The candidate most like `text`, when one is near enough to be what was meant. */
export function nearest(text: string, candidates: Iterable<string>): string | undefined {
  const plain = (s: string) => s.toLowerCase().replace(/[\s_.-]+/g, '');
  const wanted = plain(text.slice(0, 60));
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const c of candidates) {
    const d = editDistance(wanted, plain(c));
    if (d < least && d <= Math.max(1, Math.floor(Math.max(wanted.length, 3) / 3))) {
      best = c;
      least = d;
    }
  }
  return best;
}

/** `one of a, b, c`, the nearest first asked for: `"x"? one of x, y`. */
export function listing(found: string, candidates: readonly string[]): string {
  const near = nearest(found, candidates);
  const all = candidates.map((c) => `"${c}"`).join(', ');
  return near === undefined ? `one of ${all}` : `did you mean "${near}"? One of ${all}`;
}
