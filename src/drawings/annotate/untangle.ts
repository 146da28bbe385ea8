/** Second look at tags set one after the other: those whose leaders cross are set anew, two at a time. */
import type { Vec2 } from '../../base/vec.js';
import { cheapest, cross, PRICE, priceOf, type Segment, standing, type TagWish, type Taken } from './tag-price.js';

/** A crossing that is left misleads the eye; worth going round any number of lines, not worth touching a text. */
const CROSSING = PRICE.touch / 4;

/** Looks at all pairs; each mends what it can, and what it moved may have crossed another. */
const ROUNDS = 4;

/** Offsets of a pair, in the order of the pair. */
type Pair = readonly [Vec2, Vec2];

/**
 * Offsets after every crossing that can be undone is undone. Tags whose leaders cross nothing stay where they are. `at` are the
 * things named, `board` what stands on the paper beside the tags, paper inches.
 */
export function untangled(
  wishes: readonly TagWish[],
  at: readonly Vec2[],
  offs: readonly Vec2[],
  board: Taken,
): readonly Vec2[] {
  const now = [...offs];
  const leaderOf = (i: number): Segment => standing(wishes[i]!, at[i]!, now[i]!).leader;
  /** The board with all tags but those of `without`, and with `more` tags at given offsets. */
  const boardOf = (without: readonly number[], more: readonly (readonly [number, Vec2])[] = []): Taken => {
    const others = now.flatMap((off, k) => (without.includes(k) ? [] : [[k, off] as const]));
    const all = [...others, ...more].map(([k, off]) => standing(wishes[k]!, at[k]!, off));
    return {
      ...board,
      boxes: [...board.boxes, ...all.map((s) => s.box)],
      leaders: [...board.leaders, ...all.map((s) => s.leader)],
    };
  };
  const set = (i: number, taken: Taken): Vec2 => cheapest(wishes[i]!, at[i]!, taken, CROSSING).off;
  const cost = (i: number, j: number, [p, q]: Pair): number =>
    priceOf(wishes[i]!, p, at[i]!, boardOf([i, j]), CROSSING) +
    priceOf(wishes[j]!, q, at[j]!, boardOf([i, j], [[i, p]]), CROSSING);

  function mend(i: number, j: number): void {
    const [p, q] = [now[i]!, now[j]!];
    const bare = boardOf([i, j]);
    const [i1, j1] = [set(i, bare), set(j, bare)];
    const d = { x: at[j]!.x - at[i]!.x, y: at[j]!.y - at[i]!.y };
    const ways: Pair[] = [
      [set(i, boardOf([i])), q],
      [p, set(j, boardOf([j]))],
      [i1, set(j, boardOf([i, j], [[i, i1]]))],
      [set(i, boardOf([i, j], [[j, j1]])), j1],
      // Each at the other's place: leaders that crossed no longer do.
      [
        { x: q.x + d.x, y: q.y + d.y },
        { x: p.x - d.x, y: p.y - d.y },
      ],
    ];
    let [best, least]: [Pair, number] = [[p, q], cost(i, j, [p, q])];
    for (const way of ways) {
      const c = cost(i, j, way);
      if (c < least - 1e-9) [best, least] = [way, c];
    }
    [now[i], now[j]] = best;
  }

  for (let round = 0; round < ROUNDS; round++) {
    let tangled = false;
    for (let i = 0; i < now.length; i++)
      for (let j = i + 1; j < now.length; j++) {
        if (!cross(leaderOf(i), leaderOf(j))) continue;
        tangled = true;
        mend(i, j);
      }
    if (!tangled) break;
  }
  return now;
}
