/** Beam stability factor with the restraint the structure really has on each edge. */

import type { Recorder } from '../../base/trace.js';
import type { Member } from '../../structure/model.js';
import { CL, effectiveLength, FbE, RB, RB_LIMIT } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import { designValue } from './design.js';

export interface Stability {
  readonly CL: number;
  /** Slenderness ratio; 0 where the edge is held all along. */
  readonly RB: number;
  /** Critical buckling value, psi; `NO_LIMIT` where the edge is held all along. */
  readonly FbE: number;
}

/** Stands for a stress that is never reached. */
export const NO_LIMIT = 1e12;

/**
 * CL for bending that puts the top (`positive`) or the bottom edge in compression. Laterally the section bends about its
 * weak axis, so Emin about that axis counts; plies fastened along their length count together, spacers not.
 * `FbStar` psi. Source: NDS 2018 3.3.3.
 */
export function stabilityFactor(
  member: Member,
  positive: boolean,
  FbStar: number,
  rec?: Recorder,
): Stability | undefined {
  const s = member.section;
  const edge = positive ? 'top' : 'bottom';
  const lu = positive ? member.unbraced.top : member.unbraced.bottom;
  if (s.d <= s.b || lu <= 0) {
    rec?.step({
      symbol: 'CL',
      meaning: 'beam stability factor',
      formula: s.d <= s.b ? '1.0 for d ≤ b' : `1.0, ${edge} edge held all along`,
      substituted: s.d <= s.b ? `${say(s.d)} ≤ ${say(s.b)}` : 'lu = 0',
      value: 1,
      unit: '',
      clause: s.d <= s.b ? 'NDS 2018 3.3.3.1' : 'NDS 2018 3.3.3.3',
    });
    return { CL: 1, RB: 0, FbE: NO_LIMIT };
  }
  const weak = { ...s, values: { ...s.values, Emin: s.values.EminY } };
  const Emin = designValue('Emin', weak, {}, rec);
  if (Emin === undefined) return undefined;
  rec?.step({
    symbol: 'lu',
    meaning: `unheld length of the ${edge} edge, which is in compression`,
    formula: 'from the placed structure',
    substituted: `${lu.toFixed(1)} in`,
    value: lu,
    unit: 'in',
    clause: 'NDS 2018 3.3.3',
    ...(s.plies > 1 ? { note: `${s.plies} plies fastened along their length count together, b = ${s.b} in` } : {}),
  });
  const le = effectiveLength('other', lu, s.d, rec);
  const slenderness = RB(le, s.b, s.d, rec);
  if (slenderness > RB_LIMIT) return { CL: 0, RB: slenderness, FbE: 0 };
  const critical = FbE(Emin, slenderness, rec);
  return { CL: CL(critical, FbStar, rec), RB: slenderness, FbE: critical };
}
