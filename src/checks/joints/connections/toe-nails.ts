/** Nails driven slantwise through the part carried into the one that carries. NDS 2018 12.5.4, 12.1.6.3. */

import { formatLength } from '../../../base/quantity/index.js';
import type { Recorder } from '../../../base/trace.js';
import { findFastener } from '../../../catalog/index.js';
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
import type { Held, PartKind } from './contract.js';
import { isPlumb } from './pieces.js';

const MORE = 'toe-nails: use more or larger ones, or a strap';

export const toeNails: PartKind<ToeNails> = {
  words: (part) => `(${part.count}) ${findFastener(part.size)?.name ?? part.size}, toe-nailed`,
  layout: () => '',
  care: () => 'toe-nails at 30° to the part carried, started a third of their length from its end',
  hold(part, place, force, CD, rec?: Recorder): Held {
    const f = findFastener(part.size)!;
    const { ls, penetration } = toeNail(f.length!);
    const faults: string[] = [];
    if (force.z < -TRACE) faults.push('toe-nails do not hold down: leave "down" to the wood that bears');
    const least = LEAST_PENETRATION.nails * f.D;
    if (penetration < least)
      faults.push(`${f.name} goes ${formatLength(penetration)} deep, at least ${formatLength(least)}`);
    const up = Math.max(0, force.z);
    const side = Math.hypot(force.x, force.y);
    const s = place.upper.section;
    const m = place.lower.section;
    const inEnd = isPlumb(place.lower);
    if (up >= TRACE && inEnd) {
      faults.push(`toe-nails would be pulled from the end grain of ${place.lower.id}, which is not permitted`);
      return { ratio: 0, what: '', faults };
    }
    rec?.step({
      symbol: 'ls',
      meaning: 'length of a toe-nail in the part carried; the rest, measured plumb, is in the other',
      formula: 'L / 3; L·cos 30° − L/3',
      substituted: `${say(f.length!)} / 3; ${say(penetration)}`,
      value: ls,
      unit: 'in',
      clause: 'NDS 2018 12.1.6.3',
      note: 'recalled from memory: confirm',
    });
    const moisture = { wetAtFabrication: !place.madeDry, wetInService: s.wet || m.wet };
    const { Z } = lateralValue(
      {
        D: f.D,
        lm: Math.max(penetration - TIP_DIAMETERS * f.D, 1e-3),
        ls,
        Fem: dowelBearing(m.values.G, f.D, 0, false, rec),
        Fes: dowelBearing(s.values.G, f.D, 0, false, rec),
        Fyb: f.Fyb,
        thetaMax: 0,
      },
      'single',
      rec,
    );
    const CM = CMConnection('dowel-lateral', moisture, f.D, true, rec);
    const ZAdj = adjustedZ(
      Z,
      { CD, CM, Ctn: Ctn('lateral'), ...(inEnd ? { Ceg: Ceg('smooth-nail', 'lateral')! } : {}) },
      rec,
    );
    const answer = (R: number, capacity: number): Held => {
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
    };
    if (up < TRACE) return answer(side, ZAdj);
    // A toe-nail's withdrawal takes no wet service factor, whatever the wood does (12.5.4.1).
    const Wp = adjustedW(W('smooth-nail', m.values.G, f.D, rec), { CD, Ctn: Ctn('withdrawal') }, rec) * penetration;
    rec?.step({
      symbol: "W'p",
      meaning: 'withdrawal capacity of one toe-nail',
      formula: "W'·p",
      substituted: `${say(Wp / penetration)}·${say(penetration)}`,
      value: Wp,
      unit: 'lb',
      clause: 'NDS 2018 12.5.4',
    });
    const capacity = side < TRACE ? Wp : combinedLateralWithdrawal('smooth-nail', Wp, ZAdj, Math.atan2(up, side), rec);
    return answer(Math.hypot(up, side), capacity);
  },
};
