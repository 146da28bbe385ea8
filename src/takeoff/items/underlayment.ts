import { underlaymentLayers } from '../../catalog/index.js';
import { line } from '../line.js';
import type { ItemKind } from '../model.js';
import { roofAreas } from '../roofing/area.js';
import { SQUARE } from '../roofing/contract.js';
import { wasteOf } from '../waste.js';

interface Roll {
  readonly name: string;
  /** Squares one roll covers, laps taken off. */
  readonly covers: number;
  readonly source: string;
}

/** Rolls by the names of the project file; coverage from a roofer's sheet, the lower figure of those read. */
export const ROLLS: Readonly<Record<string, Roll>> = {
  'felt-15': { name: 'felt, 15 lb, roll', covers: 4, source: 'a roofer’s sheet: 4 to 4.3 squares' },
  'felt-30': { name: 'felt, 30 lb, roll', covers: 2, source: 'a roofer’s sheet: 2.1 squares, 2 taken' },
  'self-adhering': { name: 'self-adhering membrane, roll', covers: 2, source: 'common practice, no source' },
  synthetic: { name: 'synthetic underlayment, roll', covers: 10, source: 'common practice, no source' },
};
const UNKNOWN: Roll = { name: 'underlayment', covers: 1, source: 'counted by the square' };

export const underlayment: ItemKind = {
  count: (ctx) =>
    roofAreas(ctx).flatMap(({ roof, covering, area }) => {
      const { underlayment: name } = roof.finish;
      if (name === '' || name === 'none') return [];
      // Slack keeps a pitch of exactly 4 in 12 out of the range below 4, as the roof's weight does.
      const slope = 12 * Math.tan(roof.pitch) + 1e-9;
      const layers = Math.max(1, underlaymentLayers(covering, slope));
      const roll = ROLLS[name] ?? { ...UNKNOWN, name };
      return [
        line({
          group: 'roofing',
          phase: 'roofing',
          item: roll.name,
          net: (area / SQUARE) * layers,
          unit: 'square',
          waste: wasteOf(ctx.buying, 'underlayment'),
          sold: { unit: 'roll', holds: roll.covers, rule: `${roll.covers} squares a roll (${roll.source})` },
          serves: [roof.mark],
          note: layers === 2 ? 'Two layers: the slope is under 4 in 12 (IRC R905.1.1).' : '',
        }),
      ];
    }),
};
