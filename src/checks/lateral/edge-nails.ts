/**
 * Boundary nails pulled or pushed square to their line by the couple that keeps the roof from turning. The diaphragm tables
 * speak of shear along the line only, so this part is held by the nails one by one (NDS chapter 12, no diaphragm factor).
 */

import type { Recorder } from '../../base/trace.js';
import { dowelBearing, lateralValue, penetrationFactor } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Sheathed } from './sheathing.js';

/** Allowable load square to a line of boundary nails, plf, load duration 1. NDS 2018 12.3.1, panel as side member. */
export function edgeNailLine({ nailed, Fyb, panelG, G }: Sheathed, rec?: Recorder): number {
  const p = nailed.length - nailed.thickness;
  const { Z } = lateralValue(
    {
      D: nailed.D,
      lm: p,
      ls: nailed.thickness,
      Fem: dowelBearing(G, nailed.D, 0, false, rec),
      Fes: dowelBearing(panelG, nailed.D, 0, false, rec),
      Fyb,
      thetaMax: 0,
    },
    'single',
    rec,
  );
  const depth = penetrationFactor('nail', p, nailed.D, rec) ?? 0;
  const value = (12 / nailed.boundary) * depth * Z;
  rec?.step({
    symbol: 'na1',
    meaning: 'allowable load square to the line of boundary nails, load duration 1',
    formula: '12 / spacing · p/full · Z',
    substituted: `12 / ${say(nailed.boundary)} · ${depth.toFixed(3)} · ${Z.toFixed(2)}`,
    value,
    unit: 'plf',
    clause: 'NDS 2018 12.3.1',
  });
  return value;
}
