/** Driven fasteners pulled along themselves, alone or with shear. NDS 2018 12.2, 12.4. */
import type { Recorder } from '../../../base/trace.js';
import { type Fastener, LAG_THREAD } from '../../../catalog/index.js';
import type { DrivenDowels } from '../../../project/connections.js';
import {
  adjustedW,
  CMConnection,
  combinedLateralWithdrawal,
  headPullThrough,
  W,
  type WithdrawalKind,
} from '../../codes/nds-2018/index.js';
import { say } from '../../codes/say.js';
import type { Group } from './dowel-group.js';

type Kind = DrivenDowels['kind'];

export const WITHDRAWAL: Readonly<Record<Kind, WithdrawalKind>> = {
  'lag-screws': 'lag',
  'wood-screws': 'wood-screw',
  nails: 'smooth-nail',
};

/** Threads of a wood screw, as a part of its length. NDS Appendix L Table L3 (recalled). */
const SCREW_THREAD = 2 / 3;

/** Length that holds against being pulled, in, of fastener `f` of length `L` going `p` deep (tip included). */
function holding(kind: Kind, f: Fastener, L: number, p: number): number {
  if (kind === 'nails') return p;
  if (kind === 'wood-screws') return Math.min(p, SCREW_THREAD * L);
  let thread = 0;
  for (const [length, T] of LAG_THREAD) if (length <= L + 1e-9) thread = T;
  return Math.max(0, Math.min(p, thread) - (f.tip ?? 0));
}

/** Adjusted withdrawal capacity of one fastener, lb. */
export function pullOut(
  kind: Kind,
  g: Group,
  at: { readonly L: number; readonly p: number; readonly CD: number; readonly madeDry: boolean },
  rec?: Recorder,
): number {
  const f = g.fastener;
  const G = g.main.wood!.section.values.G;
  const moisture = { wetAtFabrication: !at.madeDry, wetInService: g.main.wood!.section.wet };
  const CM = CMConnection(kind === 'nails' ? 'nail-withdrawal' : 'lag-or-screw-withdrawal', moisture, f.D, true, rec);
  const each = adjustedW(W(WITHDRAWAL[kind], G, f.D, rec), { CD: at.CD, CM }, rec);
  const grip = holding(kind, f, at.L, at.p);
  let value = each * grip;
  rec?.step({
    symbol: "W'p",
    meaning: 'withdrawal capacity of one fastener',
    formula: "W'·p",
    substituted: `${say(each)}·${say(grip)}`,
    value,
    unit: 'lb',
    clause: 'NDS 2018 12.2',
  });
  if (f.head !== undefined && g.side.wood) {
    const head = headPullThrough(g.side.wood.section.values.G, f.head, g.side.thickness, rec) * at.CD * CM;
    if (head < value) value = head;
  }
  return value;
}

/** Demand over capacity of one fastener under shear `V` (ratio `lateral` of Z') and pull `N`, lb. */
export function together(kind: Kind, V: number, N: number, Z: number, Wp: number, rec?: Recorder): number {
  if (V <= 0) return N / Wp;
  const capacity = combinedLateralWithdrawal(WITHDRAWAL[kind], Wp, Z, Math.atan2(N, V), rec);
  return Math.hypot(V, N) / capacity;
}
