/** Nails driven slantwise through the part carried into the one that carries. NDS 2018 12.5.4, 12.1.6.3. */

import { formatLength } from '../../../base/quantity/index.js';
import type { Recorder } from '../../../base/trace.js';
import { type Fastener, findFastener } from '../../../catalog/index.js';
import type { ToeNails } from '../../../project/connections.js';
import {
  adjustedW,
  adjustedZ,
  Ceg,
  CMConnection,
  Ctn,
  combinedLateralWithdrawal,
  dowelBearing,
  LEAST_PENETRATION,
  lateralValue,
  TIP_DIAMETERS,
  toeNail,
  W,
} from '../../codes/nds-2018/index.js';
import { say } from '../../codes/say.js';
import { TRACE } from '../demands.js';
import type { Held, Hold, PartKind, Place } from './contract.js';
import { perDuration } from './durations.js';
import { isPlumb } from './pieces.js';

const MORE = 'toe-nails: use more or larger ones, or a strap';

/** One toe-nail at one joint: what does not change with the force. */
interface Driven {
  readonly nail: Fastener;
  /** Length in the part carried, and in the other, inches. */
  readonly ls: number;
  readonly penetration: number;
  readonly place: Place;
  /** It enters the end of the part that carries. */
  readonly inEnd: boolean;
}

/** Adjusted lateral value of one toe-nail, lb. */
function lateral({ nail, ls, penetration, place, inEnd }: Driven, CD: number, rec?: Recorder): number {
  const s = place.upper.section;
  const m = place.lower.section;
  const moisture = { wetAtFabrication: !place.madeDry, wetInService: s.wet || m.wet };
  const { Z } = lateralValue(
    {
      D: nail.D,
      lm: Math.max(penetration - TIP_DIAMETERS * nail.D, 1e-3),
      ls,
      Fem: dowelBearing(m.values.G, nail.D, 0, false, rec),
      Fes: dowelBearing(s.values.G, nail.D, 0, false, rec),
      Fyb: nail.Fyb,
      thetaMax: 0,
    },
    'single',
    rec,
  );
  const CM = CMConnection('dowel-lateral', moisture, nail.D, true, rec);
  const end = inEnd ? { Ceg: Ceg('smooth-nail', 'lateral')! } : {};
  return adjustedZ(Z, { CD, CM, Ctn: Ctn('lateral'), ...end }, rec);
}

/** Withdrawal capacity of one toe-nail, lb. It takes no wet service factor, whatever the wood does (12.5.4.1). */
function withdrawal({ nail, penetration, place }: Driven, CD: number, rec?: Recorder): number {
  const each = adjustedW(
    W('smooth-nail', place.lower.section.values.G, nail.D, rec),
    { CD, Ctn: Ctn('withdrawal') },
    rec,
  );
  const Wp = each * penetration;
  rec?.step({
    symbol: "W'p",
    meaning: 'withdrawal capacity of one toe-nail',
    formula: "W'·p",
    substituted: `${say(Wp / penetration)}·${say(penetration)}`,
    value: Wp,
    unit: 'lb',
    clause: 'NDS 2018 12.5.4',
  });
  return Wp;
}

/** Faults of the nail whatever the force. */
function depthFaults({ nail, penetration }: Driven): readonly string[] {
  const least = LEAST_PENETRATION.nails * nail.D;
  return penetration < least
    ? [`${nail.name} goes ${formatLength(penetration)} deep, at least ${formatLength(least)}`]
    : [];
}

export const toeNails: PartKind<ToeNails> = {
  words: (part) => `(${part.count}) ${findFastener(part.size)?.name ?? part.size}, toe-nailed`,
  layout: () => '',
  care: () => 'toe-nails at 30° to the part carried, started a third of their length from its end',
  hold(part, place): Hold {
    const nail = findFastener(part.size)!;
    const driven: Driven = { nail, ...toeNail(nail.length!), place, inEnd: isPlumb(place.lower) };
    const always = depthFaults(driven);
    const pressed = ['toe-nails do not hold down: leave "down" to the wood that bears', ...always];
    const lateralAt = perDuration((CD, rec) => lateral(driven, CD, rec));
    const withdrawalAt = perDuration((CD, rec) => withdrawal(driven, CD, rec));
    return (force, CD, rec) => {
      const faults = force.z < -TRACE ? pressed : always;
      const up = Math.max(0, force.z);
      const side = Math.hypot(force.x, force.y);
      if (up >= TRACE && driven.inEnd) {
        const pulled = `toe-nails would be pulled from the end grain of ${place.lower.id}, which is not permitted`;
        return { ratio: 0, what: '', faults: [...faults, pulled] };
      }
      rec?.step({
        symbol: 'ls',
        meaning: 'length of a toe-nail in the part carried; the rest, measured plumb, is in the other',
        formula: 'L / 3; L·cos 30° − L/3',
        substituted: `${say(nail.length!)} / 3; ${say(driven.penetration)}`,
        value: driven.ls,
        unit: 'in',
        clause: 'NDS 2018 12.1.6.3',
        note: 'recalled from memory: confirm',
      });
      const ZAdj = lateralAt(CD, rec);
      if (up < TRACE) return used(part, side, ZAdj, faults, rec);
      const Wp = withdrawalAt(CD, rec);
      const capacity =
        side < TRACE ? Wp : combinedLateralWithdrawal('smooth-nail', Wp, ZAdj, Math.atan2(up, side), rec);
      return used(part, Math.hypot(up, side), capacity, faults, rec);
    };
  },
};

function used(part: ToeNails, R: number, capacity: number, faults: readonly string[], rec?: Recorder): Held {
  rec?.step({
    symbol: 'use',
    meaning: 'force on one toe-nail over its capacity',
    formula: 'R / n / capacity',
    substituted: `${say(R)} / ${part.count} / ${say(capacity)}`,
    value: R / part.count / capacity,
    unit: '',
    clause: 'NDS 2018 12.5.4',
  });
  return { ratio: R / part.count / capacity, what: MORE, faults };
}
