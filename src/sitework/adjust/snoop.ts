/**
 * Which reading is bad. The global test asks whether the residuals as a whole are larger than the sigmas allow; data
 * snooping then takes the reading whose normalized residual is largest (Baarda 1968, as described on a surveying firm's help
 * page: one reading at a time, the largest first, then everything again).
 */

import { UNCHECKED } from './least-squares.js';
import { fitNetwork, type Network, type NetworkFit } from './network.js';
import { chiSquareQuantile, normalTwoSided } from './quantiles.js';

/** Level of the global test. Common practice. */
export const GLOBAL_SIGNIFICANCE = 0.05;
/** Level of the test of one reading: Baarda's own, recalled; its limit is 3.29. */
export const READING_SIGNIFICANCE = 0.001;
export const READING_LIMIT = normalTwoSided(READING_SIGNIFICANCE);

export interface GlobalTest {
  readonly freedom: number;
  readonly weightedSum: number;
  /** Greatest sum that chance explains; 0 when nothing is checked. */
  readonly limit: number;
  readonly passes: boolean;
  /** Square root of the sum over the freedom: 1 when the sigmas are right. */
  readonly unitWeight: number;
}

export interface Suspect {
  readonly id: string;
  /** Normalized residual before it was taken out. */
  readonly normalized: number;
  /** What the other readings say it should have been, less what it said. */
  readonly error: number;
  /** Readings that explain the misfit as well as this one does: nothing tells them apart. */
  readonly alike: readonly string[];
}

export interface Snooped {
  /** With every reading. */
  readonly before: NetworkFit;
  /** Without the suspects. */
  readonly after: NetworkFit;
  readonly suspects: readonly Suspect[];
  readonly test: GlobalTest;
  readonly testAfter: GlobalTest;
}

export function globalTest(n: NetworkFit): GlobalTest {
  const { freedom, weightedSum } = n.fit;
  const limit = freedom > 0 ? chiSquareQuantile(1 - GLOBAL_SIGNIFICANCE, freedom) : 0;
  return {
    freedom,
    weightedSum,
    limit,
    passes: freedom <= 0 || weightedSum <= limit,
    unitWeight: freedom > 0 ? Math.sqrt(weightedSum / freedom) : 0,
  };
}

/** Normalized residuals this near each other cannot be told apart. */
const SAME = 1e-3;

/** Takes out at most a third of what is checked: past that the readings contradict each other and a blunder cannot be named. */
export function snoop(net: Network): Snooped | undefined {
  const before = fitNetwork(net);
  if (!before) return undefined;
  let after = before;
  let readings = net.readings;
  const suspects: Suspect[] = [];
  const most = Math.max(1, Math.floor(before.fit.freedom / 3));
  while (suspects.length < most) {
    const { normalized, redundancy, residuals } = after.fit;
    let worst = -1;
    normalized.forEach((w, i) => {
      if (redundancy[i]! > UNCHECKED && (worst < 0 || Math.abs(w) > Math.abs(normalized[worst]!) * (1 + 1e-9)))
        worst = i;
    });
    if (worst < 0 || Math.abs(normalized[worst]!) <= READING_LIMIT) break;
    const id = after.used[worst]!;
    const alike = after.used.filter(
      (o, i) => o !== id && Math.abs(Math.abs(normalized[i]!) - Math.abs(normalized[worst]!)) < SAME,
    );
    const next = readings.filter((r) => r.id !== id);
    const refit = fitNetwork({ ...net, readings: next });
    if (!refit) break;
    // Residual over redundancy: the change that would bring this reading in line with all the others.
    suspects.push({ id, normalized: normalized[worst]!, error: residuals[worst]! / redundancy[worst]!, alike });
    readings = next;
    after = refit;
  }
  return { before, after, suspects, test: globalTest(before), testAfter: globalTest(after) };
}
