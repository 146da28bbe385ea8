/** Forms of round piers above their pads. A hole in firm soil may need none but its top; the tube of the whole pier is counted. */
import type { Footing } from '../../structure/model.js';
import type { LooseCut } from './model.js';
import { tubeSpec } from './stock.js';

export function tubeOf(f: Footing): LooseCut[] {
  const length = f.top - f.bottom - (f.round ? 0 : f.padThickness);
  if (f.onSlab || f.embedded || f.pierDiameter <= 0 || length <= 0) return [];
  const cut = { id: `${f.id}.tube`, part: f.id, mark: f.mark, what: 'pier form', length };
  return [{ spec: tubeSpec(f.pierDiameter), phase: 'footings', cut }];
}
